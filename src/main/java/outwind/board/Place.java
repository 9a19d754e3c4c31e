package outwind.board;

/**
 * Where the cutter is brought down.
 *
 * @param x along the grain (mm)
 * @param y across (mm)
 */
public record Place(double x, double y) {

    /** What is no further away than this is the same place to a hand or a machine (mm). */
    private static final double SAME = 0.6;

    public boolean isAt(Place other) {
        return Math.hypot(x - other.x, y - other.y) <= SAME;
    }
}
