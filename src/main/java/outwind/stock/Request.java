package outwind.stock;

import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.board.Shop;
import outwind.board.Wedge;
import outwind.flatten.LiftLimit;
import outwind.setup.Push;

/**
 * What is asked of a board beside what its file states.
 *
 * @param skim     least depth to come off each face (mm)
 * @param shop     bed, cutters, clamps and shims at hand
 * @param stopAt   thickness to stop cutting at (mm) where that is not the target
 * @param push     what the board has to stand while it is cut
 * @param mostLift most that levelling may lift the board (mm); see {@link LiftLimit}
 * @param anyway   true if a plan is wanted though the board will not, or may not, make its target
 * @param seed     of the possible boards; the same seed gives the same answer
 */
public record Request(double skim, Shop shop, OptionalDouble stopAt, Push push, double mostLift, boolean anyway,
                      long seed) {

    /** Depth that takes the saw marks off a rough face (mm); common practice. */
    private static final double USUAL_SKIM = 0.3;

    public Request {
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
    public static Request usual(Board board) {
        return usual(board, Shop.UNKNOWN);
    }

    /** The skim that the board states or else the shop's or else the usual one, and what a hand can shim. */
    public static Request usual(Board board, Shop shop) {
        double skim = board.skim().orElse(shop.skim().orElse(USUAL_SKIM));
        return new Request(skim, shop, OptionalDouble.empty(),
            new Push(shop.push().orElse(Push.USUAL.force()), Push.USUAL.give()), LiftLimit.USUAL, false, 1);
    }

    /** The same in another shop. */
    public Request in(Shop other) {
        return new Request(skim, other, stopAt, push, mostLift, anyway, seed);
    }

    /** The same with another limit to lifting (mm). */
    public Request liftingAtMost(double most) {
        return new Request(skim, shop, stopAt, push, most, anyway, seed);
    }

    /** The same with a thickness to stop cutting at (mm). */
    public Request stoppingAt(double thickness) {
        return new Request(skim, shop, OptionalDouble.of(thickness), push, mostLift, anyway, seed);
    }

    /** The same with clamps of a height (mm). */
    public Request withClamps(double height) {
        return in(shop.withClamps(height));
    }

    /** The same, standing another push. */
    public Request standing(Push other) {
        return new Request(skim, shop, stopAt, other, mostLift, anyway, seed);
    }

    /** The same with tapered shims. */
    public Request withWedges(Wedge wedges) {
        return in(shop.withWedges(wedges));
    }

    /** The same, with a plan whatever the verdict. */
    public Request cuttingAnyway() {
        return new Request(skim, shop, stopAt, push, mostLift, true, seed);
    }

    /** The same with another seed. */
    public Request withSeed(long other) {
        return new Request(skim, shop, stopAt, push, mostLift, anyway, other);
    }
}
