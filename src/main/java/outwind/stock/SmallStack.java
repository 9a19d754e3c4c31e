package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * The cheapest way to meet a bill from a few boards, proven: every choice of boards is looked at, the cheapest first,
 * and for each every way to cut them.
 *
 * <pre>
 *   left after board j = max(0, left before − pattern),  all patterns, all that may be left; less left is better
 *   may still be met:   Σ_i π_i·left_i ≤ Σ_(boards to come) max_p Σ_i π_i·pattern_i      for any prices π ≥ 0
 * </pre>
 * The second line drops what the boards to come cannot make good. It is looked at for each item alone, for areas, and
 * for areas against one item after the other.
 */
final class SmallStack {

    /** More boards have too many choices. */
    static final int MOST_BOARDS = 7;

    /** What may be left after a board, at most, before the search gives up. */
    private static final int MOST_LEFT = 4000;

    private final List<List<Yield.Pattern>> patterns;
    private final int[] wanted;
    private final double[][] prices;
    private final double[][] most;

    /** What is still to be cut when some boards are, and how they were. */
    private record Left(int[] counts, Left before, int board, Yield.Pattern pattern) { }

    private static final class TooMany extends Exception {

        private static final long serialVersionUID = 1;
    }

    private SmallStack(List<List<Yield.Pattern>> patterns, int[] wanted, double[] areas) {
        this.patterns = patterns;
        this.wanted = wanted.clone();
        this.prices = prices(areas);
        this.most = new double[prices.length][patterns.size()];
        for (int r = 0; r < prices.length; r++) {
            for (int j = 0; j < patterns.size(); j++) {
                for (Yield.Pattern pattern : patterns.get(j)) {
                    most[r][j] = Math.max(most[r][j], pattern.worth(prices[r]));
                }
            }
        }
    }

    private static double[][] prices(double[] areas) {
        List<double[]> prices = new ArrayList<>(List.of(areas.clone()));
        for (int i = 0; i < areas.length; i++) {
            double[] alone = new double[areas.length];
            alone[i] = areas[i];
            prices.add(alone);
            double[] twice = areas.clone();
            twice[i] *= 2;
            prices.add(twice);
            double[] without = areas.clone();
            without[i] = 0;
            prices.add(without);
        }
        return prices.toArray(double[][]::new);
    }

    /**
     * Lists every way to cut each board.
     *
     * @param areas of a blank of each item (mm²)
     * @return empty if there are too many boards, or too many ways to cut them
     */
    static Optional<SmallStack> of(List<? extends Yield> boards, int[] wanted, double[] areas) {
        if (boards.size() > MOST_BOARDS) {
            return Optional.empty();
        }
        List<Optional<List<Yield.Pattern>>> every = boards.parallelStream().map(board -> board.every(wanted)).toList();
        return every.stream().allMatch(Optional::isPresent)
            ? Optional.of(new SmallStack(every.stream().map(Optional::get).toList(), wanted, areas))
            : Optional.empty();
    }

    /** What to cut, and what is short. */
    record Best(Map<Integer, Yield.Pattern> patterns, int[] left) { }

    /**
     * The cheapest choice that cuts a bill, each board cut as it need be.
     *
     * @param need at most what the stack was listed for
     * @param cost of each board
     * @return no patterns if no choice does; empty if there are too many ways to look at
     */
    Optional<Map<Integer, Yield.Pattern>> cheapest(int[] need, double[] cost) {
        List<int[]> choices = IntStream.range(1, 1 << patterns.size())
            .mapToObj(bits -> IntStream.range(0, patterns.size()).filter(j -> (bits >> j & 1) == 1).toArray())
            .sorted(Comparator.comparingDouble((int[] some) -> Arrays.stream(some).mapToDouble(j -> cost[j]).sum())
                .thenComparingInt(some -> some.length)).toList();
        try {
            for (int[] some : choices) {
                for (Left left : after(need, some, true)) {
                    if (Arrays.stream(left.counts).sum() == 0) {
                        return Optional.of(taken(left));
                    }
                }
            }
            return Optional.of(Map.of());
        } catch (TooMany tooMany) {
            return Optional.empty();
        }
    }

    /**
     * As much of the bill as all boards together yield.
     *
     * @param worth of a blank of each item
     */
    Optional<Best> most(double[] worth) {
        try {
            Left best = after(wanted, IntStream.range(0, patterns.size()).toArray(), false).stream()
                .min(Comparator.comparingDouble(left -> IntStream.range(0, worth.length)
                    .mapToDouble(i -> worth[i] * left.counts[i]).sum())).orElseThrow();
            return Optional.of(new Best(taken(best), best.counts));
        } catch (TooMany tooMany) {
            return Optional.empty();
        }
    }

    /** All that may be left when some boards are cut. */
    private List<Left> after(int[] need, int[] some, boolean whole) throws TooMany {
        List<Left> now = List.of(new Left(need, null, -1, null));
        for (int k = 0; k < some.length; k++) {
            List<Left> next = new ArrayList<>();
            for (Left left : now) {
                for (Yield.Pattern pattern : patterns.get(some[k])) {
                    int[] counts = new int[need.length];
                    Arrays.setAll(counts, i -> Math.max(0, left.counts[i] - pattern.counts()[i]));
                    if (!whole || mayBeMet(counts, some, k + 1)) {
                        keep(next, new Left(counts, left, some[k], pattern));
                    }
                }
            }
            if (next.size() > MOST_LEFT) {
                throw new TooMany();
            }
            now = next;
        }
        return now;
    }

    private boolean mayBeMet(int[] left, int[] some, int from) {
        for (int r = 0; r < prices.length; r++) {
            double owed = 0;
            for (int i = 0; i < left.length; i++) {
                owed += prices[r][i] * left[i];
            }
            double slack = 1e-9 * owed;
            for (int k = from; k < some.length; k++) {
                owed -= most[r][some[k]];
            }
            if (owed > slack) {
                return false;
            }
        }
        return true;
    }

    private static void keep(List<Left> all, Left left) {
        for (Left other : all) {
            if (EveryPattern.hasAll(left.counts, other.counts)) {
                return;
            }
        }
        all.removeIf(other -> EveryPattern.hasAll(other.counts, left.counts));
        all.add(left);
    }

    private static Map<Integer, Yield.Pattern> taken(Left last) {
        Map<Integer, Yield.Pattern> taken = new TreeMap<>();
        for (Left left = last; left.before != null; left = left.before) {
            taken.put(left.board, left.pattern);
        }
        return taken;
    }
}
