package outwind.board;

/**
 * The rough thickness measured with a caliper at one place.
 *
 * @param x         place along the grain (mm)
 * @param y         place across (mm)
 * @param thickness face to face (mm), positive
 * @param line      line of the file it came from, 1-based
 */
public record CaliperReading(double x, double y, double thickness, int line) {

    /** Standard deviation of one on rough wood (mm); common practice. */
    public static final double DEVIATION = 0.1;

    public CaliperReading {
        Quantity.X.require(x);
        Quantity.Y.require(y);
        Quantity.THICKNESS.require(thickness);
    }
}
