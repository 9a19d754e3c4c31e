package outwind.numeric;

import java.util.ArrayList;
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
 * <p>Source: H. Harbrecht, M. Peters and R. Schneider, Applied Numerical Mathematics 62 (2012) 428–440.
 */
public final class LowRankRoot {

    /** Share by which variances must differ to be distinguished: symmetric places tie, and rounding must not choose. */
    private static final double TIE = 1e-6;

    private final List<double[]> columns;

    private LowRankRoot(List<double[]> columns) {
        this.columns = columns;
    }

    /** Columns of a covariance matrix. */
    @FunctionalInterface
    public interface Columns {

        /** Column {@code j}, a new array of length m. */
        double[] column(int j);
    }

    /**
     * Finds the root.
     *
     * @param variances diagonal of C, length m
     * @param columns   of C, symmetric and, but for rounding, positive semidefinite
     * @param share     of the greatest variance that may be left out at any place, above zero
     */
    public static LowRankRoot of(double[] variances, Columns columns, double share) {
        double[] remaining = variances.clone();
        double enough = share * remaining[greatest(remaining)];
        List<double[]> root = new ArrayList<>();
        for (int pivot = greatest(remaining); remaining[pivot] > enough; pivot = greatest(remaining)) {
            double[] column = columns.column(pivot);
            for (double[] earlier : root) {
                subtract(earlier[pivot], earlier, column);
            }
            double scale = 1 / Math.sqrt(remaining[pivot]);
            for (int i = 0; i < column.length; i++) {
                column[i] *= scale;
                remaining[i] -= column[i] * column[i];
            }
            // Rounding must not choose a place twice.
            remaining[pivot] = 0;
            root.add(column);
        }
        return new LowRankRoot(root);
    }

    /** The first place whose variance is the greatest, or so near it that rounding might decide between them. */
    private static int greatest(double[] variances) {
        double most = Double.NEGATIVE_INFINITY;
        for (double variance : variances) {
            most = Math.max(most, variance);
        }
        int first = 0;
        while (variances[first] < most - TIE * Math.abs(most)) {
            first++;
        }
        return first;
    }

    private static void subtract(double factor, double[] of, double[] from) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= factor * of[i];
        }
    }

    /** Columns r of the root. */
    public int rank() {
        return columns.size();
    }

    /**
     * Adds G·w to a vector.
     *
     * @param white w, length r: independent with variance one for a draw from the covariance
     * @param onto  length m; changed
     */
    public void addTimes(double[] white, double[] onto) {
        for (int k = 0; k < white.length; k++) {
            subtract(-white[k], columns.get(k), onto);
        }
    }
}
