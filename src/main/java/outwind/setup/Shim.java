package outwind.setup;

/**
 * A support point at an edge, and the shim that fills the gap there.
 *
 * @param x      mm along the grain
 * @param y      mm across
 * @param height gap between underside and bed (mm), never negative
 */
public record Shim(double x, double y, double height) {

    /** A gap under this needs no shim (mm): half of the finest step that shims are made to. */
    private static final double NO_SHIM = 0.05;

    /** False where the board rests on the bed without one. */
    public boolean isNeeded() {
        return height >= NO_SHIM;
    }
}
