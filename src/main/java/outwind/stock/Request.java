package outwind.stock;

import outwind.board.Board;
import outwind.cutting.Cutter;
import outwind.flatten.LiftLimit;

/**
 * What is asked of a board beside what its file states.
 *
 * @param skim     least depth to come off each face (mm)
 * @param cutter   how the machine cuts
 * @param mostLift most that levelling may lift the board (mm); see {@link LiftLimit}
 * @param seed     of the possible boards; the same seed gives the same answer
 */
public record Request(double skim, Cutter cutter, double mostLift, long seed) {

    /** Depth that takes the saw marks off a rough face (mm); common practice. */
    private static final double USUAL_SKIM = 0.3;

    public Request {
        if (!(mostLift >= 0)) {
            throw new IllegalArgumentException("the most that a board may be lifted is not below zero, got " + mostLift
                + " mm");
        }
    }

    /** The skim that the board states or else the usual one, a light cut, and what a hand can shim. */
    public static Request usual(Board board) {
        return new Request(board.skim().orElse(USUAL_SKIM), Cutter.LIGHT, LiftLimit.USUAL, 1);
    }

    /** The same with another cutter. */
    public Request with(Cutter other) {
        return new Request(skim, other, mostLift, seed);
    }

    /** The same with another limit to lifting (mm). */
    public Request liftingAtMost(double most) {
        return new Request(skim, cutter, most, seed);
    }

    /** The same with another seed. */
    public Request withSeed(long other) {
        return new Request(skim, cutter, mostLift, other);
    }
}
