package outwind.blanks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import outwind.surface.Region;

/**
 * Blanks laid out on a board for one order of cutting.
 *
 * @param order    which cuts go right through
 * @param board    the board, once its near edge is straight
 * @param sections the blanks of each section, in order; none empty
 * @param kerf     of each cut (mm)
 * @param bound    no layout of this order over the same stops can be counted on for more; where offcuts are cut again, no
 *                 layout at all
 * @param recut    offcuts that are cut again, each like a board
 */
public record Layout(CutOrder order, Region board, List<List<Blank>> sections, double kerf, double bound,
        List<Layout> recut) {

    public Layout {
        sections = sections.stream().map(List::copyOf).toList();
        recut = List.copyOf(recut);
    }

    /** A layout whose offcuts are left as they are. */
    public Layout(CutOrder order, Region board, List<List<Blank>> sections, double kerf, double bound) {
        this(order, board, sections, kerf, bound, List.of());
    }

    /** Its sections, then those of each offcut that is cut again. */
    public List<List<Blank>> allSections() {
        return Stream.concat(sections.stream(), recut.stream().flatMap(again -> again.allSections().stream())).toList();
    }

    /** All blanks, section by section. */
    public List<Blank> blanks() {
        return allSections().stream().flatMap(List::stream).toList();
    }

    /** How many blanks of an item. */
    public int count(int item) {
        return (int) blanks().stream().filter(blank -> blank.item() == item).count();
    }

    /** What all blanks together may be counted on for. */
    public double value() {
        return blanks().stream().mapToDouble(Blank::value).sum();
    }

    /**
     * The cuts in the order they are made: those right through, then section by section, each trimmed at the end. Those of
     * offcuts are apart.
     */
    public List<SawCut> cuts() {
        return cuts(0, 0);
    }

    /** For each offcut that is cut again its cuts; sections and blanks are numbered on. */
    public List<List<SawCut>> recuts() {
        List<List<SawCut>> recuts = new ArrayList<>();
        int before = sections.size();
        int blanks = (int) sections.stream().mapToLong(List::size).sum();
        for (Layout again : recut) {
            recuts.add(again.cuts(before, blanks));
            before += again.sections.size();
            blanks += again.blanks().size();
        }
        return recuts;
    }

    /** How many cuts there are in all. */
    public int cutCount() {
        return cuts().size() + recuts().stream().mapToInt(List::size).sum();
    }

    private List<SawCut> cuts(int sectionsBefore, int blanksBefore) {
        boolean crosscuts = order == CutOrder.CROSSCUT_FIRST;
        List<SawCut> cuts = new ArrayList<>(between(sections.stream().map(section -> first(extent(section))).toList(),
            new SawCut(crosscuts, 0, 0, board, 0, 0, 0, 0, 0), sectionsBefore));
        int blank = blanksBefore;
        for (int s = 0; s < sections.size(); s++) {
            List<Blank> section = sections.get(s);
            Region extent = extent(section);
            cuts.addAll(between(section.stream().map(b -> second(b.region())).toList(),
                new SawCut(!crosscuts, sectionsBefore + s + 1, 0, strip(extent, board), 0, 0, 0, 0, 0), blank));
            for (Blank trimmed : section) {
                blank++;
                cuts.addAll(between(List.of(first(trimmed.region())),
                    new SawCut(crosscuts, sectionsBefore + s + 1, blank, strip(trimmed.region(), extent), 0, 0, 0, 0, 0), blank - 1));
            }
        }
        return cuts;
    }

    /** From the first blank's beginning to the furthest end: what the cuts right through must leave whole. */
    private static Region extent(List<Blank> section) {
        return section.stream().map(Blank::region).reduce((a, b) -> new Region(Math.min(a.x1(), b.x1()),
            Math.min(a.y1(), b.y1()), Math.max(a.x2(), b.x2()), Math.max(a.y2(), b.y2()))).orElseThrow();
    }

    /**
     * What is in hand once a rectangle has been cut free: a section over the whole board, or a blank over its section.
     */
    private Region strip(Region cutFree, Region from) {
        boolean alongX = (order == CutOrder.CROSSCUT_FIRST) == (from == board);
        return alongX ? new Region(cutFree.x1(), from.y1(), cutFree.x2(), from.y2())
            : new Region(from.x1(), cutFree.y1(), from.x2(), cutFree.y2());
    }

    /** Where a rectangle reaches in the direction that the first cuts follow each other. */
    private double[] first(Region region) {
        return side(region, order == CutOrder.CROSSCUT_FIRST);
    }

    private double[] second(Region region) {
        return side(region, order != CutOrder.CROSSCUT_FIRST);
    }

    private static double[] side(Region region, boolean along) {
        return along ? new double[] {region.x1(), region.x2()} : new double[] {region.y1(), region.y2()};
    }

    /**
     * The cuts that free what is kept, of the kind of a pattern.
     *
     * @param numbered how many are numbered before the first that is kept
     */
    private List<SawCut> between(List<double[]> kept, SawCut kind, int numbered) {
        double[] whole = side(kind.within(), kind.crosscut());
        List<SawCut> cuts = new ArrayList<>();
        double done = whole[0];
        for (int i = 0; i < kept.size(); i++) {
            double[] here = kept.get(i);
            if (i > 0 && here[0] - done <= kerf + Stops.SAME) {
                SawCut parted = cuts.remove(cuts.size() - 1);
                cuts.add(kind.at(parted.bears(), done, here[0], parted.before(), numbered + i + 1));
            } else if (here[0] > whole[0] + Stops.SAME) {
                // Less wood than a kerf is only trimmed.
                double edge = edge(cuts, whole[0]);
                cuts.add(kind.at(edge, Math.max(edge, here[0] - kerf), here[0], 0, numbered + i + 1));
            }
            if (here[1] < whole[1] - Stops.SAME) {
                cuts.add(kind.at(edge(cuts, whole[0]), here[1], Math.min(whole[1], here[1] + kerf), numbered + i + 1, 0));
            }
            done = here[1];
        }
        return cuts;
    }

    /** The side that is put against fence or stop: the cut before has left it, or it was there. */
    private static double edge(List<SawCut> cuts, double first) {
        return cuts.isEmpty() ? first : cuts.get(cuts.size() - 1).to();
    }

    /** What falls off beside the blanks, kerfs taken away, the largest first; defects may lie in it. */
    public List<Region> offcuts() {
        List<Region> offcuts = new ArrayList<>();
        addGaps(offcuts, sections.stream().map(section -> first(extent(section))).toList(), board,
            order == CutOrder.CROSSCUT_FIRST);
        for (List<Blank> section : sections) {
            Region extent = extent(section);
            addGaps(offcuts, section.stream().map(blank -> second(blank.region())).toList(), strip(extent, board),
                order != CutOrder.CROSSCUT_FIRST);
            for (Blank blank : section) {
                addGaps(offcuts, List.of(first(blank.region())), strip(blank.region(), extent),
                    order == CutOrder.CROSSCUT_FIRST);
            }
        }
        for (Layout again : recut) {
            offcuts.remove(again.board);
            offcuts.addAll(again.offcuts());
        }
        offcuts.sort(Comparator.comparingDouble((Region r) -> -r.area()));
        return offcuts;
    }

    private void addGaps(List<Region> offcuts, List<double[]> kept, Region within, boolean along) {
        double[] whole = side(within, along);
        double from = whole[0];
        for (double[] here : kept) {
            addGap(offcuts, from, here[0] - kerf, within, along);
            from = here[1] + kerf;
        }
        addGap(offcuts, from, whole[1], within, along);
    }

    private static void addGap(List<Region> offcuts, double from, double to, Region within, boolean along) {
        if (to > from + Stops.SAME) {
            offcuts.add(along ? new Region(from, within.y1(), to, within.y2())
                : new Region(within.x1(), from, within.x2(), to));
        }
    }
}
