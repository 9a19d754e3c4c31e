package outwind.setup;

/** Where a board is taken to touch the bed. */
@FunctionalInterface
interface Touching {

    /** True if the board touches the bed at ({@code x}, {@code y}), all in mm. */
    boolean at(double x, double y);
}
