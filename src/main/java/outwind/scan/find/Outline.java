package outwind.scan.find;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import outwind.numeric.Median;

/**
 * The rectangle of a board seen from above.
 *
 * <p>Its direction comes from the smallest rectangle around the face, then from straight lines through the outermost
 * points of the two long sides, strip by strip, so that one clamp's jaw beside the board turns nothing. A side lies at
 * the outermost of its strips that is not further out than most of them by more than {@link #JUT}.
 *
 * <p>Source of the robust line: H. Theil 1950, P. K. Sen, Journal of the American Statistical Association 63 (1968)
 * 1379–1389 (median of the slopes of all pairs).
 *
 * @param angle  of the longer side against the x axis (radians), more than −π/2 and at most π/2
 * @param fromX  where the nearer end lies along the longer side (mm), turned by {@code angle} about the origin
 * @param toX    where the further end lies
 * @param fromY  where the nearer edge lies across
 * @param toY    where the further edge lies
 */
record Outline(double angle, double fromX, double toX, double fromY, double toY) {

    /** Strips along each side: a jaw covers few of them, and each still holds points of its own. */
    private static final int STRIPS = 64;

    /** A point that stands out further from its side than this is not of the board (mm). */
    private static final double JUT = 2;

    /** Points that a tile of the plane should hold, so that an empty one is a gap. */
    private static final int TO_A_TILE = 12;

    double length() {
        return toX - fromX;
    }

    double width() {
        return toY - fromY;
    }

    /**
     * The same rectangle measured from its shorter side: turned by a quarter less, or more where that is less of a turn.
     */
    Outline endwise() {
        return angle > 0
            ? new Outline(angle - Math.PI / 2, -toY, -fromY, fromX, toX)
            : new Outline(angle + Math.PI / 2, fromY, toY, -toX, -fromX);
    }

    /** The outline of points of a face, at least three not in a line (mm). */
    static Outline of(double[] x, double[] y) {
        boolean[] kept = new Tiles(x, y, TO_A_TILE).inOnePiece();
        double[][] hull = ConvexHull.of(outermost(x, y, kept));
        double angle = SmallestRectangle.angle(hull);
        Outline rough = measured(x, y, kept, angle);
        if (rough.length() < rough.width()) {
            angle += Math.PI / 2;
        }
        angle += tiltOfLongSides(x, y, kept, angle);
        // Half a turn either way is the same rectangle; the smaller turn is the one that a person made.
        angle -= Math.PI * Math.ceil(angle / Math.PI - 0.5);
        return measured(x, y, kept, angle);
    }

    /** Points that can be corners of the hull: the first and last of each of many strips, both ways. */
    private static double[][] outermost(double[] x, double[] y, boolean[] kept) {
        Strips columns = Strips.of(x, y, kept, 0, 16 * STRIPS);
        Strips rows = Strips.of(x, y, kept, Math.PI / 2, 16 * STRIPS);
        List<double[]> points = new ArrayList<>();
        for (Strips strips : List.of(columns, rows)) {
            for (int s = 0; s < strips.count(); s++) {
                if (strips.lowest()[s] >= 0) {
                    points.add(new double[] {x[strips.lowest()[s]], y[strips.lowest()[s]]});
                    points.add(new double[] {x[strips.highest()[s]], y[strips.highest()[s]]});
                }
            }
        }
        return points.toArray(double[][]::new);
    }

    private static double tiltOfLongSides(double[] x, double[] y, boolean[] kept, double angle) {
        Strips strips = Strips.of(x, y, kept, angle, STRIPS);
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double sum = 0;
        for (int[] side : List.of(strips.lowest(), strips.highest())) {
            // The end strips may hold a corner only.
            int[] inner = Arrays.stream(side, 1, side.length - 1).filter(i -> i >= 0).toArray();
            double[] slopes = new double[inner.length * (inner.length - 1) / 2];
            int k = 0;
            for (int i = 0; i < inner.length; i++) {
                for (int j = 0; j < i; j++) {
                    double dx = x[inner[i]] - x[inner[j]];
                    double dy = y[inner[i]] - y[inner[j]];
                    slopes[k++] = (cos * dy - sin * dx) / (cos * dx + sin * dy);
                }
            }
            Arrays.sort(slopes);
            sum += slopes.length == 0 ? 0 : (slopes[(slopes.length - 1) / 2] + slopes[slopes.length / 2]) / 2;
        }
        return Math.atan(sum / 2);
    }

    private static Outline measured(double[] x, double[] y, boolean[] kept, double angle) {
        Strips along = Strips.of(x, y, kept, angle, STRIPS);
        Strips across = Strips.of(x, y, kept, angle + Math.PI / 2, STRIPS);
        // Across the strips of the second, what is high lies towards −x.
        return new Outline(angle, -side(across, x, y, true), -side(across, x, y, false),
            side(along, x, y, false), side(along, x, y, true));
    }

    /** Where a side lies, square to the strips. */
    private static double side(Strips strips, double[] x, double[] y, boolean high) {
        int sign = high ? 1 : -1;
        double[] out = Arrays.stream(high ? strips.highest() : strips.lowest()).filter(i -> i >= 0)
            .mapToDouble(i -> sign * strips.across(x[i], y[i])).toArray();
        double usual = Median.of(out);
        double side = usual;
        for (double place : out) {
            side = place <= usual + JUT ? Math.max(side, place) : side;
        }
        return sign * side;
    }
}
