package outwind.scan.find;

import java.util.Arrays;
import java.util.stream.IntStream;
import outwind.board.PointCloud;

/**
 * Points on a face in the order of the quarters of cells that they lie in, so that whatever is asked of a cell walks
 * over neighbouring memory.
 *
 * @param points in the board's axes (mm)
 * @param start  where each quarter's points begin, and past the last; length quarters + 1
 */
record CellPoints(CellGrid grid, PointCloud points, int[] start) {

    /** Where a point of the scan belongs: not below zero, a quarter; else why it is left out. */
    interface Sieve {
        int quarterOf(double x, double y, double z);
    }

    /** Reasons for leaving a point out, found by {@link Sieve}. */
    static final int BELOW = -1;
    static final int ABOVE = -2;
    static final int BEYOND = -3;

    /** What is left after sorting, and how many points each reason took: {@code leftOut[-reason]}. */
    record Sorted(CellPoints points, int[] leftOut) { }

    /**
     * Counting sort, both its sweeps shared out among the cores by stretches of the file.
     *
     * <p>Source: D. E. Knuth, The Art of Computer Programming 3, 2nd ed., section 5.2, algorithm D.
     */
    static Sorted sorted(CellGrid grid, PointCloud scan, Placement placement, Sieve sieve) {
        int n = scan.size();
        int stretches = Math.max(1, Math.min(Runtime.getRuntime().availableProcessors(), n / 10_000));
        int[] quarter = new int[n];
        int[][] next = new int[stretches][];
        int[][] left = new int[stretches][4];
        IntStream.range(0, stretches).parallel().forEach(s -> {
            int[] count = new int[grid.quarters()];
            for (int i = begin(s, stretches, n); i < begin(s + 1, stretches, n); i++) {
                double x = scan.x()[i];
                double y = scan.y()[i];
                double z = scan.z()[i];
                quarter[i] = sieve.quarterOf(placement.x(x, y, z), placement.y(x, y, z), placement.z(x, y, z));
                if (quarter[i] >= 0) {
                    count[quarter[i]]++;
                } else {
                    left[s][-quarter[i]]++;
                }
            }
            next[s] = count;
        });
        int[] start = starts(next, grid.quarters());
        int kept = start[grid.quarters()];
        PointCloud sorted = new PointCloud(new double[kept], new double[kept], new double[kept]);
        IntStream.range(0, stretches).parallel().forEach(s -> {
            for (int i = begin(s, stretches, n); i < begin(s + 1, stretches, n); i++) {
                if (quarter[i] >= 0) {
                    int to = next[s][quarter[i]]++;
                    double x = scan.x()[i];
                    double y = scan.y()[i];
                    double z = scan.z()[i];
                    sorted.x()[to] = placement.x(x, y, z);
                    sorted.y()[to] = placement.y(x, y, z);
                    sorted.z()[to] = placement.z(x, y, z);
                }
            }
        });
        int[] leftOut = new int[4];
        for (int[] counts : left) {
            Arrays.setAll(leftOut, reason -> leftOut[reason] + counts[reason]);
        }
        return new Sorted(new CellPoints(grid, sorted, start), leftOut);
    }

    private static int begin(int stretch, int stretches, int n) {
        return (int) ((long) stretch * n / stretches);
    }

    /** Turns each stretch's counts into where it puts its first point of every quarter. */
    private static int[] starts(int[][] counts, int quarters) {
        int[] start = new int[quarters + 1];
        int at = 0;
        for (int q = 0; q < quarters; q++) {
            start[q] = at;
            for (int[] count : counts) {
                int own = count[q];
                count[q] = at;
                at += own;
            }
        }
        start[quarters] = at;
        return start;
    }

    int size() {
        return points.size();
    }

    /**
     * These without the points that are marked. The others move up within the arrays of this object, which is worth
     * nothing afterwards: a scan of many million points does not fit into memory three times.
     */
    CellPoints without(boolean[] dropped, int count) {
        if (count == 0) {
            return this;
        }
        int[] begins = new int[start.length];
        int to = 0;
        for (int q = 0; q + 1 < start.length; q++) {
            begins[q] = to;
            for (int i = start[q]; i < start[q + 1]; i++) {
                if (!dropped[i]) {
                    points.x()[to] = points.x()[i];
                    points.y()[to] = points.y()[i];
                    points.z()[to++] = points.z()[i];
                }
            }
        }
        begins[start.length - 1] = to;
        return new CellPoints(grid, new PointCloud(Arrays.copyOf(points.x(), to), Arrays.copyOf(points.y(), to),
            Arrays.copyOf(points.z(), to)), begins);
    }
}
