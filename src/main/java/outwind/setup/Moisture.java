package outwind.setup;

/**
 * Moisture of wood before and after it dries or swells, in percent of its ovendry weight.
 *
 * @param from as it was measured, 0 to 200
 * @param to   as it will be used, 0 to 200
 */
public record Moisture(double from, double to) {

    /** Wetter than any wood. */
    private static final double MOST = 200;

    public Moisture {
        if (!(from >= 0 && from <= MOST && to >= 0 && to <= MOST)) {
            throw new IllegalArgumentException("moisture of wood is from 0 to 200 %, got " + from + " and " + to);
        }
    }

    /** True if the wood gives water off. */
    public boolean dries() {
        return to < from;
    }
}
