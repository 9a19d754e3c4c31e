package outwind.numeric.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.numeric.LeastSquares;
import outwind.numeric.LinearFit;
import outwind.numeric.ReferenceTable;

/** Heights that nobody here wrote, against answers of R and SciPy (src/test/resources/grids/README.md). */
class MeasuredGridsTest {

    private static final ReferenceTable SCIPY = ReferenceTable.read("/grids/planes.csv");
    private static final ReferenceTable R = ReferenceTable.read("/grids/lm_R.csv");

    /** Relative to the size of the heights; the references themselves agree with each other to 3e-13. */
    private static final double CLOSE = 1e-11;

    private record Grid(double[] x, double[] y, double[] z) {

        static Grid named(String name) {
            ReferenceTable table = ReferenceTable.read("/grids/" + name + ".csv");
            return new Grid(table.column("x"), table.column("y"), table.column("z"));
        }

        double size() {
            return Arrays.stream(z).map(Math::abs).max().orElseThrow();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"dem_coarse", "probe_plate_a", "probe_plate_b_tilted", "surface_plate_1955",
        "volcano", "volcano_coarse"})
    void minimumZoneMatchesScipy(String name) {
        Grid grid = Grid.named(name);

        Zone zone = WidestGap.minimumZone(grid.x, grid.y, grid.z);

        assertEquals(SCIPY.value(name, "minzone.width_vertical"), zone.width(), CLOSE * grid.size());
        for (int i = 0; i < grid.z.length; i++) {
            double off = Math.abs(grid.z[i] - zone.middle().at(grid.x[i], grid.y[i]));
            assertTrue(off <= zone.width() / 2 + CLOSE * grid.size(), "point " + i + " lies outside");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"dem_coarse", "probe_plate_a", "probe_plate_b_tilted", "surface_plate_1955",
        "volcano", "volcano_coarse"})
    void supportingPlaneMatchesScipy(String name) {
        Grid grid = Grid.named(name);
        double atX = SCIPY.value(name, "centroid.x");
        double atY = SCIPY.value(name, "centroid.y");

        Plane below = WidestGap.highestPlaneUnder(grid.x, grid.y, grid.z, atX, atY).plane();
        double[] mirrored = Arrays.stream(grid.z).map(z -> -z).toArray();
        Plane above = WidestGap.highestPlaneUnder(grid.x, grid.y, mirrored, atX, atY).plane();

        assertEquals(SCIPY.value(name, "lower_support.value_at_centroid"), below.at(atX, atY), CLOSE * grid.size());
        assertEquals(SCIPY.value(name, "upper_support.value_at_centroid"), -above.at(atX, atY), CLOSE * grid.size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"dem_coarse", "probe_plate_a", "probe_plate_b_tilted", "surface_plate_1955",
        "volcano", "volcano_coarse"})
    void fitsMatchR(String name) {
        Grid grid = Grid.named(name);
        String[] models = {"plane", "bilinear", "quadratic"};
        int[] terms = {3, 4, 6};
        for (int m = 0; m < models.length; m++) {
            double[][] design = new double[grid.z.length][];
            for (int i = 0; i < design.length; i++) {
                double x = grid.x[i];
                double y = grid.y[i];
                design[i] = Arrays.copyOf(new double[] {1, x, y, x * y, x * x, y * y}, terms[m]);
            }

            LinearFit fit = LeastSquares.fit(design, grid.z);

            for (int j = 0; j < terms[m]; j++) {
                String letter = "abcdef".substring(j, j + 1);
                double error = R.value(name, models[m], "se_" + letter);
                assertEquals(R.value(name, models[m], letter), fit.coefficients()[j], 1e-9 * error);
                assertEquals(error, fit.standardErrors().orElseThrow()[j], 1e-9 * error);
            }
            double spread = R.value(name, models[m], "residual_sd");
            assertEquals(spread, fit.residualStandardDeviation().orElseThrow(), 1e-10 * spread);
            assertEquals(R.value(name, models[m], "r_squared"), fit.rSquared(), 1e-10);
        }
    }

    // Reference: J. C. Moody, The Tool Engineer, Oct 1955: the plate's highest point is printed as 18 units of
    // 0.00001 inch (4.57 µm) above his datum plane, which touches the lowest. No pair of planes may be wider than
    // that one. SciPy 1.10.1 on the recomputed heights: minimum zone 4.1573 µm, least-squares range 4.4544 µm.
    @Test
    void publishedSurfacePlateIsFlatWithinItsPrintedSpan() {
        ReferenceTable plate = ReferenceTable.read("/flatness/moody1955_heights.csv");
        double[] x = plate.column("x_mm");
        double[] y = plate.column("y_mm");

        Zone recomputed = WidestGap.minimumZone(x, y, plate.column("z_um"));
        double[] printed = Arrays.stream(plate.column("col8_printed")).map(units -> units * 0.254).toArray();
        Zone asPrinted = WidestGap.minimumZone(x, y, printed);

        assertEquals(4.1573, recomputed.width(), 5e-5);
        assertTrue(asPrinted.width() <= 18 * 0.254, "printed heights: " + asPrinted.width());
        // The article rounds each height to a unit, so neither zone can be more than one unit from the other.
        assertEquals(recomputed.width(), asPrinted.width(), 0.254 * 1.01);
    }
}
