package outwind.stock;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * A pack of boards of which only some were measured, taken as they came.
 *
 * <pre>
 *   made = Σ measured that make it + Σ others that make it       {@link PackModel}, {@link Urn}
 *   after m more:  E[var] = r·(S + m + r)/(S + m)·E[π(1 − π)] + (1 + m/n)·Σ p(1 − p),
 *                  S = α + n boards counted so far,  r = N − n − m boards left
 * </pre>
 * The first part of the variance is the beta-binomial's, averaged over what the m may turn out to be; it ends at zero,
 * for the pack is finite. The second is what readings leave open.
 *
 * @param size     N, all boards of the pack
 * @param measured those that were measured
 * @param target   wanted thickness (mm)
 * @param expected how many make it
 * @param low      of twenty such packs at most one has fewer that make it
 * @param high     of twenty such packs at most one has more
 * @param rough    rough thickness of a board of this pack (mm)
 * @param loss     what a board of this pack loses until both faces are flat (mm)
 * @param more     how many more to measure until it is settled; empty where better readings are wanted, not more boards
 * @param doubtful measured boards that may or may not make it, the most doubtful first
 * @param worth    what it is worth, where a price of finished boards is given
 */
public record Pack(int size, List<PricedBoard> measured, double target, double expected, int low, int high, Span rough,
        Span loss, OptionalInt more, List<PricedBoard> doubtful, Optional<PackWorth> worth) {

    /** Settled: within this share of the pack, either way (90 %). Our choice. */
    public static final double SETTLED = 0.1;

    /** More boards than anybody stacks in one pack, and few enough to draw quickly. */
    public static final int MOST = 20_000;

    /** α: how many boards the learnt shape counts for. Our choice, held by the benchmark {@code PackCoverage}. */
    static final double SHAPE = 4;

    /** The ends of the range then have a standard error of a fortieth of its width. */
    private static final int DRAWS = 2000;

    /** How many deviations a range of 90 % reaches either way, of a normal distribution. */
    private static final double NINETY = 1.6449;

    /**
     * Where a board of the pack lies.
     *
     * @param low    one in twenty lies below (mm)
     * @param median mm
     * @param high   one in twenty lies above (mm)
     */
    public record Span(double low, double median, double high) {

        static Span of(double[] values) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            return new Span(sorted[sorted.length / 20], sorted[sorted.length / 2],
                sorted[sorted.length - 1 - sorted.length / 20]);
        }
    }

    public Pack {
        measured = List.copyOf(measured);
        doubtful = List.copyOf(doubtful);
    }

    /**
     * Learns from the measured boards what the pack holds.
     *
     * @param measured at least one; all with one target
     * @param size     at least as many, at most {@link #MOST}
     * @param terms    on which it would be bought, where they are known
     * @throws IllegalArgumentException if the targets differ or are missing, or the size is not possible
     */
    public static Pack of(List<PricedBoard> measured, int size, Optional<PackWorth.Terms> terms, long seed) {
        return of(measured, size, terms, DRAWS, seed);
    }

    /** The same from another number of draws. */
    static Pack of(List<PricedBoard> measured, int size, Optional<PackWorth.Terms> terms, int draws, long seed) {
        double[] targets = measured.stream().map(PricedBoard::target).filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble).toArray();
        if (targets.length < measured.size() || Arrays.stream(targets).distinct().count() != 1) {
            throw new IllegalArgumentException("a pack is judged for one thickness: give --target");
        }
        if (size < measured.size() || size > MOST) {
            throw new IllegalArgumentException("a pack of " + size + " cannot be: " + measured.size()
                + " boards were measured, and a pack has at most " + MOST);
        }
        SplittableRandom random = new SplittableRandom(seed);
        PackModel model = new PackModel(measured, targets[0], random);
        int n = measured.size();
        int[] made = new int[draws];
        int[] ofBoard = new int[n];
        double[] rough = new double[draws];
        double[] loss = new double[draws];
        double open = 0;
        PackWorth.Ledger ledger = new PackWorth.Ledger(measured, size, draws);
        boolean[] makes = new boolean[size];
        int[] like = new int[size];
        for (int draw = 0; draw < draws; draw++) {
            PackModel.Draw one = model.next();
            System.arraycopy(one.makes(), 0, makes, 0, n);
            Arrays.setAll(like, i -> i < n ? i : like[i]);
            new Urn(SHAPE, one.share()).fill(makes, like, n, random);
            int k = 0;
            for (int i = 0; i < size; i++) {
                if (makes[i]) {
                    made[draw]++;
                    if (i < n) {
                        ofBoard[i]++;
                        k++;
                    }
                }
            }
            rough[draw] = one.rough();
            loss[draw] = one.loss();
            open += open(SHAPE * one.share() + k, SHAPE + n) / draws;
            ledger.enter(makes, like);
        }
        double expected = Arrays.stream(made).average().orElseThrow();
        double[] chance = Arrays.stream(ofBoard).mapToDouble(times -> times / (double) draws).toArray();
        Arrays.sort(made);
        int low = made[draws / 20];
        int high = made[draws - 1 - draws / 20];
        return new Pack(size, measured, targets[0], expected, low, high, Span.of(rough), Span.of(loss),
            high - low <= 2 * SETTLED * size ? OptionalInt.of(0) : more(size, n, open,
                Arrays.stream(chance).map(p -> p * (1 - p)).sum()),
            IntStream.range(0, n).filter(j -> chance[j] > 0.05 && chance[j] < 0.95).boxed()
                .sorted(Comparator.comparingDouble(j -> Math.abs(chance[j] - 0.5))).map(measured::get).toList(),
            terms.map(ledger::worth));
    }

    /** E[π(1 − π)] of a share that is Beta(a, all − a). */
    static double open(double a, double all) {
        return a * (all - a) / (all * (all + 1));
    }

    private static OptionalInt more(int size, int measured, double open, double own) {
        return IntStream.rangeClosed(1, size - measured).filter(m ->
            NINETY * Math.sqrt(variance(size, measured, m, open, own)) <= SETTLED * size).findFirst();
    }

    /**
     * Variance to expect of the number that make it, once some more are measured.
     *
     * @param more how many more
     * @param open E[π(1 − π)] as far as is known now
     * @param own  Σ p(1 − p) of the boards that are measured
     */
    static double variance(int size, int measured, int more, double open, double own) {
        double counted = SHAPE + measured + more;
        double left = size - measured - more;
        return left * (counted + left) / counted * open + own * (1 + more / (double) measured);
    }
}
