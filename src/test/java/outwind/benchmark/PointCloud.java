package outwind.benchmark;

import java.util.Locale;

/**
 * Heights of an invented board, as dense as wanted, given by a formula of + − × ÷ and √ alone, so that any language
 * makes the same to the last bit ({@code src/test/resources/highs/point_cloud.py} does).
 *
 * @param x along the grain (mm)
 * @param y across (mm)
 * @param z heights (mm)
 */
public record PointCloud(double[] x, double[] y, double[] z) {

    /** What kind of board. */
    public enum Kind {
        /** Twisted, bowed, cupped, kinked and rough, read in no order. */
        WARPED,
        /** The same, read row by row. */
        RASTER,
        /** The same row by row, heights rounded to 0.01 mm, so that many tie. */
        ROUNDED,
        /** The cap of a sphere over a disc: every point of the rim is nearly as low as the lowest. */
        CAP,
        /** A wedge as rough as can be: a hundredth of all points lie within a hundredth of the zone of its edge. */
        WEDGE,
        /** A plane to within rounding: every point touches. */
        PLANE;

        /** The name in a table. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public static PointCloud of(Kind kind, int n) {
        PointCloud cloud = new PointCloud(new double[n], new double[n], new double[n]);
        Congruential random = new Congruential();
        int rows = (int) Math.sqrt(n / 8.0);
        int columns = n / rows;
        for (int i = 0; i < n; i++) {
            double across = random.next();
            double along = random.next();
            double rough = random.next() + random.next() + random.next() + random.next() - 2;
            switch (kind) {
                case WARPED -> cloud.put(i, 2400 * along, 300 * across, 0.2 * rough, true);
                case RASTER, ROUNDED ->
                    cloud.put(i, 2400.0 * (i % columns) / columns, 300.0 * (i / columns) / rows, 0.2 * rough, true);
                case CAP -> cloud.putOnCap(i, across, along, rough);
                case WEDGE -> cloud.put(i, 2400 * along, 300 * across, 0.2 * random.next(), false);
                default -> cloud.put(i, 2400 * along, 300 * across, 0, false);
            }
            if (kind == Kind.ROUNDED) {
                cloud.z[i] = Math.rint(cloud.z[i] * 100) / 100;
            }
        }
        return cloud;
    }

    /** The yardstick: what it costs to look at every number once, on one core. */
    static double sum(double[] x, double[] y, double[] z) {
        double sumX = 0;
        double sumY = 0;
        double sumZ = 0;
        for (int i = 0; i < z.length; i++) {
            sumX += x[i];
            sumY += y[i];
            sumZ += z[i];
        }
        return sumX + sumY + sumZ;
    }

    private void put(int i, double atX, double atY, double rough, boolean warped) {
        double s = atX / 1200 - 1;
        double t = atY / 150 - 1;
        x[i] = atX;
        y[i] = atY;
        z[i] = (warped ? 3 * s * t + 2 * s * s - 1.5 * t * t + 0.8 * s * s * s : 5 * s - t) + rough;
    }

    private void putOnCap(int i, double radius, double angle, double side) {
        double r = 1000 * Math.sqrt(radius);
        double h = 2 * angle - 1;
        x[i] = (side < 0 ? -r : r) * (1 - h * h) / (1 + h * h);
        y[i] = r * 2 * h / (1 + h * h);
        z[i] = Math.sqrt(2.5e7 - x[i] * x[i] - y[i] * y[i]) - 5000;
    }

    /** D. E. Knuth's 64-bit linear congruential generator (MMIX; The Art of Computer Programming 2, 3.3.4, table 1). */
    private static final class Congruential {

        private long state = 1;

        /** From 0 on, below 1. */
        double next() {
            state = state * 6364136223846793005L + 1442695040888963407L;
            return (state >>> 11) * 0x1p-53;
        }
    }
}
