package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LeastSquaresTest {

    // Reference: NIST StRD, linear regression, certified values to 15 digits (src/test/resources/nist-strd).
    // Digits = −log10 of the relative error, at most 15. The floors are what a backward stable method can reach on
    // data rounded to double precision (Filip: 8.0 and 7.1 reached; its tenth powers are rounded before any fit
    // begins); R 4.2.2 lm keeps 12.3 digits on Norris, 12.0 Pontius, 14.2 NoInt1, 12.9
    // Longley, 8.3 Filip, 9.5, 8.1, 6.1 on Wampler3, 4, 5.
    @ParameterizedTest
    @CsvSource({
        "Norris,   1, 12.0, 12.0",
        "Pontius,  2, 11.5, 11.5",
        "NoInt1,   1, 14.0, 14.0",
        "Longley,  0, 12.0, 12.0",
        "Filip,   10,  7.5,  7.0",
        "Wampler1, 5,  9.0,  0.0",
        "Wampler2, 5, 12.5,  0.0",
        "Wampler3, 5,  9.0, 10.0",
        "Wampler4, 5,  7.5, 10.0",
        "Wampler5, 5,  5.5, 10.0"})
    void agreesWithNistCertifiedValues(String dataset, int degree, double leastDigits, double leastErrorDigits) {
        ReferenceTable data = ReferenceTable.read("/nist-strd/" + dataset + ".csv");
        ReferenceTable certified = ReferenceTable.read("/nist-strd/certified.csv");
        int firstTerm = dataset.equals("NoInt1") ? 1 : 0;

        LinearFit fit = LeastSquares.fit(design(data, degree, firstTerm), data.column("y"));

        double coefficientDigits = 15;
        double errorDigits = 15;
        for (int j = 0; j < fit.coefficients().length; j++) {
            String term = String.valueOf(j + firstTerm);
            coefficientDigits = Math.min(coefficientDigits,
                digits(certified.value(dataset, "B" + term), fit.coefficients()[j]));
            errorDigits = Math.min(errorDigits,
                digits(certified.value(dataset, "se_B" + term), fit.standardErrors().orElseThrow()[j]));
        }
        double spreadDigits = digits(certified.value(dataset, "residual_sd"),
            fit.residualStandardDeviation().orElseThrow());
        double shareDigits = digits(certified.value(dataset, "r_squared"), fit.rSquared());
        System.out.printf(Locale.ROOT, "NIST %-8s digits: coefficients %.1f, standard errors %.1f, residual sd %.1f,"
            + " R² %.1f%n", dataset, coefficientDigits, errorDigits, spreadDigits, shareDigits);

        assertTrue(coefficientDigits >= leastDigits, dataset + " coefficients: " + coefficientDigits);
        assertTrue(errorDigits >= leastErrorDigits, dataset + " standard errors: " + errorDigits);
        assertTrue(spreadDigits >= leastErrorDigits, dataset + " residual sd: " + spreadDigits);
        assertTrue(shareDigits >= 9, dataset + " R²: " + shareDigits);
    }

    private static double[][] design(ReferenceTable data, int degree, int firstTerm) {
        double[][] design = new double[data.rows().size()][];
        for (int i = 0; i < design.length; i++) {
            if (degree == 0) {
                design[i] = new double[data.header().size()];
                design[i][0] = 1;
                for (int j = 1; j < design[i].length; j++) {
                    design[i][j] = data.column("x" + j)[i];
                }
            } else {
                double x = data.column("x")[i];
                design[i] = new double[degree + 1 - firstTerm];
                for (int j = firstTerm; j <= degree; j++) {
                    design[i][j - firstTerm] = Math.pow(x, j);
                }
            }
        }
        return design;
    }

    /** Common decimal digits; for a certified zero (Wampler1 and 2 are exact), digits of the data's size. */
    private static double digits(double certified, double computed) {
        double scale = certified == 0 ? 1e6 : Math.abs(certified);
        double error = Math.abs(certified - computed) / scale;
        return error == 0 ? 15 : Math.min(15, -Math.log10(error));
    }

    // Worked by hand: y = 1 + 2x at x = 0, 1, 2, with the middle point raised by 3. The constant rises by 1, the
    // slope stays; residuals −1, 2, −1; residual variance 6 / 1; slope error √(6 / 2).
    @Test
    void oneRaisedPointOfThreeIsWorkedByHand() {
        LinearFit fit = LeastSquares.fit(new double[][] {{1, 0}, {1, 1}, {1, 2}}, new double[] {1, 6, 5});

        assertArrayEquals(new double[] {2, 2}, fit.coefficients(), 1e-14);
        assertArrayEquals(new double[] {-1, 2, -1}, fit.residuals(), 1e-14);
        assertEquals(Math.sqrt(6), fit.residualStandardDeviation().orElseThrow(), 1e-14);
        assertEquals(Math.sqrt(3), fit.standardErrors().orElseThrow()[1], 1e-14);
    }

    @Test
    void asManyTermsAsReadingsLeaveNoStandardErrors() {
        LinearFit fit = LeastSquares.fit(new double[][] {{1, 0}, {1, 1}}, new double[] {1, 3});

        assertTrue(fit.standardErrors().isEmpty());
        assertTrue(fit.residualStandardDeviation().isEmpty());
    }

    // Identity: a parabola fitted about x = 3 and written about x = 0 is the parabola fitted about x = 0, errors and all.
    // With u = x − 3: a + b·u + c·u² = (a − 3b + 9c) + (b − 6c)·x + c·x².
    @Test
    void aFitToldInOtherCoordinatesIsTheFitInThem() {
        double[] z = {1, 3, 2, 5, 4, 9};
        double[][] aboutThree = new double[6][];
        double[][] aboutZero = new double[6][];
        for (int x = 0; x < 6; x++) {
            aboutThree[x] = new double[] {1, x - 3, (x - 3) * (x - 3)};
            aboutZero[x] = new double[] {1, x, x * x};
        }
        LinearFit expected = LeastSquares.fit(aboutZero, z);

        LinearFit shifted = LeastSquares.fit(aboutThree, z).inTermsOf(new double[][] {{1, -3, 9}, {0, 1, -6}, {0, 0, 1}});

        assertArrayEquals(expected.coefficients(), shifted.coefficients(), 1e-12);
        for (int j = 0; j < 3; j++) {
            assertArrayEquals(expected.unscaledCovariance()[j], shifted.unscaledCovariance()[j], 1e-12);
        }
        assertArrayEquals(expected.standardErrors().orElseThrow(), shifted.standardErrors().orElseThrow(), 1e-12);
        assertArrayEquals(expected.residuals(), shifted.residuals(), 1e-12);
        assertEquals(expected.rSquared(), shifted.rSquared(), 1e-12);
    }

    // By definition: where there is nothing to explain, all of it is explained.
    @Test
    void readingsThatAreAllAlikeAreExplained() {
        LinearFit fit = LeastSquares.fit(new double[][] {{1, 0}, {1, 1}, {1, 2}}, new double[] {4, 4, 4});

        assertEquals(1, fit.rSquared());
    }

    @Test
    void dependentColumnIsRefusedByName() {
        double[][] design = {{1, 2, 4}, {1, 3, 6}, {1, 4, 8}, {1, 5, 10}};

        var refused = assertThrows(IllegalArgumentException.class, () -> LeastSquares.fit(design, new double[4]));

        assertEquals("column 3 of 3 depends linearly on those before it", refused.getMessage());
    }

    @Test
    void columnsAfterADependentOneAreStillTold() {
        // 1, x, y on the row y = 5, x²: y repeats the constant, x² is seen.
        double[][] design = {{1, 0, 5, 0}, {1, 1, 5, 1}, {1, 2, 5, 4}};

        assertArrayEquals(new boolean[] {true, true, false, true}, LeastSquares.independentColumns(design, 1e-9));
    }

    // A row of readings that wanders by a hundredth shows no slope across itself, however exactly it was read.
    @Test
    void aColumnThatIsNextToNothingIsNotIndependent() {
        double[][] design = {{1, -1, 0.01}, {1, 0, -0.01}, {1, 1, 0.01}, {1, 0.5, 0}};

        assertArrayEquals(new boolean[] {true, true, false}, LeastSquares.independentColumns(design, 0.05));
    }

    // Worked by hand: the second column is a + b/2²⁷ and the third b, a combination of the first two to the last bit.
    // The second stands out by so little that its rounding is a hundred-millionth of what is left of it, and one round
    // of Gram–Schmidt would take that for something new.
    @Test
    void whatIsTakenOffOnceLeavesNoDependentColumnStanding() {
        double little = Math.scalb(1.0, -27);
        double[][] design = new double[3][];
        for (int i = 0; i < 3; i++) {
            double b = new double[] {1, 2, -3}[i];
            design[i] = new double[] {1, 1 + little * b, b};
        }

        assertArrayEquals(new boolean[] {true, true, false}, LeastSquares.independentColumns(design, 1e-10));
    }

    // Worked by hand: the last column stands off the first two by an angle of about a thousandth.
    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 1, 1e6})
    void theUnitOfTheColumnsDoesNotMatterForWhatIsIndependent(double unit) {
        double[][] design = {{unit, 0, unit}, {0, unit, unit}, {0, 0, unit / 1000}};

        assertArrayEquals(new boolean[] {true, true, true}, LeastSquares.independentColumns(design, 1e-4));
        assertArrayEquals(new boolean[] {true, true, false}, LeastSquares.independentColumns(design, 1e-2));
    }

    @Test
    void aColumnOfZerosIsNeitherIndependentNorFitted() {
        double[][] zeros = {{0, 0}, {0, 0}};
        double[][] beside = {{1, 0}, {2, 0}, {3, 0}};

        var refused = assertThrows(IllegalArgumentException.class, () -> LeastSquares.fit(beside, new double[3]));

        assertEquals("column 2 of 2 depends linearly on those before it", refused.getMessage());
        assertArrayEquals(new boolean[2], LeastSquares.independentColumns(zeros, 1e-9));
        assertArrayEquals(new boolean[] {true, false}, LeastSquares.independentColumns(beside, 1e-9));
        assertArrayEquals(new boolean[0], LeastSquares.independentColumns(new double[0][], 1e-9));
    }

    @Test
    void fewerRowsThanColumnsAreRefused() {
        double[][] wide = {{1, 2}};
        double[][] square = {{1, 0}, {1, 1}};
        double[][] without = {{}, {}};

        var refused = assertThrows(IllegalArgumentException.class, () -> LeastSquares.fit(wide, new double[1]));

        assertEquals("least squares needs at least as many rows as columns, got 1 rows, 2 columns, 1 observations",
            refused.getMessage());
        assertThrows(IllegalArgumentException.class, () -> LeastSquares.fit(square, new double[3]));
        assertThrows(IllegalArgumentException.class, () -> LeastSquares.fit(without, new double[2]));
        assertThrows(IllegalArgumentException.class, () -> LeastSquares.fit(new double[0][], new double[0]));
    }
}
