package outwind.stock;

import java.util.random.RandomGenerator;
import org.apache.commons.math3.stat.StatUtils;

/**
 * What some figures say of the spread they were drawn from: a normal distribution of unknown mean and deviation.
 *
 * <pre>
 *   before:  mean anything, σ² ~ ν₀·s₀² / χ²(ν₀)
 *   after:   σ² ~ (ν₀·s₀² + Σ(x − x̄)²) / χ²(ν₀ + n − 1),  mean | σ ~ N(x̄, σ²/n)
 * </pre>
 *
 * <p>Source: A. Gelman and others, Bayesian Data Analysis, 3rd edition, section 3.2 (from memory).
 *
 * @param mean  of the distribution
 * @param sigma its standard deviation
 */
record LearntSpread(double mean, double sigma) {

    /** As much as two figures say: little, but a single board then gives a spread. */
    private static final int FIRST_DEGREES = 2;

    /** One of the spreads that the figures leave possible. */
    static LearntSpread drawn(double[] figures, double firstSigma, RandomGenerator random) {
        double mean = StatUtils.mean(figures);
        double squares = FIRST_DEGREES * firstSigma * firstSigma
            + StatUtils.variance(figures, mean) * (figures.length - 1);
        double chi = 0;
        for (int i = 0; i < FIRST_DEGREES + figures.length - 1; i++) {
            double z = random.nextGaussian();
            chi += z * z;
        }
        double sigma = Math.sqrt(squares / chi);
        return new LearntSpread(mean + sigma / Math.sqrt(figures.length) * random.nextGaussian(), sigma);
    }

    /** A figure out of this spread. */
    double next(RandomGenerator random) {
        return mean + sigma * random.nextGaussian();
    }
}
