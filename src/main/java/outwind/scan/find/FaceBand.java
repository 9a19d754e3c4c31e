package outwind.scan.find;

import java.util.Arrays;
import outwind.numeric.plane.Plane;

/**
 * Between which heights over a plane face A lies, whatever stands on it or lies beside it.
 *
 * <p>Heights are counted millimetre by millimetre. The face is where most lie, and everything above and below that it
 * hangs together with: a warped face has wood at every height it spans, while clamps, the bed and stray points stand
 * off, with a stretch of next to nothing between.
 *
 * @param plane from which heights are measured
 * @param low   mm above it; may be negative
 * @param high  mm above it
 */
record FaceBand(Plane plane, double low, double high) {

    /** A stretch as long as this without wood ends the face (mm). */
    private static final int STEP = 4;

    /** A millimetre that holds less of this share of the fullest one counts as empty. */
    private static final double EMPTY = 0.002;

    /**
     * @param heights above the plane (mm), at least one of them from {@code from} up
     * @param from    what is lower is no wood (mm)
     */
    static FaceBand of(Plane plane, double[] heights, double from) {
        double[] sorted = Arrays.stream(heights).filter(height -> height >= from).sorted().toArray();
        double middle = densest(sorted);
        double most = between(sorted, middle - 0.5, middle + 0.5);
        return new FaceBand(plane, Math.max(from, end(sorted, middle, -1, EMPTY * most)),
            end(sorted, middle, 1, EMPTY * most));
    }

    /** Middle of the millimetre with the most heights. */
    private static double densest(double[] sorted) {
        double best = sorted[0];
        int most = 0;
        int from = 0;
        for (int to = 0; to < sorted.length; to++) {
            while (sorted[to] - sorted[from] > 1) {
                from++;
            }
            if (to - from >= most) {
                most = to - from;
                best = (sorted[from] + sorted[to]) / 2;
            }
        }
        return best;
    }

    /** The last millimetre that holds wood, going up (1) or down (−1), and one more for stray noise. */
    private static double end(double[] sorted, double middle, int step, double empty) {
        double last = middle;
        for (double height = middle; Math.abs(height - last) <= STEP; height += step) {
            if (between(sorted, height - 0.5, height + 0.5) > empty) {
                last = height;
            }
        }
        return last + 1.5 * step;
    }

    private static int between(double[] sorted, double low, double high) {
        return index(sorted, high) - index(sorted, low);
    }

    private static int index(double[] sorted, double height) {
        int at = Arrays.binarySearch(sorted, height);
        return at < 0 ? -at - 1 : at;
    }

    /** Whether a point may lie on the face: −1 if it lies below the band, 1 above, 0 in it. */
    int side(double x, double y, double z) {
        double height = z - plane.at(x, y);
        return height < low ? -1 : height > high ? 1 : 0;
    }
}
