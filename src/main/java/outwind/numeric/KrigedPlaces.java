package outwind.numeric;

import org.ejml.data.DMatrixRMaj;

/**
 * A conditioned field at several places; see {@link TurnedObservations}.
 *
 * <pre>
 *   covariance(i, j) = C(i, j) − uᵢ·uⱼ + qᵢ·qⱼ
 *   u = K^−½·C₀ column by column,   q = (B₀ − C₀ᵀ K⁻¹ B)ᵀ whitened by the factor of A = BᵀK⁻¹B + precisions
 * </pre>
 *
 * <p>Source: N. Cressie, Statistics for Spatial Data, Wiley 1993, section 3.4.
 */
public final class KrigedPlaces {

    private final Covariance covariance;
    private final double[] x;
    private final double[] y;
    private final double[] means;
    /** u and q, a row for each place. */
    private final DMatrixRMaj explained;
    private final DMatrixRMaj unsure;

    KrigedPlaces(Covariance covariance, double[] x, double[] y, double[] means, DMatrixRMaj explained,
                 DMatrixRMaj unsure) {
        this.covariance = covariance;
        this.x = x;
        this.y = y;
        this.means = means;
        this.explained = explained;
        this.unsure = unsure;
    }

    /** Mean of the field at each place, length m. */
    public double[] means() {
        return means.clone();
    }

    /** Variance of the field at each place, length m; but for rounding not below zero. */
    public double[] variances() {
        double[] variances = new double[x.length];
        for (int j = 0; j < variances.length; j++) {
            variances[j] = covariance.between(x[j], y[j], x[j], y[j]);
        }
        addSquares(-1, explained, variances);
        addSquares(1, unsure, variances);
        return variances;
    }

    private static void addSquares(double sign, DMatrixRMaj of, double[] onto) {
        for (int k = 0, at = 0; k < of.numRows; k++) {
            for (int j = 0; j < onto.length; j++, at++) {
                onto[j] += sign * of.data[at] * of.data[at];
            }
        }
    }

    /** Covariance of the field at all places with that at one, length m. */
    public double[] covariances(int place) {
        double[] column = new double[x.length];
        for (int j = 0; j < column.length; j++) {
            column[j] = covariance.between(x[j], y[j], x[place], y[place]);
        }
        addProducts(-1, explained, place, column);
        addProducts(1, unsure, place, column);
        return column;
    }

    /** Row by row, so that whole rows are gone through at once. */
    private static void addProducts(double sign, DMatrixRMaj of, int place, double[] onto) {
        for (int k = 0; k < of.numRows; k++) {
            int row = k * onto.length;
            double factor = sign * of.data[row + place];
            for (int j = 0; j < onto.length; j++) {
                onto[j] += factor * of.data[row + j];
            }
        }
    }
}
