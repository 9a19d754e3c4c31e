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
 * hangs free at a support point, a shim fills the gap.
 *
 * @param bed      the bed in the frame of the readings
 * @param supports every support point, walking round the board from the corner at 0, 0
 * @param corners  gap under each corner, in the same order
 */
public record Setup(Plane bed, List<Shim> supports, List<Corner> corners) {

    /** Support points along an edge are no further apart than this (mm). */
    private static final double SPACING = 400;

    /** How far in from the ends the outermost support points lie, at most (mm): clear of the corner, under the end. */
    private static final double INSET = 40;

    public Setup {
        supports = List.copyOf(supports);
        corners = List.copyOf(corners);
    }

    /**
     * @param whole  the whole board sampled
     * @param slopes a plane with the slopes of the cut
     */
    public static Setup parallelTo(Plane slopes, Board board, BoardShape shape, SampledBoard whole) {
        double lowest = -whole.greatest(i -> -whole.undersideAbove(slopes, i));
        Plane bed = slopes.raisedBy(lowest);
        List<Shim> supports = new ArrayList<>();
        for (double[] point : supportPoints(board)) {
            // A support point may dip a hair under every sampled place.
            double gap = Math.max(0, shape.undersideAt(point[0], point[1]) - bed.at(point[0], point[1]));
            supports.add(new Shim(point[0], point[1], gap));
        }
        return new Setup(bed, supports, corners(board, shape, bed));
    }

    /** The support points that need a shim. */
    public List<Shim> shims() {
        return supports.stream().filter(Shim::isNeeded).toList();
    }

    /** Along both edges, where a hand can slide a shim in: out along one edge, back along the other. */
    private static List<double[]> supportPoints(Board board) {
        double inset = Math.min(INSET, board.length() / 10);
        int spans = (int) Math.max(1, Math.ceil((board.length() - 2 * inset) / SPACING));
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i <= spans; i++) {
            points.add(new double[] {inset + (board.length() - 2 * inset) * i / spans, 0});
        }
        for (int i = spans; i >= 0; i--) {
            points.add(new double[] {inset + (board.length() - 2 * inset) * i / spans, board.width()});
        }
        return points;
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
