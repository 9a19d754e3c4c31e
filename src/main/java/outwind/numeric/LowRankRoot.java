package outwind.numeric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A root of a covariance in as few columns as it needs: C ≈ G·Gᵀ, for drawing from it.
 *
 * <pre>
 *   Cholesky's steps, each taken at the place p of greatest remaining variance d:
 *   g = (C·p − Σ gₖ·gₖ[p]) / √d[p],   d ← d − g²
 * </pre>
 * What remains in d is exactly the variance at each place that the root leaves out, so the steps end when all of it is
 * too small to matter. The fields of bent wood are smooth: half of the columns of the full root do for them, and no
 * more than these columns of C are ever looked at. A covariance without any variance has a root without columns.
 *
 * <p>Where some places are taken first, steps go through these until nothing remains there: the columns after that are
 * what the field may still do elsewhere where it is known at these.
 *
 * <p>Source: H. Harbrecht, M. Peters and R. Schneider, Applied Numerical Mathematics 62 (2012) 428–440.
 */
final class LowRankRoot {

    /** Share by which variances must differ to be distinguished: symmetric places tie, and rounding must not choose. */
    private static final double TIE = 1e-6;

    /** Share of the greatest variance below which a place taken first is known. */
    private static final double KNOWN = 1e-9;

    private final List<double[]> columns = new ArrayList<>();
    /** The greatest variance that was left when each column was found. */
    private final List<Double> left = new ArrayList<>();
    private int known;

    private LowRankRoot() { }

    /** Columns of a covariance matrix. */
    @FunctionalInterface
    interface Columns {

        /** Column {@code j}, a new array of length m. */
        double[] column(int j);
    }

    /**
     * Finds the root.
     *
     * @param variances diagonal of C, length m
     * @param columns   of C, symmetric and, but for rounding, positive semidefinite
     * @param first     places that are taken first, from the beginning; 0 to m − 1
     * @param enough    variance that may be left out at any other place, above zero
     */
    static LowRankRoot of(double[] variances, Columns columns, int first, double enough) {
        double[] remaining = variances.clone();
        LowRankRoot root = new LowRankRoot();
        if (first > 0) {
            root.extend(remaining, columns, 0, first, KNOWN * variances[greatest(variances, 0, first)]);
        }
        root.known = root.rank();
        root.extend(remaining, columns, first, remaining.length, enough);
        return root;
    }

    /** Takes steps at some places until no more than enough variance remains at any of them. */
    private void extend(double[] remaining, Columns covariances, int from, int to, double enough) {
        while (true) {
            int pivot = greatest(remaining, from, to);
            if (remaining[pivot] <= enough) {
                return;
            }
            double[] column = covariances.column(pivot);
            Vectors.subtract(columns.stream().mapToDouble(earlier -> earlier[pivot]).toArray(),
                columns.toArray(double[][]::new), column);
            double scale = 1 / Math.sqrt(remaining[pivot]);
            left.add(remaining[pivot]);
            for (int i = 0; i < column.length; i++) {
                column[i] *= scale;
                remaining[i] -= column[i] * column[i];
            }
            // Rounding must not choose a place twice.
            remaining[pivot] = 0;
            columns.add(column);
        }
    }

    /** The first place whose variance is the greatest, or so near it that rounding might decide between them. */
    private static int greatest(double[] variances, int from, int to) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            most = Math.max(most, variances[i]);
        }
        int first = from;
        while (variances[first] < most - TIE * Math.abs(most)) {
            first++;
        }
        return first;
    }

    /** Columns r of the root. */
    int rank() {
        return columns.size();
    }

    /** How many of the columns, from the beginning, make the places taken first what they are. */
    int known() {
        return known;
    }

    /** The greatest variance that was left when column {@code k} was found. */
    double left(int k) {
        return left.get(k);
    }

    /** Column {@code k} at some places in a row. */
    double[] column(int k, int from, int to) {
        return Arrays.copyOfRange(columns.get(k), from, to);
    }
}
