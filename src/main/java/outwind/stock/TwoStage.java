package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
 * <li>Then labels (counts so far, value so far) run over the stops, within sections and over sections. A label that
 *     cannot beat the best answer by its bound is dropped; of two with the same counts the better stays.
 * </ol>
 * Exact over the stops and the chances given, unless more than a set number of labels must be kept at one stop: then
 * those with the poorest bounds go, and {@link Cutting#bound} says how much more could be had at most. The limit counts
 * labels, not time, so the same input gives the same answer everywhere.
 *
 * <p>Sources: P. C. Gilmore, R. E. Gomory, Operations Research 13 (1965) 94–120 (staged guillotine cutting); M. Held,
 * P. Wolfe, H. P. Crowder, Mathematical Programming 6 (1974) 62–88 (subgradient steps); J. E. Beasley, J. Opl Res. Soc.
 * 36 (1985) 297–306 (bounded two-dimensional cutting by dynamic programming and relaxation). Authors and years from
 * memory.
 */
final class TwoStage {

    /**
     * A blank that is cut.
     *
     * @param piece  its place in the list of pieces
     * @param first  stop of its section
     * @param second stop within the section
     * @param chance of its thickness there
     */
    record Spot(int piece, int first, int second, float chance) { }

    /**
     * @param spots blanks, by section and by place in it
     * @param value Σ worth·chance
     * @param bound no answer over these stops is worth more; equal to {@code value} where the answer is exact
     */
    record Cutting(List<Spot> spots, double value, double bound) {

        static final Cutting NOTHING = new Cutting(List.of(), 0, 0);

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
    private double droppedBound = Double.NEGATIVE_INFINITY;
    private double floor;
    private Cutting best = Cutting.NOTHING;

    /** How often each item has been cut; by its content. */
    private record Counts(int[] of) {

        Counts plus(int item) {
            int[] more = of.clone();
            more[item]++;
            return new Counts(more);
        }

        Counts plus(Counts others) {
            int[] more = of.clone();
            for (int i = 0; i < more.length; i++) {
                more[i] += others.of[i];
            }
            return new Counts(more);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Counts counts && Arrays.equals(of, counts.of);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(of);
        }
    }

    /** What has been cut up to a place: a blank of a section, or a whole pattern as a section at a stop. */
    private record Label(Counts counts, double value, double bound, Label before, Spot cut, int stop,
        Label pattern) { }

    private TwoStage(Sections sections, double[] worth, int[] wanted) {
        this.sections = sections;
        this.worth = worth;
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
    static TwoStage priced(Sections sections, double[] worth, int[] wanted) {
        return priced(sections, worth, wanted, new double[wanted.length], SUBGRADIENT_STEPS);
    }

    /**
     * The same with fewer steps, from prices that served for something alike.
     *
     * @param from  prices to begin with, none below zero
     * @param steps at most
     */
    static TwoStage priced(Sections sections, double[] worth, int[] wanted, double[] from, int steps) {
        TwoStage stage = new TwoStage(sections, worth, wanted);
        stage.price(from, steps);
        return stage;
    }

    /** What the first answer is worth. */
    double firstValue() {
        return best.value;
    }

    /** The first answer, and what no answer is worth more than. */
    Cutting first() {
        return new Cutting(best.spots, best.value, Math.max(best.value, relaxed));
    }

    /** The prices at which that bound was found. */
    double[] prices() {
        return prices.clone();
    }

    /**
     * The best answer.
     *
     * @param above a long search is made only for answers worth more than this
     */
    Cutting searched(double above) {
        return searched(above, MOST_LABELS);
    }

    /** A good answer soon. */
    Cutting glimpsed() {
        return searched(0, Arrays.copyOf(MOST_LABELS, 1));
    }

    private Cutting searched(double above, int[] labels) {
        floor = 0;
        for (int most : labels) {
            if (isProven()) {
                break;
            }
            droppedBound = Double.NEGATIVE_INFINITY;
            search(most);
            relaxed = Math.min(relaxed, Math.max(goal(), droppedBound));
            floor = above;
        }
        return new Cutting(best.spots, best.value, relaxed <= best.value + nothing ? best.value : relaxed);
    }

    /** What an answer must be worth more than. */
    private double goal() {
        return Math.max(best.value, floor) + nothing;
    }

    private boolean isProven() {
        return relaxed <= goal();
    }

    // Prices: the relaxed programme, its bound, and answers made from it.

    private void price(double[] from, int steps) {
        double[] tried = from.clone();
        double step = 1;
        int stale = 0;
        for (int round = 0; round < steps && !isProven(); round++) {
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
        double value = spots.stream().mapToDouble(spot -> worth[sections.item(spot.piece)] * spot.chance).sum();
        if (value > best.value + nothing) {
            List<Spot> sorted = spots.stream()
                .sorted(Comparator.comparingInt(Spot::first).thenComparingInt(Spot::second)).toList();
            best = new Cutting(sorted, value, value);
        }
    }

    // Labels: exact, as far as the limit on their number allows.

    private void search(int most) {
        Sections.Filled filled = sections.filled(worth, prices);
        double[] after = filled.over().best();
        double[] before = sections.before(filled);
        List<Sections.Kind> kinds = sections.kinds();
        double allowed = IntStream.range(0, wanted.length).mapToDouble(i -> prices[i] * wanted[i]).sum();
        double[] room = new double[kinds.size()];
        Arrays.fill(room, Double.NEGATIVE_INFINITY);
        for (int c = 0; c < sections.classes(); c++) {
            for (int u = 0; u < sections.places(); u++) {
                int kind = sections.kindAt(c, u);
                if (kind >= 0) {
                    room[kind] = Math.max(room[kind], before[u] + after[sections.behind(c, u)] + allowed);
                }
            }
        }
        List<List<Label>> patterns = new ArrayList<>();
        for (int k = 0; k < kinds.size(); k++) {
            patterns.add(patterns(kinds.get(k), filled.within()[k].best(), room[k], most));
        }
        cover(patterns, after, allowed, most);
    }

    /** All ways to fill a section that may belong to a better answer, the best one for each set of counts. */
    private List<Label> patterns(Sections.Kind kind, double[] priced, double room, int most) {
        List<Map<Counts, Label>> at = maps(kind.places());
        Counts none = new Counts(new int[wanted.length]);
        at.get(0).put(none, new Label(none, 0, room + priced[0], null, null, -1, null));
        for (int v = 0; v < kind.places(); v++) {
            for (Label label : kept(at.get(v), most)) {
                keep(at.get(v + 1), new Label(label.counts, label.value, bound(label.counts, label.value, room
                    + priced[v + 1]), label.before, label.cut, label.stop, null));
                for (int b = kind.begin()[v]; b < kind.begin()[v + 1]; b++) {
                    int piece = kind.piece()[b];
                    int item = sections.item(piece);
                    if (label.counts.of[item] < wanted[item]) {
                        int next = kind.behind()[b];
                        double value = label.value + worth[item] * kind.chance()[b];
                        Counts counts = label.counts.plus(item);
                        keep(at.get(next), new Label(counts, value, bound(counts, value, room + priced[next]), label,
                            new Spot(piece, -1, kind.stops()[v], kind.chance()[b]), -1, null));
                    }
                }
            }
            at.set(v, Map.of());
        }
        at.get(kind.places()).remove(none);
        return kept(at.get(kind.places()), most);
    }

    private void cover(List<List<Label>> patterns, double[] after, double allowed, int most) {
        List<Map<Counts, Label>> at = maps(sections.places());
        Counts none = new Counts(new int[wanted.length]);
        at.get(0).put(none, new Label(none, 0, allowed + after[0], null, null, -1, null));
        for (int u = 0; u < sections.places(); u++) {
            for (Label label : kept(at.get(u), most)) {
                keep(at.get(u + 1), new Label(label.counts, label.value,
                    bound(label.counts, label.value, allowed + after[u + 1]), label.before, null, label.stop,
                    label.pattern));
                for (int c = 0; c < sections.classes(); c++) {
                    if (sections.kindAt(c, u) < 0) {
                        continue;
                    }
                    for (Label pattern : patterns.get(sections.kindAt(c, u))) {
                        Counts counts = label.counts.plus(pattern.counts);
                        double value = label.value + pattern.value;
                        double bound = bound(counts, value, allowed + after[sections.behind(c, u)]);
                        if (bound > goal() && isAllowed(counts)) {
                            keep(at.get(sections.behind(c, u)), new Label(counts, value, bound, label, null,
                                sections.stop(u), pattern));
                            if (value > best.value + nothing) {
                                offer(spots(new Label(counts, value, bound, label, null, sections.stop(u), pattern)));
                            }
                        }
                    }
                }
            }
            at.set(u, Map.of());
        }
    }

    private static List<Map<Counts, Label>> maps(int stops) {
        List<Map<Counts, Label>> maps = new ArrayList<>();
        for (int i = 0; i <= stops; i++) {
            maps.add(new HashMap<>());
        }
        return maps;
    }

    private double bound(Counts counts, double value, double rest) {
        double bound = value + rest;
        for (int i = 0; i < prices.length; i++) {
            bound -= prices[i] * counts.of[i];
        }
        return bound;
    }

    private boolean isAllowed(Counts counts) {
        for (int i = 0; i < wanted.length; i++) {
            if (counts.of[i] > wanted[i]) {
                return false;
            }
        }
        return true;
    }

    private void keep(Map<Counts, Label> at, Label label) {
        if (label.bound > goal()) {
            at.merge(label.counts, label, (old, other) -> other.value > old.value ? other : old);
        }
    }

    /** The labels of a stop, those with the best bounds if there are too many; what is dropped is remembered. */
    private List<Label> kept(Map<Counts, Label> at, int most) {
        List<Label> labels = new ArrayList<>(at.values());
        labels.removeIf(label -> label.bound <= goal());
        labels.sort(Comparator.comparingDouble((Label label) -> -label.bound)
            .thenComparing(label -> label.counts.of, Arrays::compare));
        if (labels.size() > most) {
            droppedBound = Math.max(droppedBound, labels.get(most).bound);
            return labels.subList(0, most);
        }
        return labels;
    }

    private static List<Spot> spots(Label last) {
        List<Spot> spots = new ArrayList<>();
        for (Label section = last; section != null && section.pattern != null; section = section.before) {
            for (Label blank = section.pattern; blank != null && blank.cut != null; blank = blank.before) {
                spots.add(new Spot(blank.cut.piece, section.stop, blank.cut.second, blank.cut.chance));
            }
        }
        return spots;
    }
}
