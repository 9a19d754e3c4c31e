package outwind.blanks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The most valuable way to cut blanks with two stages of straight cuts right through: the first cuts part the board
 * into sections, the second part each section into blanks. All blanks of a section take its whole extent; between two
 * sections, and between two blanks, lies at least one kerf.
 *
 * <pre>
 *   maximise Σ worth·chance   subject to   blanks begin at stops, do not meet, and no item is cut more often than
 * wanted
 * </pre>
 *
 * <ol>
 * <li>Without the last condition two nested dynamic programmes over the stops are exact. If their answer does not cut
 *     too much of anything, it is the answer.
 * <li>Otherwise prices on the items (Lagrange multipliers, by subgradient steps) give an upper bound, and the priced
 *     programmes' answers, with what is too much taken out, a first answer.
 * <li>Then a {@link LabelSearch} closes the gap, as far as its limit allows.
 * </ol>
 * Exact over the stops and the chances given unless that limit is met: {@link Cutting#bound} then says how much more
 * could be had at most.
 *
 * <p>Sources: P. C. Gilmore, R. E. Gomory, Operations Research 13 (1965) 94–120 (staged guillotine cutting); M. Held,
 * P. Wolfe, H. P. Crowder, Mathematical Programming 6 (1974) 62–88 (subgradient steps). Authors and years from memory.
 */
public final class TwoStage {

    /**
     * A blank that is cut.
     *
     * @param piece  its place in the list of pieces
     * @param first  stop of its section
     * @param second stop within the section
     * @param chance of its thickness there
     */
    public record Spot(int piece, int first, int second, float chance) { }

    /**
     * @param spots blanks, by section and by place in it
     * @param value Σ worth·chance
     * @param bound no answer over these stops is worth more; equal to {@code value} where the answer is exact
     */
    public record Cutting(List<Spot> spots, double value, double bound) {

        static final Cutting NOTHING = new Cutting(List.of(), 0, 0);

        /** These blanks, put in order; nothing is known of others. */
        static Cutting of(List<Spot> spots, Sections sections, double[] worth) {
            double value = spots.stream().mapToDouble(spot -> worth[sections.item(spot.piece)] * spot.chance).sum();
            List<Spot> sorted = spots.stream()
                .sorted(Comparator.comparingInt(Spot::first).thenComparingInt(Spot::second)).toList();
            return new Cutting(sorted, value, value);
        }

        boolean isExact() {
            return bound <= value;
        }
    }

    private static final int SUBGRADIENT_STEPS = 120;

    /** Labels kept at one stop: few to find a good answer soon, then as many as about a second allows. */
    private static final int[] MOST_LABELS = {12, 100};

    private final Sections sections;
    private final double[] worth;
    private final int[] wanted;
    private final double nothing;

    private double[] prices;
    private double relaxed = Double.POSITIVE_INFINITY;
    private Cutting best = Cutting.NOTHING;

    private TwoStage(Sections sections, double[] worth, int[] wanted) {
        this.sections = sections;
        this.worth = IntStream.range(0, wanted.length).mapToDouble(i -> wanted[i] > 0 ? worth[i] : Sections.NOT_CUT)
            .toArray();
        this.wanted = wanted;
        this.prices = new double[wanted.length];
        // Gains below rounding are none: a thousand millionth of all that is wanted.
        this.nothing = 1e-9 * IntStream.range(0, wanted.length).mapToDouble(i -> worth[i] * wanted[i]).sum();
    }

    /**
     * Sets the prices and finds a first answer.
     *
     * @param worth  of one blank of each item
     * @param wanted how often each item at most
     */
    public static TwoStage priced(Sections sections, double[] worth, int[] wanted) {
        return priced(sections, worth, wanted, new double[wanted.length], SUBGRADIENT_STEPS);
    }

    /**
     * The same with fewer steps, from prices that served for something alike.
     *
     * @param from  prices to begin with, none below zero
     * @param steps at most
     */
    public static TwoStage priced(Sections sections, double[] worth, int[] wanted, double[] from, int steps) {
        TwoStage stage = new TwoStage(sections, worth, wanted);
        stage.price(from, steps);
        return stage;
    }

    /** What the first answer is worth. */
    double firstValue() {
        return best.value;
    }

    /** The first answer, and what no answer is worth more than. */
    public Cutting first() {
        return new Cutting(best.spots, best.value, Math.max(best.value, relaxed));
    }

    /** The prices at which that bound was found. */
    public double[] prices() {
        return prices.clone();
    }

    /**
     * The best answer.
     *
     * @param above a long search is made only for answers worth more than this
     */
    public Cutting searched(double above) {
        return searched(above, MOST_LABELS);
    }

    /** A good answer soon. */
    public Cutting glimpsed() {
        return searched(0, Arrays.copyOf(MOST_LABELS, 1));
    }

    private Cutting searched(double above, int[] labels) {
        double floor = 0;
        for (int most : labels) {
            if (isProven(floor)) {
                break;
            }
            LabelSearch.Found found = new LabelSearch(sections, worth, wanted, prices, nothing, most)
                .better(best, floor);
            best = found.best();
            relaxed = Math.min(relaxed, found.bound());
            floor = above;
        }
        return new Cutting(best.spots, best.value, relaxed <= best.value + nothing ? best.value : relaxed);
    }

    /** Whether no answer is worth more than the best and {@code floor}. */
    private boolean isProven(double floor) {
        return relaxed <= Math.max(best.value, floor) + nothing;
    }

    // The relaxed programme at one set of prices after another: its bound, and answers made from it.

    private void price(double[] from, int steps) {
        double[] tried = from.clone();
        double step = 1;
        int stale = 0;
        for (int round = 0; round < steps && !isProven(0); round++) {
            Sections.Filled filled = sections.filled(worth, tried);
            double bound = filled.value() + IntStream.range(0,
                wanted.length).mapToDouble(i -> tried[i] * wanted[i]).sum();
            if (bound < relaxed - nothing) {
                relaxed = bound;
                prices = tried.clone();
                stale = 0;
            } else if (++stale % 8 == 0) {
                step /= 2;
            }
            List<Spot> spots = sections.spots(filled);
            offer(withoutExcess(spots));
            double[] excess = excess(spots, tried);
            double norm = Arrays.stream(excess).map(e -> e * e).sum();
            if (norm == 0) {
                break;
            }
            double length = step * Math.max(bound - best.value, nothing) / norm;
            for (int i = 0; i < tried.length; i++) {
                tried[i] = Math.max(0, tried[i] + length * excess[i]);
            }
        }
    }

    /**
     * Too much of an item above zero, too little below; no price falls below zero, so too little of a free one is none.
     */
    private double[] excess(List<Spot> spots, double[] price) {
        double[] excess = new double[wanted.length];
        spots.forEach(spot -> excess[sections.item(spot.piece)]++);
        for (int i = 0; i < excess.length; i++) {
            excess[i] -= wanted[i];
            excess[i] = price[i] == 0 ? Math.max(0, excess[i]) : excess[i];
        }
        return excess;
    }

    /** The surest of each item, as many as wanted. */
    private List<Spot> withoutExcess(List<Spot> spots) {
        int[] left = wanted.clone();
        List<Spot> kept = new ArrayList<>();
        spots.stream().sorted(Comparator.comparingDouble((Spot spot) -> -spot.chance)).forEach(spot -> {
            if (left[sections.item(spot.piece)]-- > 0) {
                kept.add(spot);
            }
        });
        return kept;
    }

    private void offer(List<Spot> spots) {
        Cutting cutting = Cutting.of(spots, sections, worth);
        if (cutting.value > best.value + nothing) {
            best = cutting;
        }
    }
}
