package outwind.numeric.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.numeric.plate.Rigidity;

class PlaneTest {

    // Worked by hand: 7 + 2·3 − 4·5 = −7.
    @Test
    void heightIsThatAtZeroAndBothRises() {
        assertEquals(-7, new Plane(7, 2, -4).at(3, 5));
        assertEquals(-5, new Plane(7, 2, -4).raisedBy(2).at(3, 5));
    }

    @Test
    void aPlaneThroughAPlaceHasItsHeightThere() {
        Plane plane = Plane.through(3, 5, -7, 2, -4);

        assertEquals(new Plane(7, 2, -4), plane);
        assertEquals(-7, plane.at(3, 5));
    }

    @ParameterizedTest
    @CsvSource({"NaN, 0, 0", "0, Infinity, 0", "0, 0, -Infinity"})
    void aPlaneWithoutThreeFiniteNumbersIsRefused(double height, double slopeX, double slopeY) {
        var refused = assertThrows(IllegalArgumentException.class, () -> new Plane(height, slopeX, slopeY));

        assertEquals("plane needs three finite coefficients, got height=" + height + ", slopeX=" + slopeX + ", slopeY="
            + slopeY, refused.getMessage());
    }

    // D1² must stay under Dx·Dy, or some bending would take no work.
    @ParameterizedTest
    @CsvSource({"0, 1, 0, 1", "1, 0, 0, 1", "1, 1, 0, 0", "4, 9, 6, 1", "4, 9, -6, 1", "Infinity, 1, 0, 1",
        "1, 1, NaN, 1"})
    void aPlateThatGivesWithoutAForceIsRefused(double dx, double dy, double d1, double dxy) {
        var refused = assertThrows(IllegalArgumentException.class, () -> new Rigidity(dx, dy, d1, dxy));

        assertEquals("plate needs positive rigidities and D1² under Dx·Dy, got Dx=" + dx + ", Dy=" + dy + ", D1=" + d1
            + ", Dxy=" + dxy, refused.getMessage());
    }
}
