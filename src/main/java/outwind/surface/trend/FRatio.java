package outwind.surface.trend;

import org.apache.commons.math3.special.Beta;

/**
 * A ratio of two variances that noise alone would make about 1.
 *
 * <pre>
 *   chance of one so large = P(F(q, r) ≥ F) = I(r / (r + q·F); r/2, q/2)      (regularised incomplete beta function)
 * </pre>
 * The upper tail itself, because 1 less the lower one is zero from 1e-16 on.
 *
 * @param value F, not below zero
 * @param above q, degrees of freedom of the variance above the line
 * @param below r, those of the one below
 */
public record FRatio(double value, int above, int below) {

    /** Chance of so large a ratio from noise alone, 0 to 1. */
    public double chance() {
        return Beta.regularizedBeta(below / (below + above * value), below / 2.0, above / 2.0);
    }
}
