package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import outwind.blanks.CutOrder;
import outwind.blanks.TwoStage;

/** A board that can be cut in the ways of a list and no other, each by how many blanks of each item come out. */
record ListedBoard(List<int[]> ways) implements Yield {

    static ListedBoard of(int[]... ways) {
        return new ListedBoard(List.of(ways));
    }

    static ListedBoard random(SplittableRandom random, int items, int ways, int most) {
        return new ListedBoard(IntStream.range(0, ways).mapToObj(w ->
            IntStream.range(0, items).map(i -> random.nextInt(most + 1)).toArray()).toList());
    }

    static Pattern pattern(int... counts) {
        List<Integer> items = IntStream.range(0, counts.length).boxed()
            .flatMap(i -> IntStream.range(0, counts[i]).mapToObj(k -> i)).toList();
        return Pattern.of(CutOrder.RIP_FIRST, IntStream.range(0, items.size()).mapToObj(s ->
            new TwoStage.Spot(items.get(s), 0, s, 1)).toList(), items, counts.length);
    }

    private static int[] least(int[] some, int[] others) {
        return IntStream.range(0, some.length).map(i -> Math.min(some[i], others[i])).toArray();
    }

    private List<Pattern> within(int[] wanted) {
        List<Pattern> within = new ArrayList<>(List.of(pattern(new int[wanted.length])));
        ways.forEach(way -> within.add(pattern(least(way, wanted))));
        return within;
    }

    @Override
    public Offer best(double[] prices, int[] wanted, int steps) {
        Pattern best = within(wanted).stream().max(Comparator.comparingDouble(p -> p.worth(prices))).orElseThrow();
        return new Offer(best, best.worth(prices));
    }

    @Override
    public Pattern own(int[] wanted, double[] worth, boolean whole) {
        return best(worth, wanted, 0).pattern();
    }

    @Override
    public Optional<Pattern> whole(int[] wanted) {
        return within(wanted).stream().filter(p -> Arrays.equals(p.counts(), wanted)).findFirst();
    }

    @Override
    public Optional<List<Pattern>> every(int[] wanted) {
        return Optional.of(within(wanted));
    }

    /** What the cheapest choice costs, by trying every way of every board after every other; empty if none will do. */
    static OptionalDouble leastCost(List<ListedBoard> boards, double[] cost, int[] wanted) {
        return ends(boards, cost, wanted).entrySet().stream()
            .filter(end -> end.getKey().stream().allMatch(left -> left == 0)).mapToDouble(Map.Entry::getValue).min();
    }

    /** What the blanks are worth that must be missing at the least, in the same manner. */
    static double leastMissed(List<ListedBoard> boards, int[] wanted, double[] worth) {
        return ends(boards, new double[boards.size()], wanted).keySet().stream().mapToDouble(left ->
            IntStream.range(0, worth.length).mapToDouble(i -> worth[i] * left.get(i)).sum()).min().orElseThrow();
    }

    private static Map<List<Integer>, Double> ends(List<ListedBoard> boards, double[] cost, int[] wanted) {
        Map<List<Integer>, Double> ends = new HashMap<>();
        ends.put(Arrays.stream(wanted).boxed().toList(), 0.0);
        for (int j = 0; j < boards.size(); j++) {
            Map<List<Integer>, Double> next = new HashMap<>(ends);
            for (int[] way : boards.get(j).ways) {
                double more = cost[j];
                ends.forEach((left, spent) -> next.merge(IntStream.range(0, wanted.length)
                    .mapToObj(i -> Math.max(0, left.get(i) - way[i])).toList(), spent + more, Math::min));
            }
            ends = next;
        }
        return ends;
    }

    /** What is left of a bill, by the ways that some boards are cut; fails where a board has no such way. */
    static int[] left(List<ListedBoard> boards, int[] wanted, Map<Integer, Pattern> cut) {
        int[] left = wanted.clone();
        cut.forEach((j, pattern) -> {
            if (boards.get(j).ways.stream().noneMatch(way -> EveryPattern.hasAll(way, pattern.counts()))) {
                throw new AssertionError("board " + j + " has no way to " + Arrays.toString(pattern.counts()));
            }
            Arrays.setAll(left, i -> Math.max(0, left[i] - pattern.counts()[i]));
        });
        return left;
    }
}
