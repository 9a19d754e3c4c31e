package outwind.setup;

import outwind.surface.SampledBoard;

/**
 * Which face is better down for the first cut: the one the board lies steadier on, else the one that stands nearer to
 * the bed all over and so needs the lower shims.
 *
 * @param asTouched the board as it was touched off, face A up
 * @param turned    the board the other way up
 */
public record FaceDown(RestingPose asTouched, RestingPose turned) {

    /** Shims that differ by less than this are no reason to turn a board over (mm). */
    private static final double LOWER = 0.3;

    /**
     * Compares both ways up.
     *
     * @param asTouched how the board lies with face A up
     * @param whole     the whole board
     * @param width     of the board (mm)
     */
    public static FaceDown of(RestingPose asTouched, SampledBoard whole, double width) {
        return new FaceDown(asTouched, RestingPose.of(whole.turnedOver(width)));
    }

    /** True if it makes no difference worth turning the board over for. */
    public boolean isAlike() {
        return asTouched.rocks() == turned.rocks() && Math.abs(asTouched.widest() - turned.widest()) < LOWER;
    }

    /** True if the board would rather be turned over before face A is cut. */
    public boolean isBetterTurned() {
        if (asTouched.rocks() != turned.rocks()) {
            return asTouched.rocks();
        }
        return turned.widest() < asTouched.widest() - LOWER;
    }
}
