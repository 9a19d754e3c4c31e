package outwind.scan.find;

import java.util.Arrays;
import outwind.board.PointCloud;
import outwind.numeric.Median;
import outwind.numeric.plane.Plane;

/**
 * A plane through most of the points, however far off the others are.
 *
 * <pre>
 *   repeat: fit a plane by least squares to the points nearest to the last one
 * </pre>
 * Of a fixed share of the points each step lessens the sum of the least squared residuals, so that comes to rest.
 * Within a bound that follows the scatter it need not, and ends after {@value #STEPS} steps.
 *
 * <p>Source: concentration step of least trimmed squares: P. J. Rousseeuw and K. Van Driessen, Data Mining and
 * Knowledge Discovery 12 (2006) 29–45.
 */
final class TrimmedPlane {

    private static final int STEPS = 12;

    /** Determinant of the places' covariance over the square of its trace from which on they are in one line. */
    private static final double LINE = 1e-9;

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
            double[] near = Arrays.stream(away).filter(d -> d <= reach).toArray();
            double bound = step == 0 ? reach : Math.min(reach, 3 * TO_DEVIATION * Median.of(near) + 1e-9);
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
        PlaneSums sums = new PlaneSums();
        for (int i = 0; i < away.length; i++) {
            if (away[i] <= bound) {
                sums.add(1, points.x()[i] - cx, points.y()[i] - cy, points.z()[i] - cz);
            }
        }
        // Places in one line, to rounding, show no slope: a level plane stands for it.
        boolean line = !(sums.determinant() > LINE * sums.spread() * sums.spread());
        double slopeX = line ? 0 : sums.slopeX();
        double slopeY = line ? 0 : sums.slopeY();
        return new Plane(cz + sums.meanZ() - slopeX * (cx + sums.meanX()) - slopeY * (cy + sums.meanY()), slopeX,
            slopeY);
    }
}
