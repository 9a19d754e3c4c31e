package outwind.blanks;

import java.util.Collection;
import java.util.TreeSet;

/**
 * Places along one side of the board where a blank may begin: the raster; wherever blanks laid against each other with
 * a kerf between them begin, counted from the near end and from the far side of each defect; and where a blank begins
 * that ends at a defect or at the far end.
 *
 * @param from the near end (mm)
 * @param to   the far end (mm)
 * @param at   places (mm), ascending
 */
public record Stops(double from, double to, double[] at) {

    /** Places closer than this are one (mm); far less than any saw is set to. */
    static final double SAME = 1e-6;

    /** Sums of many different blanks are dense; beyond so many the raster does as well. */
    private static final int MOST_SUMS = 200;

    /**
     * @param extents what blanks take along this side (mm)
     * @param begins  near sides of defects (mm)
     * @param ends    far sides of defects (mm)
     */
    public static Stops of(double from, double to, Saw saw, Collection<Double> extents, Collection<Double> begins,
            Collection<Double> ends) {
        TreeSet<Double> sums = new TreeSet<>();
        sums.add(from);
        ends.forEach(end -> add(sums, end, from, to));
        extents.forEach(extent -> begins.forEach(begin -> add(sums, begin - extent, from, to)));
        extents.forEach(extent -> add(sums, to - extent, from, to));
        addChains(sums, extents, saw.kerf(), from, to);
        for (int i = 0; from + i * saw.raster() < to; i++) {
            add(sums, from + i * saw.raster(), from, to);
        }
        return new Stops(from, to, sums.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Short chains first, so that what is left out where there are too many is least missed. */
    private static void addChains(TreeSet<Double> sums, Collection<Double> extents, double kerf, double from,
            double to) {
        int most = sums.size() + MOST_SUMS;
        TreeSet<Double> last = new TreeSet<>(sums);
        while (!last.isEmpty()) {
            TreeSet<Double> next = new TreeSet<>();
            for (double begin : last) {
                for (double extent : extents) {
                    if (sums.size() >= most) {
                        return;
                    }
                    double sum = begin + extent + kerf;
                    if (add(sums, sum, from, to)) {
                        next.add(sum);
                    }
                }
            }
            last = next;
        }
    }

    private static boolean add(TreeSet<Double> places, double place, double from, double to) {
        if (place < from || place >= to || !places.subSet(place - SAME, true, place + SAME, true).isEmpty()) {
            return false;
        }
        return places.add(place);
    }

    public int count() {
        return at.length;
    }

    /** How many stops, from the first, leave room for a blank of this extent (mm) before the far end. */
    public int roomFor(double extent) {
        int room = 0;
        while (room < at.length && at[room] + extent <= to + SAME) {
            room++;
        }
        return room;
    }

    /** The first stop at or behind a place; their count if there is none. */
    public int indexFrom(double place) {
        int low = 0;
        int high = at.length;
        while (low < high) {
            int middle = (low + high) / 2;
            if (at[middle] >= place - SAME) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
