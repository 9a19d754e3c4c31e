package outwind.stock;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * A bill cut from one board after the other, each as well as it can be cut for what is then left of the bill: what
 * anybody would do by hand. No board is cut to more than is left, so that none can be spared. {@link BillSearch} starts
 * from it, so that a stack is never cut worse than that.
 */
final class OneByOne {

    /** With more boards than this, each is searched less long. */
    private static final int FEW = 12;

    private final List<? extends Yield> boards;
    private final double[] cost;
    private final int[] wanted;
    private final double[] worth;
    private final List<Yield.Pattern> alone;

    /**
     * @param cost   of each board
     * @param wanted how many blanks of each item
     * @param worth  of a blank of each item
     */
    OneByOne(List<? extends Yield> boards, double[] cost, int[] wanted, double[] worth) {
        this.boards = boards;
        this.cost = cost.clone();
        this.wanted = wanted.clone();
        this.worth = worth.clone();
        this.alone = boards.parallelStream().map(board -> cut(board, wanted)).toList();
    }

    private Yield.Pattern cut(Yield board, int[] left) {
        return board.own(left, worth, boards.size() <= FEW);
    }

    /** The cheapest way found to meet the whole bill. */
    Optional<Map<Integer, Yield.Pattern>> cheapest() {
        return orders().parallelStream().map(this::cutIn).filter(taken -> missed(taken) == 0)
            .min(Comparator.comparingDouble(this::cost));
    }

    /** The way found that cuts most of the bill, by its worth. */
    Map<Integer, Yield.Pattern> most() {
        return orders().parallelStream().map(this::cutIn).min(Comparator.comparingDouble(this::missed))
            .orElseThrow();
    }

    /** As the boards were given, the cheapest first, those that give most first, and those that give most for money. */
    private List<int[]> orders() {
        return List.of(all(), by(j -> cost[j]), by(j -> -alone.get(j).worth(worth)),
            by(j -> cost[j] / Math.max(1e-9, alone.get(j).worth(worth))));
    }

    private int[] all() {
        return IntStream.range(0, boards.size()).toArray();
    }

    private int[] by(IntToDoubleFunction rank) {
        return IntStream.range(0, boards.size()).boxed().sorted(Comparator.comparingDouble(rank::applyAsDouble))
            .mapToInt(Integer::intValue).toArray();
    }

    private Map<Integer, Yield.Pattern> cutIn(int[] order) {
        int[] left = wanted.clone();
        Map<Integer, Yield.Pattern> taken = new TreeMap<>();
        for (int j : order) {
            if (Arrays.stream(left).sum() == 0) {
                break;
            }
            Yield.Pattern pattern = taken.isEmpty() ? alone.get(j) : cut(boards.get(j), left);
            if (!pattern.spots().isEmpty()) {
                taken.put(j, pattern);
                Arrays.setAll(left, i -> Math.max(0, left[i] - pattern.counts()[i]));
            }
        }
        return taken;
    }

    /** What the blanks are worth that do not come out. */
    double missed(Map<Integer, Yield.Pattern> taken) {
        int[] left = wanted.clone();
        taken.values().forEach(pattern -> Arrays.setAll(left, i -> Math.max(0, left[i] - pattern.counts()[i])));
        return IntStream.range(0, left.length).mapToDouble(i -> worth[i] * left[i]).sum();
    }

    private double cost(Map<Integer, Yield.Pattern> taken) {
        return taken.keySet().stream().mapToDouble(j -> cost[j]).sum();
    }
}
