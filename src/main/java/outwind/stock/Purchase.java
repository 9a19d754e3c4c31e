package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The cheapest boards that together are sure enough to give a finished area.
 *
 * <pre>
 *   minimise Σ c_j·y_j   subject to   P(Σ a_j·y_j·X_j ≥ A) ≥ s,   X_j = 1 with chance p_j, each for itself
 *   Markov:     Σ p_j·min(a_j, A)·y_j ≥ s·A
 *   Chernoff:   Σ log(1 − p_j + p_j·exp(t·min(a_j, A)))·y_j ≥ t·A + log s    for every t above 0
 *   no-good:    Σ y_j ≥ 1 over the boards outside M, where even all boards of M together are not sure enough
 * </pre>
 * The first two kinds of row hold for every choice that will do, and {@link BoardChoice} finds the cheapest choice that
 * satisfies them. If that will do, it is the answer. If not, it is filled up until nothing cheap can be added without
 * its being enough, which gives a row of the third kind, and the search goes on. So it ends with the cheapest choice or,
 * where there are too many to look at, with a good one and a bound.
 *
 * <p>Sources: H. Chernoff, Ann. Math. Statist. 23 (1952) 493–507 (the bound); J. N. Hooker, G. Ottosson, Mathematical
 * Programming 96 (2003) 33–60 (rows from choices that do not do). Authors and years from memory.
 *
 * @param boards what to buy, in the order in which they were given
 * @param chance that they give the area, 0 to 1
 * @param cost   of all of them, in the measure of the search
 * @param least  no choice that will do costs less
 */
public record Purchase(List<PricedBoard> boards, double chance, double cost, double least) {

    /** Rows from choices that do not do, and steps of branching for each. */
    private static final int ROUNDS = 300;
    private static final int NODES = 400;

    /** Beyond so many boards there are too many choices to look at all, and fewer rounds are made. */
    private static final int FEW = 16;
    private static final int FEWER_ROUNDS = 12;

    /** t·A in the rows by Chernoff. */
    private static final double[] TILTS = {0.25, 0.5, 1, 2, 4, 8, 16, 32, 64};

    public Purchase {
        boards = List.copyOf(boards);
    }

    /** Share of the cost that another choice might save, at most: 0 to 1. */
    public double gap() {
        return cost > 0 ? Math.max(0, (cost - least) / cost) : 0;
    }

    /**
     * Finds it.
     *
     * @param offered boards to choose from
     * @param cost    of each, none below zero
     * @param wanted  finished area (mm²), above zero
     * @param sure    0 to 1
     * @return empty if even all boards are not sure enough
     */
    static Optional<Purchase> of(List<PricedBoard> offered, double[] cost, double wanted, double sure) {
        return new Search(offered, cost, wanted, sure).found();
    }

    private static final class Search {

        private final List<PricedBoard> offered;
        private final double[] cost;
        private final AreaOdds odds;
        private final double sure;
        private final double[] part;
        private final double[] chance;
        private boolean[] best;
        private double bestCost;

        Search(List<PricedBoard> offered, double[] cost, double wanted, double sure) {
            this.offered = offered;
            // Nothing is quite free, or the number of free boards would not matter.
            double little = Math.max(1e-9, Arrays.stream(cost).sum() * 1e-9) / cost.length;
            this.cost = Arrays.stream(cost).map(c -> c + little).toArray();
            this.sure = sure;
            this.chance = offered.stream().mapToDouble(PricedBoard::makesIt).toArray();
            this.odds = new AreaOdds(offered.stream().mapToDouble(PricedBoard::finishedArea).toArray(), chance, wanted);
            this.part = offered.stream().mapToDouble(board -> Math.min(1, board.finishedArea() / wanted)).toArray();
        }

        Optional<Purchase> found() {
            boolean[] all = new boolean[cost.length];
            Arrays.fill(all, true);
            if (odds.of(all) < sure) {
                return Optional.empty();
            }
            offer(all);
            offer(new boolean[cost.length]);
            BoardChoice choice = new BoardChoice(cost);
            choice.add(weights(j -> chance[j] * part[j]), sure);
            for (double t : TILTS) {
                choice.add(weights(j -> Math.log1p(chance[j] * Math.expm1(t * part[j]))), t + Math.log(sure));
            }
            double least = 0;
            for (int round = 0; round < (cost.length <= FEW ? ROUNDS : FEWER_ROUNDS); round++) {
                BoardChoice.Bound bound = choice.least(bestCost, NODES);
                least = Math.max(least, bound.bound());
                if (bound.boards().isEmpty()) {
                    break;
                }
                boolean[] some = new boolean[cost.length];
                bound.boards().forEach(j -> some[j] = true);
                offer(some);
                if (odds.of(some) >= sure) {
                    break;
                }
                boolean[] filled = filled(some);
                choice.add(weights(j -> filled[j] ? 0 : 1), 1);
            }
            List<PricedBoard> bought = IntStream.range(0, best.length).filter(j -> best[j]).mapToObj(offered::get)
                .toList();
            return Optional.of(new Purchase(bought, odds.of(best), bestCost, Math.min(bestCost, least)));
        }

        private double[] weights(IntToDoubleFunction weight) {
            return IntStream.range(0, cost.length).mapToDouble(weight).toArray();
        }

        /** All that can be added without its being enough, the cheapest first: what is left out must be bought from. */
        private boolean[] filled(boolean[] some) {
            boolean[] filled = some.clone();
            byWeight(j -> cost[j]).forEach(j -> {
                if (!filled[j]) {
                    filled[j] = true;
                    filled[j] = odds.of(filled) < sure;
                }
            });
            return filled;
        }

        private List<Integer> byWeight(IntToDoubleFunction weight) {
            return IntStream.range(0, cost.length).boxed().sorted(Comparator.comparingDouble(weight::applyAsDouble))
                .toList();
        }

        /** Makes an answer of a choice: filled up until it will do, and nothing in it that can be spared. */
        private void offer(boolean[] some) {
            boolean[] kept = some.clone();
            for (int j : byWeight(j -> cost[j] / Math.max(1e-12, chance[j] * part[j]))) {
                if (odds.of(kept) >= sure) {
                    break;
                }
                kept[j] = true;
            }
            List<Integer> dearest = new ArrayList<>(byWeight(j -> -cost[j]));
            dearest.forEach(j -> {
                if (kept[j]) {
                    kept[j] = false;
                    kept[j] = odds.of(kept) < sure;
                }
            });
            exchange(kept);
            double sum = total(kept);
            if (best == null || sum < bestCost) {
                best = kept;
                bestCost = sum;
            }
        }

        /** One board for a cheaper one, as long as that will do. */
        private void exchange(boolean[] kept) {
            for (int out : byWeight(j -> -cost[j])) {
                for (int in : kept[out] ? byWeight(j -> cost[j]) : List.<Integer>of()) {
                    if (cost[in] >= cost[out]) {
                        break;
                    }
                    if (!kept[in]) {
                        kept[out] = false;
                        kept[in] = true;
                        if (odds.of(kept) >= sure) {
                            break;
                        }
                        kept[out] = true;
                        kept[in] = false;
                    }
                }
            }
        }

        private double total(boolean[] some) {
            return IntStream.range(0, some.length).filter(j -> some[j]).mapToDouble(j -> cost[j]).sum();
        }
    }
}
