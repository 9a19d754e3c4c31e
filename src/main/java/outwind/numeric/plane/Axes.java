package outwind.numeric.plane;

import outwind.numeric.Range;

/**
 * Coordinates fit to compute in.
 *
 * <pre>
 *   u = ( (x − centreX)·cos + (y − centreY)·sin) / unitU
 *   v = (−(x − centreX)·sin + (y − centreY)·cos) / unitV
 * </pre>
 * The origin lies amid the places. Where they cover an area, the axes keep their directions, and both have half the
 * larger extent as their unit. Places that lie nearly in one line, as readings along one ruler do, would be distinguished
 * by the last digits of v alone, and four constraints over them would look like three. So the first axis is laid along
 * them, the way they scatter most, and the second gets a unit of its own: how far the places stray from the first. Then
 * u and v both run from about −1 to 1, however thin the set is. Places that stray by no more than rounding are taken to
 * lie in one line.
 *
 * @param halfX  from the centre to the places that are furthest along x
 * @param halfY  the same along y
 * @param unitU  what counts as 1 along the first axis
 * @param unitV  what counts as 1 along the second
 * @param along  false if all are at one place, so that nothing holds the slope along the first axis
 * @param across false if the places lie in one line (or all at one place), so that nothing holds that slope
 */
record Axes(double centreX, double centreY, double halfX, double halfY, double cos, double sin, double unitU,
            double unitV, boolean along, boolean across) {

    /**
     * Half the width of a set of places over half its length below which it counts as one line: a hair less than a
     * nanometre for each 10 m, which no reading shows.
     */
    private static final double LINE = 1e-10;

    /** Units in the last place of the coordinates that places of one line may stray by: rounded once, turned once. */
    private static final int ROUNDINGS = 16;

    /** Places that are looked at to see at once that they cover an area. */
    private static final int GLANCE = 64;

    /**
     * Height of a triangle over half the extent from which on the axes are left as they are. Solving in them then costs
     * no more than the two or three digits that v is shorter than u.
     */
    private static final double AREA = 0.01;

    static Axes of(double[] upperX, double[] upperY, double[] lowerX, double[] lowerY) {
        Range x = Range.of(upperX);
        Range y = Range.of(upperY);
        if (lowerX != upperX) {
            x = x.and(Range.of(lowerX));
        }
        if (lowerY != upperY) {
            y = y.and(Range.of(lowerY));
        }
        double extent = Math.max(x.width(), y.width());
        if (!x.isFinite() || !y.isFinite()) {
            throw new IllegalArgumentException("places need finite coordinates");
        }
        double unit = extent > 0 ? extent / 2 : 1;
        Axes plain = new Axes(x.middle(), y.middle(), x.width() / 2, y.width() / 2, 1, 0, unit, unit, extent > 0,
            extent > 0);
        if (extent == 0 || plain.showsAnArea(upperX, upperY)) {
            return plain;
        }
        double[] scatter = new double[3];
        plain.addScatter(scatter, upperX, upperY);
        plain.addScatter(scatter, lowerX, lowerY);
        Axes turned = plain.turnedBy(Math.atan2(2 * scatter[1], scatter[0] - scatter[2]) / 2);
        double astray = Math.max(turned.astray(upperX, upperY), turned.astray(lowerX, lowerY));
        double rounding = ROUNDINGS * Math.ulp(Math.max(x.size(), y.size())) / unit;
        return turned.straying(astray, astray <= LINE + rounding);
    }

    private Axes turnedBy(double angle) {
        return new Axes(centreX, centreY, halfX, halfY, Math.cos(angle), Math.sin(angle), unitU, unitV, along, across);
    }

    /** The same axes for places that stray from the first by so much of its unit. */
    private Axes straying(double astray, boolean line) {
        return new Axes(centreX, centreY, halfX, halfY, cos, sin, unitU, line ? unitU : astray * unitU, along, !line);
    }

    /** True only if some of the places form a triangle that is not thin. */
    private boolean showsAnArea(double[] x, double[] y) {
        int step = Math.max(1, x.length / GLANCE);
        int far = 0;
        for (int i = 0; i < x.length; i += step) {
            if (Math.hypot(x[i] - x[0], y[i] - y[0]) > Math.hypot(x[far] - x[0], y[far] - y[0])) {
                far = i;
            }
        }
        double dx = x[far] - x[0];
        double dy = y[far] - y[0];
        double twiceArea = 0;
        for (int i = 0; i < x.length; i += step) {
            twiceArea = Math.max(twiceArea, Math.abs(dx * (y[i] - y[0]) - dy * (x[i] - x[0])));
        }
        return twiceArea > AREA * unitU * Math.hypot(dx, dy);
    }

    /** Adds the sums of u², u·v and v². */
    private void addScatter(double[] scatter, double[] x, double[] y) {
        double extent = 2 * unitU;
        double meanX = mean(x);
        double meanY = mean(y);
        for (int i = 0; i < x.length; i++) {
            double u = (x[i] - meanX) / extent;
            double v = (y[i] - meanY) / extent;
            scatter[0] += u * u;
            scatter[1] += u * v;
            scatter[2] += v * v;
        }
        double u = (meanX - centreX) / extent;
        double v = (meanY - centreY) / extent;
        scatter[0] += u * u;
        scatter[1] += u * v;
        scatter[2] += v * v;
    }

    /** The greatest |v|. */
    private double astray(double[] x, double[] y) {
        double most = 0;
        for (int i = 0; i < x.length; i++) {
            most = Math.max(most, Math.abs(v(x[i], y[i])));
        }
        return most;
    }

    double u(double x, double y) {
        return ((x - centreX) * cos + (y - centreY) * sin) / unitU;
    }

    double v(double x, double y) {
        return ((y - centreY) * cos - (x - centreX) * sin) / unitV;
    }

    /** Slope along x of a plane that rises by so much over each unit of u and of v. */
    double slopeX(double overU, double overV) {
        return overU / unitU * cos - overV / unitV * sin;
    }

    /** Slope along y of the same. */
    double slopeY(double overU, double overV) {
        return overU / unitU * sin + overV / unitV * cos;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
