package outwind.numeric;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.qr.QRDecompositionHouseholderColumn_DDRM;

/**
 * Coefficients b that bring X·b nearest to the observations, in the sense of least squares.
 *
 * <pre>
 *   minimise ‖y − X·b‖²,   X = Q·R,   R·b = Qᵀy,   (XᵀX)⁻¹ = R⁻¹R⁻ᵀ
 * </pre>
 * Columns are scaled to about unit length first, then factored by Householder reflections (EJML): backward stable, so
 * digits are lost with the condition number of X and not with its square. One step of refinement follows, with the
 * residual accumulated in twice the working precision.
 *
 * <p>Source: Å. Björck, Numerical Methods for Least Squares Problems, SIAM 1996, sections 2.4 and 2.9.
 */
public final class LeastSquares {

    /**
     * Least sine of the angle between a column and the span of those before it. Columns here are at worst powers of
     * one coordinate; below this the factor R holds rounding and nothing else.
     */
    private static final double LEAST_ANGLE = 1e-13;

    private LeastSquares() { }

    /**
     * Fits the model.
     *
     * @param design       X, n rows × p columns, n ≥ p ≥ 1; not modified
     * @param observations y, length n; not modified
     * @return the fit
     * @throws IllegalArgumentException if sizes disagree, or a column depends linearly on those before it
     */
    public static LinearFit fit(double[][] design, double[] observations) {
        int n = design.length;
        int p = n == 0 ? 0 : design[0].length;
        if (p == 0 || n < p || observations.length != n) {
            throw new IllegalArgumentException("least squares needs at least as many rows as columns, got " + n
                + " rows, " + p + " columns, " + observations.length + " observations");
        }
        double[] norms = columnNorms(design);
        QRDecompositionHouseholderColumn_DDRM qr = factor(design, norms);
        DMatrixRMaj r = qr.getR(null, true);
        requireIndependent(r);
        double[] coefficients = solve(qr, r, observations, norms);
        double[] correction = solve(qr, r, residuals(design, observations, coefficients), norms);
        for (int j = 0; j < p; j++) {
            coefficients[j] += correction[j];
        }
        double[] residuals = residuals(design, observations, coefficients);
        return new LinearFit(coefficients, inverseOfNormalMatrix(r, norms), residuals, n,
            sumOfSquares(residuals, 0), sumOfSquares(observations, holdsConstant(design) ? mean(observations) : 0));
    }

    /**
     * Which columns the rows can tell from those before them, in order.
     *
     * @param design     n rows × p columns; columns of like size
     * @param leastAngle least distance from the span of the earlier independent columns that counts as apart, as a
     *                   share of the longest column's length: the sine of the angle for a column as long as that
     * @return p flags; a column of zeros, or one that is next to nothing beside the others, is never independent
     */
    public static boolean[] independentColumns(double[][] design, double leastAngle) {
        int n = design.length;
        int p = n == 0 ? 0 : design[0].length;
        double[][] basis = new double[p][];
        boolean[] independent = new boolean[p];
        double longest = 0;
        for (int j = 0; j < p; j++) {
            longest = Math.max(longest, Math.sqrt(sumOfSquares(column(design, j), 0)));
        }
        for (int j = 0; j < p; j++) {
            double[] column = column(design, j);
            // Gram–Schmidt done twice leaves nothing but rounding of a dependent column (Björck, section 2.4.5).
            subtractProjections(column, basis, j);
            subtractProjections(column, basis, j);
            double after = Math.sqrt(sumOfSquares(column, 0));
            independent[j] = after > leastAngle * longest;
            if (independent[j]) {
                for (int i = 0; i < n; i++) {
                    column[i] /= after;
                }
                basis[j] = column;
            }
        }
        return independent;
    }

    private static void subtractProjections(double[] column, double[][] basis, int count) {
        for (int k = 0; k < count; k++) {
            if (basis[k] != null) {
                double dot = 0;
                for (int i = 0; i < column.length; i++) {
                    dot += basis[k][i] * column[i];
                }
                for (int i = 0; i < column.length; i++) {
                    column[i] -= dot * basis[k][i];
                }
            }
        }
    }

    private static QRDecompositionHouseholderColumn_DDRM factor(double[][] design, double[] norms) {
        DMatrixRMaj scaled = new DMatrixRMaj(design.length, norms.length);
        for (int i = 0; i < design.length; i++) {
            for (int j = 0; j < norms.length; j++) {
                scaled.set(i, j, design[i][j] / norms[j]);
            }
        }
        QRDecompositionHouseholderColumn_DDRM qr = new QRDecompositionHouseholderColumn_DDRM();
        qr.decompose(scaled);
        return qr;
    }

    private static void requireIndependent(DMatrixRMaj r) {
        for (int j = 0; j < r.numCols; j++) {
            if (!(Math.abs(r.get(j, j)) > LEAST_ANGLE)) {
                throw new IllegalArgumentException("column " + (j + 1) + " of " + r.numCols
                    + " depends linearly on those before it");
            }
        }
    }

    private static double[] solve(QRDecompositionHouseholderColumn_DDRM qr, DMatrixRMaj r, double[] y,
                                  double[] norms) {
        double[] b = y.clone();
        double[][] reflectors = qr.getQR();
        double[] gammas = qr.getGammas();
        int n = b.length;
        int p = norms.length;
        for (int k = 0; k < p; k++) {
            double[] u = reflectors[k];
            double dot = b[k];
            for (int i = k + 1; i < n; i++) {
                dot += u[i] * b[i];
            }
            dot *= gammas[k];
            b[k] -= dot;
            for (int i = k + 1; i < n; i++) {
                b[i] -= dot * u[i];
            }
        }
        double[] x = new double[p];
        for (int i = p - 1; i >= 0; i--) {
            double sum = b[i];
            for (int j = i + 1; j < p; j++) {
                sum -= r.get(i, j) * x[j];
            }
            x[i] = sum / r.get(i, i);
        }
        for (int j = 0; j < p; j++) {
            x[j] /= norms[j];
        }
        return x;
    }

    /** y − X·b, each dot product carried in twice the working precision (Ogita, Rump, Oishi 2005, Dot2). */
    private static double[] residuals(double[][] design, double[] observations, double[] coefficients) {
        double[] residuals = new double[observations.length];
        for (int i = 0; i < residuals.length; i++) {
            double sum = observations[i];
            double lost = 0;
            for (int j = 0; j < coefficients.length; j++) {
                double product = -design[i][j] * coefficients[j];
                double productError = Math.fma(-design[i][j], coefficients[j], -product);
                double next = sum + product;
                double part = next - sum;
                lost += (sum - (next - part)) + (product - part) + productError;
                sum = next;
            }
            residuals[i] = sum + lost;
        }
        return residuals;
    }

    private static double[][] inverseOfNormalMatrix(DMatrixRMaj r, double[] norms) {
        int p = norms.length;
        DMatrixRMaj inverse = new DMatrixRMaj(p, p);
        CommonOps_DDRM.invert(r, inverse);
        DMatrixRMaj product = new DMatrixRMaj(p, p);
        CommonOps_DDRM.multTransB(inverse, inverse, product);
        double[][] result = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                result[i][j] = product.get(i, j) / (norms[i] * norms[j]);
            }
        }
        return result;
    }

    private static boolean holdsConstant(double[][] design) {
        for (int j = 0; j < design[0].length; j++) {
            double first = design[0][j];
            boolean constant = first != 0;
            for (int i = 1; i < design.length && constant; i++) {
                // Exact: a constant column is written as one and the same number.
                constant = design[i][j] == first;
            }
            if (constant) {
                return true;
            }
        }
        return false;
    }

    private static double[] columnNorms(double[][] design) {
        double[] norms = new double[design[0].length];
        for (int j = 0; j < norms.length; j++) {
            // A power of two, so that scaling rounds nothing; above zero even for a column of zeros, which so stays
            // one.
            norms[j] = Math.scalb(1.0, Math.getExponent(Math.sqrt(sumOfSquares(column(design, j), 0))));
        }
        return norms;
    }

    private static double[] column(double[][] design, int j) {
        double[] column = new double[design.length];
        for (int i = 0; i < column.length; i++) {
            column[i] = design[i][j];
        }
        return column;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static double sumOfSquares(double[] values, double about) {
        double sum = 0;
        for (double value : values) {
            sum += (value - about) * (value - about);
        }
        return sum;
    }
}
