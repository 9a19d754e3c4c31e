package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import outwind.numeric.CoveringProgram;

/**
 * Which boards to cut into what, so that a bill is met at least cost.
 *
 * <pre>
 *   minimise    Σ_jp c_j·x_jp + Σ_i m_i·short_i
 *   subject to  Σ_jp a_ijp·x_jp + short_i ≥ d_i,   Σ_p x_jp ≤ 1 for each board j,   x in {0, 1}
 * </pre>
 * There are far too many patterns p to list, so they are made where they help:
 * <ol>
 * <li>The linear relaxation over the patterns at hand gives prices π of the items; each board's best pattern at prices
 *     near these joins, until no pattern would gain. Prices lie between those of the programme and the best so far,
 *     which steadies them.
 * <li>Whatever the prices, {@code Σ π_i·d_i − Σ_j max(0, v_j(π) − c_j)} is a lower bound, where no pattern of board j
 *     within the quantities is worth more than v_j(π): the pricing programme's own upper bound, so that the bound holds
 *     even where that programme is not solved to the end. {@link BoardChoice} draws a closer one from the same v_j.
 * <li>The cheapest choice of boards by all bounds so far is looked into: its own prices may show that it does not do,
 *     which joins the bounds.
 * <li>Diving makes answers: what the relaxation takes most of is taken whole, and the rest is relaxed again; first from
 *     all boards, then from the cheapest choices that have something to spare. While some of the bill is short, a
 *     few boards at a time are given up and made again.
 * </ol>
 * Everything is counted, nothing timed, so the same input gives the same answer everywhere.
 *
 * <p>Sources: P. C. Gilmore, R. E. Gomory, Operations Research 9 (1961) 849–859 (column generation); A. A. Farley,
 * Operations Research 38 (1990) 922–923 (bounds on the way); P. Wentges, Int. Trans. Opl Res. 4 (1997) 151–162
 * (prices between two). Authors and years from memory.
 */
final class BillSearch {

    /** Rounds of pricing, steps of each one's relaxation of quantities, and how near the two bounds must come. */
    private static final int ROUNDS = 120;
    private static final int STEPS = 10;
    private static final double CLOSE = 5e-4;

    /** Share of the best prices so far in those that are tried. */
    private static final double STEADY = 0.6;

    /** Boards that are priced sooner one after the other than by several cores. */
    private static final int FEW = 6;

    private static final int DIVE_ROUNDS = 3;
    private static final int DIVE_STEPS = 3;

    /** Choices of boards that are looked into for the bound, and steps of branching for each. */
    private static final int CHOICES = 12;
    private static final int NODES = 1500;

    /** Share that boards are to yield beyond the bill where an answer is looked for: from nothing up in such steps. */
    private static final double SPARE = 0.0025;
    private static final double MOST_SPARE = 0.12;

    /** Times that a part of such an answer is made again, over the number of its boards, and how many boards of it. */
    private static final int REPAIRS = 9000;
    private static final double UNLIKE = 0.3;

    /** Parts that are made again beside each other, on any machine, so that all find the same; the best one is kept. */
    private static final int AT_ONCE = 2;

    private static final int FEWEST_AGAIN = 2;
    private static final int MOST_AGAIN = 6;

    /** Pricing rounds in which a choice of boards is to be shown not to do. */
    private static final int REFUTING = 30;

    private final List<Yield> boards;
    private final double[] cost;
    private final int[] wanted;
    private final double[] penalty;
    private final BoardChoice choice;
    private final List<List<Yield.Pattern>> known = new ArrayList<>();

    private double[] steady;
    private double lagrange = Double.NEGATIVE_INFINITY;
    private double bound;
    private Map<Integer, Yield.Pattern> best;
    private double bestCost = Double.POSITIVE_INFINITY;

    /**
     * @param patterns what to cut each board into, by its number
     * @param bound    no answer costs less
     */
    record Answer(Map<Integer, Yield.Pattern> patterns, double bound) { }

    private BillSearch(List<? extends Yield> boards, double[] cost, int[] wanted, double[] penalty) {
        this.boards = List.copyOf(boards);
        this.cost = cost.clone();
        this.wanted = wanted.clone();
        this.penalty = penalty.clone();
        this.choice = new BoardChoice(cost);
        boards.forEach(board -> known.add(new ArrayList<>()));
        this.steady = new double[wanted.length];
    }

    /**
     * The cheapest way found to meet a bill.
     *
     * @param cost   of each board, none below zero, not all zero
     * @param wanted how many blanks of each item, not all zero
     * @param areas  of a blank of each item (mm²)
     * @param first  a way that is known, perhaps none
     * @return empty if no way to meet the whole bill is known
     */
    static Optional<Answer> cheapest(List<? extends Yield> boards, double[] cost, int[] wanted, double[] areas,
            Optional<Map<Integer, Yield.Pattern>> first) {
        // A bill that is left out whole costs more than ten times the stack.
        double perArea = 10 * Arrays.stream(cost).sum() / sum(areas, wanted);
        BillSearch search = new BillSearch(boards, cost, wanted, Arrays.stream(areas).map(a -> a * perArea).toArray());
        search.steady = search.firstPrices(areas);
        first.ifPresent(patterns -> search.offer(patterns, new int[wanted.length]));
        search.relax();
        search.serve(search.all(), 0, 0);
        search.choose();
        return Optional.ofNullable(search.best).map(best -> new Answer(best, Math.min(search.bound, search.bestCost)));
    }

    /**
     * The most of a bill that was found to come out of all boards, whatever they cost.
     *
     * @param worth of a blank of each item, above zero
     * @return the patterns, and what the blanks that are missing are worth at the least
     */
    static Answer most(List<? extends Yield> boards, int[] wanted, double[] worth) {
        BillSearch search = new BillSearch(boards, new double[boards.size()], wanted, worth);
        search.relax();
        // Once no more is short than the bound proves, no other way to cut misses less.
        return new Answer(search.serve(search.all(), REPAIRS / boards.size(), search.bound * (1 + 1e-9)), search.bound);
    }

    private static double sum(double[] each, int[] counts) {
        return IntStream.range(0, counts.length).mapToDouble(i -> each[i] * counts[i]).sum();
    }

    /** Every item's price by its area, at what wood costs in the boards that yield most for their cost. */
    private double[] firstPrices(double[] areas) {
        double area = sum(areas, wanted);
        List<Yield.Offer> offers = priced(areas, wanted, all(), STEPS);
        int[] order = IntStream.range(0, boards.size()).boxed()
            .sorted(Comparator.comparingDouble(j -> cost[j] / Math.max(1e-9, offers.get(j).pattern().worth(areas))))
            .mapToInt(Integer::intValue).toArray();
        double covered = 0;
        double rate = 0;
        for (int j : order) {
            double yield = offers.get(j).pattern().worth(areas);
            if (covered >= area || yield <= 0) {
                break;
            }
            covered += yield;
            rate = cost[j] / yield;
        }
        double last = rate;
        return Arrays.stream(areas).map(a -> a * last).toArray();
    }

    private int[] all() {
        return IntStream.range(0, boards.size()).toArray();
    }

    /** The best pattern of each of some boards, in their order; kept for later. */
    private List<Yield.Offer> priced(double[] prices, int[] most, int[] some, int steps) {
        IntStream each = Arrays.stream(some);
        List<Yield.Offer> offers = (some.length > FEW ? each.parallel() : each)
            .mapToObj(j -> boards.get(j).best(prices, most, steps)).toList();
        for (int k = 0; k < some.length; k++) {
            Yield.Pattern pattern = offers.get(k).pattern();
            if (known.get(some[k]).stream().noneMatch(old -> Arrays.equals(old.counts(), pattern.counts()))) {
                known.get(some[k]).add(pattern);
            }
        }
        return offers;
    }

    // The relaxation and its bound.

    private void relax() {
        CoveringProgram program = program(wanted, all(), penalty);
        int[] added = known.stream().mapToInt(List::size).toArray();
        for (int round = 0; round < ROUNDS; round++) {
            CoveringProgram.Solution solution = program.solve();
            if (solution.value() - lagrange <= CLOSE * solution.value() || hasNoAnswer()) {
                break;
            }
            double[] tried = new double[wanted.length];
            Arrays.setAll(tried, i -> STEADY * steady[i] + (1 - STEADY) * solution.prices()[i]);
            tighten(tried, priced(tried, wanted, all(), STEPS));
            boolean gains = add(program, added, solution);
            if (!gains) {
                // Prices in between found nothing that the programme lacks: ask at its own.
                tighten(solution.prices(), priced(solution.prices(), wanted, all(), 4 * STEPS));
                if (!add(program, added, solution)) {
                    break;
                }
            }
        }
        bound = Math.max(0, lagrange);
    }

    /** Draws the bound at some prices from what each board offers at them; the best prices so far are kept. */
    private void tighten(double[] prices, List<Yield.Offer> offers) {
        double[] most = offers.stream().mapToDouble(Yield.Offer::bound).toArray();
        double needed = sum(prices, wanted);
        choice.add(most, needed);
        double reached = needed;
        for (int j = 0; j < most.length; j++) {
            reached -= Math.max(0, most[j] - cost[j]);
        }
        if (reached > lagrange) {
            lagrange = reached;
            steady = prices.clone();
        }
    }

    private CoveringProgram program(int[] need, int[] some, double[] each) {
        CoveringProgram program = new CoveringProgram(Arrays.stream(need).asDoubleStream().toArray(), each,
            some.length);
        for (int k = 0; k < some.length; k++) {
            for (Yield.Pattern pattern : known.get(some[k])) {
                program.add(cost[some[k]], covers(pattern, need), k);
            }
        }
        return program;
    }

    private static double[] covers(Yield.Pattern pattern, int[] need) {
        return IntStream.range(0, need.length).mapToDouble(i -> Math.min(need[i], pattern.counts()[i])).toArray();
    }

    /** Adds the patterns that are new; true if one of them gains at the programme's own prices. */
    private boolean add(CoveringProgram program, int[] added, CoveringProgram.Solution solution) {
        boolean gains = false;
        for (int j = 0; j < added.length; j++) {
            for (; added[j] < known.get(j).size(); added[j]++) {
                Yield.Pattern pattern = known.get(j).get(added[j]);
                program.add(cost[j], covers(pattern, wanted), j);
                gains |= cost[j] - solution.groupCost()[j] - pattern.worth(solution.prices())
                    < -1e-7 * Math.max(1, cost[j]);
            }
        }
        return gains;
    }

    // Answers.

    /**
     * Takes pattern after pattern until nothing is left to cut or nothing more is to be had.
     *
     * @param need  what is to be cut; what is left of it when this returns
     * @param some  boards to cut it from
     * @param each  what one of each item counts as where it is short
     * @param taken what is taken joins this
     */
    private void dive(int[] need, int[] some, double[] each, Map<Integer, Yield.Pattern> taken) {
        int[] free = some.clone();
        boolean any = true;
        while (any && free.length > 0 && Arrays.stream(need).sum() > 0) {
            Relaxed relaxed = relaxed(need, free, each);
            double[] share = relaxed.solution.x();
            if (Arrays.stream(share).sum() < 1.5 && finish(need, free, taken)) {
                return;
            }
            List<Integer> whole = IntStream.range(0, share.length).filter(p -> share[p] > 0.99).boxed().toList();
            int most = IntStream.range(0, share.length).boxed().max(Comparator.comparingDouble(p -> share[p]))
                .orElseThrow();
            any = false;
            for (int p : whole.isEmpty() ? List.of(most) : whole) {
                any |= take(need, relaxed.owners.get(p), relaxed.patterns.get(p), taken);
            }
            free = Arrays.stream(free).filter(j -> !taken.containsKey(j)).toArray();
        }
    }

    private static boolean take(int[] left, int board, Yield.Pattern pattern, Map<Integer, Yield.Pattern> taken) {
        boolean any = false;
        for (int i = 0; i < left.length; i++) {
            any |= left[i] > 0 && pattern.counts()[i] > 0;
            left[i] = Math.max(0, left[i] - pattern.counts()[i]);
        }
        if (any) {
            taken.put(board, pattern);
        }
        return any;
    }

    /**
     * How much of each pattern at hand the relaxation takes.
     *
     * @param owners the board of each pattern
     */
    private record Relaxed(CoveringProgram.Solution solution, List<Integer> owners, List<Yield.Pattern> patterns) { }

    private Relaxed relaxed(int[] left, int[] free, double[] each) {
        Relaxed relaxed = overKnown(left, free, each);
        for (int round = 0; round < DIVE_ROUNDS && findsMore(relaxed.solution, left, free); round++) {
            relaxed = overKnown(left, free, each);
        }
        return relaxed;
    }

    private Relaxed overKnown(int[] left, int[] free, double[] each) {
        List<Integer> owners = new ArrayList<>();
        List<Yield.Pattern> patterns = new ArrayList<>();
        for (int j : free) {
            for (Yield.Pattern pattern : known.get(j)) {
                owners.add(j);
                patterns.add(pattern);
            }
        }
        return new Relaxed(program(left, free, each).solve(), owners, patterns);
    }

    /** Asks the boards at the prices of a solution; true if a pattern of one of them gains. */
    private boolean findsMore(CoveringProgram.Solution solution, int[] left, int[] free) {
        double[] prices = solution.prices();
        double[] limits = solution.groupCost();
        List<Yield.Offer> offers = priced(prices, left, free, DIVE_STEPS);
        return IntStream.range(0, free.length).anyMatch(k ->
            offers.get(k).pattern().worth(prices) + limits[k] > cost[free[k]] * (1 + 1e-6));
    }

    /** The cheapest single board that all that is left comes out of. */
    private boolean finish(int[] left, int[] free, Map<Integer, Yield.Pattern> taken) {
        int[] byCost = Arrays.stream(free).boxed().sorted(Comparator.comparingDouble(j -> cost[j]))
            .mapToInt(Integer::intValue).toArray();
        for (int j : byCost) {
            Optional<Yield.Pattern> whole = boards.get(j).whole(left);
            if (whole.isPresent()) {
                take(left, j, whole.get(), taken);
                return true;
            }
        }
        return false;
    }

    private void offer(Map<Integer, Yield.Pattern> patterns, int[] left) {
        if (Arrays.stream(left).sum() > 0) {
            return;
        }
        double total = patterns.keySet().stream().mapToDouble(j -> cost[j]).sum();
        if (total < bestCost - 1e-9) {
            bestCost = total;
            best = new TreeMap<>(patterns);
        }
    }

    /** True if prices show that the bill cannot be met at any cost. */
    private boolean hasNoAnswer() {
        return Arrays.stream(cost).sum() > 0 && !choice.mayBeMet();
    }

    private boolean isClose() {
        return bestCost - bound <= CLOSE * bestCost;
    }

    // Choices of boards that would cost less.

    private void choose() {
        for (int tried = 0; tried < CHOICES && !isClose() && !hasNoAnswer(); tried++) {
            BoardChoice.Bound least = choice.least(bestCost, NODES);
            bound = Math.max(bound, least.bound());
            if (least.boards().isEmpty() || !refuted(some(least))) {
                break;
            }
        }
        Set<List<Integer>> looked = new HashSet<>();
        for (double spare = 0; spare <= MOST_SPARE && !isClose() && !hasNoAnswer(); spare += SPARE) {
            BoardChoice.Bound least = choice.sparing(1 + spare).least(bestCost, NODES);
            if (!least.boards().isEmpty() && looked.add(least.boards())) {
                serve(some(least), REPAIRS / least.boards().size(), 0);
            }
        }
        if (best == null && !hasNoAnswer()) {
            serve(all(), REPAIRS / boards.size(), 0);
        }
    }

    private static int[] some(BoardChoice.Bound choice) {
        return choice.boards().stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * Cuts as much of the bill as it can from some boards: a dive, then parts of it again as long as too much is short.
     *
     * @param enough with no more short than this, as penalties count it, no part is cut again
     */
    private Map<Integer, Yield.Pattern> serve(int[] some, int repairs, double enough) {
        Served served = dived(Map.of(), some, penalty);
        SplittableRandom random = new SplittableRandom(1);
        for (int again = 0; again < repairs && served.missed > enough; again += AT_ONCE) {
            Served before = served;
            List<Part> parts = parts(some, random);
            // Patterns of a board are found and kept by one part alone: they share none.
            for (Served other : parts.parallelStream().map(part -> again(before, part)).toList()) {
                served = other.missed <= served.missed ? other : served;
            }
        }
        offer(served.taken, served.left);
        return served.taken;
    }

    /** What is cut from some boards, what of the bill is left, and what that counts as. */
    private record Served(Map<Integer, Yield.Pattern> taken, int[] left, double missed) { }

    /** Boards to be cut again, and what one of each item counts as meanwhile. */
    private record Part(List<Integer> boards, double[] each) { }

    /** Some boards to cut again, parted so that none is in two of them. */
    private List<Part> parts(int[] some, SplittableRandom random) {
        List<Integer> rest = new ArrayList<>(Arrays.stream(some).boxed().toList());
        List<Part> parts = new ArrayList<>();
        while (parts.size() < AT_ONCE && !rest.isEmpty()) {
            List<Integer> given = new ArrayList<>();
            for (int give = random.nextInt(FEWEST_AGAIN, MOST_AGAIN + 1); give > 0 && !rest.isEmpty(); give--) {
                given.add(rest.remove(random.nextInt(rest.size())));
            }
            given.sort(null);
            // Counted a little otherwise every time, the same boards are cut otherwise.
            parts.add(new Part(given, Arrays.stream(penalty).map(p -> p * random.nextDouble(1 - UNLIKE, 1 + UNLIKE))
                .toArray()));
        }
        return parts;
    }

    private Served again(Served before, Part part) {
        Map<Integer, Yield.Pattern> others = new TreeMap<>(before.taken);
        others.keySet().removeAll(part.boards);
        return dived(others, part.boards.stream().mapToInt(Integer::intValue).toArray(), part.each);
    }

    /** What others give, and what comes out of some boards beside that. */
    private Served dived(Map<Integer, Yield.Pattern> others, int[] some, double[] each) {
        Map<Integer, Yield.Pattern> taken = new TreeMap<>();
        int[] left = wanted.clone();
        others.forEach((board, pattern) -> take(left, board, pattern, taken));
        dive(left, some, each, taken);
        return new Served(taken, left, sum(penalty, left));
    }

    /** True if prices are found at which these boards do not yield what is wanted. */
    private boolean refuted(int[] some) {
        for (int round = 0; round < REFUTING; round++) {
            CoveringProgram.Solution solution = program(wanted, some, penalty).solve();
            if (Arrays.stream(solution.shortage()).sum() < 1e-7) {
                return false;
            }
            List<Yield.Offer> offers = priced(solution.prices(), wanted, all(), 2 * STEPS);
            tighten(solution.prices(), offers);
            double needed = sum(solution.prices(), wanted);
            double most = Arrays.stream(some).mapToDouble(j -> offers.get(j).bound()).sum();
            if (most < needed * (1 - 1e-6)) {
                return true;
            }
        }
        return false;
    }
}
