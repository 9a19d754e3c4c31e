package outwind.numeric.plane;

/**
 * Points on one side of a gap, as they were given: nothing is copied.
 *
 * @param x first coordinate of each place, length n ≥ 1
 * @param y second coordinate, length n
 * @param z heights, length n
 */
record Points(double[] x, double[] y, double[] z) {

    int size() {
        return z.length;
    }

    /** True if these points lie at the very places of the others, recognised by the arrays being the same. */
    boolean sharesPlacesWith(Points other) {
        return x == other.x && y == other.y;
    }
}
