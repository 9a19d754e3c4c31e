package outwind.board;

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
}
