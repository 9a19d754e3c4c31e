package outwind.cutting;

/**
 * A board longer than the bed, cut in several set-ups: moved along after each, with an overlap that shows the last.
 *
 * <pre>
 *   set-ups n = the fewest with overlap o = (n·B − L)/(n − 1) ≥ a fifth of the bed B
 *   step on face A ≈ s·√((B/o)² + ((B − o)/o)²)    levelled to two spots of the overlap, each set to s
 *   step on face B ≈ s·√2                          face A lies flat on the bed; only zero is set again
 * </pre>
 * The first is the error of a line through two spots o apart, carried on to the far end of the bed.
 *
 * @param setups  how many
 * @param overlap of one set-up and the next (mm)
 * @param stepA   standard deviation of the step to expect on face A (mm)
 * @param stepB   the same on face B (mm)
 */
public record Indexing(int setups, double overlap, double stepA, double stepB) {

    /** How well zero is set on a cut face (mm, standard deviation): our choice. */
    private static final double ZERO = 0.03;

    /** Least overlap, as a share of the bed: our choice. */
    private static final double LEAST_OVERLAP = 0.2;

    /**
     * @param length of the board (mm), more than the bed's
     * @param bed    its length (mm)
     */
    public static Indexing of(double length, double bed) {
        if (!(length > bed)) {
            throw new IllegalArgumentException("a board of " + length + " mm lies on a bed of " + bed + " mm");
        }
        int setups = (int) Math.ceil((length - LEAST_OVERLAP * bed) / ((1 - LEAST_OVERLAP) * bed) - 1e-9);
        double overlap = (setups * bed - length) / (setups - 1);
        return new Indexing(setups, overlap, ZERO * Math.hypot(bed / overlap, (bed - overlap) / overlap),
            ZERO * Math.sqrt(2));
    }
}
