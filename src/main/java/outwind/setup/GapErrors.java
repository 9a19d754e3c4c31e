package outwind.setup;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.numeric.Plane;
import outwind.surface.BoardShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

/**
 * How far the gap under a support may be from the height that is printed for its shim.
 *
 * <pre>
 *   gap of possible board d = its underside at the support − its lowest spot, both above a plane parallel to the bed
 *   half width = the 90th percentile of |gap − printed height|, at least 1.645 standard deviations of the face there
 * </pre>
 * The lowest spot of each possible board sets its bed, so that is in the error as well as the support's own place. On
 * narrow boards the draws are seen at few places; there the model's own deviation is the wider.
 */
final class GapErrors {

    /** The 90th percentile of 150 draws has a standard error of about 5 % of itself. */
    private static final int DRAWS = 150;

    /** Lines of the grid on which the lowest spot is looked for. */
    private static final int ALONG = 11;
    private static final int ACROSS = 5;

    private static final double SHARE = 0.9;

    /** Two-sided 90 % of a normal distribution, in standard deviations. */
    private static final double NORMAL = 1.645;

    private GapErrors() { }

    /**
     * @param slopes   a plane parallel to the bed
     * @param supports with the gap that the most likely board has
     * @param seed     of the possible boards
     * @return half width of the 90 % range at each support (mm), in their order
     */
    static List<Double> halfWidths(Plane slopes, Board board, BoardShape shape, List<Shim> supports, long seed) {
        Places grid = Places.grid(Region.whole(board), ALONG, ACROSS);
        int n = grid.size();
        double[] x = DoubleStream.concat(Arrays.stream(grid.x()), supports.stream().mapToDouble(Shim::x)).toArray();
        double[] y = DoubleStream.concat(Arrays.stream(grid.y()), supports.stream().mapToDouble(Shim::y)).toArray();
        List<SampledBoard> possible = shape.draws(new Places(x, y, new double[x.length], grid.cellX(), grid.cellY()),
            DRAWS, seed);
        double[] lowest = possible.stream().mapToDouble(drawn -> -drawn.greatest(i -> -drawn.undersideAbove(slopes, i)))
            .toArray();
        return IntStream.range(0, supports.size()).mapToObj(k -> {
            Shim support = supports.get(k);
            double[] errors = IntStream.range(0, lowest.length).mapToDouble(d -> Math.abs(
                possible.get(d).undersideAbove(slopes, n + k) - lowest[d] - support.height())).sorted().toArray();
            return Math.max(errors[(int) Math.ceil(SHARE * errors.length) - 1],
                NORMAL * shape.topDeviationAt(support.x(), support.y()));
        }).toList();
    }
}
