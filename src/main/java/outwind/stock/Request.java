package outwind.stock;

import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.cutting.Cutter;
import outwind.flatten.LiftLimit;
import outwind.setup.Push;
import outwind.setup.Wedge;

/**
 * What is asked of a board beside what its file states.
 *
 * @param skim     least depth to come off each face (mm)
 * @param cutter   how the machine cuts
 * @param stopAt   thickness to stop cutting at (mm) where that is not the target
 * @param clamp    height of clamps and stops above the bed (mm), if it is known
 * @param wedge    tapered shims, if those are used
 * @param push     what the board has to stand while it is cut
 * @param mostLift most that levelling may lift the board (mm); see {@link LiftLimit}
 * @param anyway   true if a plan is wanted though the board will not, or may not, make its target
 * @param seed     of the possible boards; the same seed gives the same answer
 */
public record Request(double skim, Cutter cutter, OptionalDouble stopAt, OptionalDouble clamp, Optional<Wedge> wedge,
                      Push push, double mostLift, boolean anyway, long seed) {

    /** Depth that takes the saw marks off a rough face (mm); common practice. */
    private static final double USUAL_SKIM = 0.3;

    public Request {
        if (!(mostLift >= 0)) {
            throw new IllegalArgumentException("the most that a board may be lifted is not below zero, got " + mostLift
                + " mm");
        }
        requirePositive(stopAt, "thickness to stop at");
        requirePositive(clamp, "height of a clamp");
    }

    private static void requirePositive(OptionalDouble length, String what) {
        if (length.isPresent() && !(length.getAsDouble() > 0)) {
            throw new IllegalArgumentException("the " + what + " must be above zero, got " + length.getAsDouble()
                + " mm");
        }
    }

    /** The skim that the board states or else the usual one, a light cut, and what a hand can shim. */
    public static Request usual(Board board) {
        return new Request(board.skim().orElse(USUAL_SKIM), Cutter.LIGHT, OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(), Push.USUAL, LiftLimit.USUAL, false, 1);
    }

    /** The same with another cutter. */
    public Request with(Cutter other) {
        return new Request(skim, other, stopAt, clamp, wedge, push, mostLift, anyway, seed);
    }

    /** The same with another limit to lifting (mm). */
    public Request liftingAtMost(double most) {
        return new Request(skim, cutter, stopAt, clamp, wedge, push, most, anyway, seed);
    }

    /** The same with a thickness to stop cutting at (mm). */
    public Request stoppingAt(double thickness) {
        return new Request(skim, cutter, OptionalDouble.of(thickness), clamp, wedge, push, mostLift, anyway, seed);
    }

    /** The same with clamps of a height (mm). */
    public Request withClamps(double height) {
        return new Request(skim, cutter, stopAt, OptionalDouble.of(height), wedge, push, mostLift, anyway, seed);
    }

    /** The same, standing another push. */
    public Request standing(Push other) {
        return new Request(skim, cutter, stopAt, clamp, wedge, other, mostLift, anyway, seed);
    }

    /** The same with tapered shims. */
    public Request withWedges(Wedge wedges) {
        return new Request(skim, cutter, stopAt, clamp, Optional.of(wedges), push, mostLift, anyway, seed);
    }

    /** The same, with a plan whatever the verdict. */
    public Request cuttingAnyway() {
        return new Request(skim, cutter, stopAt, clamp, wedge, push, mostLift, true, seed);
    }

    /** The same with another seed. */
    public Request withSeed(long other) {
        return new Request(skim, cutter, stopAt, clamp, wedge, push, mostLift, anyway, other);
    }
}
