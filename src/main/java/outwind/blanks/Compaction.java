package outwind.blanks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import outwind.surface.Region;

/**
 * Moves blanks towards the near end and the near edge, until they meet what lies there: one cut then parts two blanks
 * instead of two cuts with a sliver between them, and what is left over stays in one piece. A blank stays where it is
 * if it would then lie over a defect or be less sure.
 */
final class Compaction {

    /** A chance that drops by less is as good: one possible board in {@link BlankThickness#DRAWS}, and rounding. */
    private static final double AS_GOOD = 1.001 / BlankThickness.DRAWS;

    private final BlankPlaces places;

    Compaction(BlankPlaces places) {
        this.places = places;
    }

    /** The same sections, closer to the near end and edge where that costs nothing. */
    List<List<Blank>> closed(List<List<Blank>> sections, CutOrder order) {
        boolean crosscuts = order == CutOrder.CROSSCUT_FIRST;
        List<List<Blank>> closed = new ArrayList<>();
        for (List<Blank> section : sections) {
            double from = closed.isEmpty() ? begin(places.usable(), crosscuts)
                : end(closed.get(closed.size() - 1), crosscuts) + places.saw().kerf();
            List<Blank> within = new ArrayList<>();
            for (Blank blank : moved(section, from, crosscuts)) {
                double behind = within.isEmpty() ? begin(places.usable(), !crosscuts)
                    : end(within.subList(within.size() - 1, within.size()), !crosscuts) + places.saw().kerf();
                within.addAll(moved(List.of(blank), behind, !crosscuts));
            }
            closed.add(within);
        }
        return closed;
    }

    private static double begin(Region region, boolean along) {
        return along ? region.x1() : region.y1();
    }

    private static double end(List<Blank> blanks, boolean along) {
        return blanks.stream().map(Blank::region).mapToDouble(r -> along ? r.x2() : r.y2()).max().orElseThrow();
    }

    /** Blanks that begin in one line, moved as near to a place as they may lie: there, or behind a defect. */
    private List<Blank> moved(List<Blank> blanks, double nearest, boolean along) {
        double begin = begin(blanks.get(0).region(), along);
        return DoubleStream.concat(DoubleStream.of(nearest),
                places.board().defects().stream().mapToDouble(defect -> along ? defect.x2() : defect.y2()))
            .filter(place -> place >= nearest && place < begin - Stops.SAME).sorted()
            .mapToObj(place -> movedBy(blanks, place - begin, along))
            .flatMap(Optional::stream).findFirst().orElse(blanks);
    }

    private Optional<List<Blank>> movedBy(List<Blank> blanks, double by, boolean along) {
        List<Blank> moved = new ArrayList<>();
        for (Blank blank : blanks) {
            Region old = blank.region();
            Region region = along
                ? new Region(old.x1() + by, old.y1(), old.x2() + by, old.y2())
                : new Region(old.x1(), old.y1() + by, old.x2(), old.y2() + by);
            if (isOverDefect(region)) {
                return Optional.empty();
            }
            Blank there = new Blank(blank.name(), blank.item(), region, blank.turned(), blank.wanted(),
                places.wood().range(region), blank.worth());
            if (there.chance() < Math.max(places.sure(), blank.chance() - AS_GOOD)) {
                return Optional.empty();
            }
            moved.add(there);
        }
        return Optional.of(moved);
    }

    private boolean isOverDefect(Region region) {
        return places.board().defects().stream().anyMatch(defect -> region.overlaps(Region.of(defect)));
    }
}
