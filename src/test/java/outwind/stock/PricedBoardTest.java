package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.blanks.BlankPlanTest;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Defect;
import outwind.board.Price;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.Forecast;
import outwind.forecast.JudgeOptions;
import outwind.judge.Drying;
import outwind.setup.Moisture;
import outwind.shop.Cutter;
import outwind.shop.Shop;
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

    /** A board of 0.2 m² that is known by its figures alone. */
    private static PricedBoard figured(Verdict verdict, OptionalDouble chance, double area, String wood, String cost,
            double... finished) {
        return new PricedBoard("figured", "f", WoodKind.ANY, verdict, chance, OptionalDouble.empty(),
            new ThicknessRange(finished), new BoardFeet(1000, 200, 30), 6e6, 4.5e6, area, OptionalDouble.empty(),
            Optional.ofNullable(wood).map(BigDecimal::new), Optional.ofNullable(cost).map(BigDecimal::new));
    }

    // Worked by hand: 30 for 0.15 m² that come out in three boards of four; 10 of the 30 are labour.
    @Test
    void whatAFinishedAreaCostsCountsThoseThatFail() {
        PricedBoard board = figured(Verdict.DOUBTFUL, OptionalDouble.of(0.75), 150_000, "20", "30", 20);

        assertEquals(30 / (150_000 * 0.75), board.costPerFinishedArea().orElseThrow(), 1e-12);
        assertEquals(Optional.of(new BigDecimal("10")), board.labour());
        assertEquals(0.25, board.waste(), 1e-12);
    }

    @Test
    void whatNobodyBuysOrKnowsHasNoCostPerArea() {
        OptionalDouble half = OptionalDouble.of(0.5);
        List<PricedBoard> none = List.of(figured(Verdict.DOUBTFUL, half, 150_000, null, null, 20),
            figured(Verdict.NO, half, 150_000, "20", "30", 20),
            figured(Verdict.DOUBTFUL, OptionalDouble.of(0), 150_000, "20", "30", 20),
            figured(Verdict.DOUBTFUL, half, 0, "20", "30", 20));

        none.forEach(board -> assertEquals(OptionalDouble.empty(), board.costPerFinishedArea(), board.toString()));
        assertEquals(Optional.empty(), none.get(0).labour());
    }

    // Worked by hand: of 101 thicknesses from 0 to 100 mm, evenly spaced. Without a target what counts is that some
    // wood is left.
    @Test
    void withoutATargetABoardMakesItWhereWoodIsLeft() {
        PricedBoard even = figured(Verdict.NONE, OptionalDouble.empty(), 1, null, null,
            IntStream.rangeClosed(0, 100).asDoubleStream().toArray());

        assertEquals(List.of(5.0, 50.0, 95.0), List.of(even.low(), even.median(), even.high()));
        assertEquals(1, even.makesIt(), 0);
        assertEquals(0, figured(Verdict.NONE, OptionalDouble.empty(), 1, null, null, 0).makesIt(), 0);
        assertEquals(0, figured(Verdict.NONE, OptionalDouble.empty(), 1, null, null, -2).makesIt(), 0);
    }

    // Worked by hand: within a trim of 20 and 5 mm are 960 x 190 mm, of which the defect at the corner takes 30 x 15
    // and the one that lies in the trim nothing.
    @Test
    void trimIsNoFinishedBoardAndDefectsInItTakeNothing() {
        ShapeOf shape = new ShapeOf(1000, 200, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim()).trimmed(20, 5);
        PricedBoard board = priced(BlankPlanTest.with(shape.read(5, 3, (x, y) -> 0), new Defect(0, 0, 50, 20),
            new Defect(985, 0, 1000, 200)));

        assertEquals(960 * 190 - 30 * 15, board.finishedArea(), 1e-6);
    }

    // Worked by hand: where calipers tell the thickness, 1000 x 200 x 30 mm count as their mean of 30 mm, 2.54 board
    // feet of 144 in³ at 10 each.
    @Test
    void aBoardReadWithCalipersIsPaidByWhatTheyRead() {
        ShapeOf shape = new ShapeOf(1000, 200, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        Board board = shape.read(5, 3, (x, y) -> 0, List.of(new CaliperReading(100, 100, 30, 2),
            new CaliperReading(500, 20, 30, 3), new CaliperReading(900, 180, 30, 4),
            new CaliperReading(500, 180, 30, 5)));

        assertEquals(OptionalDouble.empty(), board.thickness());
        assertEquals(30, priced(board).feet().thickness(), 1e-6);
    }

    // A board that is sure to fail is paid for and not flattened; one that may be made is both.
    @Test
    void nobodyPaysForFlatteningABoardThatIsSureToFail() {
        Rates rates = new Rates(Optional.of(Price.parse("10 per board", false)), Optional.of(new BigDecimal("60")));
        Shop shop = Shop.UNKNOWN.with(List.of(new Cutter("facing", 40, 1.5, 0, 24, 3000, 26)));
        for (double target : new double[] {20, 29.9}) {
            ShapeOf shape = new ShapeOf(1000, 200, 30, ShapeOf.board().underside(), OptionalDouble.of(target),
                ShapeOf.board().trim());
            Board board = shape.read(5, 3, (x, y) -> 3 * x * y / 200_000);

            PricedBoard priced = PricedBoard.of(board, board, JudgeOptions.usual(board, shop), "b", rates);

            assertEquals(target == 20 ? Verdict.YES : Verdict.NO, priced.verdict());
            // At 60 an hour a minute costs one.
            assertTrue(priced.minutes().orElseThrow() > 10);
            assertEquals(target == 20 ? priced.minutes().orElseThrow() : 0, priced.labour().orElseThrow().doubleValue(),
                0.005, "at " + target + " mm");
        }
    }
}
