package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import outwind.blanks.Sections;
import outwind.blanks.TwoStage;

/**
 * Every way to cut a board in one order that no other way betters, by how many blanks of each item come out.
 *
 * <p>Counts run over the same two nested programmes as prices do in {@link Sections}: first within each kind of
 * section, then over sections. Of two sets of counts at one place, the one that has no more of any item is let go;
 * counts beyond the quantities wanted are no gain. So what is left at the end is all that any bill may need.
 *
 * <p>Source: multi-objective dynamic programming; dominance as in H. T. Kung, F. Luccio, F. P. Preparata, J. ACM 22
 * (1975) 469–476. Authors and year from memory.
 */
final class EveryPattern {

    /** Comparisons of counts after which a board has too many ways to cut it: about a second. */
    private static final long MOST_COMPARED = 100_000_000;

    private final Sections sections;
    private final int[] wanted;
    private long compared;

    /** What has been cut up to a place: a blank of a section, or a whole pattern as a section at a stop. */
    private record Label(int[] counts, Label before, TwoStage.Spot cut, int stop, Label pattern) { }

    private EveryPattern(Sections sections, int[] wanted) {
        this.sections = sections;
        this.wanted = wanted;
    }

    /** The patterns, each as spots in order; empty if there are too many to compare. */
    static Optional<List<List<TwoStage.Spot>>> of(Sections sections, int[] wanted) {
        return new EveryPattern(sections, wanted.clone()).all();
    }

    private Optional<List<List<TwoStage.Spot>>> all() {
        List<List<Label>> patterns = new ArrayList<>();
        for (Sections.Kind kind : sections.kinds()) {
            patterns.add(within(kind));
            if (compared > MOST_COMPARED) {
                return Optional.empty();
            }
        }
        List<List<Label>> at = places(sections.places());
        for (int u = 0; u < sections.places(); u++) {
            for (Label label : at.get(u)) {
                keep(at.get(u + 1), label);
                for (int c = 0; c < sections.classes(); c++) {
                    List<Label> inside = sections.kindAt(c, u) < 0 ? List.of() : patterns.get(sections.kindAt(c, u));
                    for (Label pattern : inside) {
                        keep(at.get(sections.behind(c, u)), new Label(sum(label.counts, pattern.counts), label, null,
                            sections.stop(u), pattern));
                    }
                }
                if (compared > MOST_COMPARED) {
                    return Optional.empty();
                }
            }
            at.set(u, List.of());
        }
        return Optional.of(at.get(sections.places()).stream().map(EveryPattern::spots).toList());
    }

    private List<Label> within(Sections.Kind kind) {
        List<List<Label>> at = places(kind.places());
        for (int v = 0; v < kind.places() && compared <= MOST_COMPARED; v++) {
            for (Label label : at.get(v)) {
                keep(at.get(v + 1), label);
                for (int b = kind.begin()[v]; b < kind.begin()[v + 1]; b++) {
                    int item = sections.item(kind.piece()[b]);
                    if (label.counts[item] < wanted[item]) {
                        int[] counts = label.counts.clone();
                        counts[item]++;
                        keep(at.get(kind.behind()[b]), new Label(counts, label, new TwoStage.Spot(kind.piece()[b], -1,
                            kind.stops()[v], kind.chance()[b]), -1, null));
                    }
                }
            }
            at.set(v, List.of());
        }
        return at.get(kind.places());
    }

    private List<List<Label>> places(int count) {
        List<List<Label>> places = new ArrayList<>();
        for (int i = 0; i <= count; i++) {
            places.add(new ArrayList<>());
        }
        places.get(0).add(new Label(new int[wanted.length], null, null, -1, null));
        return places;
    }

    private int[] sum(int[] some, int[] more) {
        int[] sum = new int[wanted.length];
        Arrays.setAll(sum, i -> Math.min(wanted[i], some[i] + more[i]));
        return sum;
    }

    /** Takes up a label unless another at the place has as much of everything; those that have no more go. */
    private void keep(List<Label> at, Label label) {
        compared += at.size();
        for (Label other : at) {
            if (hasAll(other.counts, label.counts)) {
                return;
            }
        }
        at.removeIf(other -> hasAll(label.counts, other.counts));
        at.add(label);
    }

    /** True if there is as much of everything in one set of counts as in another. */
    static boolean hasAll(int[] counts, int[] others) {
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] < others[i]) {
                return false;
            }
        }
        return true;
    }

    private static List<TwoStage.Spot> spots(Label last) {
        List<TwoStage.Spot> spots = new ArrayList<>();
        for (Label section = last; section != null && section.pattern != null; section = section.before) {
            for (Label blank = section.pattern; blank != null && blank.cut != null; blank = blank.before) {
                spots.add(0, new TwoStage.Spot(blank.cut.piece(), section.stop, blank.cut.second(),
                    blank.cut.chance()));
            }
        }
        return spots;
    }
}
