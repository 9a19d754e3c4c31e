package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.board.BillItem;
import outwind.board.CuttingBill;
import outwind.shop.SawLimits;

class PieceTest {

    private static BillItem item(double length, double width, boolean anyGrain) {
        return new BillItem("item", length, width, 20, 1, OptionalDouble.empty(), anyGrain);
    }

    // Worked by hand: 10 mm longer and 5 mm wider than finished; turned, the over-length goes across the board.
    @Test
    void blanksLieAlongOrWhereTheGrainAllowsAcross() {
        CuttingBill bill = new CuttingBill(List.of(item(200, 60, false), item(100, 80, true)));

        assertEquals(List.of(new Piece(0, 210, 65, false), new Piece(1, 110, 85, false), new Piece(1, 85, 110, true)),
            Piece.of(bill, new SawLimits(0, 1000, 0, 10, 5)));
    }

    @Test
    void aSquareBlankLiesOneWay() {
        assertEquals(List.of(new Piece(0, 80, 80, false)),
            Piece.of(new CuttingBill(List.of(item(80, 80, true))), SawLimits.NONE));
        // With 5 mm more of its width it is square at the saw.
        assertEquals(List.of(new Piece(0, 80, 80, false)),
            Piece.of(new CuttingBill(List.of(item(80, 75, true))), new SawLimits(0, 1000, 0, 0, 5)));
    }

    // Worked by hand: 85 mm along are shorter than 90; 110 mm across are wider than 100.
    @Test
    void whatSawAndMachineCannotTakeIsLeftOut() {
        CuttingBill bill = new CuttingBill(List.of(item(110, 85, true)));

        assertEquals(List.of(new Piece(0, 110, 85, false)), Piece.of(bill, new SawLimits(90, 1000, 0, 0, 0)));
        assertEquals(List.of(new Piece(0, 110, 85, false)), Piece.of(bill, new SawLimits(0, 100, 0, 0, 0)));
        assertEquals(2, Piece.of(bill, new SawLimits(85, 110, 0, 0, 0)).size());
    }

    @Test
    void theFirstCutsFollowEachOtherAlongWhereLengthsComeFirst() {
        Piece piece = new Piece(0, 110, 85, false);

        assertEquals(110, piece.first(CutOrder.CROSSCUT_FIRST));
        assertEquals(85, piece.second(CutOrder.CROSSCUT_FIRST));
        assertEquals(85, piece.first(CutOrder.RIP_FIRST));
        assertEquals(110, piece.second(CutOrder.RIP_FIRST));
    }
}
