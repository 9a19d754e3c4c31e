package outwind.scan.find;

/**
 * The direction of the rectangle of least area around a convex outline.
 *
 * <p>One of its sides lies along a side of the outline, so only those directions are tried.
 *
 * <p>Source: H. Freeman and R. Shapira, Communications of the ACM 18 (1975) 409–413.
 */
final class SmallestRectangle {

    private SmallestRectangle() { }

    /**
     * Angle of one of its sides against the x axis (radians).
     *
     * @param hull corners of a convex outline, at least three
     */
    static double angle(double[][] hull) {
        double best = Double.POSITIVE_INFINITY;
        double angle = 0;
        for (int i = 0; i < hull.length; i++) {
            double[] next = hull[(i + 1) % hull.length];
            double direction = Math.atan2(next[1] - hull[i][1], next[0] - hull[i][0]);
            double area = extent(hull, direction) * extent(hull, direction + Math.PI / 2);
            if (area < best) {
                best = area;
                angle = direction;
            }
        }
        return angle;
    }

    private static double extent(double[][] hull, double direction) {
        double cos = Math.cos(direction);
        double sin = Math.sin(direction);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double[] corner : hull) {
            double along = cos * corner[0] + sin * corner[1];
            least = Math.min(least, along);
            most = Math.max(most, along);
        }
        return most - least;
    }
}
