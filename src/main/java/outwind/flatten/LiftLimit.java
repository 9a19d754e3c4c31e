package outwind.flatten;

import outwind.numeric.plane.Plane;
import outwind.numeric.plane.WidestGap;

/**
 * How far levelling may lift a board off the seat it has by itself. A board on tall shims is a board that can topple.
 *
 * @param seat   the bed, in the frame of the readings, under the board that nobody holds; its slopes count
 * @param most   most that any corner may rise against another (mm)
 * @param length of the board (mm)
 * @param width  of the board (mm)
 */
public record LiftLimit(Plane seat, double most, double length, double width) {

    /** Small enough to shim by hand (mm); common practice. */
    public static final double USUAL = 6;

    WidestGap applyTo(WidestGap program) {
        return program.tiltedByAtMost(most, seat, length, width);
    }

    /** How far the board is lifted for a cut of these slopes: the rise of one corner against another (mm). */
    public double liftFor(Plane slopes) {
        return Math.abs(slopes.slopeX() - seat.slopeX()) * length + Math.abs(slopes.slopeY() - seat.slopeY()) * width;
    }

    /** True if a cut of these slopes is as far from the seat as is allowed, so that the limit may cost thickness. */
    public boolean isReachedBy(Plane slopes) {
        return liftFor(slopes) > most * (1 - 1e-9);
    }
}
