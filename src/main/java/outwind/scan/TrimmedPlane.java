package outwind.scan;

import java.util.Arrays;
import outwind.board.PointCloud;
import outwind.numeric.Plane;

/**
 * A plane through most of the points, however far off the others are.
 *
 * <pre>
 *   repeat: fit a plane by least squares to the points nearest to the last one
 * </pre>
 * Each step lessens the sum of the least squared residuals, so it ends.
 *
 * <p>Source: concentration step of least trimmed squares: P. J. Rousseeuw and K. Van Driessen, Data Mining and
 * Knowledge Discovery 12 (2006) 29–45.
 */
final class TrimmedPlane {

    private static final int STEPS = 12;

    /** Median absolute deviation of normal noise times this is its standard deviation. */
    static final double TO_DEVIATION = 1.4826;

    private TrimmedPlane() { }

    /** The plane through the nearest {@code share} of the points, begun at a plane. */
    static Plane through(PointCloud points, Plane start, double share) {
        Plane plane = start;
        for (int step = 0; step < STEPS; step++) {
            double[] away = distances(points, plane);
            double[] sorted = away.clone();
            Arrays.sort(sorted);
            Plane next = fit(points, away, sorted[Math.max(2, (int) (share * (sorted.length - 1)))]);
            if (next.equals(plane)) {
                break;
            }
            plane = next;
        }
        return plane;
    }

    /** The plane through the points within {@code reach} of a plane (mm), then through those that scatter with them. */
    static Plane near(PointCloud points, Plane start, double reach) {
        Plane plane = start;
        for (int step = 0; step < STEPS; step++) {
            double[] away = distances(points, plane);
            double[] near = Arrays.stream(away).filter(d -> d <= reach).sorted().toArray();
            double bound = step == 0 ? reach : Math.min(reach, 3 * TO_DEVIATION * near[near.length / 2] + 1e-9);
            Plane next = fit(points, away, bound);
            if (next.equals(plane)) {
                break;
            }
            plane = next;
        }
        return plane;
    }

    private static double[] distances(PointCloud points, Plane plane) {
        double[] away = new double[points.size()];
        for (int i = 0; i < away.length; i++) {
            away[i] = Math.abs(points.z()[i] - plane.at(points.x()[i], points.y()[i]));
        }
        return away;
    }

    /** The plane of least squares through the points that are no further away than a bound. */
    private static Plane fit(PointCloud points, double[] away, double bound) {
        double cx = points.x()[0];
        double cy = points.y()[0];
        double cz = points.z()[0];
        double[] s = new double[9];
        for (int i = 0; i < away.length; i++) {
            if (away[i] <= bound) {
                double x = points.x()[i] - cx;
                double y = points.y()[i] - cy;
                double z = points.z()[i] - cz;
                s[0]++;
                s[1] += x;
                s[2] += y;
                s[3] += z;
                s[4] += x * x;
                s[5] += x * y;
                s[6] += y * y;
                s[7] += x * z;
                s[8] += y * z;
            }
        }
        double mx = s[1] / s[0];
        double my = s[2] / s[0];
        double mz = s[3] / s[0];
        double xx = s[4] / s[0] - mx * mx;
        double xy = s[5] / s[0] - mx * my;
        double yy = s[6] / s[0] - my * my;
        double xz = s[7] / s[0] - mx * mz;
        double yz = s[8] / s[0] - my * mz;
        double determinant = xx * yy - xy * xy;
        // Places in one line, to rounding, show no slope: a level plane stands for it.
        boolean line = !(determinant > 1e-9 * (xx + yy) * (xx + yy));
        double slopeX = line ? 0 : (xz * yy - yz * xy) / determinant;
        double slopeY = line ? 0 : (yz * xx - xz * xy) / determinant;
        return new Plane(cz + mz - slopeX * (cx + mx) - slopeY * (cy + my), slopeX, slopeY);
    }
}
