package outwind.scan.find;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.numeric.LeastSquares;

class PlaneSumsTest {

    // Independent: least squares by QR, every row and its height times the root of the weight.
    @Test
    void planeIsThatOfWeightedLeastSquares() {
        SplittableRandom random = new SplittableRandom(20260502);
        double[][] design = new double[30][];
        double[] heights = new double[30];
        PlaneSums sums = new PlaneSums();
        for (int i = 0; i < 30; i++) {
            double weight = random.nextDouble(0.1, 1);
            double x = random.nextDouble(-1, 1);
            double y = random.nextDouble(-1, 1);
            double z = 2 + 0.5 * x - 0.3 * y + random.nextGaussian(0, 0.1);
            sums.add(weight, x, y, z);
            double root = Math.sqrt(weight);
            design[i] = new double[] {root, root * x, root * y};
            heights[i] = root * z;
        }

        double[] expected = LeastSquares.fit(design, heights).coefficients();
        assertEquals(expected[1], sums.slopeX(), 1e-13);
        assertEquals(expected[2], sums.slopeY(), 1e-13);
        assertEquals(expected[0], sums.meanZ() - sums.slopeX() * sums.meanX() - sums.slopeY() * sums.meanY(), 1e-13);
    }

    // Worked by hand: the corners of a rectangle of 4 by 2 vary by 4 and by 1; those of a line not at all across it.
    @Test
    void spreadAndDeterminantTellALineFromAnArea() {
        PlaneSums area = new PlaneSums();
        PlaneSums line = new PlaneSums();
        for (int corner = 0; corner < 4; corner++) {
            area.add(1, 4 * (corner % 2), 2 * (corner / 2), 0);
            line.add(2, corner, 3 * corner, 0);
        }

        assertEquals(5, area.spread());
        assertEquals(4, area.determinant());
        assertEquals(0, line.determinant());
        assertTrue(Double.isNaN(line.slopeX()));
    }
}
