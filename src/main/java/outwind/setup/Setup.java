package outwind.setup;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.numeric.plane.Plane;
import outwind.surface.BoardShape;
import outwind.surface.SampledBoard;

/**
 * The board held on the bed so that one cut plane is parallel to it.
 *
 * <p>The bed takes the slopes of the cut plane. It lies as high under the most likely board as it does under half of
 * the boards that the readings leave possible. Where the underside then hangs free and the board would give under a
 * push, a shim fills the gap. The bed itself is counted on only where nearly every possible board touches it; but where
 * no shim would be higher than its own error, the board all but lies on the bed, and is checked with paper there.
 *
 * @param bed     the bed in the frame of the readings
 * @param held    contacts and shims that hold it, walking round the board from the corner at 0, 0
 * @param corners gap under each corner, in the same order
 * @param errors  how far the gap under each of the held places may be from its height: half width of a 90 % range (mm)
 */
public record Setup(Plane bed, Supports held, List<Corner> corners, List<Double> errors) {

    /** Possible boards that are laid down: the 90th percentile of an error is then good to about 5 % of itself. */
    public static final int DRAWS = 150;

    public Setup {
        errors = List.copyOf(errors);
        corners = List.copyOf(corners);
    }

    /** A gap that nobody would slide anything into (mm): a sheet of paper. */
    private static final double OPEN = 0.1;

    /** Share of the possible boards that must touch the bed before it is counted on. */
    private static final double SURE = 0.95;

    /**
     * @param slopes   a plane with the slopes of the cut
     * @param board    for its size and wood
     * @param whole    the whole board sampled, nowhere without thickness
     * @param possible the whole boards that the readings leave possible, on one grid, {@link #DRAWS} or so
     * @param push     what it has to stand
     */
    public static Setup parallelTo(Plane slopes, Board board, BoardShape shape, SampledBoard whole,
                                   List<SampledBoard> possible, Push push) {
        PossibleUndersides.Gaps gaps = PossibleUndersides.of(possible).over(slopes);
        Plane bed = bedUnder(whole, slopes).raisedBy(-gaps.lift());
        // Between two sampled places the underside may dip a hair under all of them.
        DoubleBinaryOperator gap = (x, y) -> Math.max(0, shape.undersideAt(x, y) - bed.at(x, y));
        Setup sure = held(bed, board, shape, whole, gaps, gap, (x, y) -> gaps.shareWithin(OPEN, x, y) >= SURE, push);
        boolean isAllButFlat = IntStream.range(0, sure.errors().size())
            .allMatch(k -> sure.held().places().get(k).height()
                <= Math.max(OPEN + gaps.lift(), sure.errors().get(k)));
        return isAllButFlat ? held(bed, board, shape, whole, gaps, gap,
            (x, y) -> gap.applyAsDouble(x, y) < gaps.lift() + OPEN, push) : sure;
    }

    private static Setup held(Plane bed, Board board, BoardShape shape, SampledBoard whole,
                              PossibleUndersides.Gaps gaps, DoubleBinaryOperator gap, Touching touching, Push push) {
        Supports held = Supports.of(board.length(), board.width(), whole.thinnest(), Stiffness.of(board.species()), gap,
            touching, push);
        return new Setup(bed, held, corners(board, shape, bed), GapErrors.halfWidths(gaps, shape, held.places()));
    }

    /**
     * How far a push moves a board that is just set down (mm): on what it rests on by itself, without shims. Infinite
     * where a push tips it.
     */
    public static double movementJustSetDown(Board board, SampledBoard whole, RestingPose pose, Push push) {
        BoardMesh mesh = BoardMesh.of(board.length(), board.width(), whole.thinnest(), Stiffness.of(board.species()),
            (x, y) -> 0, (x, y) -> true, push);
        HeldBoard held = mesh.held();
        held.restOn(pose.contacts().stream().map(contact -> mesh.nearest(contact.x(), contact.y())).distinct()
            .toList());
        return held.movement(held.weakest());
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

    /** True if the gap under a shim is known no better than the shim is thick. */
    public boolean isUnsure(Shim place) {
        return place.isNeeded() && errorOf(place) > place.height();
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
