package outwind.surface.field;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * The size of a board, and the corner that it is looked at from: the one from which its face rises, along and across.
 *
 * <pre>
 *   far end first:   Σ z·u &lt; 0,    far edge first:   Σ z·v &lt; 0,    u and v from −1 to 1
 * </pre>
 * A board and its mirror image are then gone through alike, and random numbers meet the same wood in both. So a plan
 * for a mirrored board is the mirrored plan. A face that rises neither way is its own mirror image as far as these sums
 * can show, and is looked at from the corner at 0, 0.
 *
 * @param length  mm along the grain
 * @param width   mm across
 * @param farEnd  true if the end at x = length comes first
 * @param farEdge true if the edge at y = width comes first
 */
public record Viewpoint(double length, double width, boolean farEnd, boolean farEdge) {

    /** Sums are rounded to this share of the heights: what is less is no slope but rounding. */
    private static final double ROUNDING = 1e-9;

    /** Places nearer to each other than this are on one line (mm): mirrored coordinates differ by rounding. */
    private static final double SAME_LINE = 1e-6;

    /** @param z heights at places {@code x}, {@code y} (mm), all of one length */
    public static Viewpoint of(double[] x, double[] y, double[] z, double length, double width) {
        double along = 0;
        double across = 0;
        double most = 0;
        double middle = Arrays.stream(z).average().orElse(0);
        for (int i = 0; i < z.length; i++) {
            along += (z[i] - middle) * (2 * x[i] / length - 1);
            across += (z[i] - middle) * (2 * y[i] / width - 1);
            most += Math.abs(z[i]);
        }
        return new Viewpoint(length, width, along < -ROUNDING * most, across < -ROUNDING * most);
    }

    /** How far a place is from the end that comes first (mm); likewise the place that is so far from it. */
    public double seenX(double x) {
        return farEnd ? length - x : x;
    }

    /** How far a place is from the edge that comes first (mm); likewise the place that is so far from it. */
    public double seenY(double y) {
        return farEdge ? width - y : y;
    }

    /** The numbers of places, line by line across and along each line, as they are seen from here. */
    public int[] order(double[] x, double[] y) {
        long[] across = Arrays.stream(y).mapToLong(at -> Math.round(seenY(at) / SAME_LINE)).toArray();
        long[] along = Arrays.stream(x).mapToLong(at -> Math.round(seenX(at) / SAME_LINE)).toArray();
        return IntStream.range(0, x.length).boxed()
            .sorted(Comparator.<Integer>comparingLong(i -> across[i]).thenComparingLong(i -> along[i]))
            .mapToInt(Integer::intValue).toArray();
    }
}
