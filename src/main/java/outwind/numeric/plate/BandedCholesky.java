package outwind.numeric.plate;

import java.util.Arrays;

/**
 * The factor L of a symmetric positive definite matrix that is zero far from its diagonal, A = L·Lᵀ.
 *
 * <p>EJML has no banded factorisation; a dense one costs some fifty times as much on a strip of plate elements.
 *
 * <p>Source: G. H. Golub and C. F. Van Loan, Matrix Computations, section on banded systems.
 */
final class BandedCholesky {

    private final int n;
    private final int band;
    /** Row i of L from column i − band to i, at (i·(band + 1)); what would lie left of column 0 is zero. */
    private final double[] factor;

    private BandedCholesky(int n, int band, double[] factor) {
        this.n = n;
        this.band = band;
        this.factor = factor;
    }

    /**
     * @param lower rows of A from column i − band to the diagonal, n × (band + 1) by rows; overwritten
     * @throws IllegalStateException if A is not positive definite
     */
    static BandedCholesky of(double[] lower, int n, int band) {
        int row = band + 1;
        for (int i = 0; i < n; i++) {
            int rowI = i * row + band - i;
            for (int j = Math.max(0, i - band); j <= i; j++) {
                int rowJ = j * row + band - j;
                double sum = lower[rowI + j];
                for (int k = Math.max(0, i - band); k < j; k++) {
                    sum -= lower[rowI + k] * lower[rowJ + k];
                }
                if (j < i) {
                    lower[rowI + j] = sum / lower[rowJ + j];
                } else if (sum > 0) {
                    lower[rowI + i] = Math.sqrt(sum);
                } else {
                    throw new IllegalStateException("not positive definite: pivot " + i + " of " + n + " is " + sum);
                }
            }
        }
        return new BandedCholesky(n, band, lower);
    }

    /**
     * Solves A·x = e for the unit vector e at {@code first}, as far up as {@code first}: what lies before it is known
     * from symmetry to whoever solves for every unit vector in turn.
     *
     * @param x length n; holds the solution from {@code first} on afterwards, and nothing meaningful before
     */
    void solveUnit(int first, double[] x) {
        int row = band + 1;
        Arrays.fill(x, first, n, 0);
        x[first] = 1;
        for (int i = first; i < n; i++) {
            int rowI = i * row + band - i;
            double sum = x[i];
            for (int k = Math.max(first, i - band); k < i; k++) {
                sum -= factor[rowI + k] * x[k];
            }
            x[i] = sum / factor[rowI + i];
        }
        for (int i = n - 1; i >= first; i--) {
            int rowI = i * row + band - i;
            double value = x[i] / factor[rowI + i];
            x[i] = value;
            for (int k = Math.max(first, i - band); k < i; k++) {
                x[k] -= factor[rowI + k] * value;
            }
        }
    }
}
