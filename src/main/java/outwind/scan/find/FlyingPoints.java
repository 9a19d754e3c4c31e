package outwind.scan.find;

import java.util.Arrays;
import java.util.stream.IntStream;
import outwind.numeric.Median;

/**
 * Points that hang in the air over a face or lie under it: dust, glints, and half-hits at an edge.
 *
 * <pre>
 *   flying if |z − m| > k·1.4826·s for the median m of its own quarter of a cell and of the eight around it,
 *   s = median of the nine median absolute deviations
 * </pre>
 * A true step, as round a knot, has points of its own kind in a quarter beside, and stays. What is smaller than half a
 * quarter cannot be distinguished from dust.
 *
 * <p>Source of the bound by median absolute deviations: F. R. Hampel, Journal of the American Statistical Association
 * 69 (1974) 383–393.
 */
final class FlyingPoints {

    /** Noise alone throws a point so far in one of 500 million. */
    private static final double BOUND = 6;

    /** No scan of rough wood tells heights apart that are closer than this (mm). */
    private static final double RESOLUTION = 0.02;

    /** Fewer points than this have no median to speak of. */
    private static final int FEWEST = 3;

    private final CellPoints all;
    private final double[] median;
    private final double[] deviation;

    private FlyingPoints(CellPoints all) {
        this.all = all;
        this.median = new double[all.grid().quarters()];
        this.deviation = new double[all.grid().quarters()];
    }

    /** The points without those that fly. */
    static CellPoints removedFrom(CellPoints points) {
        FlyingPoints flying = new FlyingPoints(points);
        int cells = points.grid().columns() * points.grid().rows();
        IntStream.range(0, cells).parallel().forEach(flying::learn);
        boolean[] dropped = new boolean[points.size()];
        int count = IntStream.range(0, cells).parallel().map(cell -> flying.drop(cell, dropped)).sum();
        return points.without(dropped, count);
    }

    private void learn(int cell) {
        for (int q = 4 * cell; q < 4 * cell + 4; q++) {
            int from = all.start()[q];
            int to = all.start()[q + 1];
            median[q] = Double.NaN;
            if (to - from >= FEWEST) {
                double[] z = Arrays.copyOfRange(all.points().z(), from, to);
                double middle = Median.of(z, 0, z.length);
                for (int i = 0; i < z.length; i++) {
                    z[i] = Math.abs(z[i] - middle);
                }
                median[q] = middle;
                deviation[q] = Median.of(z, 0, z.length);
            }
        }
    }

    private int drop(int cell, boolean[] dropped) {
        int count = 0;
        double[] medians = new double[9];
        double[] deviations = new double[9];
        for (int q = 4 * cell; q < 4 * cell + 4; q++) {
            int known = around(q, medians, deviations);
            if (known == 0) {
                continue;
            }
            double bound = Math.max(RESOLUTION, BOUND * TrimmedPlane.TO_DEVIATION * Median.of(deviations, 0, known));
            for (int i = all.start()[q]; i < all.start()[q + 1]; i++) {
                dropped[i] = isFar(all.points().z()[i], medians, known, bound);
                count += dropped[i] ? 1 : 0;
            }
        }
        return count;
    }

    /** Medians and deviations of a quarter and those around it; returns how many there are. */
    private int around(int quarter, double[] medians, double[] deviations) {
        int known = 0;
        for (int dj = -1; dj <= 1; dj++) {
            for (int di = -1; di <= 1; di++) {
                int q = all.grid().quarter(all.grid().column(quarter) + di, all.grid().row(quarter) + dj);
                if (q >= 0 && !Double.isNaN(median[q])) {
                    medians[known] = median[q];
                    deviations[known++] = deviation[q];
                }
            }
        }
        return known;
    }

    private static boolean isFar(double z, double[] medians, int known, double bound) {
        for (int m = 0; m < known; m++) {
            if (Math.abs(z - medians[m]) <= bound) {
                return false;
            }
        }
        return true;
    }
}
