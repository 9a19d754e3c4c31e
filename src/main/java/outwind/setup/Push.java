package outwind.setup;

/**
 * What a board on the bed has to stand: a push straight down anywhere, and how far it may move the pushed place.
 *
 * @param force of the push (N), positive
 * @param give  the pushed place moves less than this (mm), positive
 */
public record Push(double force, double give) {

    /** A hand, or a cutter's downward pull, against the tenth of a millimetre that shows on a face: our choice. */
    public static final Push USUAL = new Push(50, 0.1);

    public Push {
        if (!(force > 0 && give > 0) || !Double.isFinite(force + give)) {
            throw new IllegalArgumentException("push needs a positive force and give, got " + force + " N and " + give
                + " mm");
        }
    }
}
