package outwind.stock;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import outwind.board.Price;
import outwind.flatten.Verdict;

/**
 * A stack that may be finished at one of several thicknesses, and which suits each of its boards best.
 *
 * <pre>
 *   wood to expect:   p(t) · area · t          money to expect:   p(t) · price(t) · what the price counts
 * </pre>
 * The best use brings most money where each thickness has a price, else most wood; a thickness that a board is sure to
 * miss is no use. What the board and its flattening cost is the same for each, so that it does not change the choice.
 *
 * @param stack    the boards
 * @param aims     at least one
 * @param standard that the thicknesses are of, if they are
 */
public record Uses(Stack stack, List<Aim> aims, Optional<Surfaced> standard) {

    /** More columns than this nobody reads. */
    public static final int MOST = 4;

    /**
     * A thickness that boards may be finished at.
     *
     * @param thickness mm
     * @param sells     what finished boards of it bring, where that is known
     */
    public record Aim(double thickness, Optional<Price> sells) { }

    public Uses {
        aims = List.copyOf(aims);
        if (aims.isEmpty() || aims.size() > MOST) {
            throw new IllegalArgumentException("between 1 and " + MOST + " targets can be compared, got " + aims.size());
        }
    }

    /** Thicknesses of no standard. */
    public Uses(Stack stack, List<Aim> aims) {
        this(stack, aims, Optional.empty());
    }

    /** Whether the stack was judged for the first thickness. */
    public boolean isJudgedForFirst() {
        return stack.boards().stream().allMatch(board -> board.target().isPresent()
            && board.target().getAsDouble() == aims.get(0).thickness);
    }

    /** Chance that a board makes a thickness, 0 to 1. */
    public double chance(PricedBoard board, Aim aim) {
        return board.target().isPresent() && board.target().getAsDouble() == aim.thickness ? board.makesIt()
            : board.finished().chanceOf(aim.thickness);
    }

    /** Finished wood to expect of a board at a thickness (mm³). */
    public double wood(PricedBoard board, Aim aim) {
        return chance(board, aim) * board.finishedArea() * aim.thickness;
    }

    /** Whether money is compared, not wood. */
    public boolean inMoney() {
        return aims.stream().allMatch(aim -> aim.sells.isPresent());
    }

    /** Money to expect of a board at a thickness that has a price. */
    public double money(PricedBoard board, Aim aim) {
        Price price = aim.sells.orElseThrow();
        double volume = board.finishedArea() * aim.thickness;
        return chance(board, aim) * price.amount().doubleValue()
            * Rates.counted(price.per(), BoardFeet.of(volume), volume, board.finishedArea());
    }

    /** What a board is best used for; empty if it is sure to miss every thickness. */
    public Optional<Aim> best(PricedBoard board) {
        return aims.stream().filter(aim -> Verdict.of(chance(board, aim)) != Verdict.NO)
            .max(Comparator.comparingDouble(aim -> inMoney() ? money(board, aim) : wood(board, aim)));
    }

    /** For how many boards a thickness is the best use. */
    public int bestFor(Aim aim) {
        return (int) stack.boards().stream().filter(board -> best(board).equals(Optional.of(aim))).count();
    }

    /** The 5th percentile of how many boards make a thickness. */
    public int fewest(Aim aim) {
        return Stack.percentile(chances(aim), 0.05);
    }

    /** The 95th percentile of how many boards make a thickness. */
    public int most(Aim aim) {
        return Stack.percentile(chances(aim), 0.95);
    }

    private double[] chances(Aim aim) {
        return stack.boards().stream().mapToDouble(board -> chance(board, aim)).toArray();
    }

    /** Finished wood to expect if all boards are used for one thickness (mm³). */
    public double wood(Aim aim) {
        return stack.boards().stream().mapToDouble(board -> wood(board, aim)).sum();
    }

    /** Money to expect if all boards are used for one thickness that has a price. */
    public double money(Aim aim) {
        return stack.boards().stream().mapToDouble(board -> money(board, aim)).sum();
    }

    /** Finished wood to expect if each board is used for the best (mm³). */
    public double bestWood() {
        return stack.boards().stream().mapToDouble(board -> best(board).map(aim -> wood(board, aim)).orElse(0.0)).sum();
    }

    /** Money to expect if each board is used for the best. */
    public double bestMoney() {
        return stack.boards().stream().mapToDouble(board -> best(board).map(aim -> money(board, aim)).orElse(0.0)).sum();
    }

    /** The thickness that is best for the whole stack, if all its boards are used for one. */
    public Aim bestForAll() {
        return aims.stream().max(Comparator.comparingDouble(aim -> inMoney() ? money(aim) : wood(aim))).orElseThrow();
    }
}
