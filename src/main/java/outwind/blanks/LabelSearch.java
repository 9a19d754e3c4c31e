package outwind.blanks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Ways to cut a board that are worth more than one that is known, no item being cut more often than wanted.
 *
 * <p>Labels (counts so far, value so far) run over the stops, first within each kind of section, then over sections. At
 * the prices given, what is still ahead of a label gains no more than the priced programmes say: that is its bound. A
 * label that cannot beat the best answer by its bound is dropped; of two with the same counts the better stays.
 *
 * <p>Exact over the stops and the chances given, unless more than a set number of labels must be kept at one stop:
 * then those with the poorest bounds go, and {@link Found#bound}
 * says what could be had at most. The limit counts labels, not time, so the same input gives the same answer
 * everywhere.
 *
 * <p>Source: J. E. Beasley, J. Opl Res. Soc. 36 (1985) 297–306 (bounded two-dimensional cutting by dynamic programming
 * and relaxation). Author and year from memory.
 */
final class LabelSearch {

    /**
     * @param best  the best answer that is known now
     * @param bound no answer over these stops is worth more
     */
    record Found(TwoStage.Cutting best, double bound) { }

    private final Sections sections;
    private final double[] worth;
    private final int[] wanted;
    private final double[] prices;
    private final double nothing;
    private final int most;

    private TwoStage.Cutting best;
    private double floor;
    private double dropped;

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
    private record Label(Counts counts, double value, double bound, Label before, TwoStage.Spot cut, int stop,
        Label pattern) { }

    /**
     * @param worth   of one blank of each item
     * @param wanted  how often each item at most
     * @param prices  of the items, at which bounds are reported
     * @param nothing gains up to this are none
     * @param most    labels kept at one stop
     */
    LabelSearch(Sections sections, double[] worth, int[] wanted, double[] prices, double nothing, int most) {
        this.sections = sections;
        this.worth = worth;
        this.wanted = wanted;
        this.prices = prices;
        this.nothing = nothing;
        this.most = most;
    }

    /** Looks for an answer worth more than both {@code known} and {@code floor}, by more than rounding. */
    Found better(TwoStage.Cutting known, double floor) {
        this.best = known;
        this.floor = floor;
        this.dropped = Double.NEGATIVE_INFINITY;
        Sections.Filled filled = sections.filled(worth, prices);
        double[] after = filled.over().best();
        double[] before = sections.before(filled);
        List<Sections.Kind> kinds = sections.kinds();
        double allowed = IntStream.range(0, wanted.length).mapToDouble(i -> prices[i] * wanted[i]).sum();
        double[] room = new double[kinds.size()];
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
            patterns.add(patterns(kinds.get(k), filled.within()[k].best(), room[k]));
        }
        cover(patterns, after, allowed);
        return new Found(best, Math.max(goal(), dropped));
    }

    /** What an answer must be worth more than. */
    private double goal() {
        return Math.max(best.value(), floor) + nothing;
    }

    /** All ways to fill a section that may belong to a better answer, the best one for each set of counts. */
    private List<Label> patterns(Sections.Kind kind, double[] priced, double room) {
        List<Map<Counts, Label>> at = maps(kind.places());
        Counts none = new Counts(new int[wanted.length]);
        at.get(0).put(none, new Label(none, 0, room + priced[0], null, null, -1, null));
        for (int v = 0; v < kind.places(); v++) {
            for (Label label : kept(at.get(v))) {
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
                            new TwoStage.Spot(piece, -1, kind.stops()[v], kind.chance()[b]), -1, null));
                    }
                }
            }
            at.set(v, Map.of());
        }
        at.get(kind.places()).remove(none);
        return kept(at.get(kind.places()));
    }

    /** Lays those over the board, one section behind the other. */
    private void cover(List<List<Label>> patterns, double[] after, double allowed) {
        List<Map<Counts, Label>> at = maps(sections.places());
        Counts none = new Counts(new int[wanted.length]);
        at.get(0).put(none, new Label(none, 0, allowed + after[0], null, null, -1, null));
        for (int u = 0; u < sections.places(); u++) {
            for (Label label : kept(at.get(u))) {
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
                            Label longer = new Label(counts, value, bound, label, null, sections.stop(u), pattern);
                            keep(at.get(sections.behind(c, u)), longer);
                            offer(longer);
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
    private List<Label> kept(Map<Counts, Label> at) {
        List<Label> labels = new ArrayList<>(at.values());
        labels.removeIf(label -> label.bound <= goal());
        labels.sort(Comparator.comparingDouble((Label label) -> -label.bound)
            .thenComparing(label -> label.counts.of, Arrays::compare));
        if (labels.size() > most) {
            dropped = Math.max(dropped, labels.get(most).bound);
            return labels.subList(0, most);
        }
        return labels;
    }

    private void offer(Label label) {
        if (label.value > best.value() + nothing) {
            best = TwoStage.Cutting.of(spots(label), sections, worth);
        }
    }

    private static List<TwoStage.Spot> spots(Label last) {
        List<TwoStage.Spot> spots = new ArrayList<>();
        for (Label section = last; section != null && section.pattern != null; section = section.before) {
            for (Label blank = section.pattern; blank != null && blank.cut != null; blank = blank.before) {
                spots.add(new TwoStage.Spot(blank.cut.piece(), section.stop, blank.cut.second(),
                    blank.cut.chance()));
            }
        }
        return spots;
    }
}
