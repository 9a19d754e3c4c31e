package outwind.setup;

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

    /** How much of the wedge lies under the board where it lifts the edge by {@code height} (mm). */
    public double slideIn(double height) {
        return height * length / butt;
    }

    /** True if one wedge is thick enough for a gap (mm). */
    public boolean reaches(double height) {
        return height <= butt;
    }
}
