package outwind.numeric.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxesTest {

    private static Axes of(double[] x, double[] y) {
        return Axes.of(x, y, x, y);
    }

    /** Pairs of places 250 mm apart along a line that rises 4 in y to 3 in x, so far from it on either side (mm). */
    private static Axes rows(double aside) {
        return rows(aside, 0);
    }

    private static Axes rows(double aside, double offset) {
        double[] x = new double[10];
        double[] y = new double[10];
        for (int i = 0; i < 10; i++) {
            double across = i % 2 == 0 ? aside : -aside;
            x[i] = offset + 150 * (i / 2) - 0.8 * across;
            y[i] = 200 * (i / 2) - offset + 0.6 * across;
        }
        return of(x, y);
    }

    // Worked by hand.
    @Test
    void placesThatCoverAnAreaKeepTheirAxesAndHaveOneUnit() {
        Axes axes = of(new double[] {0, 600, 600, 0}, new double[] {20, 20, 220, 220});

        assertEquals(new Axes(300, 120, 300, 100, 1, 0, 300, 300, true, true), axes);
        assertEquals(1, axes.u(600, 20));
        assertEquals(-1.0 / 3, axes.v(600, 20), 1e-15);
    }

    @Test
    void onePlaceHoldsNoSlope() {
        assertEquals(new Axes(70, 30, 0, 0, 1, 0, 1, 1, false, false), of(new double[] {70}, new double[] {30}));
    }

    // Worked by hand: 800 mm in y and 600 in x, so that the unit is 400 mm and the ends are 500/400 from the centre.
    @Test
    void aLineIsTheFirstAxisAndHoldsNoSlopeAcross() {
        Axes axes = rows(0);

        assertTrue(axes.along());
        assertFalse(axes.across());
        assertEquals(1.25, axes.u(600, 800), 1e-14);
        assertEquals(0, axes.v(600, 800), 1e-14);
        assertEquals(0.003, axes.slopeX(2, 0), 1e-17);
        assertEquals(0.004, axes.slopeY(2, 0), 1e-17);
    }

    // Worked by hand: 0.003 mm to either side are 1 of the second unit, over which 3 mm are a slope of 1000 along
    // (-0.8, 0.6). Coordinates of 800 mm are known to 1e-13 mm.
    @Test
    void aThinSetHasAUnitOfItsOwnAcross() {
        Axes axes = rows(0.003);

        assertTrue(axes.along());
        assertTrue(axes.across());
        assertEquals(0.003, axes.unitV(), 1e-12);
        assertEquals(1, axes.v(450 - 0.0024, 600 + 0.0018), 1e-9);
        assertEquals(-800, axes.slopeX(0, 3), 1e-6);
        assertEquals(600, axes.slopeY(0, 3), 1e-6);
    }

    // Once more 100 m away, where coordinates are known to 1.5e-11 mm: neither taken for an area nor for a line.
    @Test
    void aThinSetFarOffIsAsThin() {
        Axes axes = rows(0.003, 1e5);

        assertEquals(0.003, axes.unitV(), 1e-10);
        assertEquals(400, axes.unitU(), 0.01);
    }

    // Worked by hand: two places, one of each set, 30 mm in x and 40 in y apart.
    @Test
    void aPlaceOfEachSetIsALine() {
        Axes axes = Axes.of(new double[] {7}, new double[] {9}, new double[] {37}, new double[] {49});

        assertFalse(axes.across());
        assertEquals(0.6, axes.cos(), 1e-15);
        assertEquals(0.8, axes.sin(), 1e-15);
        assertEquals(1.25, axes.u(37, 49), 1e-14);
    }

    // Worked by hand: over half a length of 500 mm a line is 5e-8 mm wide to either side. At 1e9 mm coordinates come in
    // steps of 1.19e-7 mm, of which it may be 16 wide: 1.9e-6 mm.
    @ParameterizedTest
    @CsvSource({"0, 4e-8, false", "0, 6e-8, true", "1e9, 1.8e-6, false", "1e9, 2.1e-6, true"})
    void whatIsNoWiderThanRoundingIsALine(double offset, double aside, boolean across) {
        double[] x = {offset, offset, offset + 1000, offset + 1000};
        double[] y = {aside, -aside, aside, -aside};

        assertEquals(across, of(x, y).across());
    }

    // Worked by hand: two rows of 1 m, one of each set, 100 mm apart.
    @Test
    void bothSetsCount() {
        double[] x = {0, 500, 1000};
        Axes axes = Axes.of(x, new double[3], x, new double[] {100, 100, 100});

        assertTrue(axes.across());
        assertEquals(50, axes.centreY());
        assertEquals(50, axes.unitV(), 1e-12);
        assertEquals(500, axes.unitU());
    }

    // Identity: a plane rises between two places by what it rises over u and over v, however the axes lie.
    @Test
    void slopesTellTheSamePlaneAsRisesOverTheUnits() {
        SplittableRandom random = new SplittableRandom(20260601);
        for (int trial = 0; trial < 200; trial++) {
            double angle = random.nextDouble(Math.PI);
            double[] along = random.doubles(8, 0, 1000).toArray();
            double[] across = random.doubles(8, 0, trial % 2 == 0 ? 300 : 0.1).toArray();
            double[] x = new double[8];
            double[] y = new double[8];
            Arrays.setAll(x, i -> along[i] * Math.cos(angle) - across[i] * Math.sin(angle));
            Arrays.setAll(y, i -> along[i] * Math.sin(angle) + across[i] * Math.cos(angle));
            Axes axes = of(x, y);

            double rise = 2 * (axes.u(x[1], y[1]) - axes.u(x[0], y[0])) - 3 * (axes.v(x[1], y[1]) - axes.v(x[0], y[0]));

            assertEquals(rise, axes.slopeX(2, -3) * (x[1] - x[0]) + axes.slopeY(2, -3) * (y[1] - y[0]), 1e-8);
            for (int i = 0; i < 8; i++) {
                assertTrue(Math.abs(axes.u(x[i], y[i])) < 1.5 && Math.abs(axes.v(x[i], y[i])) < 1.5,
                    "case " + trial + ": " + axes);
            }
        }
    }
}
