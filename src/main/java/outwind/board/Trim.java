package outwind.board;

/**
 * Wood that will be cut away around the board and need not clean up.
 *
 * @param along  cut away at each end (mm), never negative
 * @param across cut away at each edge (mm), never negative
 */
public record Trim(double along, double across) {

    /** Nothing is cut away. */
    public static final Trim NONE = new Trim(0, 0);

    public Trim {
        Quantity.TRIM.require(along);
        Quantity.TRIM.require(across);
    }

    /** Whether wood is left of a board of this size (mm). */
    public boolean leavesWoodOf(double length, double width) {
        return 2 * along < length && 2 * across < width;
    }

    /** Reads {@code 20 x 5} or {@code none}. */
    public static Trim parse(String text, LengthReader gauge) {
        if (text.strip().equalsIgnoreCase("none")) {
            return NONE;
        }
        String[] sides = text.split("[xX×]", -1);
        if (sides.length != 2) {
            throw new BadValue("trim at each end x at each edge in " + gauge.units().symbol(), text,
                "Write two numbers such as 20 x 5, or none.");
        }
        return new Trim(gauge.read(Quantity.TRIM, sides[0]), gauge.read(Quantity.TRIM, sides[1]));
    }
}
