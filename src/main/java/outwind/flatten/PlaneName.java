package outwind.flatten;

/** The reference planes that are compared. */
public enum PlaneName {
    /** Parallel to the bed, with the board in the position it was measured in. */
    AS_MEASURED("as measured"),
    /** Parallel to the least-squares plane of face A (ISO 12781-1: LSPL). */
    LEAST_SQUARES("least squares"),
    /** Parallel to the minimum zone planes of face A (ISO 12781-1: MZPL). */
    MINIMUM_ZONE("minimum zone"),
    /** The plane under face A that takes the least wood off it. */
    LEAST_WOOD("least wood"),
    /** The planes between which the thickest board lies, as far as the board may be lifted for it. */
    THICKEST_SLAB("thickest slab");

    private final String words;

    PlaneName(String words) {
        this.words = words;
    }

    /** The name as printed. */
    public String words() {
        return words;
    }
}
