package outwind.scan.find;

import java.util.Arrays;

/**
 * Points in the plane, laid out in strips side by side along a direction, and the outermost two of each.
 *
 * @param angle   direction along which one strip follows the other (radians)
 * @param lowest  number of the point furthest to the right of the direction in each strip, −1 where it holds none
 * @param highest number of the point furthest to its left
 */
record Strips(double angle, int[] lowest, int[] highest) {

    static Strips of(double[] x, double[] y, boolean[] kept, double angle, int count) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < x.length; i++) {
            if (kept[i]) {
                double along = cos * x[i] + sin * y[i];
                first = Math.min(first, along);
                last = Math.max(last, along);
            }
        }
        int[] lowest = new int[count];
        int[] highest = new int[count];
        Arrays.fill(lowest, -1);
        Arrays.fill(highest, -1);
        double[] low = new double[count];
        double[] high = new double[count];
        double scale = count / Math.max(last - first, Double.MIN_NORMAL);
        for (int i = 0; i < x.length; i++) {
            if (kept[i]) {
                int s = Math.min(count - 1, (int) ((cos * x[i] + sin * y[i] - first) * scale));
                double across = cos * y[i] - sin * x[i];
                if (lowest[s] < 0 || across < low[s]) {
                    lowest[s] = i;
                    low[s] = across;
                }
                if (highest[s] < 0 || across > high[s]) {
                    highest[s] = i;
                    high[s] = across;
                }
            }
        }
        return new Strips(angle, lowest, highest);
    }

    int count() {
        return lowest.length;
    }

    /** How far a place lies to the left of the direction (mm), from the origin. */
    double across(double x, double y) {
        return Math.cos(angle) * y - Math.sin(angle) * x;
    }
}
