package outwind.setup;

import java.util.ArrayList;
import java.util.List;
import outwind.board.Board;
import outwind.numeric.Plane;
import outwind.surface.BoardShape;
import outwind.surface.SampledBoard;

/**
 * The board held on the bed so that one cut plane is parallel to it.
 *
 * <p>The bed takes the slopes of the cut plane and lies as high as the underside lets it. Where the underside then
 * hangs free and the board would give under a push, a shim fills the gap.
 *
 * @param bed     the bed in the frame of the readings
 * @param held    contacts and shims that hold it, walking round the board from the corner at 0, 0
 * @param corners gap under each corner, in the same order
 * @param errors  how far the gap under each of the held places may be from its height: half width of a 90 % range (mm)
 */
public record Setup(Plane bed, Supports held, List<Corner> corners, List<Double> errors) {

    public Setup {
        errors = List.copyOf(errors);
        corners = List.copyOf(corners);
    }

    /**
     * @param slopes a plane with the slopes of the cut
     * @param board  for its size and wood
     * @param whole  the whole board sampled, nowhere without thickness
     * @param push   what it has to stand
     * @param seed   of the possible boards
     */
    public static Setup parallelTo(Plane slopes, Board board, BoardShape shape, SampledBoard whole, Push push,
                                   long seed) {
        Plane bed = bedUnder(whole, slopes);
        // Between two sampled places the underside may dip a hair under all of them.
        Supports held = Supports.of(board.length(), board.width(), whole.thinnest(), Stiffness.of(board.species()),
            (x, y) -> Math.max(0, shape.undersideAt(x, y) - bed.at(x, y)), push);
        return new Setup(bed, held, corners(board, shape, bed),
            GapErrors.halfWidths(bed, board, shape, held.places(), seed));
    }

    /** The bed with given slopes, as high as the underside of the whole board lets it. */
    public static Plane bedUnder(SampledBoard whole, Plane slopes) {
        return slopes.raisedBy(-whole.greatest(i -> -whole.undersideAbove(slopes, i)));
    }

    /** The support points, shims and contacts; none where shims cannot hold the board. */
    public List<Shim> places() {
        return held.holds() ? held.places() : List.of();
    }

    /** The support points that need a shim; none where shims cannot hold the board. */
    public List<Shim> shims() {
        return held.holds() ? held.shims() : List.of();
    }

    /** How far the gap under one of the places may be from its height: half width of a 90 % range (mm). */
    public double errorOf(Shim place) {
        return errors.get(held.places().indexOf(place));
    }

    private static List<Corner> corners(Board board, BoardShape shape, Plane bed) {
        List<Corner> corners = new ArrayList<>();
        for (double[] c : new double[][] {{0, 0}, {board.length(), 0}, {board.length(), board.width()},
            {0, board.width()}}) {
            corners.add(new Corner(c[0], c[1], shape.undersideAt(c[0], c[1]) - bed.at(c[0], c[1])));
        }
        return corners;
    }
}
