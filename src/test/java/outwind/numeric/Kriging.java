package outwind.numeric;

import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM;

/**
 * Universal kriging: a trend whose coefficients are unknown, a random field about it, and noise in each observation.
 *
 * <pre>
 *   z = F·β + r + ε,   K = C + diag(noise variance),   A = Fᵀ K⁻¹ F
 *   β̂ = A⁻¹ Fᵀ K⁻¹ z,   α = K⁻¹ (z − F·β̂)
 *   mean       F₀·β̂ + C₀ᵀ·α
 *   covariance C₀₀ − C₀ᵀ K⁻¹ C₀ + Q A⁻¹ Qᵀ,   Q = F₀ − C₀ᵀ K⁻¹ F
 *   restricted log likelihood −½ ((n − p)·log 2π + log|K| + log|A| + (z − F·β̂)ᵀ α)
 *   P = K⁻¹ − K⁻¹F A⁻¹ FᵀK⁻¹:   leaving out i, its residual is (P·z)ᵢ/Pᵢᵢ and the variance of that 1/Pᵢᵢ
 * </pre>
 * The mean and covariance are of F·β + r, the field without noise; what the trend is unsure of is in them.
 *
 * <p>Source: N. Cressie, Statistics for Spatial Data, Wiley 1993, section 3.4; restricted likelihood: D. A. Harville,
 * Biometrika 61 (1974) 383–385, without the term in |FᵀF|; leaving out: O. Dubrule, Mathematical Geology 15 (1983)
 * 687–699.
 */
public final class Kriging {

    private final Covariance covariance;
    private final double[] x;
    private final double[] y;
    /** L of K = L·Lᵀ. */
    private final DMatrixRMaj lower;
    /** L⁻¹·F. */
    private final DMatrixRMaj whitened;
    /** L of A = L·Lᵀ. */
    private final DMatrixRMaj trendLower;
    private final double[] coefficients;
    private final double[] weights;
    private final double restrictedLogLikelihood;

    private Kriging(Covariance covariance, double[] x, double[] y, DMatrixRMaj trend, double[] z, DMatrixRMaj lower) {
        this.covariance = covariance;
        this.x = x;
        this.y = y;
        this.lower = lower;
        int n = x.length;
        int p = trend.numCols;
        this.whitened = trend.copy();
        TriangularSolver_DDRM.solveL(lower.data, whitened.data, n, p);
        DMatrixRMaj normal = new DMatrixRMaj(p, p);
        CommonOps_DDRM.multInner(whitened, normal);
        this.trendLower = cholesky(normal);

        double[] whiteZ = z.clone();
        TriangularSolver_DDRM.solveL(lower.data, whiteZ, n);
        this.coefficients = new double[p];
        for (int j = 0; j < p; j++) {
            for (int i = 0; i < n; i++) {
                coefficients[j] += whitened.get(i, j) * whiteZ[i];
            }
        }
        TriangularSolver_DDRM.solveL(trendLower.data, coefficients, p);
        TriangularSolver_DDRM.solveTranL(trendLower.data, coefficients, p);

        this.weights = new double[n];
        double quadratic = 0;
        for (int i = 0; i < n; i++) {
            weights[i] = whiteZ[i];
            for (int j = 0; j < p; j++) {
                weights[i] -= whitened.get(i, j) * coefficients[j];
            }
            quadratic += weights[i] * weights[i];
        }
        TriangularSolver_DDRM.solveTranL(lower.data, weights, n);
        this.restrictedLogLikelihood = -0.5 * ((n - p) * Math.log(2 * Math.PI) + logDeterminant(lower)
            + logDeterminant(trendLower) + quadratic);
    }

    /**
     * Conditions the model on observations.
     *
     * @param covariance    of the field about the trend
     * @param x             places, length n; kept, must not change
     * @param y             places, length n; kept
     * @param trend         F, n rows × p columns of full rank, p ≤ n; columns of like size
     * @param z             observations, length n
     * @param noiseVariance of each observation, length n, not below zero
     * @throws IllegalArgumentException if K or A is not positive definite to working precision
     */
    public static Kriging of(Covariance covariance, double[] x, double[] y, double[][] trend, double[] z,
                             double[] noiseVariance) {
        int n = x.length;
        DMatrixRMaj k = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double value = covariance.between(x[i], y[i], x[j], y[j]);
                k.set(i, j, value);
                k.set(j, i, value);
            }
            k.add(i, i, noiseVariance[i]);
        }
        return new Kriging(covariance, x, y, new DMatrixRMaj(trend), z, cholesky(k));
    }

    private static DMatrixRMaj cholesky(DMatrixRMaj matrix) {
        CholeskyDecompositionInner_DDRM decomposition = new CholeskyDecompositionInner_DDRM(true);
        if (!decomposition.decompose(matrix)) {
            throw new IllegalArgumentException("covariance is not positive definite: two places too near without noise,"
                + " or a trend that the places cannot tell");
        }
        return decomposition.getT(null);
    }

    private static double logDeterminant(DMatrixRMaj lower) {
        double sum = 0;
        for (int i = 0; i < lower.numRows; i++) {
            sum += Math.log(lower.get(i, i));
        }
        return 2 * sum;
    }

    /** Coefficients β̂ of the trend, length p. */
    public double[] coefficients() {
        return coefficients.clone();
    }

    /** Logarithm of the restricted likelihood of the observations under this covariance and noise. */
    public double restrictedLogLikelihood() {
        return restrictedLogLikelihood;
    }

    /**
     * Mean of the field at one place.
     *
     * @param trendAt the trend's terms there, length p
     */
    public double mean(double atX, double atY, double[] trendAt) {
        double sum = 0;
        for (int j = 0; j < coefficients.length; j++) {
            sum += trendAt[j] * coefficients[j];
        }
        for (int i = 0; i < x.length; i++) {
            sum += weights[i] * covariance.between(x[i], y[i], atX, atY);
        }
        return sum;
    }

    /** Variance of the field at one place, the noise of a further observation not in it; never negative. */
    public double variance(double atX, double atY, double[] trendAt) {
        return Math.max(0, at(new double[] {atX}, new double[] {atY}, new double[][] {trendAt}).variances()[0]);
    }

    /**
     * The field at m places together.
     *
     * @param atX     places, length m
     * @param atY     places, length m
     * @param trendAt the trend's terms at each, m × p
     */
    public Places at(double[] atX, double[] atY, double[][] trendAt) {
        int n = x.length;
        int m = atX.length;
        int p = coefficients.length;
        DMatrixRMaj cross = new DMatrixRMaj(n, m);
        double[] means = new double[m];
        for (int j = 0; j < m; j++) {
            for (int k = 0; k < p; k++) {
                means[j] += trendAt[j][k] * coefficients[k];
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < m; j++) {
                double value = covariance.between(x[i], y[i], atX[j], atY[j]);
                cross.data[i * m + j] = value;
                means[j] += weights[i] * value;
            }
        }
        TriangularSolver_DDRM.solveL(lower.data, cross.data, n, m);
        // Qᵀ = F₀ᵀ − (L⁻¹F)ᵀ(L⁻¹C₀), then whitened by A's own factor.
        DMatrixRMaj q = new DMatrixRMaj(p, m);
        CommonOps_DDRM.multTransA(-1, whitened, cross, q);
        for (int j = 0; j < p; j++) {
            for (int k = 0; k < m; k++) {
                q.add(j, k, trendAt[k][j]);
            }
        }
        TriangularSolver_DDRM.solveL(trendLower.data, q.data, p, m);
        double[][] covariances = new double[m][m];
        for (int i = 0; i < m; i++) {
            for (int j = 0; j < m; j++) {
                covariances[i][j] = covariance.between(atX[i], atY[i], atX[j], atY[j]);
                for (int k = 0; k < n; k++) {
                    covariances[i][j] -= cross.data[k * m + i] * cross.data[k * m + j];
                }
                for (int k = 0; k < p; k++) {
                    covariances[i][j] += q.data[k * m + i] * q.data[k * m + j];
                }
            }
        }
        return new Places(means, covariances);
    }

    /** The field at several places: means, and covariances of each with each. */
    public record Places(double[] means, double[][] covariances) {

        double[] variances() {
            return IntStream.range(0, means.length).mapToDouble(i -> covariances[i][i]).toArray();
        }
    }

    /**
     * What each observation differs by from what all others predict, and the variance of that difference, noise
     * included.
     */
    public LeftOut leavingOut() {
        int n = x.length;
        int p = coefficients.length;
        DMatrixRMaj inverse = CommonOps_DDRM.identity(n);
        TriangularSolver_DDRM.solveL(lower.data, inverse.data, n, n);
        DMatrixRMaj projection = new DMatrixRMaj(n, n);
        CommonOps_DDRM.multInner(inverse, projection);
        // L⁻ᵀ·(L⁻¹F) = K⁻¹F, then whitened by A's factor: its outer product is what the trend takes up.
        DMatrixRMaj taken = new DMatrixRMaj(p, n);
        CommonOps_DDRM.multTransA(whitened, inverse, taken);
        TriangularSolver_DDRM.solveL(trendLower.data, taken.data, p, n);
        DMatrixRMaj outer = new DMatrixRMaj(n, n);
        CommonOps_DDRM.multInner(taken, outer);
        double[] residuals = new double[n];
        double[] variances = new double[n];
        for (int i = 0; i < n; i++) {
            double diagonal = projection.get(i, i) - outer.get(i, i);
            // Where the trend leans on one observation alone, nothing predicts it.
            variances[i] = diagonal > 1e-12 * projection.get(i, i) ? 1 / diagonal : Double.POSITIVE_INFINITY;
            residuals[i] = Double.isInfinite(variances[i]) ? 0 : weights[i] / diagonal;
        }
        return new LeftOut(residuals, variances);
    }

    /**
     * Differences found by leaving out one observation at a time.
     *
     * @param residuals observed minus predicted, length n
     * @param variances of the residuals, length n; infinite where nothing predicts the observation
     */
    public record LeftOut(double[] residuals, double[] variances) { }
}
