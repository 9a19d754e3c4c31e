package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class EnsembleUpdateTest {

    private static final int DRAWS = 20_000;

    // Closed form of two jointly normal quantities: x and y with variances 4 and 1 and covariance 1.2, mean 10 and 20;
    // y read as 21 with noise 0.5. Mean of x = 10 + 1.2/1.25·1 = 10.96, variance = 4 − 1.2²/1.25 = 2.848. Tolerances:
    // four standard errors of 20,000 draws.
    @Test
    void aReadingMovesMeanAndVarianceAsForJointlyNormalQuantities() {
        SplittableRandom random = new SplittableRandom(3);
        double[][] x = new double[DRAWS][1];
        double[][] y = new double[DRAWS][1];
        for (int d = 0; d < DRAWS; d++) {
            double one = random.nextGaussian();
            y[d][0] = 20 + one;
            x[d][0] = 10 + 1.2 * one + Math.sqrt(4 - 1.44) * random.nextGaussian();
        }

        double[][] moved = EnsembleUpdate.of(x, y, new double[] {21}, 0.5, 7);

        double mean = Arrays.stream(moved).mapToDouble(draw -> draw[0]).average().orElseThrow();
        double variance = Arrays.stream(moved).mapToDouble(draw -> Math.pow(draw[0] - mean, 2)).sum() / (DRAWS - 1);
        assertEquals(10.96, mean, 0.06);
        assertEquals(2.848, variance, 0.12);
    }

    @Test
    void noiseMustBePositive() {
        assertThrows(IllegalArgumentException.class,
            () -> EnsembleUpdate.of(new double[2][1], new double[2][1], new double[1], 0, 1));
    }
}
