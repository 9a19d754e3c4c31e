package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.blanks.BlankPlanTest;
import outwind.board.Board;
import outwind.board.Defect;
import outwind.board.Price;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.Forecast;
import outwind.forecast.JudgeOptions;
import outwind.judge.Drying;
import outwind.setup.Moisture;
import outwind.surface.Faces;
import outwind.surface.ShapeOf;

class PricedBoardTest {

    private static final Rates RATES = new Rates(Optional.of(Price.parse("10 per bf", false)), Optional.empty());

    private static Board flat(double length, double width, Defect... defects) {
        ShapeOf shape = new ShapeOf(length, width, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        return BlankPlanTest.with(shape.read(5, 3, (x, y) -> 0), defects);
    }

    private static PricedBoard priced(Board board) {
        return PricedBoard.of(board, board, JudgeOptions.usual(board), "board.csv", RATES);
    }

    // Worked by hand: 1000 x 200 less 100 x 50 and 100 x 50 that meet in 50 x 50, less nothing else.
    @Test
    void defectsAreNoFinishedBoardAndNoFinishedWood() {
        PricedBoard whole = priced(flat(1000, 200));
        PricedBoard knotty = priced(flat(1000, 200, new Defect(100, 50, 200, 100), new Defect(150, 50, 250, 100)));

        assertEquals(200_000 - 7_500, knotty.finishedArea(), 1e-6);
        assertEquals(whole.finishedVolume() * 192.5 / 200, knotty.finishedVolume(), 1e-6 * whole.finishedVolume());
        assertEquals(whole.wood(), knotty.wood());
    }

    // Worked by hand: 200 x 100 x 30 mm is 600 000 mm³, 0.2543 board feet of 144 in³; it was free by the tally.
    @Test
    void aBoardTooSmallForTheTallyIsNotFree() {
        assertEquals(new BigDecimal("2.54"), priced(flat(200, 100)).wood().orElseThrow());
    }

    @Test
    void aBoardWithoutTargetDoesNotLeadThoseThatHaveOne() {
        PricedBoard aimless = priced(flat(1000, 200));
        PricedBoard aimed = new PricedBoard("aimed", "a", WoodKind.ANY, Verdict.YES, OptionalDouble.of(0.97),
            OptionalDouble.of(20), new ThicknessRange(new double[] {20, 21, 22}), aimless.feet(), 1e6, 1e6, 1e5, OptionalDouble.empty(),
            Optional.of(new BigDecimal("900")), Optional.of(new BigDecimal("900")));

        Stack stack = new Stack(List.of(aimless, aimed), "");

        assertEquals("aimed", stack.boards().get(0).name());
        assertEquals(0.97, stack.expected(), 1e-12);
        assertEquals(1, stack.withoutTarget().size());
        assertTrue(new Stack(List.of(aimless), "").withoutTarget().isEmpty());
    }

    // Worked by hand: what is bought is as wide as it was, what is finished as wide as it will be. Without a defect
    // nothing of what is finished is lost; a defect over a tenth of the face costs a tenth of it. Rough is what was
    // bought.
    @Test
    void sharesOfADriedBoardAreOfTheDriedBoard() {
        Board bought = flat(1000, 200, new Defect(0, 0, 200, 100));
        Board used = Drying.of(bought, new Moisture(18, 8));
        JudgeOptions request = JudgeOptions.usual(used);
        double finished = Forecast.of(Faces.of(used), request).cuts().finished();

        PricedBoard board = PricedBoard.of(bought, used, request, "board.csv", RATES);

        assertTrue(used.width() < 198, "width " + used.width());
        assertEquals(0.9 * 1000 * used.width(), board.finishedArea(), 1e-6);
        assertEquals(0.9 * finished, board.finishedVolume(), 1e-9 * finished);
        assertEquals(1000 * 200 * 30, board.roughVolume(), 1e-3);
    }
}
