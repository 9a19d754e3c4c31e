package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import outwind.flatten.ThicknessRange;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

/** Lengths, blanks and their plan as values. */
class EqualLengthsTest {

    private static Blank length(double x1, double x2, double... finishes) {
        return new Blank("length", -1, new Region(x1, 20, x2, 180), false, 21, new ThicknessRange(finishes), 50);
    }

    // Worked by hand: medians of 22 and 21.5 mm; three of four boards and two of four make 21 mm.
    @Test
    void theThinnestAndTheLeastSureLengthCount() {
        EqualLengths lengths = new EqualLengths(List.of(length(0, 300, 20, 21.5, 22.5, 23), length(303, 603, 19, 20, 23, 24),
            length(606, 906, 21, 22, 23, 24)));

        assertEquals(3, lengths.count());
        assertEquals(300, lengths.length(), 1e-9);
        assertEquals(21.5, lengths.thickness(), 1e-9);
        assertEquals(0.5, lengths.chance(), 1e-9);
    }

    @Test
    void aBlankIsCountedOnForItsWorthTimesItsChance() {
        Blank blank = length(100, 400, 20, 21.5, 22.5, 23);

        assertEquals(0.75, blank.chance(), 1e-9);
        assertEquals(37.5, blank.value(), 1e-9);
        assertEquals(300, blank.along(), 1e-9);
        assertEquals(160, blank.across(), 1e-9);
    }

    @Test
    void lengthsArePlannedForATarget() {
        ShapeOf shape = ShapeOf.board();
        Saw saw = new Saw(3.2, 0, 5);

        LengthsPlan plan = LengthsPlan.of(shape.wanted(20).read(3, 3, (x, y) -> 0), saw, 0.95, 0.3, 1);

        assertEquals(900, plan.longest().orElseThrow().along(), 1e-9);
        assertEquals(1, plan.equal().orElseThrow().count());
        assertTrue(plan.equal().orElseThrow().chance() >= 0.95);
        assertEquals("lengths are planned for a target, and the board states none",
            assertThrows(IllegalArgumentException.class, () -> new LengthsPlan(shape.read(3, 3, (x, y) -> 0), saw, 0.95,
                plan.longest(), plan.equal())).getMessage());
        assertThrows(IllegalArgumentException.class,
            () -> LengthsPlan.of(shape.wanted(20).read(3, 3, (x, y) -> 0), saw, 0.4, 0.3, 1));
    }
}
