package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.PointCloud;
import outwind.flatten.LiftLimit;
import outwind.flatten.Simulation;
import outwind.flatten.ThicknessRange;
import outwind.numeric.plane.Plane;
import outwind.scan.file.MadeScan;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.TrendModel;

class ScannedTopTest {

    private static final double LENGTH = 600;
    private static final double WIDTH = 150;
    private static final double NOISE = 0.03;

    private static Board scanned(DoubleBinaryOperator face, long seed) {
        return MadeScan.of(face, LENGTH, WIDTH, 60_000, NOISE, seed).sized(LENGTH, WIDTH, 30);
    }

    private static ThicknessRange judged(Board board) {
        return Simulation.of(MeasuredShape.of(board.evenlyThick()), Region.whole(board), 0,
            new LiftLimit(new Plane(0, 0, 0), 6, LENGTH, WIDTH), 1).levelled();
    }

    private static double cell(Board board) {
        CellHeights cells = board.scan().orElseThrow().cells();
        return Math.max(cells.cellX(), cells.cellY());
    }

    // Worked by hand: a round dip of two and a half cells covers nine tenths of some cell wherever it lies, so that the
    // cell shows nearly all of its depth. A flat board of 30 mm with a dip of 0.5 mm finishes at 29.5 mm, since no tilt
    // of 0.5 mm under a corner gains what a dip in the middle costs.
    @Test
    void aDipOfTwoAndAHalfCellsCostsItsDepthWhereverItLies() {
        SplittableRandom random = new SplittableRandom(4);
        double size = 2.5 * cell(scanned((x, y) -> 0, 1));
        for (int trial = 0; trial < 6; trial++) {
            double cx = random.nextDouble(200, 400);
            double cy = random.nextDouble(60, 90);

            ThicknessRange range = judged(scanned(
                (x, y) -> Math.hypot(x - cx, y - cy) < size / 2 ? -0.5 : 0, trial));

            assertEquals(29.5, range.median(), 0.08, "dip at " + cx + ", " + cy);
        }
    }

    @Test
    void aDipOfTheSizeSaidToBeSurelySeenShowsMoreThanHalfOfItsDepth() {
        SplittableRandom random = new SplittableRandom(5);
        double size = CellHeights.SURELY_SEEN * cell(scanned((x, y) -> 0, 1));
        for (int trial = 0; trial < 12; trial++) {
            double cx = random.nextDouble(200, 400);
            double cy = random.nextDouble(60, 90);

            ThicknessRange range = judged(scanned(
                (x, y) -> Math.hypot(x - cx, y - cy) < size / 2 ? -0.5 : 0, trial));

            assertTrue(range.median() < 29.75, range.median() + " with a dip at " + cx + ", " + cy);
        }
    }

    // Worked by hand: 25 cells of noise alone averaged leave a fifth of it; where chance makes them look like
    // structure, more. A dip fifty times the noise stays.
    @Test
    void noiseIsFilteredAndADipStays() {
        CellHeights cells = scanned((x, y) -> 0, 1).scan().orElseThrow().cells();
        double[] noise = new SplittableRandom(3).doubles(cells.size()).map(u -> (u - 0.5) * 0.02).toArray();
        double[] variance = new double[noise.length];
        Arrays.fill(variance, 0.02 * 0.02 / 12);
        int middle = cells.at(300, 75);
        noise[middle] = -0.5;

        double[] filtered = LocalFilter.of(cells, noise, variance).height();

        double before = 0;
        double after = 0;
        for (int k = 0; k < noise.length; k++) {
            if (Math.abs(cells.x(k) - 300) > 50) {
                before += noise[k] * noise[k];
                after += filtered[k] * filtered[k];
            }
        }
        assertTrue(after < before / 4, after + " of " + before);
        assertEquals(-0.5, filtered[middle], 0.01);
    }

    @Test
    void aFlatScanIsNotMadeRoughByItsNoise() {
        ThicknessRange range = judged(scanned((x, y) -> 0, 2));

        // Truth 30. The lowest of 2400 cells of 25 points each is by itself 3.4 · 0.03/5 = 0.02 mm low, and where it is
        // drawn again as much again: 0.04 mm if nothing were done about it.
        assertEquals(30, range.median(), 0.04);
        assertTrue(range.high() - range.low() < 0.1, range.low() + " to " + range.high());
    }

    @Test
    void aKnotDoesNotStandOutOnTheUnderside() {
        MeasuredShape shape = MeasuredShape.of(scanned((x, y) -> Math.hypot(x - 300, y - 70) < 10 ? 1 : 0, 3));

        assertEquals(1, shape.topAt(300, 70), 0.05);
        assertEquals(-30, shape.undersideAt(300, 70), 0.05);
        SampledBoard sampled = shape.at(new Places(new double[] {300}, new double[] {70}, new double[] {1}, 1, 1));
        assertEquals(1, sampled.top()[0], 0.05);
        assertEquals(-30, sampled.underside()[0], 0.05);
    }

    @Test
    void warpAsWideAsTheBoardIsOnBothFaces() {
        DoubleBinaryOperator bent = (x, y) -> 2 * Math.pow(2 * x / LENGTH - 1, 2);
        MeasuredShape shape = MeasuredShape.of(scanned(bent, 3));

        for (double x : new double[] {0, 150, 300, 600}) {
            assertEquals(bent.applyAsDouble(x, 70) - 30, shape.undersideAt(x, 70), 0.05);
        }
    }

    @Test
    void whereNothingWasScannedTheFaceIsLessSure() {
        MadeScan all = MadeScan.of((x, y) -> 0.3 * Math.sin(x / 40), LENGTH, WIDTH, 60_000, NOISE, 6);
        int[] kept = IntStream.range(0, all.points().size())
            .filter(i -> Math.abs(all.points().x()[i] - 300) > 80).toArray();
        Board board = new MadeScan(new PointCloud(Arrays.stream(kept).mapToDouble(i -> all.points().x()[i]).toArray(),
            Arrays.stream(kept).mapToDouble(i -> all.points().y()[i]).toArray(),
            Arrays.stream(kept).mapToDouble(i -> all.points().z()[i]).toArray())).sized(LENGTH, WIDTH, 30);

        MeasuredShape shape = MeasuredShape.of(board);

        assertTrue(shape.topDeviationAt(300, 75) > shape.topDeviationAt(100, 75));
        assertEquals(0.3 * Math.sin(7.5), shape.topAt(300, 75), 4 * shape.topDeviationAt(300, 75));
        assertTrue(shape.isScannedAt(100, 75));
        assertTrue(!shape.isScannedAt(300, 75));
    }

    // Identity: the sums of a scan's points are those of the same points as readings. Tolerance as wanted of the fits.
    @Test
    void trendsOfAScanAgreeWithThoseOfTheSamePoints() {
        PointCloud points = MadeScan.of((x, y) -> 500 + 0.002 * x + 1e-5 * x * y, LENGTH, WIDTH, 3_000, 0.1, 9)
            .points();

        List<TrendFit> fast = TrendFit.nested(points, LENGTH, WIDTH);

        for (TrendModel model : TrendModel.values()) {
            TrendFit slow = TrendFit.of(model, points.x(), points.y(), points.z(), LENGTH, WIDTH);
            TrendFit swept = fast.get(model.ordinal());
            assertEquals(slow.terms(), swept.terms());
            for (int j = 0; j < slow.terms().size(); j++) {
                double error = slow.fit().standardErrors().orElseThrow()[j];
                assertEquals(slow.fit().coefficients()[j], swept.fit().coefficients()[j],
                    1e-10 * Math.abs(slow.fit().coefficients()[j]) + 1e-10 * error, model + " " + j);
                assertEquals(error, swept.fit().standardErrors().orElseThrow()[j], 1e-10 * error);
            }
            assertEquals(slow.fit().degreesOfFreedom(), swept.fit().degreesOfFreedom());
            assertEquals(slow.fit().rSquared(), swept.fit().rSquared(), 1e-10);
        }
    }

    @Test
    void pointsInOneRowShowNoSlopeAcross() {
        double[] x = new SplittableRandom(1).doubles(2_000, 0, LENGTH).toArray();
        double[] y = new double[x.length];
        Arrays.fill(y, 40);

        List<TrendFit> fits = TrendFit.nested(new PointCloud(x, y, x), LENGTH, WIDTH);

        assertEquals(List.of(Term.CONSTANT, Term.X), fits.get(0).terms());
        assertEquals(1, fits.get(0).coefficient(Term.X).orElseThrow(), 1e-12);
    }
}
