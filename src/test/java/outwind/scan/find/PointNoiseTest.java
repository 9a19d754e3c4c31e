package outwind.scan.find;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import outwind.board.PointCloud;

class PointNoiseTest {

    /** A face of 600 × 200 mm scanned line by line, points of a line so far apart, lines 2 mm (mm). */
    private static CellPoints scanned(double apart, DoubleBinaryOperator height) {
        int along = (int) (600 / apart);
        int n = 100 * along;
        PointCloud scan = new PointCloud(new double[n], new double[n], new double[n]);
        for (int i = 0; i < n; i++) {
            scan.x()[i] = apart * (i % along);
            scan.y()[i] = 2 * (i / along);
            scan.z()[i] = height.applyAsDouble(scan.x()[i], scan.y()[i]);
        }
        CellGrid grid = CellGrid.bearing(n, 600, 200);
        return CellPoints.sorted(grid, scan, Placement.scaledBy(1), (x, y, z) -> grid.quarter(x, y)).points();
    }

    @Test
    void noiseIsToldFromSawMarks() {
        SplittableRandom random = new SplittableRandom(20260401);

        OptionalDouble noise = PointNoise.of(scanned(0.2,
            (x, y) -> 0.1 * Math.sin(x / 3) + random.nextGaussian(0, 0.05)));

        assertEquals(0.05, noise.orElseThrow(), 0.0015);
    }

    // Closed form: half of the differences have σ 0.02, half 0.08; P(|d| ≤ m) = erf(m/2σ) is one half on average at
    // m = 0.03366, so σ = 1.4826·m/√2 = 0.0353. Once only the strip along the near edge was looked at, which said
    // 0.0208.
    @Test
    void everyPartOfTheFaceHasItsSay() {
        SplittableRandom random = new SplittableRandom(20260402);

        OptionalDouble noise = PointNoise.of(scanned(0.4,
            (x, y) -> random.nextGaussian(0, y < 100 ? 0.02 : 0.08)));

        assertEquals(0.0353, noise.orElseThrow(), 0.001);
    }

    @Test
    void pointsThatLieApartTellNothingOfTheNoise() {
        assertTrue(PointNoise.of(scanned(0.6, (x, y) -> 0)).isEmpty());
    }

    // Two lines of 250 points are 498 pairs and one that bridges them, three are 747.
    @Test
    void aFewPairsTellNothing() {
        assertTrue(PointNoise.of(strip(2)).isEmpty());
        assertEquals(0, PointNoise.of(strip(3)).orElseThrow());
    }

    private static CellPoints strip(int lines) {
        PointCloud scan = new PointCloud(new double[250 * lines], new double[250 * lines], new double[250 * lines]);
        for (int i = 0; i < scan.size(); i++) {
            scan.x()[i] = 0.4 * (i % 250);
            scan.y()[i] = 2 * (i / 250);
        }
        return new CellPoints(CellGrid.bearing(scan.size(), 100, 10), scan, new int[0]);
    }
}
