package outwind.report.drawing;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;

/**
 * A smooth quantity all over the board, known at the crossings of a grid and carried between them by cubics that pass
 * through every one (Catmull–Rom splines, along and across).
 *
 * @param columns crossings along the grain, ends included, at least 2
 * @param rows    crossings across, edges included, at least 2
 * @param values  row by row from the near edge, length columns × rows
 */
public record SmoothGrid(int columns, int rows, double[] values) {

    /** Samples a quantity of x and y over a board of this size (mm). */
    public static SmoothGrid of(int columns, int rows, double length, double width, DoubleBinaryOperator quantity) {
        double[] values = new double[columns * rows];
        for (int k = 0; k < values.length; k++) {
            values[k] = quantity.applyAsDouble(length * (k % columns) / (columns - 1),
                width * (k / columns) / (rows - 1));
        }
        return new SmoothGrid(columns, rows, values);
    }

    public double least() {
        return Arrays.stream(values).min().orElseThrow();
    }

    public double most() {
        return Arrays.stream(values).max().orElseThrow();
    }

    /** The quantity at the middle of every pixel of a picture, row by row from the far edge. */
    public double[] enlarged(int width, int height) {
        double[] wide = new double[rows * width];
        for (int i = 0; i < width; i++) {
            double place = (i + 0.5) / width * (columns - 1);
            for (int j = 0; j < rows; j++) {
                wide[j * width + i] = along(values, j * columns, 1, columns, place);
            }
        }
        double[] all = new double[height * width];
        for (int j = 0; j < height; j++) {
            double place = (1 - (j + 0.5) / height) * (rows - 1);
            for (int i = 0; i < width; i++) {
                all[j * width + i] = along(wide, i, width, rows, place);
            }
        }
        return all;
    }

    /**
     * The spline through {@code count} values, {@code step} apart in the array from {@code first} on, at a place from
     * 0 to {@code count - 1}. Beyond its ends it is taken to run straight on.
     */
    private static double along(double[] array, int first, int step, int count, double place) {
        int below = (int) Math.min(count - 2, place);
        double t = place - below;
        double b = array[first + below * step];
        double c = array[first + (below + 1) * step];
        double a = below > 0 ? array[first + (below - 1) * step] : 2 * b - c;
        double d = below + 2 < count ? array[first + (below + 2) * step] : 2 * c - b;
        return b + t / 2 * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
    }
}
