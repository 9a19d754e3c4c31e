package outwind.surface;

import java.util.Optional;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * Whether the extra terms of a larger trend explain more than noise would.
 *
 * <pre>
 *   F = ((RSS₁ − RSS₂) / (p₂ − p₁)) / (RSS₂ / (n − p₂)),   p = P(F(p₂ − p₁, n − p₂) ≥ F)
 * </pre>
 * Source: N. R. Draper and H. Smith, Applied Regression Analysis, 3rd ed., Wiley 1998, section 6.1 (extra sum of
 * squares).
 *
 * @param larger           the model with the extra terms
 * @param f                the ratio F
 * @param extraTerms       p₂ − p₁
 * @param degreesOfFreedom n − p₂
 * @param probability      chance of so large an F from noise alone, 0 to 1
 */
public record NestedTest(TrendModel larger, double f, int extraTerms, int degreesOfFreedom, double probability) {

    /** The test, or nothing where no extra term is seen or no degree of freedom is left to judge it by. */
    static Optional<NestedTest> of(TrendFit smaller, TrendFit larger) {
        int extra = larger.terms().size() - smaller.terms().size();
        int left = larger.fit().degreesOfFreedom();
        double noise = larger.fit().residualSumOfSquares() / left;
        if (extra == 0 || left == 0 || noise == 0) {
            return Optional.empty();
        }
        double gained = smaller.fit().residualSumOfSquares() - larger.fit().residualSumOfSquares();
        double f = Math.max(0, gained / extra / noise);
        double probability = 1 - new FDistribution(null, extra, left).cumulativeProbability(f);
        return Optional.of(new NestedTest(larger.model(), f, extra, left, probability));
    }
}
