package outwind.setup;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import outwind.numeric.plane.Plane;
import outwind.surface.SampledBoard;

/**
 * The undersides that the readings leave possible, and how far each would stand off a bed.
 *
 * <pre>
 *   gap of board d at (x, y) = its underside at (x, y) − its lowest spot, both above a plane parallel to the bed
 * </pre>
 * The lowest spot of each possible board sets its own bed, and the lowest of many is lower than the lowest of their
 * mean. A gap taken off the most likely board is therefore too small; {@link Gaps#lift} is by how much.
 *
 * <p>Between the lines of the grid that the boards were drawn on, heights are interpolated linearly both ways.
 *
 * @param x       lines along the grain (mm), ascending
 * @param y       lines across (mm), ascending
 * @param heights of each board at line i along and j across (mm), at j·(lines along) + i
 */
record PossibleUndersides(double[] x, double[] y, double[][] heights) {

    /** @param boards drawn at the places of one grid over the whole board, as {@code Places.grid} lays it */
    static PossibleUndersides of(List<SampledBoard> boards) {
        double[] x = Arrays.stream(boards.get(0).x()).distinct().toArray();
        double[] y = Arrays.stream(boards.get(0).y()).distinct().toArray();
        return new PossibleUndersides(x, y, boards.stream().map(SampledBoard::underside).toArray(double[][]::new));
    }

    /** The gaps over a bed with given slopes. */
    Gaps over(Plane slopes) {
        double[] mean = new double[x.length * y.length];
        for (double[] board : heights) {
            for (int k = 0; k < mean.length; k++) {
                mean[k] += board[k] / heights.length;
            }
        }
        double[] lowest = Arrays.stream(heights).mapToDouble(board -> lowest(board, slopes)).toArray();
        double lowestOfMean = lowest(mean, slopes);
        double[] lifts = Arrays.stream(lowest).map(low -> lowestOfMean - low).sorted().toArray();
        return new Gaps(slopes, lowest, Math.max(0, lifts[lifts.length / 2]));
    }

    private double lowest(double[] board, Plane slopes) {
        return IntStream.range(0, board.length)
            .mapToDouble(k -> board[k] - slopes.at(x[k % x.length], y[k / x.length])).min().orElseThrow();
    }

    /** Over one bed. */
    final class Gaps {

        private final Plane slopes;
        private final double[] lowest;
        private final double lift;

        private Gaps(Plane slopes, double[] lowest, double lift) {
            this.slopes = slopes;
            this.lowest = lowest;
            this.lift = lift;
        }

        /** How much further off the bed half of the possible boards stand than the most likely one (mm). */
        double lift() {
            return lift;
        }

        /** Under a place, of each possible board (mm). */
        double[] at(double atX, double atY) {
            int i = cell(x, atX);
            int j = cell(y, atY);
            double u = (atX - x[i]) / (x[i + 1] - x[i]);
            double v = (atY - y[j]) / (y[j + 1] - y[j]);
            double plane = slopes.at(atX, atY);
            int near = j * x.length + i;
            int far = near + x.length;
            double[] gaps = new double[heights.length];
            for (int d = 0; d < gaps.length; d++) {
                double[] board = heights[d];
                gaps[d] = (1 - v) * ((1 - u) * board[near] + u * board[near + 1])
                    + v * ((1 - u) * board[far] + u * board[far + 1]) - plane - lowest[d];
            }
            return gaps;
        }

        /** Share of the possible boards that are no further off the bed at a place than a height (mm), 0 to 1. */
        double shareWithin(double height, double atX, double atY) {
            return Arrays.stream(at(atX, atY)).filter(gap -> gap <= height).count() / (double) heights.length;
        }
    }

    /** The line before a place, never the last one. */
    private static int cell(double[] lines, double at) {
        int i = 0;
        while (i < lines.length - 2 && lines[i + 1] <= at) {
            i++;
        }
        return i;
    }
}
