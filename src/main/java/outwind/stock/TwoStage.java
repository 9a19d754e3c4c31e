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
     */
    record Spot(int piece, int first, int second) { }

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

    private final double[] worth;
    private final int[] wanted;
    private final Stops first;
    private final Stops second;
    private final int[] itemOf;
    private final float[][][] chance;
    private final boolean lengthsFirst;

    /** For each extent that a section may have, the pieces that go into it. */
    private final List<int[]> classes = new ArrayList<>();
    private final int[][] behind;
    private final int[][] behindWithin;
    private final int[][] kindAt;
    private final List<Kind> kinds = new ArrayList<>();
    private final double nothing;

    private double[] prices;
    private double relaxed = Double.POSITIVE_INFINITY;
    private double droppedBound = Double.NEGATIVE_INFINITY;
    private double floor;
    private Cutting best = Cutting.NOTHING;

    /** The pieces that go into a section and one set of their chances; many sections share it. */
    private record Kind(int[] members, float[][] chances) {

        @Override
        public boolean equals(Object other) {
            return other instanceof Kind kind && Arrays.equals(members, kind.members)
                && Arrays.deepEquals(chances, kind.chances);
        }

        @Override
        public int hashCode() {
            return 31 * Arrays.hashCode(members) + Arrays.deepHashCode(chances);
        }
    }

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

    /** What has been cut up to a stop: a piece at a stop of its section, or a whole pattern as a section. */
    private record Label(Counts counts, double value, double bound, Label before, int piece, int stop,
        Label pattern) { }

    /** Value from each stop to the end, and which piece (or class) begins there, −1 for none. */
    private record Chain(double[] best, int[] choice) { }

    private TwoStage(List<Piece> pieces, double[] worth, int[] wanted, float[][][] chance, CutOrder order, Stops first,
            Stops second, double kerf) {
        this.chance = chance;
        this.lengthsFirst = order == CutOrder.CROSSCUT_FIRST;
        this.worth = worth;
        this.wanted = wanted;
        this.first = first;
        this.second = second;
        this.itemOf = pieces.stream().mapToInt(Piece::item).toArray();
        this.prices = new double[wanted.length];
        // Gains below rounding are none: a thousand millionth of all that is wanted.
        this.nothing = 1e-9 * IntStream.range(0, wanted.length).mapToDouble(i -> worth[i] * wanted[i]).sum();
        double[] extents = pieces.stream().mapToDouble(piece -> piece.first(order)).distinct().sorted().toArray();
        for (double extent : extents) {
            classes.add(IntStream.range(0, pieces.size()).filter(p -> pieces.get(p).first(order) <= extent).toArray());
        }
        behind = new int[extents.length][];
        for (int c = 0; c < extents.length; c++) {
            double extent = extents[c];
            behind[c] = Arrays.stream(first.at()).mapToInt(at -> first.from(at + extent + kerf)).toArray();
        }
        behindWithin = new int[pieces.size()][];
        for (int p = 0; p < pieces.size(); p++) {
            double extent = pieces.get(p).second(order);
            behindWithin[p] = Arrays.stream(second.at()).mapToInt(at -> second.from(at + extent + kerf)).toArray();
        }
        kindAt = kinds();
    }

    /**
     * Sets the prices and finds a first answer.
     *
     * @param pieces ways in which blanks may lie
     * @param worth  of one blank of each item
     * @param wanted how often each item at most
     * @param chance of each piece over stops along and across, zero where it must not lie
     * @param along  stops along the board
     * @param across stops across it
     */
    static TwoStage priced(List<Piece> pieces, double[] worth, int[] wanted, float[][][] chance, CutOrder order,
            Stops along, Stops across, double kerf) {
        boolean lengths = order == CutOrder.CROSSCUT_FIRST;
        TwoStage stage = new TwoStage(pieces, worth, wanted, chance, order, lengths ? along : across,
            lengths ? across : along, kerf);
        stage.price();
        return stage;
    }

    /** What the first answer is worth. */
    double firstValue() {
        return best.value;
    }

    /**
     * The best answer.
     *
     * @param above a long search is made only for answers worth more than this
     */
    Cutting searched(double above) {
        floor = 0;
        for (int most : MOST_LABELS) {
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

    private int[][] kinds() {
        Map<Kind, Integer> known = new HashMap<>();
        int[][] at = new int[classes.size()][first.count()];
        for (int c = 0; c < classes.size(); c++) {
            int[] members = classes.get(c);
            for (int u = 0; u < first.count(); u++) {
                float[][] chances = new float[members.length][];
                boolean any = false;
                for (int m = 0; m < members.length; m++) {
                    chances[m] = row(chance[members[m]], u);
                    for (float value : chances[m]) {
                        any |= value > 0;
                    }
                }
                at[c][u] = any ? known.computeIfAbsent(new Kind(members, chances), kind -> {
                    kinds.add(kind);
                    return kinds.size() - 1;
                }) : -1;
            }
        }
        return at;
    }

    private float[] row(float[][] table, int u) {
        if (lengthsFirst) {
            return table[u];
        }
        float[] row = new float[second.count()];
        for (int v = 0; v < row.length; v++) {
            row[v] = table[v][u];
        }
        return row;
    }

    // Prices: the relaxed programme, its bound, and answers made from it.

    private void price() {
        double[] tried = new double[wanted.length];
        double step = 1;
        int stale = 0;
        for (int round = 0; round < SUBGRADIENT_STEPS && !isProven(); round++) {
            Chain[] within = within(tried);
            Chain over = over(within);
            double bound = over.best[0] + IntStream.range(0,
                wanted.length).mapToDouble(i -> tried[i] * wanted[i]).sum();
            if (bound < relaxed - nothing) {
                relaxed = bound;
                prices = tried.clone();
                stale = 0;
            } else if (++stale % 8 == 0) {
                step /= 2;
            }
            List<Spot> spots = spots(within, over);
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

    private Chain[] within(double[] price) {
        return kinds.stream().map(kind -> within(kind, price)).toArray(Chain[]::new);
    }

    private Chain within(Kind kind, double[] price) {
        double[] value = new double[second.count() + 1];
        int[] choice = new int[second.count()];
        for (int v = second.count() - 1; v >= 0; v--) {
            value[v] = value[v + 1];
            choice[v] = -1;
            for (int m = 0; m < kind.members.length; m++) {
                float chance = kind.chances[m][v];
                int piece = kind.members[m];
                if (chance > 0) {
                    double gained = worth[itemOf[piece]] * chance - price[itemOf[piece]]
                        + value[behindWithin[piece][v]];
                    if (gained >= value[v]) {
                        value[v] = gained;
                        choice[v] = piece;
                    }
                }
            }
        }
        return new Chain(value, choice);
    }

    private Chain over(Chain[] within) {
        double[] value = new double[first.count() + 1];
        int[] choice = new int[first.count()];
        for (int u = first.count() - 1; u >= 0; u--) {
            value[u] = value[u + 1];
            choice[u] = -1;
            for (int c = 0; c < classes.size(); c++) {
                if (kindAt[c][u] >= 0) {
                    double gained = within[kindAt[c][u]].best[0] + value[behind[c][u]];
                    if (gained >= value[u]) {
                        value[u] = gained;
                        choice[u] = c;
                    }
                }
            }
        }
        return new Chain(value, choice);
    }

    private List<Spot> spots(Chain[] within, Chain over) {
        List<Spot> spots = new ArrayList<>();
        for (int u = 0; u < first.count();) {
            int c = over.choice[u];
            if (c < 0) {
                u++;
                continue;
            }
            Chain chain = within[kindAt[c][u]];
            for (int v = 0; v < second.count();) {
                int piece = chain.choice[v];
                if (piece >= 0) {
                    spots.add(new Spot(piece, u, v));
                }
                v = piece < 0 ? v + 1 : behindWithin[piece][v];
            }
            u = behind[c][u];
        }
        return spots;
    }

    /**
     * Too much of an item above zero, too little below; no price falls below zero, so too little of a free one is none.
     */
    private double[] excess(List<Spot> spots, double[] price) {
        double[] excess = new double[wanted.length];
        spots.forEach(spot -> excess[itemOf[spot.piece]]++);
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
        spots.stream().sorted(Comparator.comparingDouble((Spot spot) -> -chance(spot))).forEach(spot -> {
            if (left[itemOf[spot.piece]]-- > 0) {
                kept.add(spot);
            }
        });
        return kept;
    }

    private double chance(Spot spot) {
        return chance[spot.piece][lengthsFirst ? spot.first : spot.second][lengthsFirst ? spot.second : spot.first];
    }

    private void offer(List<Spot> spots) {
        double value = spots.stream().mapToDouble(spot -> worth[itemOf[spot.piece]] * chance(spot)).sum();
        if (value > best.value + nothing) {
            List<Spot> sorted = spots.stream()
                .sorted(Comparator.comparingInt(Spot::first).thenComparingInt(Spot::second)).toList();
            best = new Cutting(sorted, value, value);
        }
    }

    // Labels: exact, as far as the limit on their number allows.

    private void search(int most) {
        Chain[] within = within(prices);
        double[] after = over(within).best;
        double[] before = before(within);
        double allowed = IntStream.range(0, wanted.length).mapToDouble(i -> prices[i] * wanted[i]).sum();
        double[] room = new double[kinds.size()];
        Arrays.fill(room, Double.NEGATIVE_INFINITY);
        for (int c = 0; c < classes.size(); c++) {
            for (int u = 0; u < first.count(); u++) {
                if (kindAt[c][u] >= 0) {
                    room[kindAt[c][u]] = Math.max(room[kindAt[c][u]], before[u] + after[behind[c][u]] + allowed);
                }
            }
        }
        List<List<Label>> patterns = new ArrayList<>();
        for (int k = 0; k < kinds.size(); k++) {
            patterns.add(patterns(kinds.get(k), within[k].best, room[k], most));
        }
        sections(patterns, after, allowed, most);
    }

    /** Most that sections before each stop can gain, priced. */
    private double[] before(Chain[] within) {
        double[] value = new double[first.count() + 1];
        for (int u = 0; u < first.count(); u++) {
            value[u + 1] = Math.max(value[u + 1], value[u]);
            for (int c = 0; c < classes.size(); c++) {
                if (kindAt[c][u] >= 0) {
                    int next = behind[c][u];
                    value[next] = Math.max(value[next], value[u] + within[kindAt[c][u]].best[0]);
                }
            }
        }
        return value;
    }

    /** All ways to fill a section that may belong to a better answer, the best one for each set of counts. */
    private List<Label> patterns(Kind kind, double[] priced, double room, int most) {
        List<Map<Counts, Label>> at = maps(second.count());
        Counts none = new Counts(new int[wanted.length]);
        at.get(0).put(none, new Label(none, 0, room + priced[0], null, -1, -1, null));
        for (int v = 0; v < second.count(); v++) {
            for (Label label : kept(at.get(v), most)) {
                keep(at.get(v + 1), new Label(label.counts, label.value, bound(label.counts, label.value, room
                    + priced[v + 1]), label.before, label.piece, label.stop, null));
                for (int m = 0; m < kind.members.length; m++) {
                    int piece = kind.members[m];
                    int item = itemOf[piece];
                    if (kind.chances[m][v] > 0 && label.counts.of[item] < wanted[item]) {
                        int next = behindWithin[piece][v];
                        double value = label.value + worth[item] * kind.chances[m][v];
                        Counts counts = label.counts.plus(item);
                        keep(at.get(next), new Label(counts, value, bound(counts, value, room + priced[next]), label,
                            piece, v, null));
                    }
                }
            }
            at.set(v, Map.of());
        }
        at.get(second.count()).remove(none);
        return kept(at.get(second.count()), most);
    }

    private void sections(List<List<Label>> patterns, double[] after, double allowed, int most) {
        List<Map<Counts, Label>> at = maps(first.count());
        Counts none = new Counts(new int[wanted.length]);
        at.get(0).put(none, new Label(none, 0, allowed + after[0], null, -1, -1, null));
        for (int u = 0; u < first.count(); u++) {
            for (Label label : kept(at.get(u), most)) {
                keep(at.get(u + 1), new Label(label.counts, label.value,
                    bound(label.counts, label.value, allowed + after[u + 1]), label.before, -1, label.stop,
                    label.pattern));
                for (int c = 0; c < classes.size(); c++) {
                    if (kindAt[c][u] < 0) {
                        continue;
                    }
                    for (Label pattern : patterns.get(kindAt[c][u])) {
                        Counts counts = label.counts.plus(pattern.counts);
                        double value = label.value + pattern.value;
                        double bound = bound(counts, value, allowed + after[behind[c][u]]);
                        if (bound > goal() && isAllowed(counts)) {
                            keep(at.get(behind[c][u]), new Label(counts, value, bound, label, -1, u, pattern));
                            if (value > best.value + nothing) {
                                offer(spots(new Label(counts, value, bound, label, -1, u, pattern)));
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
            for (Label cut = section.pattern; cut != null && cut.piece >= 0; cut = cut.before) {
                spots.add(new Spot(cut.piece, section.stop, cut.stop));
            }
        }
        return spots;
    }
}
