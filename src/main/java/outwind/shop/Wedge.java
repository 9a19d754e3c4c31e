package outwind.shop;

/**
 * A tapered shim that is slid in from the edge until it touches: it rises evenly from nothing at its tip to its butt.
 *
 * @param length from tip to butt (mm)
 * @param butt   its thickness at the butt (mm)
 */
public record Wedge(double length, double butt) {

    public Wedge {
        if (!(length > 0) || !(butt > 0) || Double.isInfinite(length + butt)) {
            throw new IllegalArgumentException("a wedge needs a length and a butt above zero, got " + length + " x "
                + butt + " mm");
        }
    }

    /**
     * How far its tip is from the side it was slid in from (mm), once it fills a gap.
     *
     * @param height of the gap (mm)
     * @param wayIn  from that side of the board to the gap (mm); 0 at an edge
     */
    public double slideIn(double height, double wayIn) {
        return wayIn + height * length / butt;
    }

    /** True if one wedge is thick enough for a gap (mm). */
    public boolean reaches(double height) {
        return height <= butt;
    }
}
