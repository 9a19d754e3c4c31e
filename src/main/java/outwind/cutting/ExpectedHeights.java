package outwind.cutting;

import java.util.List;
import java.util.SplittableRandom;
import outwind.numeric.plane.Plane;
import outwind.surface.BoardShape;
import outwind.surface.Places;
import outwind.surface.SampledBoard;

/**
 * Heights that face B should read once face A is cut and the board lies on it, and how far they may stray together if
 * nothing moved.
 *
 * <pre>
 *   height at a place of face B = plane of face A − underside there
 *   error in possible board d   = mean underside over all possible boards − underside of d + noise of one reading
 * </pre>
 * Neighbouring errors go together, so whole boards are drawn instead of one place at a time.
 *
 * @param heights above the bed at each place (mm), length n
 * @param errors  of each possible board at each place (mm), {@value #DRAWS} rows of n
 */
record ExpectedHeights(double[] heights, double[][] errors) {

    /** Bounds the standard error of a 5 % level by 0.7 %, and of a 1.5 % level by 0.4 %. */
    static final int DRAWS = 1000;

    /**
     * @param shape the board before face A was cut
     * @param faceA plane that face A is cut to
     * @param x     places along the grain, as on face A (mm), length n
     * @param y     places across, as on face A (mm), length n
     * @param noise standard deviation of one reading (mm)
     */
    static ExpectedHeights at(BoardShape shape, Plane faceA, double[] x, double[] y, double noise, long seed) {
        int n = x.length;
        double[] heights = new double[n];
        for (int i = 0; i < n; i++) {
            heights[i] = faceA.at(x[i], y[i]) - shape.undersideAt(x[i], y[i]);
        }
        List<SampledBoard> boards = shape.draws(new Places(x, y, new double[n], 0, 0), DRAWS, seed);
        double[] mean = new double[n];
        for (SampledBoard board : boards) {
            for (int i = 0; i < n; i++) {
                mean[i] += board.underside()[i] / boards.size();
            }
        }
        int[] order = shape.seen().order(x, y);
        SplittableRandom random = new SplittableRandom(~seed);
        double[][] errors = new double[boards.size()][n];
        for (int d = 0; d < errors.length; d++) {
            for (int i : order) {
                errors[d][i] = mean[i] - boards.get(d).underside()[i] + noise * random.nextGaussian();
            }
        }
        return new ExpectedHeights(heights, errors);
    }
}
