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
}
