package outwind.stock;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A stack of boards, the best buys first.
 *
 * <pre>
 *   number that makes it:  mean Σ p,  variance Σ p·(1 − p)   (Poisson binomial; each board for itself)
 *   enough for an area:    fewest boards from the top with P(Σ area of those that make it ≥ wanted) ≥ 0.9
 * </pre>
 * The best buy costs least per finished area, the chance of failing counted in; where no cost is known, it wastes least
 * of its rough volume for what it is likely to yield.
 *
 * <p>Source: Y. H. Wang, Statistica Sinica 3 (1993) 295–312 (Poisson binomial distribution).
 *
 * @param boards   the best buys first
 * @param currency label of the money, perhaps empty
 */
public record Stack(List<PricedBoard> boards, String currency) {

    /** How sure a number of boards must be to suffice. */
    public static final double CONFIDENCE = 0.9;

    /** Area is counted in steps of this (mm²), rounded down for each board: never promising more than there is. */
    private static final double STEP = 1000;

    public Stack {
        boards = boards.stream().sorted(bestFirst()).toList();
    }

    private static Comparator<PricedBoard> bestFirst() {
        return Comparator
            .comparingDouble((PricedBoard b) -> b.costPerFinishedArea().orElse(Double.POSITIVE_INFINITY))
            .thenComparingDouble(b -> -b.makesIt() * (1 - b.waste()))
            .thenComparing(PricedBoard::file);
    }

    /** How many boards are expected to make it. */
    public double expected() {
        return boards.stream().mapToDouble(PricedBoard::makesIt).sum();
    }

    /** Standard deviation of how many make it. */
    public double deviation() {
        return Math.sqrt(boards.stream().mapToDouble(b -> b.makesIt() * (1 - b.makesIt())).sum());
    }

    /** What all boards cost; empty unless every one's cost is known. */
    public Optional<BigDecimal> cost() {
        return costOfBest(boards.size());
    }

    /** What so many of the best buys cost; empty unless every one's cost is known. */
    public Optional<BigDecimal> costOfBest(int count) {
        List<PricedBoard> bought = boards.subList(0, count);
        return bought.stream().allMatch(board -> board.cost().isPresent())
            ? bought.stream().map(board -> board.cost().get()).reduce(BigDecimal::add) : Optional.empty();
    }

    /**
     * How many of the best buys it takes for a finished area.
     *
     * @param wanted mm²
     * @return the number; empty if even the whole stack is not sure enough
     */
    public OptionalInt enoughFor(double wanted) {
        if (boards.stream().mapToDouble(PricedBoard::finishedArea).sum() < wanted) {
            return OptionalInt.empty();
        }
        int steps = (int) Math.ceil(wanted / STEP - 1e-9);
        // Chance of each area so far, in steps; whatever is enough is counted together.
        double[] chances = new double[steps + 1];
        chances[0] = 1;
        for (int n = 0; n < boards.size(); n++) {
            if (chances[steps] >= CONFIDENCE) {
                return OptionalInt.of(n);
            }
            int more = (int) (boards.get(n).finishedArea() / STEP);
            double p = boards.get(n).makesIt();
            for (int area = steps; area >= 0; area--) {
                double here = chances[area];
                if (area < steps) {
                    chances[area] = here * (1 - p);
                    chances[Math.min(steps, area + more)] += here * p;
                }
            }
        }
        return chances[steps] >= CONFIDENCE ? OptionalInt.of(boards.size()) : OptionalInt.empty();
    }
}
