package outwind.numeric.plane;

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
 * multipliers prove that the answer is best. The slopes start held by bounds wide enough to be out of the way at the
 * end; ties, which regular grids are full of, are broken by Bland's rule after a run of exchanges that gained nothing,
 * so the method always ends.
 *
 * <p>Of many points the exchange looks at a sample, and the worst of the others are added to it until there are none
 * on the wrong side ({@link Sieve}). The answer is as exact, and proven of every point; all are read little more than
 * twice, once for their range and once for their heights above a plane, on all cores. Memory beyond the given arrays
 * is a five-hundredth of theirs, and the few points looked at.
 *
 * <p>Source: E. Stiefel, Numerische Mathematik 1 (1959) 1–28 (exchange); R. G. Bland, Mathematics of Operations
 * Research 2 (1977) 103–107; K. L. Clarkson, Journal of the ACM 42 (1995) 488–499 (a sample and those it misses: of n
 * points in four unknowns about 4n/m lie beyond what a sample of m holds); N. Krivulin, Mathematics 8 (2020) 2210,
 * doi:10.3390/math8122210 (minimum zone as discrete linear Chebyshev approximation).
 */
public final class WidestGap {

    private final Axes axes;
    private final double[] upperX;
    private final double[] upperY;
    private final double[] lowerX;
    private final double[] lowerY;
    private final Tilt tilt;
    private final Portions portions;

    private WidestGap(Axes axes, double[] upperX, double[] upperY, double[] lowerX, double[] lowerY, Tilt tilt,
                      Portions portions) {
        this.axes = axes;
        this.upperX = upperX;
        this.upperY = upperY;
        this.lowerX = lowerX;
        this.lowerY = lowerY;
        this.tilt = tilt;
        this.portions = portions;
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
        Axes axes = Axes.of(upperX, upperY, lowerX, lowerY);
        return new WidestGap(axes, upperX, upperY, lowerX, lowerY, Tilt.FREE, Portions.USUAL);
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
        return new WidestGap(axes, upperX, upperY, lowerX, lowerY, new Tilt(most, from, extentX, extentY), portions);
    }

    /** The same program, its points taken in other portions. */
    WidestGap in(Portions others) {
        return new WidestGap(axes, upperX, upperY, lowerX, lowerY, tilt, others);
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
        Heights heights = Heights.of(top, under);
        Points upper = new Points(upperX, upperY, top);
        Points lower = new Points(lowerX, lowerY, under);
        WorkingSet upperSeen = WorkingSet.of(upper, portions);
        WorkingSet lowerSeen = WorkingSet.of(lower, portions);
        boolean allSeen = upperSeen.isWhole() && lowerSeen.isWhole();
        Exchange exchange = new Exchange(axes, tilt, heights, upperSeen, lowerSeen);
        Sieve sieve = new Sieve(upper, lower, axes, heights, portions);
        for (double bound = 1e4 * heights.range(); bound < 1e9 * heights.range(); bound *= 1e4) {
            exchange.begin(bound, start);
            do {
                exchange.run();
            } while (!allSeen && sieve.addsTo(upperSeen, lowerSeen, exchange));
            if (exchange.boundsAreOutOfTheWay()) {
                return exchange.answer();
            }
        }
        throw new IllegalArgumentException("no plane is best: the place lies on or outside the outline of the points,"
            + " or all points lie in one line");
    }

    private static void requireSameLength(double[] x, double[] y, String which) {
        if (x.length == 0 || x.length != y.length) {
            throw new IllegalArgumentException("expected as many x as y, at least one, for the " + which
                + " points, got " + x.length + " and " + y.length);
        }
    }
}
