package outwind.blanks;

import java.util.ArrayList;
import java.util.List;
import outwind.board.BillItem;
import outwind.board.CuttingBill;

/**
 * A blank of the bill as it would lie on the board.
 *
 * @param item   its row in the bill, from 0
 * @param along  what it takes along the board (mm)
 * @param across what it takes across (mm)
 * @param turned true if the board's grain runs across it
 */
public record Piece(int item, double along, double across, boolean turned) {

    /** All ways in which the blanks of a bill may lie. */
    static List<Piece> of(CuttingBill bill) {
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < bill.items().size(); i++) {
            BillItem item = bill.items().get(i);
            pieces.add(new Piece(i, item.length(), item.width(), false));
            if (item.anyGrain() && item.length() != item.width()) {
                pieces.add(new Piece(i, item.width(), item.length(), true));
            }
        }
        return pieces;
    }

    /** What it takes in the direction of the first cuts' spacing (mm). */
    public double first(CutOrder order) {
        return order == CutOrder.CROSSCUT_FIRST ? along : across;
    }

    /** What it takes in the other direction (mm). */
    public double second(CutOrder order) {
        return order == CutOrder.CROSSCUT_FIRST ? across : along;
    }
}
