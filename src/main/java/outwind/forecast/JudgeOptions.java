package outwind.forecast;

import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.flatten.LiftLimit;
import outwind.setup.Push;
import outwind.shop.Shop;
import outwind.shop.Wedge;

/**
 * What is asked of a board beside what its file states.
 *
 * @param skim     least depth to come off each face (mm)
 * @param shop     bed, cutters, clamps and shims at hand
 * @param stopAt   thickness to stop cutting at (mm) where that is not the target
 * @param push     what the board has to stand while it is cut
 * @param mostLift most that levelling may lift the board (mm); see {@link LiftLimit}
 * @param anyway   true if a plan is wanted though the board will not, or may not, make its target
 * @param later    true if the board is judged as it will be once its moisture has changed: nothing is cut today
 * @param seed     of the possible boards; the same seed gives the same answer
 */
public record JudgeOptions(double skim, Shop shop, OptionalDouble stopAt, Push push, double mostLift, boolean anyway,
                      boolean later, long seed) {

    /** Depth that takes the saw marks off a rough face (mm); common practice. */
    private static final double USUAL_SKIM = 0.3;

    public JudgeOptions {
        if (!(mostLift >= 0)) {
            throw new IllegalArgumentException("the most that a board may be lifted is not below zero, got " + mostLift
                + " mm");
        }
        requirePositive(stopAt, "thickness to stop at");
        requirePositive(shop.clamps(), "height of a clamp");
    }

    private static void requirePositive(OptionalDouble length, String what) {
        if (length.isPresent() && !(length.getAsDouble() > 0)) {
            throw new IllegalArgumentException("the " + what + " must be above zero, got " + length.getAsDouble()
                + " mm");
        }
    }

    /** The skim that the board states or else the usual one, and what a hand can shim; nothing known of the shop. */
    public static JudgeOptions usual(Board board) {
        return usual(board, Shop.UNKNOWN);
    }

    /** The skim that the board states or else the shop's or else the usual one, and what a hand can shim. */
    public static JudgeOptions usual(Board board, Shop shop) {
        double skim = board.skim().orElse(shop.skim().orElse(USUAL_SKIM));
        return new JudgeOptions(skim, shop, OptionalDouble.empty(),
            new Push(shop.push().orElse(Push.USUAL.force()), Push.USUAL.give()), LiftLimit.USUAL, false, false, 1);
    }

    /** True if the skim is less than what takes the saw marks off a rough face. */
    public boolean mayLeaveSawMarks() {
        return skim < USUAL_SKIM;
    }

    /** The same in another shop. */
    public JudgeOptions in(Shop other) {
        return new JudgeOptions(skim, other, stopAt, push, mostLift, anyway, later, seed);
    }

    /** The same with another limit to lifting (mm). */
    public JudgeOptions liftingAtMost(double most) {
        return new JudgeOptions(skim, shop, stopAt, push, most, anyway, later, seed);
    }

    /** The same with a thickness to stop cutting at (mm). */
    public JudgeOptions stoppingAt(double thickness) {
        return new JudgeOptions(skim, shop, OptionalDouble.of(thickness), push, mostLift, anyway, later, seed);
    }

    /** The same with clamps of a height (mm). */
    public JudgeOptions withClamps(double height) {
        return in(shop.withClamps(height));
    }

    /** The same, standing another push. */
    public JudgeOptions standing(Push other) {
        return new JudgeOptions(skim, shop, stopAt, other, mostLift, anyway, later, seed);
    }

    /** The same with tapered shims. */
    public JudgeOptions withWedges(Wedge wedges) {
        return in(shop.withWedges(wedges));
    }

    /** The same, with a plan whatever the verdict. */
    public JudgeOptions cuttingAnyway() {
        return new JudgeOptions(skim, shop, stopAt, push, mostLift, true, later, seed);
    }

    /** The same of a board as it will be later. */
    public JudgeOptions forLater() {
        return new JudgeOptions(skim, shop, stopAt, push, mostLift, anyway, true, seed);
    }

    /** The same with another seed. */
    public JudgeOptions withSeed(long other) {
        return new JudgeOptions(skim, shop, stopAt, push, mostLift, anyway, later, other);
    }
}
