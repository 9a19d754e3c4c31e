package outwind.shop;

/**
 * What saw and machine can take, and how much larger than finished blanks are cut.
 *
 * @param shortest  no piece shorter than this along the board is ripped or put through the machine (mm); zero where
 *                  none is too short
 * @param widest    no wider piece is put through the machine (mm); infinite where none is too wide
 * @param firstEdge comes off the near edge to make it straight (mm)
 * @param overLength each blank is cut so much longer than finished (mm)
 * @param overWidth  each blank is cut so much wider than finished (mm)
 */
public record SawLimits(double shortest, double widest, double firstEdge, double overLength, double overWidth) {

    /** Nothing is too short or too wide, and blanks are cut to their finished size. */
    public static final SawLimits NONE = new SawLimits(0, Double.POSITIVE_INFINITY, 0, 0, 0);

    public SawLimits {
        if (!(shortest >= 0) || !(firstEdge >= 0) || !(overLength >= 0) || !(overWidth >= 0)) {
            throw new IllegalArgumentException("lengths and allowances at the saw must not be below zero, got shortest "
                + shortest + ", first edge " + firstEdge + ", over-length " + overLength + " and over-width " + overWidth
                + " mm");
        }
        if (!(widest > 0)) {
            throw new IllegalArgumentException("the widest piece must be above zero, got " + widest + " mm");
        }
    }

    /** Whether a piece of these sides (mm) can be ripped and put through the machine. */
    public boolean take(double along, double across) {
        return along >= shortest && across <= widest;
    }
}
