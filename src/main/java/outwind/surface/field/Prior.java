package outwind.surface.field;

import outwind.surface.trend.Term;

/**
 * What is believed of a height field before it is touched, weakly enough that readings soon outweigh it.
 *
 * <pre>
 *   residual about the trend: Matérn 5/2, sd = s, ranges = rx·length and ry·width
 *   log s  ~ normal(log spread, spreadLog),   log rx ~ normal(log rangeAlong, rangeLog),   log ry likewise across
 *   a trend term that the readings cannot see: normal(0, unseen · its usual size) at the board's corner
 * </pre>
 *
 * @param spread      typical standard deviation of what the trend misses (mm)
 * @param spreadLog   standard deviation of its logarithm
 * @param rangeAlong  typical range along the grain, in lengths of the board
 * @param rangeAcross typical range across, in widths of the board
 * @param rangeLog    standard deviation of the logarithm of either range
 * @param unseen      standard deviation of an unseen term where it is greatest, in its usual sizes
 * @param bends       terms that are small on most boards and large on a few
 */
public record Prior(double spread, double spreadLog, double rangeAlong, double rangeAcross, double rangeLog, double unseen,
             Bends bends) {

    /**
     * Heights of a sawn face: waves of some tenths of a mm about twist, bow and cup. Our choice, held to the simulated
     * boards of the accuracy benchmark; spreads of 0.15 to 0.25 mm and ranges of 0.5 to 1 length and 1 to 2 widths gave
     * the same tables up to their noise.
     */
    public static final Prior FACE = new Prior(0.15, 1.0, 0.7, 1.5, 0.7, 1.0, Bends.OF_A_FACE);

    /** Thickness of a sawn board: its wedge, and the wander of the saw about it. */
    public static final Prior THICKNESS = new Prior(0.13, 0.8, 0.4, 1.5, 0.7, 0.1, Bends.OF_A_THICKNESS);

    /** The same for boards whose thickness strays so many times as much as is usual. */
    public static Prior thickness(double unevenness) {
        return new Prior(unevenness * THICKNESS.spread, THICKNESS.spreadLog, THICKNESS.rangeAlong, THICKNESS.rangeAcross,
            THICKNESS.rangeLog, THICKNESS.unseen, THICKNESS.bends.times(unevenness));
    }

    /**
     * Standard deviation of a term that the readings cannot see, where it is greatest (mm). Bow grows with the square
     * of the length, cup with that of the width, twist with both; common practice.
     */
    public double unseen(Term term, double length, double width) {
        double metres = length / 1000;
        double spans = width / 200;
        return unseen * switch (term) {
            case CONSTANT, X, Y -> 3;
            case XY -> 2 * metres * spans;
            case XX -> 1.5 * metres * metres;
            case YY -> 0.75 * spans * spans;
        };
    }
}
