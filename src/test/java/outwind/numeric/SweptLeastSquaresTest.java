package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SweptLeastSquaresTest {

    private static final double LEAST_ANGLE = 1e-4;

    /** 1, u, v, uv, u², v² at random places from −1 to 1. */
    private static double[][] quadratic(int n, SplittableRandom random) {
        double[][] design = new double[n][];
        for (int i = 0; i < n; i++) {
            double u = random.nextDouble(-1, 1);
            double v = random.nextDouble(-1, 1);
            design[i] = new double[] {1, u, v, u * v, u * u, v * v};
        }
        return design;
    }

    private static SweptLeastSquares.Nested swept(double[][] design, double[] y, int... counts) {
        return SweptLeastSquares.fit((i, into) -> System.arraycopy(design[i], 0, into, 0, into.length), y, counts,
            LEAST_ANGLE);
    }

    private static void assertSame(LinearFit expected, LinearFit fit) {
        assertArrayEquals(expected.coefficients(), fit.coefficients(), 1e-12);
        for (int j = 0; j < expected.coefficients().length; j++) {
            assertArrayEquals(expected.unscaledCovariance()[j], fit.unscaledCovariance()[j],
                1e-12 * expected.unscaledCovariance()[j][j]);
        }
        assertEquals(expected.observations(), fit.observations());
        assertEquals(expected.residualSumOfSquares(), fit.residualSumOfSquares(),
            1e-12 * expected.residualSumOfSquares() + 1e-20);
        assertEquals(expected.totalSumOfSquares(), fit.totalSumOfSquares(), 1e-12 * expected.totalSumOfSquares());
    }

    // Independent: LeastSquares, which keeps the rows and factors them by QR, held to NIST's data sets. Counts of rows
    // at the seams of blocks and of stretches.
    @ParameterizedTest
    @ValueSource(ints = {6, 7, 31, 33, 512, 513, 16_384, 16_385, 50_021})
    void nestedModelsAreThoseOfLeastSquaresByQr(int n) {
        SplittableRandom random = new SplittableRandom(n);
        double[][] design = quadratic(n, random);
        double[] y = new double[n];
        Arrays.setAll(y, i -> 30 + design[i][1] - 2 * design[i][3] + 0.5 * design[i][5] + random.nextGaussian(0, 0.1));

        SweptLeastSquares.Nested nested = swept(design, y, 3, 4, 6);

        assertArrayEquals(new boolean[] {true, true, true, true, true, true}, nested.independent());
        int[] counts = {3, 4, 6};
        for (int m = 0; m < 3; m++) {
            int count = counts[m];
            double[][] first = Arrays.stream(design).map(row -> Arrays.copyOf(row, count)).toArray(double[][]::new);
            // Six random places tell six terms badly: the digits of the normal equations go with the condition.
            if (n > 7 || count == 3) {
                assertSame(LeastSquares.fit(first, y), nested.fits().get(m));
            }
        }
    }

    // Independent: the same fit without the column that tells nothing new, a sum of two before it.
    @Test
    void aColumnThatFollowsFromOthersIsLeftOut() {
        SplittableRandom random = new SplittableRandom(20260602);
        double[][] design = quadratic(3000, random);
        double[] y = random.doubles(3000, -1, 1).toArray();
        double[][] without = new double[3000][];
        for (int i = 0; i < 3000; i++) {
            design[i][3] = 0.5 * design[i][1] - 0.5 * design[i][2];
            without[i] = new double[] {1, design[i][1], design[i][2], design[i][4], design[i][5]};
        }

        SweptLeastSquares.Nested nested = swept(design, y, 4, 6);

        assertArrayEquals(new boolean[] {true, true, true, false, true, true}, nested.independent());
        double[][] first = Arrays.stream(design).map(row -> Arrays.copyOf(row, 3)).toArray(double[][]::new);
        assertSame(LeastSquares.fit(first, y), nested.fits().get(0));
        assertSame(LeastSquares.fit(without, y), nested.fits().get(1));
    }

    // Worked by hand: columns 1 and ±1 + something in turn. Of (1, 1, 1, 1) and (1 + e, 1 − e, 1 + e, 1 − e) the second
    // is 2e from the span of the first, whose length is 2; so they are apart if e is more than the least angle.
    @ParameterizedTest
    @ValueSource(doubles = {0.9, 1.1})
    void aColumnCountsFromTheLeastAngleOn(double share) {
        double e = share * LEAST_ANGLE;
        double[][] design = {{1, 1 + e}, {1, 1 - e}, {1, 1 + e}, {1, 1 - e}};

        assertEquals(share > 1, swept(design, new double[] {1, 2, 3, 4}, 2).independent()[1]);
    }

    // Worked by hand: y = 1 + 2u − 3w, w = u + v/1024, every number exact in binary. The columns are distinguished at a
    // thousandth of their length, so normal equations alone lose six digits; the refinement brings them back.
    @Test
    void refinementBringsBackTheDigitsThatNormalEquationsLose() {
        SplittableRandom random = new SplittableRandom(20260603);
        double[][] design = new double[5000][];
        double[] y = new double[5000];
        for (int i = 0; i < 5000; i++) {
            double u = random.nextInt(-64, 65) / 64.0;
            double w = u + random.nextInt(-64, 65) / 65_536.0;
            design[i] = new double[] {1, u, w};
            y[i] = 1 + 2 * u - 3 * w;
        }

        LinearFit fit = swept(design, y, 1, 3).fits().get(1);

        assertArrayEquals(new double[] {1, 2, -3}, fit.coefficients(), 2e-14);
        assertEquals(0, fit.residualSumOfSquares(), 1e-20);
    }

    // Worked by hand: what large observations leave when they cancel, in one stretch and between stretches of rows, is
    // what the small ones add up to: 2 of n. Rows beside a large one lose their share in the residuals, 3 to 7 %; without
    // care all is lost.
    @ParameterizedTest
    @CsvSource({"49152, 0, 512, 1024", "49152, 512, 0, 1024", "16384, 0, 512, 1024", "16384, 512, 0, 1024"})
    void smallObservationsAreNotLostBetweenLargeOnesThatCancel(int n, int large, int small, int opposite) {
        double[] y = new double[n];
        y[large] = 0x1p60;
        y[small] = 2;
        y[opposite] = -0x1p60;

        LinearFit fit = SweptLeastSquares.fit((i, into) -> into[0] = 1, y, new int[] {1}, LEAST_ANGLE).fits().get(0);

        assertEquals(2.0 / n, fit.coefficients()[0], 0.1 * 2 / n);
    }

    @Test
    void fewerRowsThanColumnsAreRefused() {
        var refused = assertThrows(IllegalArgumentException.class,
            () -> swept(quadratic(5, new SplittableRandom(1)), new double[5], 3, 6));

        assertEquals("least squares needs at least as many rows as columns, got 5 rows, 6 columns",
            refused.getMessage());
    }
}
