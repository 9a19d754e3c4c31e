package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RectangularCholeskyDecomposition;
import org.junit.jupiter.api.Test;

class LowRankRootTest {

    private static double[][] matern(int size, SplittableRandom random) {
        double[] x = random.doubles(size, 0, 1000).toArray();
        double[] y = random.doubles(size, 0, 200).toArray();
        Covariance covariance = new Matern52(0.04, 400, 150);
        double[][] c = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                c[i][j] = covariance.between(x[i], y[i], x[j], y[j]);
            }
        }
        return c;
    }

    private static LowRankRoot rootOf(double[][] c, double share) {
        double[] variances = new double[c.length];
        for (int i = 0; i < c.length; i++) {
            variances[i] = c[i][i];
        }
        return LowRankRoot.of(variances, j -> c[j].clone(), share);
    }

    /** G, column by column, as G times each unit vector. */
    private static RealMatrix matrix(LowRankRoot root, int size) {
        RealMatrix g = MatrixUtils.createRealMatrix(size, root.rank());
        for (int k = 0; k < root.rank(); k++) {
            double[] unit = new double[root.rank()];
            unit[k] = 1;
            double[] column = new double[size];
            root.addTimes(unit, column);
            g.setColumn(k, column);
        }
        return g;
    }

    // What is left out is positive semidefinite, so no entry of it is greater than the greatest variance left out.
    @Test
    void squareOfTheRootIsTheCovarianceToTheShareAskedFor() {
        SplittableRandom random = new SplittableRandom(31);
        for (double share : new double[] {1e-2, 1e-4, 1e-8}) {
            double[][] c = matern(80, random);

            RealMatrix square = matrix(rootOf(c, share), 80);
            square = square.multiply(square.transpose());

            for (int i = 0; i < 80; i++) {
                assertTrue(square.getEntry(i, i) <= c[i][i] + 1e-15);
                for (int j = 0; j < 80; j++) {
                    assertEquals(c[i][j], square.getEntry(i, j), share * 0.04 + 1e-15);
                }
            }
        }
    }

    // Independent: the pivoted decomposition of commons-math3, which works on the whole matrix.
    @Test
    void columnsAreThoseOfAnotherLibrarysPivotedDecomposition() {
        SplittableRandom random = new SplittableRandom(32);
        for (int run = 0; run < 20; run++) {
            double[][] c = matern(30, random);
            RealMatrix expected = new RectangularCholeskyDecomposition(MatrixUtils.createRealMatrix(c), 0)
                .getRootMatrix();

            RealMatrix g = matrix(rootOf(c, 1e-3), 30);

            for (int k = 0; k < g.getColumnDimension(); k++) {
                assertArrayEquals(expected.getColumn(k), g.getColumn(k), 1e-9);
            }
        }
    }

    // Worked by hand: a field that is a·x + b with independent a and b of variance one has a covariance of rank two.
    @Test
    void straightLineThatIsUnsureNeedsTwoColumns() {
        double[][] c = new double[50][50];
        for (int i = 0; i < 50; i++) {
            for (int j = 0; j < 50; j++) {
                c[i][j] = 1 + i / 50.0 * (j / 50.0);
            }
        }

        assertEquals(2, rootOf(c, 1e-12).rank());
    }

    @Test
    void symmetricPlacesAreNotChosenBetweenByRounding() {
        Covariance covariance = new Matern52(0.04, 400, 150);
        double[][] c = new double[45][45];
        double[][] rounded = new double[45][45];
        for (int i = 0; i < 45; i++) {
            for (int j = 0; j < 45; j++) {
                c[i][j] = covariance.between(i % 9 * 100, i / 9 * 40, j % 9 * 100, j / 9 * 40);
                rounded[i][j] = c[i][j] * (1 + 1e-14 * Math.sin(i + 7 * j));
            }
        }

        RealMatrix one = matrix(rootOf(c, 1e-3), 45);
        RealMatrix other = matrix(rootOf(rounded, 1e-3), 45);

        assertEquals(one.getColumnDimension(), other.getColumnDimension());
        for (int k = 0; k < one.getColumnDimension(); k++) {
            assertArrayEquals(one.getColumn(k), other.getColumn(k), 1e-9);
        }
    }

    @Test
    void fieldThatIsKnownEverywhereHasNoColumns() {
        LowRankRoot root = rootOf(new double[4][4], 1e-6);

        assertEquals(0, root.rank());
        double[] onto = {1, 2, 3, 4};
        root.addTimes(new double[0], onto);
        assertArrayEquals(new double[] {1, 2, 3, 4}, onto);
    }
}
