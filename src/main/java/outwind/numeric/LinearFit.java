package outwind.numeric;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A linear model fitted by least squares, with the evidence for it.
 *
 * @param coefficients       one per column of the design, length p
 * @param unscaledCovariance (XᵀX)⁻¹, p × p; times the residual variance it is the covariance of the coefficients
 * @param residuals          observed minus fitted, length n; or none, where there were too many to keep
 * @param observations       n
 * @param residualSumOfSquares sum of the squared residuals
 * @param totalSumOfSquares  sum of squares about the mean where the model holds a constant, else about zero
 */
public record LinearFit(double[] coefficients, double[][] unscaledCovariance, double[] residuals,
                        int observations, double residualSumOfSquares, double totalSumOfSquares) {

    /** Observations beyond those the coefficients use up: n − p. */
    public int degreesOfFreedom() {
        return observations - coefficients.length;
    }

    /** √(residual sum of squares / degrees of freedom); empty where every observation was used up by the fit. */
    public OptionalDouble residualStandardDeviation() {
        return degreesOfFreedom() == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of(Math.sqrt(residualSumOfSquares / degreesOfFreedom()));
    }

    /** Share of the total sum of squares that the model explains, 0 to 1; 1 where there is nothing to explain. */
    public double rSquared() {
        return totalSumOfSquares == 0 ? 1 : 1 - residualSumOfSquares / totalSumOfSquares;
    }

    /** Standard errors of the coefficients, length p; empty where no degree of freedom is left. */
    public Optional<double[]> standardErrors() {
        if (residualStandardDeviation().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(standardErrors(residualStandardDeviation().getAsDouble()));
    }

    /** Standard errors of the coefficients if one observation has the standard deviation {@code sigma}. */
    public double[] standardErrors(double sigma) {
        double[] errors = new double[coefficients.length];
        for (int j = 0; j < errors.length; j++) {
            errors[j] = sigma * Math.sqrt(unscaledCovariance[j][j]);
        }
        return errors;
    }

    /**
     * The same fit in other coordinates.
     *
     * @param change new coefficients = change · old coefficients, p × p
     */
    public LinearFit inTermsOf(double[][] change) {
        int p = coefficients.length;
        double[] moved = new double[p];
        double[][] half = new double[p][p];
        double[][] covariance = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int k = 0; k < p; k++) {
                moved[i] += change[i][k] * coefficients[k];
                for (int j = 0; j < p; j++) {
                    half[i][j] += change[i][k] * unscaledCovariance[k][j];
                }
            }
        }
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    covariance[i][j] += half[i][k] * change[j][k];
                }
            }
        }
        return new LinearFit(moved, covariance, residuals, observations, residualSumOfSquares, totalSumOfSquares);
    }
}
