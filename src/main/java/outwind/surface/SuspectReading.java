package outwind.surface;

import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import outwind.board.Reading;
import outwind.surface.field.Slips;
import outwind.surface.trend.TrendFit;

/**
 * A reading that does not go with the others.
 *
 * <p>It is at least four fifths sure to be a slip, {@link Slips} weighed against sound readings, strays, and every pair
 * of slips that might hide each other. While readings are still being typed, one is questioned sooner:
 * <pre>
 *   standardised = (z − expected) / deviation,   questioned if |standardised| &gt; Φ⁻¹(1 − 0.05 / (2n))
 * </pre>
 * That bound is shared out over all n readings (Bonferroni), so that noise alone makes any reading of a board
 * questionable in at most one board of twenty.
 *
 * @param reading     what was read
 * @param expected    what the other readings predict there (mm)
 * @param deviation   standard deviation of the difference to expect (mm)
 * @param studentised the same by the curved fit alone; see {@link TrendFit#studentised}. It is beside the point
 *                    on a board with a kink, which no curved fit follows, so it is reported and does not decide
 */
public record SuspectReading(Reading reading, double expected, double deviation, OptionalDouble studentised) {

    private static final double FALSE_ALARMS = 0.05;

    /** Chance of being a slip from which on a reading is named. */
    static final double SURE = 0.8;

    /** The difference in units of what is to be expected of it; positive where the reading is high. */
    public double standardised() {
        return (reading.z() - expected) / deviation;
    }

    /** How many standard deviations a reading may be off before it is suspect among so many. */
    public static double bound(int readings) {
        return new NormalDistribution(null, 0, 1).inverseCumulativeProbability(1 - FALSE_ALARMS / (2 * readings));
    }
}
