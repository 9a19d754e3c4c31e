package outwind.numeric.plane;

import java.util.ArrayList;
import java.util.List;

/**
 * The dual simplex method over the points of two working sets: everything that changes on the way to an answer.
 *
 * <p>Four constraints hold the planes. Each is named by a code: the k-th upper point by k, the k-th lower point by
 * {@link #LOWER} + k, limits of tilt and bounds of the slopes by numbers below zero. Codes stay what they are while the
 * working sets grow, so the planes that were best before are a valid start after.
 */
final class Exchange {

    /** Exchanges without gain after which ties are broken by Bland's rule; more than a healthy run ever shows. */
    private static final int PATIENCE = 12;

    /** Far beyond what any set of points has needed (under 40); reached only if something is broken. */
    private static final int MOST_STEPS = 100_000;

    /**
     * Least share of the entering row that a row must have to make room for it. Rows of points are of size 1, so a
     * solve errs by some 1e-16 times what the basis stretches it by. A share below this may be nothing but that error,
     * and a basis made by it would stretch the next solve by a billion.
     */
    private static final double LEAST_SHARE = 1e-9;

    /** Ratios of the ratio test, which are shares of 1, that differ by no more than the errors of two solves. */
    private static final double TIE = 1e-12;

    /**
     * The multipliers of each plane add up to 1. A row passed over for its small share may leave the next basis with a
     * multiplier of that size below zero, reported as zero; a difference far beyond that means the solve has broken down.
     */
    private static final double SOUND = 1e-6;

    /** Codes of the four bounds that hold the slopes at the start, −4 to −1: a from above and below, b likewise. */
    private static final int BOUNDS = -4;

    /** Code of the first lower point. */
    private static final int LOWER = 1 << 30;

    private final Axes axes;
    private final Tilt tilt;
    private final Heights heights;
    private final WorkingSet upper;
    private final WorkingSet lower;

    /** Codes of the four constraints that hold. */
    private final int[] basis = new int[4];
    private double bound;
    /** Rise over one unit of u and of v, c₁, c₂ (at the centre). */
    private double[] planes;
    private double[] multipliers;
    private double tolerance;
    private double worst;
    private int steps;

    Exchange(Axes axes, Tilt tilt, Heights heights, WorkingSet upper, WorkingSet lower) {
        this.axes = axes;
        this.tilt = tilt;
        this.heights = heights;
        this.upper = upper;
        this.lower = lower;
    }

    /**
     * Starts again.
     *
     * @param widest what holds the slopes until points do: the most that a plane may rise over a unit
     * @param start  an earlier answer whose contacts hold the planes at first, or null
     */
    void begin(double widest, Gap start) {
        bound = widest;
        if (start != null && start.contacts().size() == 4) {
            for (int k = 0; k < 4; k++) {
                Contact contact = start.contacts().get(k);
                basis[k] = contact.upper() ? upper.placeOf(contact.index()) : LOWER + lower.placeOf(contact.index());
            }
            return;
        }
        // Any upper and any lower point hold the heights; each slope is held by the bound that keeps its multiplier
        // from being negative.
        double du = axes.u(lower.x(0), lower.y(0)) - axes.u(upper.x(0), upper.y(0));
        double dv = axes.v(lower.x(0), lower.y(0)) - axes.v(upper.x(0), upper.y(0));
        basis[0] = 0;
        basis[1] = LOWER;
        basis[2] = du >= 0 ? -4 : -3;
        basis[3] = dv >= 0 ? -2 : -1;
    }

    /** Exchanges until no point of the working sets is on the wrong side of its plane. */
    void run() {
        int withoutGain = 0;
        double width = Double.POSITIVE_INFINITY;
        for (int step = 1; step <= MOST_STEPS; step++) {
            steps++;
            planes = solve(rows(), rightHandSides(), false);
            multipliers = solve(rows(), new double[] {0, 0, 1, -1}, true);
            tolerance = heights.resolution() + 8 * Math.ulp(Math.abs(planes[0]) + Math.abs(planes[1]));
            double gap = planes[2] - planes[3];
            withoutGain = gap < width - tolerance ? 0 : withoutGain + 1;
            width = gap;
            int entering = withoutGain > PATIENCE ? firstOnWrongSide() : furthestOnWrongSide();
            if (worst <= tolerance || holds(entering)) {
                return;
            }
            replaceWith(entering, withoutGain > PATIENCE);
        }
        throw new IllegalStateException("no optimum after " + MOST_STEPS + " exchanges over " + upper.size()
            + " and " + lower.size() + " points");
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
            if (change[k] > LEAST_SHARE) {
                double ratio = Math.max(0, multipliers[k]) / change[k];
                boolean tied = leaving >= 0 && Math.abs(ratio - leastRatio) <= TIE;
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
        int i = upper.furthest(-1, slopeX, slopeY, upperHeight());
        int j = lower.furthest(1, slopeX, slopeY, lowerHeight());
        int furthest = lower.beyond(j, 1, slopeX, slopeY, lowerHeight())
            > upper.beyond(i, -1, slopeX, slopeY, upperHeight()) ? LOWER + j : i;
        worst = excess(furthest);
        if (!tilt.isFree()) {
            for (Tilt.Corner corner : Tilt.Corner.values()) {
                if (excess(corner.code()) > worst) {
                    worst = excess(corner.code());
                    furthest = corner.code();
                }
            }
        }
        return furthest;
    }

    private int firstOnWrongSide() {
        if (!tilt.isFree()) {
            for (Tilt.Corner corner : Tilt.Corner.values()) {
                if (isOnWrongSide(corner.code())) {
                    return corner.code();
                }
            }
        }
        for (int i = 0; i < upper.size(); i++) {
            if (isOnWrongSide(i)) {
                return i;
            }
        }
        for (int j = 0; j < lower.size(); j++) {
            if (isOnWrongSide(LOWER + j)) {
                return LOWER + j;
            }
        }
        return 0;
    }

    private boolean isOnWrongSide(int code) {
        worst = excess(code);
        return worst > tolerance;
    }

    /** By how much the constraint is broken, computed in the centred coordinates the planes were solved in. */
    private double excess(int code) {
        return excess(row(code), rightHandSide(code));
    }

    private double excess(double[] row, double rightHandSide) {
        double sum = -rightHandSide;
        for (int k = 0; k < 4; k++) {
            sum += row[k] * planes[k];
        }
        return sum;
    }

    /** Where the planes stand. */
    ParallelPlanes planes() {
        return new ParallelPlanes(slopeX(), slopeY(), planes[2], planes[3], tolerance);
    }

    /** True if this point, looked at or not, lies under the upper plane, on its wrong side. */
    boolean isUnderUpper(double x, double y, double z) {
        return excess(upperRow(x, y), z - heights.middle()) > tolerance;
    }

    /** True if this point, looked at or not, lies over the lower plane, on its wrong side. */
    boolean isOverLower(double x, double y, double z) {
        return excess(lowerRow(x, y), heights.middle() - z) > tolerance;
    }

    /** False if a bound holds the planes where a point should; a slope that no point can hold stays at zero. */
    boolean boundsAreOutOfTheWay() {
        for (int code : basis) {
            boolean isBound = code >= BOUNDS && code < 0;
            if (isBound && (code < BOUNDS + 2 ? axes.along() : axes.across())) {
                return false;
            }
        }
        return true;
    }

    /** @throws IllegalStateException if the multipliers do not prove what they should */
    Gap answer() {
        List<Contact> contacts = new ArrayList<>(4);
        for (int k = 0; k < 4; k++) {
            // A multiplier of zero comes out of the solve as a few units in the last place of one.
            double multiplier = multipliers[k] < 1e-14 ? 0 : multipliers[k];
            if (basis[k] >= LOWER) {
                contacts.add(new Contact(lower.index(basis[k] - LOWER), false, multiplier));
            } else if (basis[k] >= 0) {
                contacts.add(new Contact(upper.index(basis[k]), true, multiplier));
            }
        }
        requireProof(contacts);
        return new Gap(plane(planes[2]), plane(planes[3]), planes[2] - planes[3], contacts, steps);
    }

    private static void requireProof(List<Contact> contacts) {
        for (boolean upper : new boolean[] {true, false}) {
            double sum = contacts.stream().filter(contact -> contact.upper() == upper)
                .mapToDouble(Contact::multiplier).sum();
            // NaN is within no bound.
            if (!(Math.abs(sum - 1) <= SOUND)) {
                throw new IllegalStateException("multipliers that add up to " + sum + " prove no optimum: " + contacts);
            }
        }
    }

    private Plane plane(double heightAtCentre) {
        return Plane.through(axes.centreX(), axes.centreY(), heights.middle() + heightAtCentre, slopeX(),
            slopeY());
    }

    private double slopeX() {
        return axes.slopeX(planes[0], planes[1]);
    }

    private double slopeY() {
        return axes.slopeY(planes[0], planes[1]);
    }

    /** Height of the upper plane where x and y are zero. */
    private double upperHeight() {
        return heights.middle() + planes[2] - slopeX() * axes.centreX() - slopeY() * axes.centreY();
    }

    private double lowerHeight() {
        return heights.middle() + planes[3] - slopeX() * axes.centreX() - slopeY() * axes.centreY();
    }

    private double[][] rows() {
        return new double[][] {row(basis[0]), row(basis[1]), row(basis[2]), row(basis[3])};
    }

    private double[] row(int code) {
        if (Tilt.Corner.isCode(code)) {
            double alongX = tilt.alongX(Tilt.Corner.of(code));
            double alongY = tilt.alongY(Tilt.Corner.of(code));
            // Slopes in raw coordinates, from the turned and scaled ones that are solved in.
            return new double[] {alongX * axes.slopeX(1, 0) + alongY * axes.slopeY(1, 0),
                alongX * axes.slopeX(0, 1) + alongY * axes.slopeY(0, 1), 0, 0};
        }
        if (code < 0) {
            double sign = (code & 1) == 0 ? 1 : -1;
            return code < BOUNDS + 2 ? new double[] {sign, 0, 0, 0} : new double[] {0, sign, 0, 0};
        }
        return code < LOWER ? upperRow(upper.x(code), upper.y(code))
            : lowerRow(lower.x(code - LOWER), lower.y(code - LOWER));
    }

    private double[] upperRow(double x, double y) {
        return new double[] {u(x, y), v(x, y), 1, 0};
    }

    private double[] lowerRow(double x, double y) {
        return new double[] {-u(x, y), -v(x, y), 0, -1};
    }

    private double u(double x, double y) {
        return axes.along() ? axes.u(x, y) : 0;
    }

    private double v(double x, double y) {
        return axes.across() ? axes.v(x, y) : 0;
    }

    private double[] rightHandSides() {
        return new double[] {rightHandSide(basis[0]), rightHandSide(basis[1]), rightHandSide(basis[2]),
            rightHandSide(basis[3])};
    }

    private double rightHandSide(int code) {
        if (Tilt.Corner.isCode(code)) {
            return tilt.rightHandSide(Tilt.Corner.of(code));
        }
        if (code < 0) {
            boolean free = code < BOUNDS + 2 ? axes.along() : axes.across();
            return free ? bound : 0;
        }
        return code < LOWER ? upper.z(code) - heights.middle() : heights.middle() - lower.z(code - LOWER);
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
