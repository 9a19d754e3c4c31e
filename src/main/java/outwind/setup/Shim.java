package outwind.setup;

/**
 * A support point, and the shim that fills the gap there.
 *
 * @param x      mm along the grain
 * @param y      mm across
 * @param height of the shim (mm), never negative; 0 where the bed itself supports the board
 * @param touches true if the board is as good as certain to touch the bed there, so that it needs no shim
 */
public record Shim(double x, double y, double height, boolean touches) {

    /** False where the board rests on the bed without one. */
    public boolean isNeeded() {
        return !touches;
    }
}
