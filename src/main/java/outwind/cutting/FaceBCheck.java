package outwind.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import outwind.board.Board;
import outwind.surface.BoardShape;

/**
 * What face B should read once face A is cut and the board lies on it, turned over along its length.
 *
 * <pre>
 *   height above the bed at (x, W − y) on face B = plane of face A − underside at (x, y)
 *   difference = height read − height expected, less the mean difference of all six places
 * </pre>
 * The mean is left out because it is where the cutter was zeroed and how deep face A was cut. The tolerances hold all
 * six differences together: of boards that have not moved, one in twenty shows any place beyond its tolerance.
 *
 * @param x         mm along the grain, on face B as it lies
 * @param y         mm across, from the edge that is near then
 * @param height    above the bed (mm)
 * @param tolerance how far the difference may be from that of the other places (mm)
 */
public record FaceBCheck(double x, double y, double height, double tolerance) {

    /** In from the ends and edges, where a cutter is easily set down (mm). */
    private static final double INSET = 20;

    /** Boards that have not moved and yet raise an alarm. */
    private static final double FALSE_ALARMS = 0.05;

    /**
     * Six places: both ends and the middle, along both edges.
     *
     * @param noise standard deviation of one reading (mm)
     * @param seed  of the possible boards
     */
    public static List<FaceBCheck> of(Board board, BoardShape shape, CuttingPlan cuts, double noise, long seed) {
        double insetX = Math.min(INSET, board.length() / 10);
        double insetY = Math.min(INSET, board.width() / 10);
        double[] x = {insetX, board.length() / 2, board.length() - insetX, insetX, board.length() / 2,
            board.length() - insetX};
        double[] y = {insetY, insetY, insetY, board.width() - insetY, board.width() - insetY, board.width() - insetY};
        double[] onA = Arrays.stream(y).map(across -> board.width() - across).toArray();
        ExpectedHeights expected = ExpectedHeights.at(shape, cuts.faceA().plane(), x, onA, noise, seed);
        double[] tolerances = new JointTest(Arrays.stream(expected.errors()).map(FaceBCheck::lessTheirMean)
            .toArray(double[][]::new)).bounds(FALSE_ALARMS);
        List<FaceBCheck> checks = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            checks.add(new FaceBCheck(x[i], y[i], expected.heights()[i], tolerances[i]));
        }
        return checks;
    }

    /** Values less their mean, in the same order. */
    static double[] lessTheirMean(double[] values) {
        double mean = Arrays.stream(values).average().orElse(0);
        return Arrays.stream(values).map(value -> value - mean).toArray();
    }
}
