package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    // Worked by hand: five draws of three places, two of which are read. The sample covariance of (0 3 1 2 4) has
    // variance 2.5, that of (5 1 2 3 4) as well, and together −0.5; the third place is 7 plus the first less twice the
    // second. Where the noise is next to nothing, every draw goes through both readings, and the third follows.
    @Test
    void readingsWithNextToNoNoiseAreMetByEveryDrawAndWhatFollowsFromThemFollows() {
        double[][] at = new double[5][];
        double[][] before = {{0, 5}, {3, 1}, {1, 2}, {2, 3}, {4, 4}};
        for (int d = 0; d < 5; d++) {
            at[d] = new double[] {before[d][0], before[d][1], 7 + before[d][0] - 2 * before[d][1]};
        }

        for (double[] draw : EnsembleUpdate.of(at, before, new double[] {12, -3}, 1e-7, 5)) {
            assertArrayEquals(new double[] {12, -3, 7 + 12 + 6}, draw, 1e-5);
        }
    }

    // Worked by hand: y of variance 2.5 and mean 2, noise of variance 2.5: a draw goes half of the way to the reading.
    @Test
    void noiseAsLargeAsTheSpreadMovesDrawsHalfOfTheWay() {
        double[][] draws = {{0}, {3}, {1}, {2}, {4}};

        double[][] once = EnsembleUpdate.of(draws, draws, new double[] {10}, Math.sqrt(2.5), 5);
        double[][] higher = EnsembleUpdate.of(draws, draws, new double[] {14}, Math.sqrt(2.5), 5);

        for (int d = 0; d < 5; d++) {
            assertEquals(2, higher[d][0] - once[d][0], 1e-12);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.1, Double.NaN})
    void noiseMustBePositive(double noise) {
        assertEquals("noise must be positive, got " + noise, assertThrows(IllegalArgumentException.class,
            () -> EnsembleUpdate.of(new double[2][1], new double[2][1], new double[1], noise, 1)).getMessage());
    }
}
