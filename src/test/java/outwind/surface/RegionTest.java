package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Defect;

class RegionTest {

    private static final Region REGION = new Region(100, 20, 400, 80);

    // Worked by hand: 300 mm by 60 mm.
    @Test
    void theAreaIsLengthTimesWidth() {
        assertEquals(18_000, REGION.area());
    }

    // Sides that differ by rounding lie on one line: 0.1 + 0.2 is not 0.3 to a computer.
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "a corner in common,        350, 70, 500, 90, true",
        "one within the other,      200, 30, 210, 40, true",
        "the same,                  100, 20, 400, 80, true",
        "a side in common,          400, 20, 500, 80, false",
        "a side in common but for rounding, 399.9999999, 20, 500, 80, false",
        "a thousandth of a mm,      399.999, 20, 500, 80, true",
        "beside it across,          100, 80, 400, 90, false",
        "apart,                     500, 20, 600, 80, false"})
    void rectanglesOverlapThatShareMoreThanALine(String name, double x1, double y1, double x2, double y2,
            boolean overlap) {
        Region other = Region.of(new Defect(x1, y1, x2, y2));

        assertEquals(overlap, REGION.overlaps(other));
        assertEquals(overlap, other.overlaps(REGION));
    }
}
