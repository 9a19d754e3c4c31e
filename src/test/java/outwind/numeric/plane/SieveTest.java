package outwind.numeric.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import outwind.benchmark.PointCloud;

/** Many points taken in portions, against the same points all looked at in every exchange. */
class SieveTest {

    /** So small that a few hundred points are many. */
    private static final Portions TINY = new Portions(8, 4, 3, 4);

    /** So large that all are looked at together. */
    private static final Portions WHOLE = new Portions(Integer.MAX_VALUE, 1, 512, 1);

    private enum Lie { SCATTERED, GRID, ONE_LINE, NEARLY_ONE_LINE, ONE_PLACE, FAR_OFF, TWICE, DISC }

    private enum Face { ROUGH, ROUNDED, PLANE, LEVEL, BOWL, WEDGE }

    /** One board of points, the underside at the same places. */
    private record Cloud(Lie lie, Face face, double[] x, double[] y, double[] top, double[] under) {

        static Cloud of(Lie lie, Face face, SplittableRandom random) {
            int n = 20 + random.nextInt(400);
            Cloud c = new Cloud(lie, face, new double[n], new double[n], new double[n], new double[n]);
            for (int i = 0; i < n; i++) {
                c.place(i, random);
                double z = height(face, c.x[i], c.y[i], random);
                c.top[i] = face == Face.ROUNDED ? Math.rint(z * 4) / 4 : z;
                c.under[i] = c.top[i] - 25 + (face == Face.ROUGH ? random.nextDouble(-1, 1) : 0);
            }
            return c;
        }

        private void place(int i, SplittableRandom random) {
            double along = random.nextDouble(1200);
            double across = random.nextDouble(200);
            double[] at = switch (lie) {
                case SCATTERED -> new double[] {along, across};
                case GRID -> new double[] {60.0 * (i % 20), 40.0 * (i / 20)};
                case ONE_LINE -> new double[] {along, along / 3};
                case NEARLY_ONE_LINE -> new double[] {along, along / 3 + across / 1e4};
                case ONE_PLACE -> new double[] {70, 30};
                case FAR_OFF -> new double[] {along + 5e5, across - 4e6};
                case TWICE -> i % 2 == 1 ? new double[] {x[i - 1], y[i - 1]} : new double[] {along, across};
                case DISC -> new double[] {100 * Math.cos(along), 100 * Math.sin(along)};
            };
            x[i] = at[0];
            y[i] = at[1];
        }

        private static double height(Face face, double x, double y, SplittableRandom random) {
            double u = x % 1200 / 600 - 1;
            double v = y % 200 / 100 - 1;
            return switch (face) {
                case ROUGH, ROUNDED -> 3 * u * v + u * u + random.nextDouble(-1, 1);
                case PLANE -> 4 + 0.01 * x - 0.02 * y;
                case LEVEL -> 7;
                case BOWL -> u * u + v * v;
                case WEDGE -> 0.05 * x + random.nextDouble(0.2);
            };
        }

        double range() {
            return Math.max(1, Arrays.stream(top).max().orElseThrow() - Arrays.stream(top).min().orElseThrow());
        }

        @Override
        public String toString() {
            return top.length + " points, " + lie + " " + face;
        }
    }

    private static List<Cloud> everyKind(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Cloud> clouds = new ArrayList<>();
        for (int round = 0; round < 12; round++) {
            for (Lie lie : Lie.values()) {
                for (Face face : Face.values()) {
                    clouds.add(Cloud.of(lie, face, random));
                }
            }
        }
        return clouds;
    }

    // Identity: how the points are taken does not matter. Twice 1e-12 of the range counts as lying on a plane.
    @Test
    void portionsDoNotChangeTheSlabNorTheZoneOfAnyKindOfBoard() {
        for (Cloud c : everyKind(20260201)) {
            WidestGap program = WidestGap.over(c.x, c.y, c.x, c.y);

            Gap slab = program.in(TINY).between(c.top, c.under);
            Gap zone = program.in(TINY).between(c.top, c.top);

            double close = 4e-12 * (c.range() + 25);
            assertEquals(program.in(WHOLE).between(c.top, c.under).width(), slab.width(), close, "slab of " + c);
            assertEquals(program.in(WHOLE).between(c.top, c.top).width(), zone.width(), close, "zone of " + c);
            assertCertified(slab, c, c.under, close);
            assertCertified(zone, c, c.top, close);
        }
    }

    @Test
    void onScatteredRoughBoardsTheOptimumIsTheSameToTwelveDigits() {
        SplittableRandom random = new SplittableRandom(20260202);
        for (int trial = 0; trial < 300; trial++) {
            Cloud c = Cloud.of(Lie.SCATTERED, Face.ROUGH, random);
            WidestGap program = WidestGap.over(c.x, c.y, c.x, c.y);

            double expected = program.in(WHOLE).between(c.top, c.top).width();

            assertEquals(expected, program.in(TINY).between(c.top, c.top).width(), -1e-12 * expected,
                "case " + trial);
        }
    }

    @Test
    void portionsDoNotChangeALimitedTilt() {
        SplittableRandom random = new SplittableRandom(20260203);
        Plane level = new Plane(0, 0, 0);
        for (int trial = 0; trial < 200; trial++) {
            Cloud c = Cloud.of(random.nextBoolean() ? Lie.GRID : Lie.SCATTERED, Face.ROUGH, random);
            WidestGap program = WidestGap.over(c.x, c.y, c.x, c.y)
                .tiltedByAtMost(random.nextDouble(2), level, 1200, 200);

            assertEquals(program.in(WHOLE).between(c.top, c.under).width(),
                program.in(TINY).between(c.top, c.under).width(), 1e-10, "case " + trial);
        }
    }

    @Test
    void portionsDoNotChangeTheHighestPlaneAtAPlaceThatASampleMayNotSurround() {
        SplittableRandom random = new SplittableRandom(20260204);
        for (int trial = 0; trial < 200; trial++) {
            Cloud c = Cloud.of(Lie.GRID, trial % 2 == 0 ? Face.ROUGH : Face.ROUNDED, random);
            double[] atX = {1};
            double[] atY = {1};
            double[] zero = {0};
            WidestGap program = WidestGap.over(c.x, c.y, atX, atY);

            assertEquals(program.in(WHOLE).between(c.top, zero).width(),
                program.in(TINY).between(c.top, zero).width(), 1e-10, "case " + trial);
        }
    }

    // The same from below, where the place is the upper set: the lowest plane over many points.
    @Test
    void portionsDoNotChangeTheLowestPlaneAtAPlace() {
        SplittableRandom random = new SplittableRandom(20260207);
        double[] zero = {0};
        for (int trial = 0; trial < 200; trial++) {
            Cloud c = Cloud.of(Lie.GRID, trial % 2 == 0 ? Face.ROUGH : Face.ROUNDED, random);
            WidestGap program = WidestGap.over(new double[] {1}, new double[] {1}, c.x, c.y);

            Gap gap = program.in(TINY).between(zero, c.top);

            assertEquals(program.in(WHOLE).between(zero, c.top).width(), gap.width(), 1e-10, "case " + trial);
            for (int i = 0; i < c.x.length; i++) {
                assertTrue(gap.lower().at(c.x[i], c.y[i]) >= c.top[i] - 1e-10, "point " + i + ", case " + trial);
            }
        }
    }

    // Faces read at places of their own, the lower one also beyond the ends of the upper and not in as many places.
    @Test
    void portionsDoNotChangeASlabBetweenFacesReadAtOtherPlaces() {
        SplittableRandom random = new SplittableRandom(20260208);
        for (int trial = 0; trial < 200; trial++) {
            Cloud upper = Cloud.of(Lie.SCATTERED, Face.ROUGH, random);
            Cloud lower = Cloud.of(Lie.SCATTERED, Face.ROUGH, random);
            double[] lowerX = Arrays.stream(lower.x).map(x -> 2 * x - 600).toArray();
            double[] lowerY = Arrays.stream(lower.y).map(y -> 3 * y - 200).toArray();
            WidestGap program = WidestGap.over(upper.x, upper.y, lowerX, lowerY);

            Gap gap = program.in(TINY).between(upper.top, lower.under);

            assertEquals(program.in(WHOLE).between(upper.top, lower.under).width(), gap.width(), 1e-10,
                "case " + trial);
            for (int j = 0; j < lowerX.length; j++) {
                assertTrue(gap.lower().at(lowerX[j], lowerY[j]) >= lower.under[j] - 1e-10, "case " + trial);
            }
        }
    }

    @Test
    void outsideTheOutlineOfManyPointsNoPlaneIsHighestEither() {
        Cloud c = Cloud.of(Lie.GRID, Face.ROUGH, new SplittableRandom(20260205));
        WidestGap program = WidestGap.over(c.x, c.y, new double[] {-1}, new double[] {20});

        assertThrows(IllegalArgumentException.class, () -> program.in(TINY).between(c.top, new double[] {0}));
    }

    @Test
    void startingFromAnEarlierAnswerChangesNothing() {
        SplittableRandom random = new SplittableRandom(20260206);
        for (int trial = 0; trial < 100; trial++) {
            Cloud c = Cloud.of(Lie.GRID, Face.ROUGH, random);
            WidestGap program = WidestGap.over(c.x, c.y, c.x, c.y).in(TINY);
            Gap first = program.between(c.top, c.under);
            double[] moved = Arrays.stream(c.top).map(z -> z + random.nextDouble(-0.1, 0.1)).toArray();

            assertEquals(program.between(moved, c.under).width(), program.between(moved, c.under, first).width(),
                1e-10, "case " + trial);
        }
    }

    @ParameterizedTest
    @EnumSource
    void theAnswerIsTheSameToTheLastBitOnOneCoreAndOnSeven(PointCloud.Kind kind) throws Exception {
        PointCloud c = PointCloud.of(kind, 150_000);

        assertEquals(onCores(1, c), onCores(7, c));
    }

    private static Zone onCores(int cores, PointCloud c) throws Exception {
        ForkJoinPool pool = new ForkJoinPool(cores);
        try {
            return pool.submit(() -> WidestGap.minimumZone(c.x(), c.y(), c.z())).get();
        } finally {
            pool.shutdown();
        }
    }

    @Test
    void oneHeightThatIsNotANumberAmongManyIsRefused() {
        PointCloud c = PointCloud.of(PointCloud.Kind.WARPED, 100_003);
        for (int at : new int[] {0, 1, 50_000, 98_304, 100_001, 100_002}) {
            for (double[] values : List.of(c.x(), c.y(), c.z())) {
                for (double wrong : new double[] {Double.NaN, Double.NEGATIVE_INFINITY}) {
                    double right = values[at];
                    values[at] = wrong;
                    assertThrows(IllegalArgumentException.class,
                        () -> WidestGap.minimumZone(c.x(), c.y(), c.z()), wrong + " at " + at);
                    values[at] = right;
                }
            }
        }
    }

    /** Shares of each plane add up to 1 about one place, prove the width, and no point lies beyond. */
    private static void assertCertified(Gap gap, Cloud c, double[] under, double close) {
        double[] shares = new double[2];
        double bound = 0;
        double momentX = 0;
        double momentY = 0;
        for (Contact contact : gap.contacts()) {
            double m = contact.upper() ? contact.multiplier() : -contact.multiplier();
            assertTrue(contact.multiplier() >= 0, "negative multiplier, " + c);
            shares[contact.upper() ? 0 : 1] += contact.multiplier();
            bound += m * (contact.upper() ? c.top : under)[contact.index()];
            momentX += m * (c.x[contact.index()] - c.x[0]);
            momentY += m * (c.y[contact.index()] - c.y[0]);
        }
        assertEquals(1, shares[0], 1e-9, c.toString());
        assertEquals(1, shares[1], 1e-9, c.toString());
        assertEquals(0, momentX, 1e-6, c.toString());
        assertEquals(0, momentY, 1e-6, c.toString());
        assertEquals(gap.width(), bound, close, "duality gap, " + c);
        // Far off, the height of a plane at zero is a large number, and a plane given by it loses digits.
        double rounding = close + 16 * Math.ulp(gap.upper().slopeX() * c.x[0]) + 16 * Math.ulp(gap.upper().slopeY()
            * c.y[0]);
        for (int i = 0; i < c.x.length; i++) {
            assertTrue(gap.upper().at(c.x[i], c.y[i]) <= c.top[i] + rounding, "top, point " + i + " of " + c);
            assertTrue(gap.lower().at(c.x[i], c.y[i]) >= under[i] - rounding, "underside, point " + i + " of " + c);
        }
    }
}
