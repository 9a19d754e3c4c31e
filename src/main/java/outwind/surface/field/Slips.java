package outwind.surface.field;

/**
 * How much likelier a reading is as a slip than as a sound one.
 *
 * <pre>
 *   e = read − expected from all others, variance v, noise in it
 *   a slip adds normal(0, S) of one of two sizes S; a stray adds normal(0, 2.5 noises), which is no slip
 *   likelihood ratio = mean over S of N(e; 0, v + S²) / N(e; 0, v)
 * </pre>
 * Chances of a slip and of a stray are ours: one reading in 25, and one in fifty.
 *
 * <p>Source: G. E. P. Box and G. C. Tiao, Biometrika 55 (1968) 119–129, where both kinds share one mean.
 */
public final class Slips {

    /** Logarithm of the odds of a slip before anything is known of a reading. */
    public static final double LOG_ODDS = Math.log(0.04 / 0.96);

    /** Logarithm of the odds of a stray. */
    public static final double LOG_STRAY_ODDS = Math.log(0.02 / 0.98);

    /** A touch through a chip or on a splinter; a wrong digit (mm). */
    private static final double[] SIZES = {1, 5};

    private static final double STRAY = 2.5;

    private Slips() { }

    /** Density of a difference that a slip made. */
    public static double slip(double difference, double variance) {
        double sum = 0;
        for (double size : SIZES) {
            sum += density(difference, variance + size * size);
        }
        return sum / SIZES.length;
    }

    /** Density of a difference that a stray made. */
    public static double stray(double difference, double variance, double noiseVariance) {
        return density(difference, variance + STRAY * STRAY * noiseVariance);
    }

    private static double density(double difference, double variance) {
        return Math.exp(-difference * difference / variance / 2) / Math.sqrt(variance);
    }

    /** Of a normal variable, without the factor 1/√(2π). */
    public static double logDensity(double difference, double variance) {
        return -(difference * difference / variance + Math.log(variance)) / 2;
    }
}
