package outwind.flatten;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import outwind.surface.Places;
import outwind.surface.SampledBoard;

/**
 * A place that is worth touching off next, because the thickness depends on its height.
 *
 * <pre>
 *   over the possible boards, with t the slab's thickness and h the height of face A at a place:
 *   ρ² = cov(t, h)² / (var t · (var h + noise²)),   width left = width · √(1 − ρ²)
 * </pre>
 * The place with the greatest ρ² narrows the range most, and by the same token lowers the chance of a wrong verdict
 * most. For a second and third place, t and h are first rid of what the earlier ones will have explained.
 *
 * @param x    mm along the grain
 * @param y    mm across
 * @param left share of the range's width that is expected to be left once this place, and those before it, are
 *             touched, 0 to 1
 */
public record NextReading(double x, double y, double left) {

    /** A cutter is not touched off nearer to an end or edge than this (mm). */
    private static final double REACH = 10;

    /** A reading that narrows the range by less than this share is not worth the walk. */
    private static final double WORTHWHILE = 0.05;

    /** Where the face is known so well that touching it off would tell nothing, by x and y (mm). */
    public interface Known {
        boolean at(double x, double y);
    }

    /** The best places, wherever they lie. */
    public static List<NextReading> of(List<SampledBoard> boards, double[] slabs, double noise, int most) {
        return of(boards, slabs, (x, y) -> false, noise, most);
    }

    /**
     * The best places, in order.
     *
     * @param known places that are left out
     * @param noise standard deviation of a touch-off (mm)
     * @param most  how many places at most
     */
    public static List<NextReading> of(List<SampledBoard> boards, double[] slabs, Known known, double noise,
            int most) {
        Places places = boards.get(0).places();
        double[] thickness = centred(slabs);
        double[][] heights = new double[places.size()][];
        for (int k = 0; k < heights.length; k++) {
            int place = k;
            heights[k] = known.at(places.x()[k], places.y()[k]) ? new double[slabs.length]
                : centred(boards.stream().mapToDouble(board -> board.top()[place]).toArray());
        }
        double before = dot(thickness, thickness);
        // A reading is a height with noise on it; which noise does not matter, so it is always the same.
        SplittableRandom random = new SplittableRandom(1);
        List<NextReading> next = new ArrayList<>();
        while (next.size() < most) {
            int best = mostTelling(thickness, heights, noise);
            double explained = explained(thickness, heights[best], noise);
            if (before == 0 || 1 - Math.sqrt(1 - explained) < WORTHWHILE) {
                break;
            }
            double[] reading = heights[best].clone();
            for (int i = 0; i < reading.length; i++) {
                reading[i] += random.nextGaussian(0, noise);
            }
            double variance = dot(reading, reading);
            subtract(thickness, reading, dot(thickness, reading) / variance);
            for (double[] height : heights) {
                subtract(height, reading, dot(height, reading) / variance);
            }
            next.add(new NextReading(inside(places.x()[best], places.x()), inside(places.y()[best], places.y()),
                Math.sqrt(dot(thickness, thickness) / before)));
        }
        return next;
    }

    private static int mostTelling(double[] thickness, double[][] heights, double noise) {
        int best = 0;
        for (int k = 1; k < heights.length; k++) {
            if (explained(thickness, heights[k], noise) > explained(thickness, heights[best], noise)) {
                best = k;
            }
        }
        return best;
    }

    /** ρ², the share of the thickness's variance that a reading of this height takes away. */
    private static double explained(double[] thickness, double[] height, double noise) {
        double both = dot(thickness, height);
        double variance = dot(thickness, thickness) * (dot(height, height) + height.length * noise * noise);
        return variance > 0 ? both * both / variance : 0;
    }

    private static double inside(double place, double[] all) {
        double first = all[0];
        double last = first;
        for (double other : all) {
            first = Math.min(first, other);
            last = Math.max(last, other);
        }
        double reach = Math.min(REACH, (last - first) / 4);
        return Math.max(first + reach, Math.min(last - reach, place));
    }

    private static void subtract(double[] values, double[] other, double factor) {
        for (int i = 0; i < values.length; i++) {
            values[i] -= factor * other[i];
        }
    }

    private static double[] centred(double[] values) {
        double mean = 0;
        for (double value : values) {
            mean += value / values.length;
        }
        double[] centred = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            centred[i] = values[i] - mean;
        }
        return centred;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
