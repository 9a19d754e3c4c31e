package outwind.numeric.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An element of 3 x 4 mm, Dx = 5, Dy = 0.7, D1 = 0.3, Dxy = 0.4 N·mm. */
class PlateElementTest {

    private static final double A = 3;
    private static final double B = 4;

    private static double power(double base, int exponent) {
        return exponent == 0 ? 1 : Math.pow(base, exponent);
    }

    private static double slope(double base, int exponent) {
        return exponent == 0 ? 0 : exponent * power(base, exponent - 1);
    }

    // Worked by hand. Shapes that the element's own polynomial holds are bent with the energy of the plate, twice
    // ½∫∫ (Dx·w_xx² + 2·D1·w_xx·w_yy + Dy·w_yy² + 4·Dxy·w_xy²) dx dy, for w = xᵐ·yⁿ from 0 to 3 and 0 to 4:
    // x²: Dx·4·ab;   y²: Dy·4·ab;   xy: 4·Dxy·ab;   x³: Dx·36·a³b/3;   y³: Dy·36·ab³/3;
    // x²y: Dx·4·ab³/3 + 4·Dxy·4·a³b/3;   xy²: Dy·4·a³b/3 + 4·Dxy·4·ab³/3;
    // x³y: Dx·36·a³b³/9 + 4·Dxy·9·a⁵b/5;   xy³: Dy·36·a³b³/9 + 4·Dxy·9·ab⁵/5.   Planes bend nothing.
    @ParameterizedTest
    @CsvSource({"1, 0, 0, 0", "x, 1, 0, 0", "y, 0, 1, 0", "x², 2, 0, 240", "y², 0, 2, 33.6", "xy, 1, 1, 19.2",
        "x³, 3, 0, 6480", "y³, 0, 3, 1612.8", "x²y, 2, 1, 1510.4", "xy², 1, 2, 510.4", "x³y, 3, 1, 37359.36",
        "xy³, 1, 3, 13685.76"})
    void shapesThatItHoldsAreBentWithTheEnergyOfThePlate(String shape, int m, int n, double twiceTheEnergy) {
        double[] freedoms = new double[PlateElement.FREEDOMS];
        double[][] corners = {{0, 0}, {A, 0}, {A, B}, {0, B}};
        for (int c = 0; c < 4; c++) {
            double x = corners[c][0];
            double y = corners[c][1];
            freedoms[3 * c] = power(x, m) * power(y, n);
            freedoms[3 * c + 1] = slope(x, m) * power(y, n);
            freedoms[3 * c + 2] = power(x, m) * slope(y, n);
        }

        assertEquals(twiceTheEnergy, twiceTheEnergy(freedoms), 1e-9 * (1 + twiceTheEnergy), shape);
    }

    // x² and y² together: the cross term 2·D1·w_xx·w_yy = 2·0.3·4 adds 2.4·ab to 240 + 33.6.
    @Test
    void bendingBothWaysIsStiffenedByBoth() {
        double[] freedoms = {0, 0, 0, 9, 6, 0, 25, 6, 8, 16, 0, 8};

        assertEquals(240 + 33.6 + 2.4 * A * B, twiceTheEnergy(freedoms), 1e-9);
    }

    private static double twiceTheEnergy(double[] freedoms) {
        double[][] k = PlateElement.stiffness(A, B, new Rigidity(5, 0.7, 0.3, 0.4));
        double energy = 0;
        for (int i = 0; i < freedoms.length; i++) {
            for (int j = 0; j < freedoms.length; j++) {
                energy += freedoms[i] * k[i][j] * freedoms[j];
            }
        }
        return energy;
    }
}
