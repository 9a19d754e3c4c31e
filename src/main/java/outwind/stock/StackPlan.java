package outwind.stock;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import outwind.blanks.BlankPlaces;
import outwind.blanks.BlankPlan;
import outwind.blanks.Layout;
import outwind.blanks.Saw;
import outwind.blanks.Stops;
import outwind.blanks.TwoStage;
import outwind.board.Board;
import outwind.board.CuttingBill;

/**
 * A cutting bill against a stack: which boards to buy and what to cut each into, so that the bill is met at least cost.
 *
 * <p>A blank counts, once it is sure enough of its thickness, as one. Where the whole stack does not yield the bill,
 * the most valuable part of it that was found to come out is met instead, again at least cost. Where some board has no
 * price, rough wood is counted instead of money. Bounds hold for blanks at the stops that are tried (see
 * {@link Stops}) and for two stages of cuts; see {@link BillSearch} for the mathematics.
 *
 * @param bill    what is wanted
 * @param sure    chance of its thickness from which on a blank counts, 0 to 1
 * @param offered how many boards there are to choose from
 * @param cuts    the boards that are used, in the order in which they were given
 * @param measure what a choice of boards costs
 * @param least   no choice that yields as much costs less: money, to the cent, or rough wood (mm³)
 * @param missing for each item of the bill why fewer come out than wanted; empty where all do
 * @param more    share of the bill's worth that might come out of the stack beside, at most; zero where the bill is met
 *                or what is missing is known not to come out
 */
public record StackPlan(CuttingBill bill, double sure, int offered, List<BoardCut> cuts, Measure measure,
        BigDecimal least, List<Optional<BlankPlan.Missing>> missing, double more) {

    /** What a choice of boards costs. */
    public enum Measure {
        /** Boards, and cutting them where a shop rate is known. */
        MONEY,
        /** Rough wood (mm³), because not every board has a price. */
        ROUGH_WOOD
    }

    /**
     * A board to choose from.
     *
     * @param measured as read
     * @param priced   what it costs
     * @param saw      how it would be cut
     * @param skim     least depth to come off each face (mm)
     */
    public record Candidate(Board measured, PricedBoard priced, Saw saw, double skim) { }

    /**
     * A board that is used.
     *
     * @param board  as measured from the bed
     * @param priced what it costs
     * @param saw    how it is cut
     * @param layout where to cut it
     */
    public record BoardCut(Board board, PricedBoard priced, Saw saw, Layout layout) { }

    public StackPlan {
        cuts = List.copyOf(cuts);
        missing = List.copyOf(missing);
    }

    /**
     * Plans a stack.
     *
     * @param stack at least one board
     * @param sure  0.5 to 1
     * @throws IllegalArgumentException if {@code sure} is out of range or the end trim leaves nothing of a board
     */
    public static StackPlan of(List<Candidate> stack, CuttingBill bill, double sure, long seed) {
        BlankPlan.requireSure(sure);
        stack.forEach(board -> board.saw.usable(board.measured));
        List<BlankPlaces> places = stack.parallelStream().map(board ->
            BlankPlaces.of(board.measured, bill, board.saw, sure, sure, board.skim, seed).counted()).toList();
        List<BoardYield> yields = places.parallelStream().map(BoardYield::new).toList();
        Measure measure = stack.stream().allMatch(board -> board.priced.wood().isPresent())
            && stack.stream().anyMatch(board -> board.priced.wood().get().signum() > 0)
            ? Measure.MONEY : Measure.ROUGH_WOOD;
        double[] cost = stack.stream().mapToDouble(board -> cost(board.priced, measure).doubleValue()).toArray();
        int[] wanted = bill.quantities();
        int[] possible = IntStream.range(0, wanted.length).map(i ->
            places.stream().anyMatch(board -> board.takes(i)) ? wanted[i] : 0).toArray();

        Found found = found(yields, cost, possible, bill.areas(), bill.worths());
        List<BoardCut> first = found.patterns.entrySet().parallelStream().map(entry -> {
            BlankPlaces board = places.get(entry.getKey());
            Yield.Pattern pattern = entry.getValue();
            double value = pattern.spots().size();
            return new BoardCut(board.board(), stack.get(entry.getKey()).priced, board.saw(),
                board.layout(new TwoStage.Cutting(pattern.spots(), value, value), pattern.order()));
        }).toList();
        List<BoardCut> cuts = recut(first, found.patterns.keySet().stream().map(places::get).toList(), wanted);
        return new StackPlan(bill, sure, stack.size(), cuts, measure, least(found.bound, cuts, measure),
            BlankPlan.Missing.of(bill, item -> cut(item, cuts), places),
            Math.max(0, found.more - worth(cuts, bill) + worth(first, bill)) / bill.worth());
    }

    /** The boards with what is still missing cut out of their offcuts, board after board, where the saw cuts those again. */
    private static List<BoardCut> recut(List<BoardCut> first, List<BlankPlaces> places, int[] wanted) {
        int[] left = wanted.clone();
        Arrays.setAll(left, i -> left[i] - cut(i, first));
        List<BoardCut> cuts = new ArrayList<>();
        for (int j = 0; j < first.size(); j++) {
            BoardCut cut = first.get(j);
            Layout layout = places.get(j).recut(cut.layout, left);
            Arrays.setAll(left, i -> left[i] - layout.count(i) + cut.layout.count(i));
            cuts.add(new BoardCut(cut.board, cut.priced, cut.saw, layout));
        }
        return cuts;
    }

    /** What the search found; {@code more} is what the blanks are worth that might come out beside, at most. */
    record Found(Map<Integer, Yield.Pattern> patterns, double bound, double more) { }

    static Found found(List<? extends Yield> boards, double[] cost, int[] wanted, double[] areas, double[] worth) {
        if (Arrays.stream(wanted).sum() == 0) {
            return new Found(Map.of(), 0, 0);
        }
        Optional<Found> proven = SmallStack.of(boards, wanted, areas)
            .flatMap(small -> proven(small, cost, wanted, worth));
        if (proven.isPresent()) {
            return proven.get();
        }
        OneByOne byHand = new OneByOne(boards, cost, wanted, worth);
        Optional<BillSearch.Answer> all = BillSearch.cheapest(boards, cost, wanted, areas, byHand.cheapest());
        if (all.isPresent()) {
            return new Found(trimmed(all.get().patterns(), wanted), all.get().bound(), 0);
        }
        BillSearch.Answer searched = BillSearch.most(boards, wanted, worth);
        Map<Integer, Yield.Pattern> cutByHand = byHand.most();
        BillSearch.Answer most = byHand.missed(cutByHand) < byHand.missed(searched.patterns())
            ? new BillSearch.Answer(cutByHand, searched.bound()) : searched;
        int[] got = new int[wanted.length];
        most.patterns().values().forEach(pattern -> Arrays.setAll(got, i -> got[i] + pattern.counts()[i]));
        Arrays.setAll(got, i -> Math.min(wanted[i], got[i]));
        double missed = IntStream.range(0, got.length).mapToDouble(i -> worth[i] * (wanted[i] - got[i])).sum();
        double more = Math.max(0, missed - most.bound());
        if (Arrays.stream(got).sum() == 0) {
            return new Found(Map.of(), 0, more);
        }
        BillSearch.Answer part = BillSearch.cheapest(boards, cost, got, areas, Optional.of(most.patterns()))
            .orElseThrow();
        return new Found(trimmed(part.patterns(), got), part.bound(), more);
    }

    /** The cheapest of all ways to cut as much of the bill as comes out; empty where there are too many to look at. */
    private static Optional<Found> proven(SmallStack small, double[] cost, int[] wanted, double[] worth) {
        return small.most(worth).flatMap(most -> {
            int[] got = wanted.clone();
            Arrays.setAll(got, i -> wanted[i] - most.left()[i]);
            if (Arrays.stream(got).sum() == 0) {
                return Optional.of(new Found(Map.of(), 0, 0));
            }
            return small.cheapest(got, cost).map(patterns -> new Found(trimmed(patterns, got),
                patterns.keySet().stream().mapToDouble(j -> cost[j]).sum(), 0));
        });
    }

    /** The patterns without the blanks that nobody wants; boards left without any are left out. */
    private static Map<Integer, Yield.Pattern> trimmed(Map<Integer, Yield.Pattern> patterns, int[] wanted) {
        int[] left = wanted.clone();
        Map<Integer, Yield.Pattern> trimmed = new TreeMap<>();
        patterns.forEach((board, pattern) -> {
            Yield.Pattern kept = pattern.atMost(left);
            if (!kept.spots().isEmpty()) {
                trimmed.put(board, kept);
                Arrays.setAll(left, i -> left[i] - kept.counts()[i]);
            }
        });
        return trimmed;
    }

    private static BigDecimal cost(PricedBoard board, Measure measure) {
        return measure == Measure.MONEY ? board.wood().orElseThrow() : BigDecimal.valueOf(board.roughVolume());
    }

    /** The bound on what all boards cost; whole cents where it is money, as every cost is. */
    private static BigDecimal least(double bound, List<BoardCut> cuts, Measure measure) {
        BigDecimal cost = cost(cuts, measure);
        // A bound is known to a millionth of a cent; what is beyond a whole cent by less is that cent.
        BigDecimal least = BigDecimal.valueOf(bound);
        return (measure == Measure.MONEY ? least.subtract(new BigDecimal("0.00001")).max(BigDecimal.ZERO)
            .setScale(2, RoundingMode.CEILING) : least).min(cost);
    }

    private static BigDecimal cost(List<BoardCut> cuts, Measure measure) {
        return cuts.stream().map(cut -> cost(cut.priced, measure)).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static int cut(int item, List<BoardCut> cuts) {
        return cuts.stream().mapToInt(cut -> cut.layout.count(item)).sum();
    }

    private static double worth(List<BoardCut> cuts, CuttingBill bill) {
        double[] worths = bill.worths();
        return IntStream.range(0, worths.length).mapToDouble(i -> worths[i] * cut(i, cuts)).sum();
    }

    /** Whether offcuts are cut again: what is said of other choices then holds for two stages of cuts alone. */
    public boolean recuts() {
        return cuts.stream().anyMatch(cut -> cut.saw.recuts());
    }

    /** How many blanks of an item come out. */
    public int cut(int item) {
        return cut(item, cuts);
    }

    /** How many blanks come out in all. */
    public int cut() {
        return cuts.stream().mapToInt(cut -> cut.layout.blanks().size()).sum();
    }

    /** True if every blank of the bill comes out. */
    public boolean isMet() {
        return cut() == bill.wanted();
    }

    /** True if it is known that the stack does not yield the whole bill. */
    public boolean isProvenShort() {
        int[] wanted = bill.quantities();
        double[] worths = bill.worths();
        double missed = IntStream.range(0, wanted.length).mapToDouble(i -> (wanted[i] - cut(i)) * worths[i]).sum();
        return !recuts() && more < missed / bill.worth() * (1 - 1e-6);
    }

    /** What the boards that are used cost: money for their wood, or rough wood (mm³). */
    public BigDecimal cost() {
        return cost(cuts, measure);
    }

    /** Share of the cost that another choice might save, at most: 0 to 1. */
    public double gap() {
        double cost = cost().doubleValue();
        return cost > 0 ? (cost - least.doubleValue()) / cost : 0;
    }
}
