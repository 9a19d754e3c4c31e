package outwind.numeric.plane;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

class WidestGapTest {

    /** Board-like places: sometimes a regular grid, which is where ties are. */
    private record Cloud(double[] x, double[] y, double[] top, double[] under) {

        static Cloud random(SplittableRandom random) {
            boolean regular = random.nextBoolean();
            int columns = 2 + random.nextInt(7);
            int rows = 2 + random.nextInt(5);
            int n = columns * rows;
            double[] x = new double[n];
            double[] y = new double[n];
            double[] top = new double[n];
            double[] under = new double[n];
            double twist = random.nextDouble(-8, 8);
            double step = random.nextBoolean() ? 0.5 : 0;
            for (int i = 0; i < n; i++) {
                x[i] = regular ? 200.0 * (i % columns) : random.nextDouble(1500);
                y[i] = regular ? 70.0 * (i / columns) : random.nextDouble(250);
                double z = twist * (x[i] / 1500 - 0.5) * (y[i] / 250 - 0.5) + random.nextDouble(-1, 1);
                // Heights on a coarse step tie with each other; that is where an exchange could go round in circles.
                top[i] = step > 0 ? Math.rint(z / step) * step : z;
                under[i] = top[i] - 25 + random.nextDouble(-1, 1);
            }
            return new Cloud(x, y, top, under);
        }

        /** Places about a line of 1 m or so at some angle, in two rows or scattered, the outer ones so far apart. */
        static Cloud thin(SplittableRandom random, double apart) {
            int n = 4 + random.nextInt(9);
            double[] x = new double[n];
            double[] y = new double[n];
            double[] top = new double[n];
            double[] under = new double[n];
            double angle = random.nextInt(3) * random.nextDouble(Math.PI / 2);
            boolean rows = random.nextBoolean();
            for (int i = 0; i < n; i++) {
                double along = rows ? 200 * (i / 2) : random.nextDouble(1000);
                double across = apart * (rows ? i % 2 : random.nextDouble());
                x[i] = along * Math.cos(angle) - across * Math.sin(angle);
                y[i] = along * Math.sin(angle) + across * Math.cos(angle);
                top[i] = random.nextDouble(-1, 1);
                under[i] = top[i] - 25 + random.nextDouble(-1, 1);
            }
            return new Cloud(x, y, top, under);
        }
    }

    // Reference: ojAlgo 57.1.0, ExpressionsBasedModel, an independent linear programming solver.
    private static double widestGapByOjAlgo(double[] xu, double[] yu, double[] zu, double[] xl, double[] yl,
                                            double[] zl) {
        return widestGapByOjAlgo(xu, yu, zu, xl, yl, zl, 1e9, new Plane(0, 0, 0));
    }

    private static double widestGapByOjAlgo(double[] xu, double[] yu, double[] zu, double[] xl, double[] yl,
                                            double[] zl, double mostTilt, Plane from) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Variable a = model.newVariable("a").lower(-1e4).upper(1e4);
        Variable b = model.newVariable("b").lower(-1e4).upper(1e4);
        Variable c1 = model.newVariable("c1").lower(-1e6).upper(1e6).weight(1);
        Variable c2 = model.newVariable("c2").lower(-1e6).upper(1e6).weight(-1);
        for (int i = 0; i < zu.length; i++) {
            Expression under = model.newExpression("u" + i).upper(zu[i]);
            under.set(a, xu[i] / 1000).set(b, yu[i] / 1000).set(c1, 1);
        }
        for (int j = 0; j < zl.length; j++) {
            Expression over = model.newExpression("l" + j).lower(zl[j]);
            over.set(a, xl[j] / 1000).set(b, yl[j] / 1000).set(c2, 1);
        }
        for (int k = 0; k < 4; k++) {
            double alongX = k % 2 == 0 ? 1500 : -1500;
            double alongY = k < 2 ? 250 : -250;
            Expression limit = model.newExpression("tilt" + k)
                .upper(mostTilt + alongX * from.slopeX() + alongY * from.slopeY());
            limit.set(a, alongX / 1000).set(b, alongY / 1000);
        }
        Optimisation.Result result = model.maximise();
        assertTrue(result.getState().isOptimal(), result.toString());
        return c1.getValue().doubleValue() - c2.getValue().doubleValue();
    }

    @Test
    void slabAndZoneMatchAnIndependentSolverOn300RandomBoards() {
        SplittableRandom random = new SplittableRandom(20260101);
        for (int trial = 0; trial < 300; trial++) {
            Cloud c = Cloud.random(random);

            double slab = WidestGap.thickestSlab(c.x, c.y, c.top, c.under).width();
            double zone = WidestGap.minimumZone(c.x, c.y, c.top).width();

            double slabByOjAlgo = widestGapByOjAlgo(c.x, c.y, c.top, c.x, c.y, c.under);
            double zoneByOjAlgo = -widestGapByOjAlgo(c.x, c.y, c.top, c.x, c.y, c.top);
            assertEquals(slabByOjAlgo, slab, 1e-9 * slabByOjAlgo, "slab of case " + trial);
            assertEquals(zoneByOjAlgo, zone, 1e-9 * Math.max(1, zoneByOjAlgo), "zone of case " + trial);
        }
    }

    @Test
    void slabOfLimitedTiltMatchesAnIndependentSolverOn300RandomBoards() {
        SplittableRandom random = new SplittableRandom(20260108);
        int limited = 0;
        for (int trial = 0; trial < 300; trial++) {
            Cloud c = Cloud.random(random);
            double most = random.nextDouble(0, 3);
            Plane from = new Plane(0, random.nextDouble(-1, 1) / 1500, random.nextDouble(-1, 1) / 250);

            Gap gap = WidestGap.over(c.x, c.y, c.x, c.y).tiltedByAtMost(most, from, 1500, 250)
                .between(c.top, c.under);

            double expected = widestGapByOjAlgo(c.x, c.y, c.top, c.x, c.y, c.under, most, from);
            assertEquals(expected, gap.width(), 1e-9 * expected, "case " + trial);
            double tilt = 1500 * Math.abs(gap.upper().slopeX() - from.slopeX())
                + 250 * Math.abs(gap.upper().slopeY() - from.slopeY());
            assertTrue(tilt <= most + 1e-9, "case " + trial + " tilts by " + tilt);
            limited += tilt > most - 1e-9 ? 1 : 0;
        }
        assertTrue(limited > 50 && limited < 300, limited + " of 300 were limited");
    }

    @Test
    void supportingPlaneMatchesAnIndependentSolverOn200RandomBoards() {
        SplittableRandom random = new SplittableRandom(20260102);
        for (int trial = 0; trial < 200; trial++) {
            Cloud c = Cloud.random(random);
            double atX = Arrays.stream(c.x).average().orElseThrow();
            double atY = Arrays.stream(c.y).average().orElseThrow();

            SupportingPlane support = WidestGap.highestPlaneUnder(c.x, c.y, c.top, atX, atY);

            double expected = widestGapByOjAlgo(c.x, c.y, c.top, new double[] {atX}, new double[] {atY},
                new double[] {0});
            assertEquals(expected, support.plane().at(atX, atY), 1e-9 * Math.max(1, Math.abs(expected)),
                "case " + trial);
        }
    }

    @Test
    void multipliersCertifyTheOptimum() {
        SplittableRandom random = new SplittableRandom(20260103);
        for (int trial = 0; trial < 500; trial++) {
            Cloud c = Cloud.random(random);

            assertCertified(c, WidestGap.thickestSlab(c.x, c.y, c.top, c.under), 1e-12, 1e-10, "case " + trial);
        }
    }

    // Rows so near to each other that they look like one: once they crashed, were said to have no best plane, or were
    // answered wrongly, because both axes had one unit. Planes over them may be as steep as the heights differ by over
    // the distance of the rows; what is lost to the last place of a coordinate of 1 m is that slope times as much. A
    // multiplier may be short of zero by the least share that counts in the ratio test, 1e-9.
    @ParameterizedTest
    @ValueSource(doubles = {1e-2, 2e-3, 2e-4, 2e-5, 2e-6})
    void multipliersCertifyTheOptimumOfNearlyOneLine(double apart) {
        SplittableRandom random = new SplittableRandom(20260110);
        double allowed = 1e-10 + 16 * Math.ulp(1500.0) * 27 / apart;
        for (int trial = 0; trial < 2000; trial++) {
            Cloud c = Cloud.thin(random, apart);

            assertCertified(c, WidestGap.thickestSlab(c.x, c.y, c.top, c.under), 1e-8, allowed, "case " + trial);
            assertCertified(new Cloud(c.x, c.y, c.top, c.top), WidestGap.over(c.x, c.y, c.x, c.y)
                .between(c.top, c.top), 1e-8, allowed, "zone of case " + trial);
        }
    }

    /**
     * Nothing but the three statements of {@link Gap} and what the planes have to keep clear of.
     *
     * @param share   by how much multipliers may be wrong
     * @param allowed by how much heights may be (mm)
     */
    private static void assertCertified(Cloud c, Gap gap, double share, double allowed, String which) {
        double upperShare = 0;
        double lowerShare = 0;
        double bound = 0;
        double momentX = 0;
        double momentY = 0;
        for (Contact contact : gap.contacts()) {
            double m = contact.multiplier();
            int i = contact.index();
            assertTrue(m >= 0, "negative multiplier in " + which);
            double sign = contact.upper() ? 1 : -1;
            upperShare += contact.upper() ? m : 0;
            lowerShare += contact.upper() ? 0 : m;
            bound += sign * m * (contact.upper() ? c.top[i] : c.under[i]);
            momentX += sign * m * c.x[i];
            momentY += sign * m * c.y[i];
        }
        assertEquals(1, upperShare, share, which);
        assertEquals(1, lowerShare, share, which);
        assertEquals(0, momentX, 1000 * share, which);
        assertEquals(0, momentY, 1000 * share, which);
        assertEquals(gap.width(), bound, allowed, "duality gap of " + which);
        for (int i = 0; i < c.x.length; i++) {
            assertTrue(gap.upper().at(c.x[i], c.y[i]) <= c.top[i] + allowed, "top of " + which);
            assertTrue(gap.lower().at(c.x[i], c.y[i]) >= c.under[i] - allowed, "underside of " + which);
        }
    }

    @Test
    void startingFromAnEarlierAnswerChangesNothingButTheSteps() {
        SplittableRandom random = new SplittableRandom(20260104);
        int cold = 0;
        int warm = 0;
        for (int trial = 0; trial < 200; trial++) {
            Cloud c = Cloud.random(random);
            WidestGap program = WidestGap.over(c.x, c.y, c.x, c.y);
            Gap first = program.between(c.top, c.under);
            double[] moved = Arrays.stream(c.top).map(z -> z + random.nextDouble(-0.1, 0.1)).toArray();

            Gap again = program.between(moved, c.under, first);
            Gap fresh = program.between(moved, c.under);

            assertEquals(fresh.width(), again.width(), 1e-10, "case " + trial);
            cold += fresh.steps();
            warm += again.steps();
        }
        assertTrue(warm < cold, warm + " steps warm, " + cold + " cold");
    }

    @Test
    void orderOfThePointsDoesNotMatter() {
        SplittableRandom random = new SplittableRandom(20260105);
        for (int trial = 0; trial < 100; trial++) {
            Cloud c = Cloud.random(random);

            double there = WidestGap.minimumZone(c.x, c.y, c.top).width();
            double back = WidestGap.minimumZone(reversed(c.x), reversed(c.y), reversed(c.top)).width();

            assertEquals(there, back, 1e-11, "case " + trial);
        }
    }

    @Test
    void addingAPlaneDoesNotChangeTheZone() {
        SplittableRandom random = new SplittableRandom(20260106);
        for (int trial = 0; trial < 100; trial++) {
            Cloud c = Cloud.random(random);
            Plane tilt = new Plane(random.nextDouble(-50, 50), random.nextDouble(-0.1, 0.1),
                random.nextDouble(-0.1, 0.1));
            double[] tilted = new double[c.top.length];
            for (int i = 0; i < tilted.length; i++) {
                tilted[i] = c.top[i] + tilt.at(c.x[i], c.y[i]);
            }

            assertEquals(WidestGap.minimumZone(c.x, c.y, c.top).width(),
                WidestGap.minimumZone(c.x, c.y, tilted).width(), 1e-9, "case " + trial);
        }
    }

    // Worked by hand. On the corners of a rectangle, z₁ − z₂ + z₃ − z₄ is zero for every plane, so no plane can
    // leave all four residuals below |z₁ − z₂ + z₃ − z₄| / 4. One corner lifted by t therefore needs a zone t/2 wide.
    @Test
    void oneLiftedCornerNeedsHalfItsLift() {
        double[] x = {0, 600, 600, 0};
        double[] y = {0, 0, 200, 200};

        assertEquals(1.5, WidestGap.minimumZone(x, y, new double[] {0, 0, 3, 0}).width(), 1e-12);
    }

    // Closed form: corners ±q off the mean plane; by the same identity the zone is 2q.
    @Test
    void pureTwistNeedsAZoneOfTwiceItsCorners() {
        double[] x = {0, 900, 900, 0};
        double[] y = {0, 0, 180, 180};

        assertEquals(8, WidestGap.minimumZone(x, y, new double[] {4, -4, 4, -4}).width(), 1e-12);
    }

    // Closed form: z = s·(2x/L − 1)² runs from 0 to s; no tilt can help a symmetrical arc.
    @Test
    void pureBowNeedsAZoneOfItsRise() {
        double[] x = new double[27];
        double[] y = new double[27];
        double[] z = new double[27];
        for (int i = 0; i < 27; i++) {
            x[i] = 100 * (i % 9);
            y[i] = 90 * (i / 9);
            z[i] = 2.5 * Math.pow(x[i] / 400 - 1, 2);
        }

        assertEquals(2.5, WidestGap.minimumZone(x, y, z).width(), 1e-12);
    }

    @Test
    void tiltedPlaneHasNoZone() {
        double[] x = {0, 700, 700, 0, 350};
        double[] y = {0, 0, 200, 200, 50};
        Plane tilt = new Plane(3, 0.01, -0.02);
        double[] z = new double[5];
        for (int i = 0; i < 5; i++) {
            z[i] = tilt.at(x[i], y[i]);
        }

        assertEquals(0, WidestGap.minimumZone(x, y, z).width(), 1e-12);
    }

    // Identity: a board of one thickness T yields T − zone.
    @Test
    void oneThicknessYieldsItLessTheZone() {
        SplittableRandom random = new SplittableRandom(20260107);
        for (int trial = 0; trial < 200; trial++) {
            Cloud c = Cloud.random(random);
            double[] under = Arrays.stream(c.top).map(z -> z - 31.5).toArray();

            assertEquals(31.5 - WidestGap.minimumZone(c.x, c.y, c.top).width(),
                WidestGap.thickestSlab(c.x, c.y, c.top, under).width(), 1e-10, "case " + trial);
        }
    }

    @Test
    void pureTwistRestsOnTwoCornersWithHalfTheLoadEach() {
        double[] x = {0, 900, 900, 0};
        double[] y = {0, 0, 180, 180};

        SupportingPlane pose = WidestGap.highestPlaneUnder(x, y, new double[] {4, -4, 4, -4}, 450, 90);

        double[] shares = new double[4];
        pose.contacts().forEach(contact -> shares[contact.index()] += contact.multiplier());
        assertArrayEquals(new double[] {0, 0.5, 0, 0.5}, shares, 1e-12);
    }

    // Worked by hand: a load at a triangle's centroid is shared in thirds; at the middle of a side in halves.
    @Test
    void loadSharesAreThoseOfTheLever() {
        double[] x = {0, 600, 0};
        double[] y = {0, 0, 300};
        double[] z = {1, 2, 3};

        SupportingPlane pose = WidestGap.highestPlaneUnder(x, y, z, 200, 100);

        assertEquals(3, pose.contacts().size());
        pose.contacts().forEach(contact -> assertEquals(1.0 / 3, contact.multiplier(), 1e-12));
        assertEquals(2, pose.plane().at(200, 100), 1e-12);
    }

    @Test
    void oneRowOfPointsLeavesTheSlopeAcrossItAtZero() {
        double[] along = {0, 300, 600};
        double[] z = {1, 0, 1};

        Zone straight = WidestGap.minimumZone(along, new double[] {40, 40, 40}, z);
        Zone slanted = WidestGap.minimumZone(along, new double[] {0, 300, 600}, z);

        assertEquals(1, straight.width(), 1e-12);
        assertEquals(0, straight.middle().slopeY(), 1e-15);
        assertEquals(1, slanted.width(), 1e-12);
        assertEquals(slanted.middle().slopeX(), slanted.middle().slopeY(), 1e-15);
    }

    // Worked by hand: heights that rise by 3 along the row, of which the planes may follow 1. Once such a row was said
    // to have no best plane, because the limit leans on the slope across the row as well, which nothing else holds.
    @Test
    void oneRowOfPointsHasAZoneOfLimitedTilt() {
        double[] x = {0, 300, 600};
        double[] y = {40, 40, 40};
        double[] z = {0, 1.5, 3};

        Gap gap = WidestGap.over(x, y, x, y).tiltedByAtMost(1, new Plane(0, 0, 0), 600, 100).between(z, z);

        assertEquals(-2, gap.width(), 1e-12);
    }

    // Worked by hand: along a row that runs 2 in x to 1 in y the heights rise by 6 mm and sag by 1.5 mm halfway. The
    // planes rise as the ends do, steepest along the row: 600·0.008 + 300·0.004 = 6.
    @Test
    void aRowAtAnyAngleIsFollowedAlongItself() {
        double[] x = {0, 300, 600};
        double[] y = {0, 150, 300};

        Zone zone = WidestGap.minimumZone(x, y, new double[] {0, 1.5, 6});

        assertEquals(1.5, zone.width(), 1e-12);
        assertEquals(0.008, zone.middle().slopeX(), 1e-15);
        assertEquals(0.004, zone.middle().slopeY(), 1e-15);
        assertEquals(-0.75, zone.middle().at(0, 0), 1e-12);
    }

    // Worked by hand: over a rectangle that the row is the diagonal of, planes that may rise by 1.5 rise along it by
    // 1.5; of 6 mm that the row rises by, 4.5 are left.
    @ParameterizedTest
    @CsvSource({"up, 1, 1", "down, -1, 1", "across the other way, 1, -1", "both, -1, -1"})
    void aRowAtAnyAngleHasAZoneOfLimitedTilt(String way, double rises, double runs) {
        double[] x = {0, 300, 600};
        double[] y = {0, 150 * runs, 300 * runs};
        double[] z = {0, 3 * rises, 6 * rises};

        Gap gap = WidestGap.over(x, y, x, y).tiltedByAtMost(1.5, new Plane(9, 0, 0), 600, 300).between(z, z);

        assertEquals(-4.5, gap.width(), 1e-12, way);
        assertEquals(0.002 * rises, gap.upper().slopeX(), 1e-14, way);
        assertEquals(0.001 * rises * runs, gap.upper().slopeY(), 1e-14, way);
    }

    // Worked by hand: a place amid a slanted row. There the row hangs between its two middle points, at 1 and 2, 200
    // mm in x and 100 mm in y apart: 1.5, and a slope of 200·0.004 + 100·0.002 = 1 along it.
    @Test
    void aPlaneAtAPlaceInARowLiesBetweenItsNeighbours() {
        double[] x = {0, 200, 400, 600};
        double[] y = {0, 100, 200, 300};
        double[] atX = {300};
        double[] atY = {150};

        Gap under = WidestGap.over(x, y, atX, atY).between(new double[] {5, 1, 2, 5}, new double[] {0});
        Gap over = WidestGap.over(atX, atY, x, y).between(new double[] {0}, new double[] {-5, -1, -2, -5});

        assertEquals(1.5, under.width(), 1e-12);
        assertEquals(0.004, under.upper().slopeX(), 1e-14);
        assertEquals(0.002, under.upper().slopeY(), 1e-14);
        assertEquals(1.5, over.width(), 1e-12);
        assertEquals(-0.004, over.upper().slopeX(), 1e-14);
        assertEquals(-0.002, over.upper().slopeY(), 1e-14);
    }

    // Of two rows side by side, one above and one below, the planes may be tilted as steeply as one likes.
    @Test
    void betweenTwoParallelRowsNoPlaneIsBest() {
        double[] x = {0, 300, 600};
        double[] near = {0, 0, 0};
        double[] far = {100, 100, 100};
        WidestGap program = WidestGap.over(x, near, x, far);

        assertThrows(IllegalArgumentException.class, () -> program.between(new double[3], new double[3]));
    }

    // Worked by hand: of a thousand level points in a row and one beside it, 5 mm higher and 10 mm away, that point
    // holds the slope across the row, and all lie in one plane.
    @ParameterizedTest
    @ValueSource(ints = {0, 7, 500, 999})
    void onePlaceBesideALongRowHoldsTheSlopeAcrossIt(int beside) {
        double[] x = new double[1000];
        double[] y = new double[1000];
        double[] z = new double[1000];
        Arrays.setAll(x, i -> i);
        y[beside] = 10;
        z[beside] = 5;

        Zone zone = WidestGap.minimumZone(x, y, z);

        assertEquals(0, zone.width(), 1e-9);
        assertEquals(0.5, zone.middle().slopeY(), 1e-9);
    }

    @Test
    void placesThatAreNotNumbersAreRefusedOnEitherSide() {
        double[] x = {0, 600, 0};
        double[] y = {0, 0, 300};
        double[] wrong = {0, Double.NaN, 300};

        for (var program : List.<Executable>of(() -> WidestGap.over(wrong, y, x, y),
            () -> WidestGap.over(x, wrong, x, y), () -> WidestGap.over(x, y, wrong, y),
            () -> WidestGap.over(x, y, x, wrong))) {
            assertEquals("places need finite coordinates",
                assertThrows(IllegalArgumentException.class, program).getMessage());
        }
        assertEquals("expected as many x as y, at least one, for the lower points, got 0 and 0",
            assertThrows(IllegalArgumentException.class,
                () -> WidestGap.over(x, y, new double[0], new double[0])).getMessage());
        assertEquals("expected as many x as y, at least one, for the upper points, got 3 and 2",
            assertThrows(IllegalArgumentException.class,
                () -> WidestGap.over(x, new double[2], x, y)).getMessage());
        assertEquals("expected 3 upper and 3 lower heights, got 3 and 2", assertThrows(IllegalArgumentException.class,
            () -> WidestGap.over(x, y, x, y).between(new double[3], new double[2])).getMessage());
    }

    /** On the line x = 0 two points at height 0, beyond it a parabola of points ever nearer to the line. */
    private static double[][] parabolaBesideALine(int count) {
        double[][] points = new double[3][count + 3];
        points[1][0] = -1;
        points[1][1] = 1;
        points[0][2] = -1;
        points[2][2] = 1;
        for (int k = 0; k < count; k++) {
            points[0][3 + k] = Math.scalb(1.0, -k);
            points[2][3 + k] = Math.scalb(1.0, -2 * k);
        }
        return points;
    }

    // Worked by hand: at the middle of the two points on the line no plane lies higher than they do, and each bears
    // half. Turned about the line, a plane meets the parabola at one point after the other, half as far out each time:
    // a run of exchanges that gain nothing, which Bland's rule has to end.
    @Test
    void aLongRunOfExchangesThatGainNothingEnds() {
        double[][] points = parabolaBesideALine(24);

        SupportingPlane highest = WidestGap.highestPlaneUnder(points[0], points[1], points[2], 0, 0);

        double[] shares = new double[27];
        highest.contacts().forEach(contact -> shares[contact.index()] += contact.multiplier());
        assertEquals(0, highest.plane().at(0, 0), 1e-15);
        assertEquals(0.5, shares[0], 1e-12);
        assertEquals(0.5, shares[1], 1e-12);
        for (int i = 0; i < 27; i++) {
            assertTrue(highest.plane().at(points[0][i], points[1][i]) <= points[2][i] + 1e-11, "point " + i);
        }
    }

    // The same from below, the points turned about the line x = z = 0 by half a turn; and with a tilt that is limited,
    // but by so much that it never matters.
    @ParameterizedTest
    @ValueSource(doubles = {3, 1e3, Double.POSITIVE_INFINITY})
    void aLongRunOfExchangesThatGainNothingEndsFromBelowAndWithinATilt(double most) {
        double[][] points = parabolaBesideALine(24);
        double[] place = {0};
        double[] turned = Arrays.stream(points[0]).map(x -> -x).toArray();
        double[] under = Arrays.stream(points[2]).map(z -> -z).toArray();
        Plane level = new Plane(0, 0, 0);

        Gap below = WidestGap.over(place, place, turned, points[1]).tiltedByAtMost(most, level, 1, 1)
            .between(new double[] {5}, under);
        Gap above = WidestGap.over(points[0], points[1], place, place).tiltedByAtMost(most, level, 1, 1)
            .between(points[2], new double[] {-5});

        assertEquals(5, below.width(), 1e-12);
        assertEquals(5, above.width(), 1e-12);
        for (int i = 0; i < 27; i++) {
            assertTrue(below.lower().at(turned[i], points[1][i]) >= under[i] - 1e-11, "point " + i);
            assertTrue(above.upper().at(points[0][i], points[1][i]) <= points[2][i] + 1e-11, "point " + i);
        }
    }

    @Test
    void onePointHasAZoneOfZeroAndLevelPlanes() {
        Zone zone = WidestGap.minimumZone(new double[] {5}, new double[] {6}, new double[] {7});

        assertEquals(new Plane(7, 0, 0), zone.middle());
        assertEquals(0, zone.width());
    }

    @Test
    void noPlaneIsHighestOutsideTheOutline() {
        double[] x = {0, 600, 0};
        double[] y = {0, 0, 300};

        var refused = assertThrows(IllegalArgumentException.class,
            () -> WidestGap.highestPlaneUnder(x, y, new double[3], 700, 100));

        assertEquals("no plane is best: the place lies on or outside the outline of the points, or all points lie in"
            + " one line", refused.getMessage());
    }

    @Test
    void heightsThatAreNotNumbersAreRefused() {
        double[] x = {0, 600, 0};
        double[] y = {0, 0, 300};

        assertThrows(IllegalArgumentException.class,
            () -> WidestGap.minimumZone(x, y, new double[] {0, Double.NaN, 0}));
        assertThrows(IllegalArgumentException.class,
            () -> WidestGap.minimumZone(x, y, new double[] {0, Double.POSITIVE_INFINITY, 0}));
        assertThrows(IllegalArgumentException.class, () -> WidestGap.minimumZone(x, y, new double[2]));
    }

    private static double[] reversed(double[] values) {
        double[] reversed = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            reversed[i] = values[values.length - 1 - i];
        }
        return reversed;
    }

    // Once the exchange went round for ever where heights were an offset and a small spread: the solve of the four
    // planes errs by more than the last place of the heights.
    @Test
    void anOffsetFarAboveTheSpreadDoesNotMatter() {
        SplittableRandom random = new SplittableRandom(20260109);
        for (double offset : new double[] {30, 900, 1e6}) {
            for (int trial = 0; trial < 3000; trial++) {
                int n = 4 + random.nextInt(12);
                double[] x = random.doubles(n, 0, 1200).map(Math::rint).toArray();
                double[] y = random.doubles(n, 0, 200).map(Math::rint).toArray();
                double[] z = random.doubles(n, 0, 0.03).map(d -> Math.rint(d * 100) / 100).toArray();
                double[] lifted = Arrays.stream(z).map(height -> height + offset).toArray();

                assertEquals(WidestGap.minimumZone(x, y, z).width(), WidestGap.minimumZone(x, y, lifted).width(),
                    8 * Math.ulp(offset) + 1e-9, "offset " + offset + ", case " + trial);
            }
        }
    }

    @Test
    void contactsOfAZoneLieOnThePlaneTheySayTheyHold() {
        double[] x = {0, 600, 600, 0, 300};
        double[] y = {0, 0, 200, 200, 100};
        double[] z = {0, 0, 3, 0, 5};

        Zone zone = WidestGap.minimumZone(x, y, z);

        zone.contacts().forEach(c -> assertEquals(zone.middle().at(x[c.index()], y[c.index()])
            + (c.upper() ? 0.5 : -0.5) * zone.width(), z[c.index()], 1e-9));
    }
}
