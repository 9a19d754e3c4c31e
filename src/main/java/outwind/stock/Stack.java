package outwind.stock;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import outwind.surface.Unevenness;

/**
 * A stack of boards, the best buys first.
 *
 * <pre>
 *   number that makes it:  mean Σ p,  variance Σ p·(1 − p)   (Poisson binomial; each board for itself)
 * </pre>
 * The best buy costs least per finished area, the chance of failing counted in; where no cost is known, it wastes least
 * of its rough volume for what it is likely to yield.
 *
 * <p>Source: Y. H. Wang, Statistica Sinica 3 (1993) 295–312 (Poisson binomial distribution).
 *
 * @param boards     the best buys first
 * @param currency   label of the money, perhaps empty
 * @param unevenness how much the thickness strays within its boards, where enough were read with calipers
 */
public record Stack(List<PricedBoard> boards, String currency, Optional<Unevenness> unevenness) {

    /** How sure the boards that are bought must be to suffice. */
    public static final double CONFIDENCE = 0.9;

    public Stack {
        boolean aimed = boards.stream().anyMatch(board -> board.target().isPresent());
        boards = boards.stream().map(board -> aimed && board.target().isEmpty() ? board.withoutHope() : board)
            .sorted(bestFirst()).toList();
    }

    /** A stack of boards each judged by itself. */
    public Stack(List<PricedBoard> boards, String currency) {
        this(boards, currency, Optional.empty());
    }

    private static Comparator<PricedBoard> bestFirst() {
        return Comparator
            .comparingDouble((PricedBoard b) -> b.costPerFinishedArea().orElse(Double.POSITIVE_INFINITY))
            .thenComparingDouble(b -> -b.makesIt() * (1 - b.waste()))
            .thenComparing(PricedBoard::file);
    }

    /** Boards that state no target though others do: nothing is expected of them. */
    public List<PricedBoard> withoutTarget() {
        return boards.stream().anyMatch(board -> board.target().isPresent())
            ? boards.stream().filter(board -> board.target().isEmpty()).toList() : List.of();
    }

    /** How many boards are expected to make it. */
    public double expected() {
        return boards.stream().mapToDouble(PricedBoard::makesIt).sum();
    }

    /** Standard deviation of how many make it. */
    public double deviation() {
        return Math.sqrt(boards.stream().mapToDouble(b -> b.makesIt() * (1 - b.makesIt())).sum());
    }

    /** The 5th percentile of how many make it. */
    public int fewest() {
        return percentile(chances(), 0.05);
    }

    /** The 95th percentile of how many make it. */
    public int most() {
        return percentile(chances(), 0.95);
    }

    private double[] chances() {
        return boards.stream().mapToDouble(PricedBoard::makesIt).toArray();
    }

    /**
     * Least number that as many or fewer boards make with a chance; their distribution grows board by board.
     *
     * @param chances of each board to make it
     */
    static int percentile(double[] chances, double share) {
        double[] odds = new double[chances.length + 1];
        odds[0] = 1;
        for (int i = 0; i < chances.length; i++) {
            double makes = chances[i];
            for (int k = i + 1; k > 0; k--) {
                odds[k] = odds[k] * (1 - makes) + odds[k - 1] * makes;
            }
            odds[0] *= 1 - makes;
        }
        int number = 0;
        double reached = odds[0];
        // What rounding leaves short of the share is none.
        while (reached < share - 1e-12 && number < chances.length) {
            reached += odds[++number];
        }
        return number;
    }

    /** What all boards cost; empty unless every one's cost is known. */
    public Optional<BigDecimal> cost() {
        return costOf(boards);
    }

    /** What some boards cost; empty unless every one's cost is known. */
    public static Optional<BigDecimal> costOf(List<PricedBoard> bought) {
        return bought.stream().allMatch(board -> board.cost().isPresent())
            ? bought.stream().map(board -> board.cost().get()).reduce(BigDecimal::add) : Optional.empty();
    }

    /**
     * The cheapest boards for a finished area; by rough volume where not every board has a cost.
     *
     * @param wanted mm², above zero
     * @return empty if even the whole stack is not sure enough
     */
    public Optional<Purchase> cheapestFor(double wanted) {
        boolean priced = cost().isPresent();
        return Purchase.of(boards, boards.stream().mapToDouble(board -> priced ? board.cost().get().doubleValue()
            : board.roughVolume()).toArray(), wanted, CONFIDENCE);
    }
}
