package outwind.numeric;

/**
 * Coordinates fit to compute in: origin amid the places, unit their half-extent, first axis along them if they lie in
 * one line.
 *
 * @param halfX  from the centre to the places that are furthest along x
 * @param halfY  the same along y
 * @param along  false if all are at one place, so that nothing holds the slope along the first axis
 * @param across false if the places lie in one line (or all at one place), so that nothing holds that slope
 */
record Places(double centreX, double centreY, double halfX, double halfY, double unit, double cos, double sin,
              boolean along, boolean across) {

    /** Width of a set of places over its length below which it counts as one line: the rounding of coordinates. */
    private static final double LINE = 1e-10;

    /** Places that are looked at to see at once that they do not lie in one line. */
    private static final int GLANCE = 64;

    static Places of(double[] upperX, double[] upperY, double[] lowerX, double[] lowerY) {
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
        Places plain = new Places(x.middle(), y.middle(), x.width() / 2, y.width() / 2, extent > 0 ? extent / 2 : 1,
            1, 0, extent > 0, extent > 0);
        if (extent == 0 || plain.showsATriangle(upperX, upperY)) {
            return plain;
        }
        double[] scatter = new double[3];
        plain.addScatter(scatter, upperX, upperY);
        plain.addScatter(scatter, lowerX, lowerY);
        double angle = Math.atan2(2 * scatter[1], scatter[0] - scatter[2]) / 2;
        Places turned = plain.turnedBy(angle);
        boolean oneLine = turned.isLine(upperX, upperY) && turned.isLine(lowerX, lowerY)
            && Math.abs(turned.v(upperX[0], upperY[0]) - turned.v(lowerX[0], lowerY[0])) <= LINE;
        return oneLine ? turned : plain;
    }

    private Places turnedBy(double angle) {
        return new Places(centreX, centreY, halfX, halfY, unit, Math.cos(angle), Math.sin(angle), true, false);
    }

    /** True only if some of the places form a triangle too high for any line to pass near all three. */
    private boolean showsATriangle(double[] x, double[] y) {
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
        // No side is longer than twice this one, so near a line no triangle is larger than a hundredth of this.
        return twiceArea > 400 * LINE * unit * Math.hypot(dx, dy);
    }

    private void addScatter(double[] scatter, double[] x, double[] y) {
        double extent = 2 * unit;
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

    private boolean isLine(double[] x, double[] y) {
        double first = v(x[0], y[0]);
        for (int i = 1; i < x.length; i++) {
            if (Math.abs(v(x[i], y[i]) - first) > LINE) {
                return false;
            }
        }
        return true;
    }

    double u(double x, double y) {
        return ((x - centreX) * cos + (y - centreY) * sin) / unit;
    }

    double v(double x, double y) {
        return ((y - centreY) * cos - (x - centreX) * sin) / unit;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
