package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.linear.LUDecomposition;
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

    private static LowRankRoot rootOf(double[][] c, double enough) {
        return rootOf(c, 0, enough);
    }

    private static LowRankRoot rootOf(double[][] c, int first, double enough) {
        double[] variances = new double[c.length];
        for (int i = 0; i < c.length; i++) {
            variances[i] = c[i][i];
        }
        return LowRankRoot.of(variances, j -> c[j].clone(), first, enough);
    }

    private static RealMatrix matrix(LowRankRoot root, int size) {
        RealMatrix g = MatrixUtils.createRealMatrix(size, Math.max(1, root.rank()));
        for (int k = 0; k < root.rank(); k++) {
            g.setColumn(k, root.column(k, 0, size));
        }
        return g;
    }

    // What is left out is positive semidefinite, so no entry of it is greater than the greatest variance left out.
    @Test
    void squareOfTheRootIsTheCovarianceToTheVarianceThatIsEnough() {
        SplittableRandom random = new SplittableRandom(31);
        for (double enough : new double[] {4e-4, 4e-6, 4e-10}) {
            double[][] c = matern(80, random);

            RealMatrix square = matrix(rootOf(c, enough), 80);
            square = square.multiply(square.transpose());

            for (int i = 0; i < 80; i++) {
                assertTrue(square.getEntry(i, i) <= c[i][i] + 1e-15);
                for (int j = 0; j < 80; j++) {
                    assertEquals(c[i][j], square.getEntry(i, j), enough + 1e-15);
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

            RealMatrix g = matrix(rootOf(c, 4e-5), 30);

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

        RealMatrix one = matrix(rootOf(c, 4e-5), 45);
        RealMatrix other = matrix(rootOf(rounded, 4e-5), 45);

        assertEquals(one.getColumnDimension(), other.getColumnDimension());
        for (int k = 0; k < one.getColumnDimension(); k++) {
            assertArrayEquals(one.getColumn(k), other.getColumn(k), 1e-9);
        }
    }

    @Test
    void fieldThatIsKnownEverywhereHasNoColumns() {
        assertEquals(0, rootOf(new double[4][4], 1e-6).rank());
    }

    /** Known at the places taken first, the field has the variances elsewhere that kriging through them leaves. */
    @Test
    void columnsBeyondTheKnownOnesAreWhatIsLeftWherePlacesTakenFirstAreKnown() {
        SplittableRandom random = new SplittableRandom(33);
        int first = 8;
        double[][] c = matern(30, random);
        RealMatrix all = MatrixUtils.createRealMatrix(c);
        RealMatrix across = all.getSubMatrix(first, 29, 0, first - 1);
        RealMatrix expected = all.getSubMatrix(first, 29, first, 29).subtract(across
            .multiply(new LUDecomposition(all.getSubMatrix(0, first - 1, 0, first - 1)).getSolver().getInverse())
            .multiply(across.transpose()));

        LowRankRoot root = rootOf(c, first, 1e-8);

        assertEquals(first, root.known());
        RealMatrix rest = matrix(root, 30).getSubMatrix(0, 29, first, root.rank() - 1);
        RealMatrix square = rest.multiply(rest.transpose());
        for (int i = 0; i < 30; i++) {
            for (int j = 0; j < 30; j++) {
                assertEquals(i < first || j < first ? 0 : expected.getEntry(i - first, j - first), square.getEntry(i, j), 2e-8);
            }
        }
        for (int k = first; k < root.rank(); k++) {
            double pivot = Arrays.stream(root.column(k, 0, 30)).map(g -> g * g).max().orElseThrow();
            assertEquals(pivot, root.left(k), 1e-12);
        }
    }

    /** A reading pasted twice tells nothing more of the field. */
    @Test
    void aPlaceTakenFirstTwiceIsKnownAtOnce() {
        double[][] once = matern(12, new SplittableRandom(34));
        double[][] c = new double[13][13];
        for (int i = 0; i < 13; i++) {
            for (int j = 0; j < 13; j++) {
                c[i][j] = once[Math.max(0, i - 1)][Math.max(0, j - 1)];
            }
        }

        assertEquals(4, rootOf(c, 5, 1e-6).known());
    }
}
