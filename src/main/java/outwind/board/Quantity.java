package outwind.board;

/** What is measured on a board: its name, how it is written, and the range in which it can be true. */
public enum Quantity {

    X("x", "302.5", "12 1/2", -Limits.LENGTH, Limits.LENGTH, true),
    Y("y", "106", "4 1/8", -Limits.LENGTH, Limits.LENGTH, true),
    Z("z", "-1.10", "-3/64", -Limits.THICKNESS, Limits.THICKNESS, true),
    LENGTH("length", "1180", "46 1/2", 0, Limits.LENGTH, false),
    WIDTH("width", "212", "8 3/8", 0, Limits.WIDTH, false),
    THICKNESS("thickness", "31.5", "1 1/4", 0, Limits.THICKNESS, false),
    REPEATABILITY("repeatability", "0.05", "0.002", 0, Limits.THICKNESS, true),
    TARGET("target", "20", "13/16", 0, Limits.THICKNESS, false),
    SKIM("skim", "0.3", "1/64", 0, Limits.THICKNESS, true),
    TRIM("trim", "20", "3/4", 0, Limits.LENGTH, true);

    private final String word;
    private final String inMillimetres;
    private final String inInches;
    private final double least;
    private final double most;
    private final boolean leastCounts;

    Quantity(String word, String inMillimetres, String inInches, double least, double most, boolean leastCounts) {
        this.word = word;
        this.inMillimetres = inMillimetres;
        this.inInches = inInches;
        this.least = least;
        this.most = most;
        this.leastCounts = leastCounts;
    }

    /** The largest sizes (mm) that are read; what is larger is a slip of the pen or of the unit. */
    private static final class Limits {

        // Half as long again as the longest sawn softwood stocked, about 13 m (from memory).
        static final double LENGTH = 20_000;

        // Wider than any slab from one trunk that a flattening sled or bed takes.
        static final double WIDTH = 3_000;

        // A beam of this thickness is no board; heights are bounded alike.
        static final double THICKNESS = 1_000;
    }

    /** Its name as one word. */
    public String word() {
        return word;
    }

    /** A value as a person might write it on a board of these units. */
    public String example(Units units) {
        return units == Units.INCHES ? inInches : inMillimetres;
    }

    /** True for places on the board and its length and width. */
    boolean isPlaceOrSide() {
        return this == X || this == Y || this == LENGTH || this == WIDTH;
    }

    /** Whether {@code value} (mm) can be true; NaN cannot. */
    public boolean admits(double value) {
        return (leastCounts ? value >= least : value > least) && value <= most;
    }

    /** The range in words, for instance "more than 0 and at most 20000 mm". */
    public String range(Units units) {
        String ends = leastCounts
            ? "from " + units.plain(least) + " to " + units.plain(most)
            : "more than " + units.plain(least) + " and at most " + units.plain(most);
        return ends + " " + units.symbol();
    }

    /**
     * Returns {@code value} (mm) if it can be true.
     *
     * @throws IllegalArgumentException if it cannot, on any board
     */
    public double require(double value) {
        if (!admits(value)) {
            throw new IllegalArgumentException(word + " must be " + range(Units.MILLIMETRES) + ", got " + value);
        }
        return value;
    }
}
