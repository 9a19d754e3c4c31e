package outwind.stock;

import java.util.Arrays;
import java.util.Optional;

/**
 * A stack as one of several that are offered.
 *
 * <pre>
 *   expected:   cost / Σ p·area          at worst:   cost / A(95 %),   P(Σ area·X ≥ A(s)) ≥ s
 * </pre>
 * The cost is paid whatever comes out, so what comes out decides what a finished area costs.
 *
 * @param name  what it is called
 * @param stack its boards
 */
public record Offered(String name, Stack stack) {

    private static final int HALVINGS = 40;

    /** Finished area to expect (mm²). */
    public double area() {
        return stack.boards().stream().mapToDouble(board -> board.finishedArea() * board.makesIt()).sum();
    }

    /**
     * Finished area that is reached with a chance (mm²); at most a thousandth too low.
     *
     * @param chance above 0, below 1
     */
    public double area(double chance) {
        double[] areas = stack.boards().stream().mapToDouble(PricedBoard::finishedArea).toArray();
        double[] chances = stack.boards().stream().mapToDouble(PricedBoard::makesIt).toArray();
        boolean[] all = new boolean[areas.length];
        Arrays.fill(all, true);
        double reached = 0;
        double missed = Arrays.stream(areas).sum() * (1 + 1e-6);
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (reached + missed) / 2;
            if (middle > 0 && new AreaOdds(areas, chances, middle).of(all) >= chance) {
                reached = middle;
            } else {
                missed = middle;
            }
        }
        return reached;
    }

    /** Share of the face bought that is finished, 0 to 1, for a finished area (mm²). */
    public double yield(double area) {
        return area / stack.boards().stream().mapToDouble(board -> board.feet().length() * board.feet().width()).sum();
    }

    /** What a mm² of finished board costs if so much comes out (mm²); empty without a price of every board or an area. */
    public Optional<Double> cost(double area) {
        return area > 0 ? stack.cost().map(cost -> cost.doubleValue() / area) : Optional.empty();
    }
}
