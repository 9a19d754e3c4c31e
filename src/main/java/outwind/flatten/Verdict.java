package outwind.flatten;

/** Will the board finish at the wanted thickness? */
public enum Verdict {
    YES("yes"),
    DOUBTFUL("doubtful"),
    NO("no"),
    /** No thickness was asked for. */
    NONE("none");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    /** The verdict as one word. */
    public String word() {
        return word;
    }

    /** The chance from which on a board is said to make its target, and a blank its thickness. */
    public static final double SURE = 0.95;

    /**
     * The verdict for a chance of the target.
     *
     * @param chance 0 to 1
     */
    public static Verdict of(double chance) {
        return chance >= SURE ? YES : chance <= 1 - SURE ? NO : DOUBTFUL;
    }
}
