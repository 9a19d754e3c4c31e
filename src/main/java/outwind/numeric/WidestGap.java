package outwind.numeric;

import java.util.ArrayList;
import java.util.List;

/**
 * The widest gap between two parallel planes, the upper one under all points of one set, the lower one over all
 * points of another.
 *
 * <pre>
 *   maximise c₁ − c₂   subject to   a·x + b·y + c₁ ≤ z for every upper point
 *                                   a·x + b·y + c₂ ≥ z for every lower point
 * </pre>
 * One linear program in the four unknowns a, b, c₁, c₂, and four questions are that same program:
 * <ul>
 * <li>thickest slab of a board: upper points its top, lower points its underside;
 * <li>minimum zone (ISO 12781-1:2011): both sets the same points; the gap is negative, and its size is the zone;
 * <li>highest plane under points at a place, as for least wood off a face: the lower set is that place, at height 0;
 * <li>resting pose: the same at the centre of gravity; the multipliers are the load shares.
 * </ul>
 *
 * <p>Method: exchange, which is the dual simplex method. Four constraints hold the planes, with multipliers that
 * are never negative; one scan finds the point furthest on the wrong side of its plane; it takes the place of the
 * constraint whose multiplier reaches zero first; the gap only ever narrows. When no point is on the wrong side, the
 * multipliers prove that the answer is best. Memory beyond the given arrays does not grow with their length. The
 * slopes start held by bounds wide enough to be out of the way at the end; ties, which regular grids are full of,
 * are broken by Bland's rule after a run of exchanges that gained nothing, so the method always ends.
 *
 * <p>Source: E. Stiefel, Numerische Mathematik 1 (1959) 1–28 (exchange); R. G. Bland, Mathematics of Operations
 * Research 2 (1977) 103–107; N. Krivulin, Mathematics 8 (2020) 2210, doi:10.3390/math8122210 (minimum zone as
 * discrete linear Chebyshev approximation).
 */
public final class WidestGap {

    /** Exchanges without gain after which ties are broken by Bland's rule; more than a healthy run ever shows. */
    private static final int PATIENCE = 12;

    /** Far beyond what any set of points has needed (under 40); reached only if something is broken. */
    private static final int MOST_STEPS = 100_000;

    /** Codes of the four bounds that hold the slopes at the start, −4 to −1: a from above and below, b likewise. */
    private static final int BOUNDS = -4;

    private final Places places;
    private final double[] upperX;
    private final double[] upperY;
    private final double[] lowerX;
    private final double[] lowerY;
    private final Tilt tilt;

    private WidestGap(double[] upperX, double[] upperY, double[] lowerX, double[] lowerY, Tilt tilt) {
        this.tilt = tilt;
        this.upperX = upperX;
        this.upperY = upperY;
        this.lowerX = lowerX;
        this.lowerY = lowerY;
        this.places = Places.of(upperX, upperY, lowerX, lowerY);
    }

    /**
     * The program over fixed places; heights come later, as often as wanted.
     *
     * @param upperX x of the upper points, length n ≥ 1; kept, must not change
     * @param upperY y of the upper points, length n
     * @param lowerX x of the lower points, length m ≥ 1; kept, must not change
     * @param lowerY y of the lower points, length m
     */
    public static WidestGap over(double[] upperX, double[] upperY, double[] lowerX, double[] lowerY) {
        requireSameLength(upperX, upperY, "upper");
        requireSameLength(lowerX, lowerY, "lower");
        return new WidestGap(upperX, upperY, lowerX, lowerY, Tilt.FREE);
    }

    /**
     * The same program with one more constraint: over a rectangle of this size the planes rise against a given plane by
     * no more than so much from its lowest corner to its highest.
     *
     * <pre>
     *   |a − a₀|·extentX + |b − b₀|·extentY ≤ most
     * </pre>
     * The multipliers of points still add up to 1, but no longer balance about one place where the limit holds.
     *
     * @param most not below zero
     * @param from the plane with the slopes a₀ and b₀; its height does not matter
     */
    public WidestGap tiltedByAtMost(double most, Plane from, double extentX, double extentY) {
        return new WidestGap(upperX, upperY, lowerX, lowerY, new Tilt(most, from, extentX, extentY));
    }

    /**
     * The narrowest pair of parallel planes that holds all the points; separation measured along z.
     *
     * @param x first coordinate of each place, length n ≥ 1
     * @param y second coordinate, length n
     * @param z heights, length n
     * @return the zone; where several share the least width, any one of them; places in one line leave the slope
     *     across the line at zero
     */
    public static Zone minimumZone(double[] x, double[] y, double[] z) {
        Gap gap = over(x, y, x, y).between(z, z);
        // The planes of the gap have swapped roles: the one under all points lies lower.
        double width = Math.max(0, -gap.width());
        List<Contact> contacts = gap.contacts().stream()
            .map(contact -> new Contact(contact.index(), !contact.upper(), contact.multiplier())).toList();
        return new Zone(gap.upper().raisedBy(-gap.width() / 2), width, contacts);
    }

    /**
     * The thickest slab between a top and an underside known at the same places.
     *
     * @param x         first coordinate of each place, length n ≥ 1
     * @param y         second coordinate, length n
     * @param top       heights of the top face, length n
     * @param underside heights of the underside, length n
     */
    public static Gap thickestSlab(double[] x, double[] y, double[] top, double[] underside) {
        return over(x, y, x, y).between(top, underside);
    }

    /**
     * The plane under all points that is highest at one place.
     *
     * @param x   first coordinate of each point, length n ≥ 3
     * @param y   second coordinate, length n
     * @param z   heights, length n
     * @param atX the place, strictly inside the outline of the points
     * @param atY the place
     * @throws IllegalArgumentException if the place is not inside the outline, where no plane is highest
     */
    public static SupportingPlane highestPlaneUnder(double[] x, double[] y, double[] z, double atX, double atY) {
        Gap gap = over(x, y, new double[] {atX}, new double[] {atY}).between(z, new double[] {0});
        List<Contact> touching = gap.contacts().stream().filter(Contact::upper).toList();
        return new SupportingPlane(gap.upper(), touching);
    }

    /**
     * Solves the program for these heights.
     *
     * @param top   heights of the upper points, length n
     * @param under heights of the lower points, length m
     * @throws IllegalArgumentException if lengths differ, a height is not finite, or no pair of planes is best
     */
    public Gap between(double[] top, double[] under) {
        return between(top, under, null);
    }

    /**
     * Solves the program, starting from the contacts of an answer over the same places and other heights. They stay a
     * valid start whatever the heights, because the multipliers depend on the places alone.
     *
     * @param start an earlier answer of this object, or null
     */
    public Gap between(double[] top, double[] under, Gap start) {
        if (top.length != upperX.length || under.length != lowerX.length) {
            throw new IllegalArgumentException("expected " + upperX.length + " upper and " + lowerX.length
                + " lower heights, got " + top.length + " and " + under.length);
        }
        return new Exchange(top, under).run(start);
    }

    private static void requireSameLength(double[] x, double[] y, String which) {
        if (x.length == 0 || x.length != y.length) {
            throw new IllegalArgumentException("expected as many x as y, at least one, for the " + which
                + " points, got " + x.length + " and " + y.length);
        }
    }

    /**
     * How far the planes may tilt: four constraints ±(a − a₀)·extentX ± (b − b₀)·extentY ≤ most.
     *
     * @param most infinite where they are free
     */
    private record Tilt(double most, Plane from, double extentX, double extentY) {

        static final Tilt FREE = new Tilt(Double.POSITIVE_INFINITY, new Plane(0, 0, 0), 0, 0);

        boolean isFree() {
            return Double.isInfinite(most);
        }

        /** Codes of the four constraints: −8 to −5. */
        static final int FIRST = -8;
        static final int LAST = -5;

        double alongX(int code) {
            return (code & 1) == 0 ? extentX : -extentX;
        }

        double alongY(int code) {
            return code < -6 ? extentY : -extentY;
        }

        double rightHandSide(int code) {
            return most + alongX(code) * from.slopeX() + alongY(code) * from.slopeY();
        }
    }

    /**
     * Coordinates fit to compute in: origin amid the places, unit their half-extent, first axis along them if they
     * lie in one line.
     *
     * @param across false if the places lie in one line (or all at one place), so that nothing holds that slope
     * @param along  false if all are at one place
     */
    private record Places(double centreX, double centreY, double unit, double cos, double sin, boolean along,
                          boolean across) {

        /** Width of a set of places over its length below which it counts as one line: the rounding of coordinates. */
        private static final double LINE = 1e-10;

        static Places of(double[] upperX, double[] upperY, double[] lowerX, double[] lowerY) {
            double minX = Math.min(least(upperX), least(lowerX));
            double maxX = Math.max(most(upperX), most(lowerX));
            double minY = Math.min(least(upperY), least(lowerY));
            double maxY = Math.max(most(upperY), most(lowerY));
            double extent = Math.max(maxX - minX, maxY - minY);
            if (!Double.isFinite(extent)) {
                throw new IllegalArgumentException("places need finite coordinates");
            }
            double centreX = (minX + maxX) / 2;
            double centreY = (minY + maxY) / 2;
            if (extent == 0) {
                return new Places(centreX, centreY, 1, 1, 0, false, false);
            }
            double[] scatter = new double[3];
            addScatter(scatter, upperX, upperY, centreX, centreY, extent);
            addScatter(scatter, lowerX, lowerY, centreX, centreY, extent);
            double angle = Math.atan2(2 * scatter[1], scatter[0] - scatter[2]) / 2;
            Places turned = new Places(centreX, centreY, extent / 2, Math.cos(angle), Math.sin(angle), true, false);
            if (turned.isLine(upperX, upperY) && turned.isLine(lowerX, lowerY)
                && Math.abs(turned.v(upperX[0], upperY[0]) - turned.v(lowerX[0], lowerY[0])) <= LINE) {
                return turned;
            }
            return new Places(centreX, centreY, extent / 2, 1, 0, true, true);
        }

        private static void addScatter(double[] scatter, double[] x, double[] y, double cx, double cy, double unit) {
            double meanX = mean(x);
            double meanY = mean(y);
            for (int i = 0; i < x.length; i++) {
                double u = (x[i] - meanX) / unit;
                double v = (y[i] - meanY) / unit;
                scatter[0] += u * u;
                scatter[1] += u * v;
                scatter[2] += v * v;
            }
            double u = (meanX - cx) / unit;
            double v = (meanY - cy) / unit;
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

        private static double least(double[] values) {
            double least = Double.POSITIVE_INFINITY;
            for (double value : values) {
                least = Math.min(least, value);
            }
            return least;
        }

        private static double most(double[] values) {
            double most = Double.NEGATIVE_INFINITY;
            for (double value : values) {
                most = Math.max(most, value);
            }
            return most;
        }

        private static double mean(double[] values) {
            double sum = 0;
            for (double value : values) {
                sum += value;
            }
            return sum / values.length;
        }
    }

    /** One run of the method: everything that changes on the way to the answer. */
    private final class Exchange {

        private final double[] top;
        private final double[] under;
        private final double range;
        /** Heights are reckoned from their middle, so that an offset does not cost digits. */
        private final double middle;
        /** A few units in the last place of the heights: what lies less than this beyond a plane lies on it. */
        private final double resolution;

        /** The four constraints that hold: upper point i as i, lower point j as n + j, others below zero. */
        private final int[] basis = new int[4];
        private double bound;
        /** a, b (per unit), c₁, c₂ (at the centre). */
        private double[] planes;
        private double[] multipliers;
        private double tolerance;
        private double worst;

        Exchange(double[] top, double[] under) {
            this.top = top;
            this.under = under;
            double most = Math.max(Places.most(top), Places.most(under));
            double least = Math.min(Places.least(top), Places.least(under));
            if (!Double.isFinite(most - least) || hasNaN(top) || hasNaN(under)) {
                throw new IllegalArgumentException("heights must be finite");
            }
            this.range = most > least ? most - least : 1;
            this.middle = (most + least) / 2;
            this.resolution = 4 * Math.ulp(Math.max(Math.abs(most), Math.abs(least))) + 1e-12 * range;
        }

        Gap run(Gap start) {
            int steps = 0;
            for (bound = 1e4 * range; bound < 1e9 * range; bound *= 1e4) {
                begin(start);
                steps += exchange();
                if (boundsAreOutOfTheWay()) {
                    return answer(steps);
                }
            }
            throw new IllegalArgumentException("no plane is best: the place lies on or outside the outline of the"
                + " points, or all points lie in one line");
        }

        private void begin(Gap start) {
            if (start != null && start.contacts().size() == 4) {
                for (int k = 0; k < 4; k++) {
                    Contact contact = start.contacts().get(k);
                    basis[k] = contact.upper() ? contact.index() : top.length + contact.index();
                }
                return;
            }
            // Any upper and any lower point hold the heights; each slope is held by the bound that keeps its
            // multiplier from being negative.
            int upper = 0;
            int lower = 0;
            double du = places.u(lowerX[lower], lowerY[lower]) - places.u(upperX[upper], upperY[upper]);
            double dv = places.v(lowerX[lower], lowerY[lower]) - places.v(upperX[upper], upperY[upper]);
            basis[0] = upper;
            basis[1] = top.length + lower;
            basis[2] = du >= 0 ? -4 : -3;
            basis[3] = dv >= 0 ? -2 : -1;
        }

        private int exchange() {
            int withoutGain = 0;
            double width = Double.POSITIVE_INFINITY;
            for (int step = 1; step <= MOST_STEPS; step++) {
                planes = solve(rows(), rightHandSides(), false);
                multipliers = solve(rows(), new double[] {0, 0, 1, -1}, true);
                tolerance = resolution + 8 * Math.ulp(Math.abs(planes[0]) + Math.abs(planes[1]));
                double gap = planes[2] - planes[3];
                withoutGain = gap < width - tolerance ? 0 : withoutGain + 1;
                width = gap;
                int entering = withoutGain > PATIENCE ? firstOnWrongSide() : furthestOnWrongSide();
                if (worst <= tolerance || holds(entering)) {
                    return step;
                }
                replaceWith(entering, withoutGain > PATIENCE);
            }
            throw new IllegalStateException("no optimum after " + MOST_STEPS + " exchanges over " + top.length
                + " and " + under.length + " points");
        }

        /** A constraint that holds the planes is met exactly; if it seems broken, that is rounding. */
        private boolean holds(int code) {
            return basis[0] == code || basis[1] == code || basis[2] == code || basis[3] == code;
        }

        /** The ratio test: the constraint whose multiplier reaches zero first makes room. */
        private void replaceWith(int entering, boolean bland) {
            double[] change = solve(rows(), row(entering), true);
            int leaving = -1;
            double leastRatio = Double.POSITIVE_INFINITY;
            for (int k = 0; k < 4; k++) {
                if (change[k] > 1e-11) {
                    double ratio = Math.max(0, multipliers[k]) / change[k];
                    boolean tied = leaving >= 0 && Math.abs(ratio - leastRatio) <= 1e-14;
                    boolean better = tied
                        ? (bland ? basis[k] < basis[leaving] : change[k] > change[leaving])
                        : ratio < leastRatio;
                    if (leaving < 0 || better) {
                        leaving = k;
                        leastRatio = Math.min(ratio, leastRatio);
                    }
                }
            }
            if (leaving < 0) {
                throw new IllegalStateException("two parallel planes always exist, yet none was found");
            }
            basis[leaving] = entering;
        }

        private int furthestOnWrongSide() {
            double slopeX = slopeX();
            double slopeY = slopeY();
            double upperHeight = middle + planes[2] - slopeX * places.centreX() - slopeY * places.centreY();
            double lowerHeight = middle + planes[3] - slopeX * places.centreX() - slopeY * places.centreY();
            int furthest = 0;
            worst = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < top.length; i++) {
                double above = slopeX * upperX[i] + slopeY * upperY[i] + upperHeight - top[i];
                if (above > worst) {
                    worst = above;
                    furthest = i;
                }
            }
            for (int j = 0; j < under.length; j++) {
                double below = under[j] - (slopeX * lowerX[j] + slopeY * lowerY[j] + lowerHeight);
                if (below > worst) {
                    worst = below;
                    furthest = top.length + j;
                }
            }
            worst = excess(furthest);
            if (!tilt.isFree()) {
                for (int code = Tilt.FIRST; code <= Tilt.LAST; code++) {
                    if (excess(code) > worst) {
                        worst = excess(code);
                        furthest = code;
                    }
                }
            }
            return furthest;
        }

        private int firstOnWrongSide() {
            for (int code = tilt.isFree() ? 0 : Tilt.FIRST; code < top.length + under.length; code++) {
                if (code >= BOUNDS && code < 0) {
                    continue;
                }
                worst = excess(code);
                if (worst > tolerance) {
                    return code;
                }
            }
            return 0;
        }

        /** By how much the constraint is broken, computed in the centred coordinates the planes were solved in. */
        private double excess(int code) {
            double[] row = row(code);
            double sum = -rightHandSide(code);
            for (int k = 0; k < 4; k++) {
                sum += row[k] * planes[k];
            }
            return sum;
        }

        private boolean boundsAreOutOfTheWay() {
            for (int k = 0; k < 4; k++) {
                boolean isBound = basis[k] >= BOUNDS && basis[k] < 0;
                boolean free = basis[k] < BOUNDS + 2 ? places.along() : places.across();
                if (isBound && free) {
                    return false;
                }
                if (isBound && Math.abs(multipliers[k]) > 1e-9) {
                    return false;
                }
            }
            return true;
        }

        private Gap answer(int steps) {
            List<Contact> contacts = new ArrayList<>(4);
            for (int k = 0; k < 4; k++) {
                // A multiplier of zero comes out of the solve as a few units in the last place of one.
                double multiplier = multipliers[k] < 1e-14 ? 0 : multipliers[k];
                if (basis[k] >= top.length) {
                    contacts.add(new Contact(basis[k] - top.length, false, multiplier));
                } else if (basis[k] >= 0) {
                    contacts.add(new Contact(basis[k], true, multiplier));
                }
            }
            Plane upper = Plane.through(places.centreX(), places.centreY(), middle + planes[2], slopeX(),
                slopeY());
            Plane lower = Plane.through(places.centreX(), places.centreY(), middle + planes[3], slopeX(),
                slopeY());
            return new Gap(upper, lower, planes[2] - planes[3], contacts, steps);
        }

        private double slopeX() {
            return (planes[0] * places.cos() - planes[1] * places.sin()) / places.unit();
        }

        private double slopeY() {
            return (planes[0] * places.sin() + planes[1] * places.cos()) / places.unit();
        }

        private double[][] rows() {
            return new double[][] {row(basis[0]), row(basis[1]), row(basis[2]), row(basis[3])};
        }

        private double[] row(int code) {
            if (code <= Tilt.LAST) {
                // Slopes in raw coordinates, told by the turned and scaled ones that are solved in.
                double alongX = tilt.alongX(code) / places.unit();
                double alongY = tilt.alongY(code) / places.unit();
                return new double[] {alongX * places.cos() + alongY * places.sin(),
                    alongY * places.cos() - alongX * places.sin(), 0, 0};
            }
            if (code < 0) {
                double sign = (code & 1) == 0 ? 1 : -1;
                return code < BOUNDS + 2 ? new double[] {sign, 0, 0, 0} : new double[] {0, sign, 0, 0};
            }
            if (code < top.length) {
                return new double[] {u(upperX[code], upperY[code]), v(upperX[code], upperY[code]), 1, 0};
            }
            int j = code - top.length;
            return new double[] {-u(lowerX[j], lowerY[j]), -v(lowerX[j], lowerY[j]), 0, -1};
        }

        private double u(double x, double y) {
            return places.along() ? places.u(x, y) : 0;
        }

        private double v(double x, double y) {
            return places.across() ? places.v(x, y) : 0;
        }

        private double[] rightHandSides() {
            return new double[] {rightHandSide(basis[0]), rightHandSide(basis[1]), rightHandSide(basis[2]),
                rightHandSide(basis[3])};
        }

        private double rightHandSide(int code) {
            if (code <= Tilt.LAST) {
                return tilt.rightHandSide(code);
            }
            if (code < 0) {
                boolean free = code < BOUNDS + 2 ? places.along() : places.across();
                return free ? bound : 0;
            }
            return code < top.length ? top[code] - middle : middle - under[code - top.length];
        }
    }

    private static boolean hasNaN(double[] values) {
        for (double value : values) {
            if (Double.isNaN(value)) {
                return true;
            }
        }
        return false;
    }

    /** Solves the 4 × 4 system with these rows, or with these columns, by elimination with row pivoting. */
    private static double[] solve(double[][] rows, double[] rightHandSide, boolean transposed) {
        double[][] m = new double[4][5];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                m[i][j] = transposed ? rows[j][i] : rows[i][j];
            }
            m[i][4] = rightHandSide[i];
        }
        for (int k = 0; k < 4; k++) {
            int pivot = k;
            for (int i = k + 1; i < 4; i++) {
                if (Math.abs(m[i][k]) > Math.abs(m[pivot][k])) {
                    pivot = i;
                }
            }
            double[] swapped = m[k];
            m[k] = m[pivot];
            m[pivot] = swapped;
            for (int i = k + 1; i < 4; i++) {
                double factor = m[i][k] / m[k][k];
                for (int j = k; j < 5; j++) {
                    m[i][j] -= factor * m[k][j];
                }
            }
        }
        double[] solution = new double[4];
        for (int i = 3; i >= 0; i--) {
            double sum = m[i][4];
            for (int j = i + 1; j < 4; j++) {
                sum -= m[i][j] * solution[j];
            }
            solution[i] = sum / m[i][i];
        }
        return solution;
    }
}
