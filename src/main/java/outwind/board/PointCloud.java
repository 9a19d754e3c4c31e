package outwind.board;

import java.util.Arrays;

/**
 * Points of a scan, as three arrays of one length; shared, not copied, because there may be millions.
 *
 * @param x along the scan's first axis, length n; likewise {@code y} and {@code z}
 */
public record PointCloud(double[] x, double[] y, double[] z) {

    public PointCloud {
        if (x.length != y.length || x.length != z.length) {
            throw new IllegalArgumentException("a point needs x, y and z, got " + x.length + ", " + y.length + " and "
                + z.length);
        }
    }

    /** Number of points. */
    public int size() {
        return x.length;
    }

    /** True for the same figures. */
    @Override
    public boolean equals(Object other) {
        return other instanceof PointCloud that && Arrays.equals(x, that.x) && Arrays.equals(y, that.y)
            && Arrays.equals(z, that.z);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(x) + 31 * Arrays.hashCode(y);
    }
}
