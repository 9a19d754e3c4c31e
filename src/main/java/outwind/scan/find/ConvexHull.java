package outwind.scan.find;

import java.util.Arrays;
import java.util.Comparator;

/**
 * The corners of the smallest convex outline around points in the plane.
 *
 * <p>Source: A. M. Andrew, Information Processing Letters 9 (1979) 216–219 (monotone chain).
 */
final class ConvexHull {

    private ConvexHull() { }

    /** The corners, counter-clockwise, each an array of x and y; fewer than three if the points lie in one line. */
    static double[][] of(double[][] points) {
        double[][] sorted = points.clone();
        Arrays.sort(sorted, Comparator.<double[]>comparingDouble(p -> p[0]).thenComparingDouble(p -> p[1]));
        double[][] chain = new double[2 * sorted.length][];
        int size = 0;
        for (double[] point : sorted) {
            size = add(chain, size, 0, point);
        }
        int lower = size - 1;
        for (int i = sorted.length - 2; i >= 0; i--) {
            size = add(chain, size, lower, sorted[i]);
        }
        return Arrays.copyOf(chain, Math.max(1, size - 1));
    }

    /** Adds a point to a chain that turns left all the way from index {@code first}; returns its new size. */
    private static int add(double[][] chain, int size, int first, double[] point) {
        int kept = size;
        while (kept - first >= 2 && turn(chain[kept - 2], chain[kept - 1], point) <= 0) {
            kept--;
        }
        chain[kept] = point;
        return kept + 1;
    }

    private static double turn(double[] a, double[] b, double[] c) {
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    }
}
