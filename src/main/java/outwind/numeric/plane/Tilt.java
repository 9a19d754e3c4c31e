package outwind.numeric.plane;

/**
 * How far the planes may tilt: four constraints ±(a − a₀)·extentX ± (b − b₀)·extentY ≤ most.
 *
 * @param most infinite where they are free
 */
record Tilt(double most, Plane from, double extentX, double extentY) {

    static final Tilt FREE = new Tilt(Double.POSITIVE_INFINITY, new Plane(0, 0, 0), 0, 0);

    /** Codes of the four constraints: −8 to −5. */
    static final int FIRST = -8;
    static final int LAST = -5;

    boolean isFree() {
        return Double.isInfinite(most);
    }

    double alongX(int code) {
        return (code & 1) == 0 ? extentX : -extentX;
    }

    double alongY(int code) {
        return code < -6 ? extentY : -extentY;
    }

    double rightHandSide(int code) {
        return most + alongX(code) * from.slopeX() + alongY(code) * from.slopeY();
    }
}
