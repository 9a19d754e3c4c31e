package outwind.blanks;

import java.util.ArrayList;
import java.util.List;
import outwind.board.BillItem;
import outwind.board.CuttingBill;
import outwind.shop.SawLimits;

/**
 * A blank of the bill as it would lie on the board, at the size that it is cut to.
 *
 * @param item   its row in the bill, from 0
 * @param along  what it takes along the board (mm)
 * @param across what it takes across (mm)
 * @param turned true if the board's grain runs across it
 */
public record Piece(int item, double along, double across, boolean turned) {

    /** All ways in which the blanks of a bill may lie, as far as saw and machine can take them. */
    static List<Piece> of(CuttingBill bill, SawLimits limits) {
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < bill.items().size(); i++) {
            BillItem item = bill.items().get(i);
            double length = item.length() + limits.overLength();
            double width = item.width() + limits.overWidth();
            pieces.add(new Piece(i, length, width, false));
            if (item.anyGrain() && length != width) {
                pieces.add(new Piece(i, width, length, true));
            }
        }
        return pieces.stream().filter(piece -> limits.take(piece.along, piece.across)).toList();
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
