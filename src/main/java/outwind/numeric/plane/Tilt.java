package outwind.numeric.plane;

/**
 * How far the planes may tilt: four constraints ±(a − a₀)·extentX ± (b − b₀)·extentY ≤ most.
 *
 * @param most infinite where they are free
 */
record Tilt(double most, Plane from, double extentX, double extentY) {

    static final Tilt FREE = new Tilt(Double.POSITIVE_INFINITY, new Plane(0, 0, 0), 0, 0);

    /** One constraint, named for the corner of the extent that it keeps from rising further. */
    enum Corner {
        FAR_RIGHT(1, 1), FAR_LEFT(-1, 1), NEAR_RIGHT(1, -1), NEAR_LEFT(-1, -1);

        private static final Corner[] ALL = values();
        private static final int FIRST = -8;
        private static final int LAST = FIRST + ALL.length - 1;

        private final int signX;
        private final int signY;

        Corner(int signX, int signY) {
            this.signX = signX;
            this.signY = signY;
        }

        /** What it is called among the constraints of an {@link Exchange}: −8 to −5. */
        int code() {
            return FIRST + ordinal();
        }

        /** Whether a code is that of a corner. */
        static boolean isCode(int code) {
            return code <= LAST;
        }

        static Corner of(int code) {
            return ALL[code - FIRST];
        }
    }

    boolean isFree() {
        return Double.isInfinite(most);
    }

    double alongX(Corner corner) {
        return corner.signX * extentX;
    }

    double alongY(Corner corner) {
        return corner.signY * extentY;
    }

    double rightHandSide(Corner corner) {
        return most + alongX(corner) * from.slopeX() + alongY(corner) * from.slopeY();
    }
}
