package outwind.surface.trend;

import java.util.Optional;

/**
 * Whether the extra terms of a larger trend explain more than noise would.
 *
 * <pre>
 *   F = ((RSS₁ − RSS₂) / q) / (RSS₂ / r),   q = p₂ − p₁,  r = n − p₂
 *   p = P(F(q, r) ≥ F)                                       (see {@link FRatio})
 * </pre>
 * Source: N. R. Draper and H. Smith, Applied Regression Analysis, 3rd ed., Wiley 1998, section 6.1 (extra sum of
 * squares).
 *
 * @param larger           the model with the extra terms
 * @param f                the ratio F
 * @param degreesOfFreedom r, what is left to judge the noise by
 * @param probability      chance of so large an F from noise alone, 0 to 1
 */
public record NestedTest(TrendModel larger, double f, int degreesOfFreedom, double probability) {

    /** The test, or nothing where no extra term is seen or no degree of freedom is left to judge it by. */
    static Optional<NestedTest> of(TrendFit smaller, TrendFit larger) {
        int extra = larger.terms().size() - smaller.terms().size();
        int left = larger.fit().degreesOfFreedom();
        if (extra == 0 || left == 0) {
            return Optional.empty();
        }
        // The rounding of an exact fit is not its noise.
        double noise = Math.max(larger.fit().residualSumOfSquares() / left, Math.pow(Warp.Amount.RESOLUTION, 2));
        double gained = smaller.fit().residualSumOfSquares() - larger.fit().residualSumOfSquares();
        double f = Math.max(0, gained / extra / noise);
        return Optional.of(new NestedTest(larger.model(), f, left, new FRatio(f, extra, left).chance()));
    }
}
