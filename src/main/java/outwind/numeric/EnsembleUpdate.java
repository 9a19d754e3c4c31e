package outwind.numeric;

import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Draws of a Gaussian field, conditioned on readings that came later.
 *
 * <pre>
 *   xᵈ ← xᵈ + C_xy·(C_yy + σ²·I)⁻¹·(reading − yᵈ − σ·εᵈ)
 * </pre>
 * x are the draws at places of interest and y the same draws at the places of the readings; C are their sample
 * covariances. Draws that honour the old readings come out honouring old and new ones. Source: the conditioning of
 * random draws by kriging (Matheron), as used by the ensemble Kalman filter with perturbed readings (G. Evensen, Data
 * Assimilation, 2nd ed. 2009, chapter 4; from memory).
 */
public final class EnsembleUpdate {

    private EnsembleUpdate() { }

    /**
     * @param at       draws at places of interest, D rows of m; not modified
     * @param before   the same draws at the places of the readings, D rows of n, D well above n; not modified
     * @param readings length n
     * @param noise    standard deviation of one reading, positive
     * @param seed     of the perturbations; the same seed gives the same answer
     * @return D rows of m
     * @throws IllegalArgumentException if the noise is not positive
     */
    public static double[][] of(double[][] at, double[][] before, double[] readings, double noise, long seed) {
        if (!(noise > 0)) {
            throw new IllegalArgumentException("noise must be positive, got " + noise);
        }
        int draws = before.length;
        int n = readings.length;
        double[] meanY = means(before, n);
        DMatrixRMaj covariance = new DMatrixRMaj(n, n);
        for (double[] draw : before) {
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    covariance.add(i, j, (draw[i] - meanY[i]) * (draw[j] - meanY[j]) / (draws - 1));
                }
            }
        }
        for (int i = 0; i < n; i++) {
            covariance.add(i, i, noise * noise);
        }
        SplittableRandom random = new SplittableRandom(seed);
        DMatrixRMaj innovation = new DMatrixRMaj(n, draws);
        for (int d = 0; d < draws; d++) {
            for (int i = 0; i < n; i++) {
                innovation.set(i, d, readings[i] - before[d][i] - noise * random.nextGaussian());
            }
        }
        DMatrixRMaj weights = new DMatrixRMaj(n, draws);
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(n);
        if (!solver.setA(covariance)) {
            throw new IllegalArgumentException("the readings' covariance is not positive definite");
        }
        solver.solve(innovation, weights);
        return moved(at, before, meanY, weights);
    }

    private static double[][] moved(double[][] at, double[][] before, double[] meanY, DMatrixRMaj weights) {
        int draws = at.length;
        int m = at[0].length;
        int n = meanY.length;
        double[] meanX = means(at, m);
        double[][] cross = new double[m][n];
        for (int d = 0; d < draws; d++) {
            for (int k = 0; k < m; k++) {
                double off = (at[d][k] - meanX[k]) / (draws - 1);
                for (int i = 0; i < n; i++) {
                    cross[k][i] += off * (before[d][i] - meanY[i]);
                }
            }
        }
        double[][] moved = new double[draws][m];
        for (int d = 0; d < draws; d++) {
            for (int k = 0; k < m; k++) {
                double sum = at[d][k];
                for (int i = 0; i < n; i++) {
                    sum += cross[k][i] * weights.get(i, d);
                }
                moved[d][k] = sum;
            }
        }
        return moved;
    }

    private static double[] means(double[][] draws, int length) {
        double[] means = new double[length];
        for (double[] draw : draws) {
            for (int i = 0; i < length; i++) {
                means[i] += draw[i] / draws.length;
            }
        }
        return means;
    }
}
