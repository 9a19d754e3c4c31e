package outwind.stock;

import outwind.board.Units;

/**
 * How much wood a rough board counts as, in board feet.
 *
 * <pre>
 *   exact:    thickness · width · length / 144                      (inches)
 *   by tally: surface measure · thickness in quarters,
 *             surface measure = width in inches · length in whole feet / 12, to the nearest whole square foot
 * </pre>
 * In the tally a thickness under one inch counts as one, and above that the full quarters count; a length counts in
 * whole feet. A surface measure of exactly one half goes up; the rule books that could be read leave that open.
 *
 * <p>Source: surface measure and board foot as the American Hardwood Export Council and the National Hardwood Lumber
 * Association print them.
 *
 * @param length    mm
 * @param width     mm
 * @param thickness rough (mm)
 */
public record BoardFeet(double length, double width, double thickness) {

    private static final double INCH = Units.INCHES.toMillimetres(1);

    /** A ruler's play (inches): a board of 12 ft cut by a metric rule counts as 12 ft. */
    private static final double PLAY = 1.0 / 64;

    /** Volume over 144 cubic inches. */
    public double exact() {
        return of(length * width * thickness);
    }

    /** Board feet of 144 cubic inches in a volume (mm³). */
    public static double of(double volume) {
        return volume / (INCH * INCH * INCH) / 144;
    }

    /** Surface measure in whole square feet. */
    public long surfaceMeasure() {
        double feet = Math.floor((length / INCH + PLAY) / 12);
        return (long) Math.floor(width / INCH * feet / 12 + 0.5);
    }

    /** What is paid for: the tally, or the exact volume where the tally rounds a small board down to nothing. */
    public double paid() {
        return surfaceMeasure() > 0 ? tallied() : exact();
    }

    /** What the trade tallies. */
    public double tallied() {
        double quarters = Math.floor((thickness / INCH + PLAY) * 4);
        return surfaceMeasure() * Math.max(4, quarters) / 4;
    }
}
