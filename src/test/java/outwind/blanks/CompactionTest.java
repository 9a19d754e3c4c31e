package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

class CompactionTest {

    private static final double SURE = 0.95;

    // Worked by hand: crosscut first, the blank moves along past the defect to the end, then across up to its far side at
    // 31.3 mm; ripped first, it moves across to the edge, then along up to 151.3 mm. Before the defect there is no room.
    @Test
    void aBlankMovesUpToTheFarSideOfADefect() {
        Board board = BlankPlanTest.with(ShapeOf.board().read(5, 3, (x, y) -> 0), new Defect(100, 20, 151.3, 31.3));
        CuttingBill bill = new CuttingBill(List.of(new BillItem("a", 300, 100, 20, 1, OptionalDouble.empty(), false)));
        BlankPlaces places = BlankPlaces.of(board, bill, Saw.usual(board), SURE, SURE, 0.3, 1);
        Region far = new Region(400, 60, 700, 160);
        Blank blank = new Blank("a", 0, far, false, 20, places.wood().range(far), 1);

        Blank crosscut = new Compaction(places).closed(List.of(List.of(blank)), CutOrder.CROSSCUT_FIRST).get(0).get(0);
        Blank ripped = new Compaction(places).closed(List.of(List.of(blank)), CutOrder.RIP_FIRST).get(0).get(0);

        assertEquals(new Region(0, 31.3, 300, 131.3), crosscut.region());
        assertEquals(new Region(151.3, 0, 451.3, 100), ripped.region());
    }

    private static final ShapeOf SHAPE = ShapeOf.board();

    /** As thick as 400 of 500 boards that differ by 0.01 mm. */
    private static final double WANTED = 30 - 4 + 0.005;

    /** Places on a board that twists by so much over its first 37.5 mm; board k of 500 is thinner by 0.01·k mm. */
    private static BlankPlaces places(double twist, double sure, Defect... defects) {
        Board board = BlankPlanTest.with(SHAPE.read(3, 3, (x, y) -> 0), defects);
        CuttingBill bill = new CuttingBill(List.of(new BillItem("a", 300, 180, WANTED, 1, OptionalDouble.empty(), false)));
        Region whole = new Region(0, 0, 900, 180);
        BlankThickness wood = BlankThickness.of(KnownBoards.twisting(180, x -> Math.max(0, (1 - x / 37.5) * twist), 0.01), whole,
            0, 1);
        return BlankPlaces.in(whole, wood, List.of(new Piece(0, 300, 180, false)), board, bill, new Saw(4, 0, 100), sure, 1);
    }

    private static Blank blank(BlankPlaces places, double x1, double y1, double x2, double y2) {
        Region region = new Region(x1, y1, x2, y2);
        return new Blank("a", 0, region, false, WANTED, places.wood().range(region), 1);
    }

    private static List<List<Region>> closed(BlankPlaces places, CutOrder order, List<List<Blank>> sections) {
        return new Compaction(places).closed(sections, order).stream()
            .map(section -> section.stream().map(Blank::region).toList()).toList();
    }

    // Worked by hand: the second length follows a kerf of 4 mm behind the longer blank of the first. Blanks within a length
    // follow each other likewise.
    @Test
    void lengthsAndBlanksFollowEachOtherAKerfApart() {
        BlankPlaces places = places(0, 0.5);

        assertEquals(List.of(List.of(new Region(0, 0, 200, 50), new Region(0, 54, 250, 104)),
            List.of(new Region(254, 0, 354, 60))), closed(places, CutOrder.CROSSCUT_FIRST, List.of(
                List.of(blank(places, 30, 10, 230, 60), blank(places, 30, 70, 280, 120)),
                List.of(blank(places, 400, 20, 500, 80)))));
        assertEquals(List.of(List.of(new Region(0, 0, 200, 50), new Region(204, 0, 304, 70)),
            List.of(new Region(0, 74, 100, 124))), closed(places, CutOrder.RIP_FIRST, List.of(
                List.of(blank(places, 30, 10, 230, 60), blank(places, 300, 10, 400, 80)),
                List.of(blank(places, 400, 100, 500, 150)))));
    }

    // Worked by hand: a twist of 0.01 mm costs one of 500 boards, which is as good; one of 0.02 mm costs two.
    @Test
    void aBlankStaysWhereItIsSurerByMoreThanOneBoard() {
        BlankPlaces one = places(0.01, 0.5);
        BlankPlaces two = places(0.02, 0.5);

        assertEquals(List.of(List.of(new Region(0, 0, 300, 180))),
            closed(one, CutOrder.CROSSCUT_FIRST, List.of(List.of(blank(one, 100, 0, 400, 180)))));
        assertEquals(List.of(List.of(new Region(100, 0, 400, 180))),
            closed(two, CutOrder.CROSSCUT_FIRST, List.of(List.of(blank(two, 100, 0, 400, 180)))));
    }

    // Worked by hand: at 0 mm 399 of 500 boards make it, which is less than 80 %.
    @Test
    void aBlankStaysWhereItWouldNoLongerBeSure() {
        BlankPlaces places = places(0.01, 0.8);

        assertEquals(List.of(List.of(new Region(100, 0, 400, 180))),
            closed(places, CutOrder.CROSSCUT_FIRST, List.of(List.of(blank(places, 100, 0, 400, 180)))));
    }

    // Worked by hand: where one blank of a length cannot move along, the others stay with it.
    @Test
    void blanksOfOneLengthMoveTogether() {
        BlankPlaces places = places(0, 0.5, new Defect(10, 100, 60, 120));

        assertEquals(List.of(List.of(new Region(60, 0, 260, 50), new Region(60, 54, 260, 104))),
            closed(places, CutOrder.CROSSCUT_FIRST,
                List.of(List.of(blank(places, 80, 0, 280, 50), blank(places, 80, 60, 280, 110)))));
    }
}
