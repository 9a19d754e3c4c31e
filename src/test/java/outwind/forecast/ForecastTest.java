package outwind.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.flatten.Planes;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.surface.Faces;
import outwind.surface.ShapeOf;

class ForecastTest {

    /** Falls by 2 mm from end to end, which shims win back. */
    private static final Board SLOPING = ShapeOf.board().read(7, 3, (x, y) -> -2 * x / 900);

    private static Forecast of(Board board) {
        return Forecast.of(Faces.of(board), JudgeOptions.usual(board));
    }

    // By the rule: a board is cut as it lies if that leaves half a range to spare, else it is levelled, though both
    // ways make the target.
    @Test
    void aBoardIsCutAsItLiesWhereHalfARangeIsToSpare() {
        Forecast free = of(SLOPING);
        ThicknessRange lying = free.outlook().asMeasured();
        Forecast scant = of(SLOPING.withTarget(lying.low() - 0.4 * lying.width()));
        Forecast ample = of(SLOPING.withTarget(lying.low() - 0.6 * lying.width()));

        assertTrue(free.planes().best().thickness() > lying.median() + Planes.WORTH_LIFTING);
        assertEquals(Verdict.YES, Forecast.verdict(lying, scant.faces().board().target()));
        assertTrue(scant.lifts());
        assertFalse(ample.lifts());
    }
}
