package outwind.numeric.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandedCholeskyTest {

    // Closed form: of 2 on the diagonal and −1 beside it, n rows, the inverse is i·(n + 1 − j)/(n + 1) for i ≤ j from
    // 1.
    @Test
    void aChainOfSpringsIsInvertedAsWorkedByHand() {
        int n = 5;
        double[] lower = new double[2 * n];
        for (int i = 0; i < n; i++) {
            lower[2 * i] = i == 0 ? 0 : -1;
            lower[2 * i + 1] = 2;
        }
        BandedCholesky cholesky = BandedCholesky.of(lower, n, 1);
        double[] x = new double[n];

        for (int first = 0; first < n; first++) {
            cholesky.solveUnit(first, x);
            for (int j = first; j < n; j++) {
                assertEquals((first + 1) * (n - j) / (n + 1.0), x[j], 1e-14);
            }
        }
    }

    // Independent: the LU decomposition of commons-math3, which knows nothing of bands.
    @ParameterizedTest
    @CsvSource({"1, 0", "6, 0", "7, 2", "9, 4", "5, 4"})
    void bandsAreSolvedAsByAnotherLibrary(int n, int band) {
        double[][] full = new double[n][n];
        double[] lower = new double[n * (band + 1)];
        for (int i = 0; i < n; i++) {
            for (int j = Math.max(0, i - band); j <= i; j++) {
                full[i][j] = i == j ? 2 + 2 * band : Math.sin(3 * i + 5 * j + 1);
                full[j][i] = full[i][j];
                lower[i * (band + 1) + band - i + j] = full[i][j];
            }
        }
        RealMatrix inverse = new LUDecomposition(MatrixUtils.createRealMatrix(full)).getSolver().getInverse();
        BandedCholesky cholesky = BandedCholesky.of(lower, n, band);
        double[] x = new double[n];

        for (int first = 0; first < n; first++) {
            Arrays.fill(x, Double.NaN);
            cholesky.solveUnit(first, x);
            for (int j = first; j < n; j++) {
                assertEquals(inverse.getEntry(first, j), x[j], 1e-12);
            }
        }
    }

    // Worked by hand: 1 1 over 1 1 leaves a pivot of nothing.
    @Test
    void whatIsNotPositiveDefiniteIsRefused() {
        var refused = assertThrows(IllegalStateException.class,
            () -> BandedCholesky.of(new double[] {0, 1, 1, 1}, 2, 1));

        assertEquals("not positive definite: pivot 1 of 2 is 0.0", refused.getMessage());
    }
}
