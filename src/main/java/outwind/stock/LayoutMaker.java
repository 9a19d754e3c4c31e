package outwind.stock;

import java.util.ArrayList;
import java.util.List;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.surface.Region;

/**
 * Turns stops into blanks on the board, each with what it finishes at, and closes the gaps between them.
 *
 * @param usable the board without its trimmed ends and edges
 */
record LayoutMaker(Board board, CuttingBill bill, Region usable, Saw saw, double sure, BlankThickness wood,
        List<Piece> pieces, Stops along, Stops across) {

    Layout of(TwoStage.Cutting cutting, CutOrder order) {
        boolean lengths = order == CutOrder.CROSSCUT_FIRST;
        List<List<Blank>> sections = new ArrayList<>();
        int last = -1;
        for (TwoStage.Spot spot : cutting.spots()) {
            if (spot.first() != last) {
                sections.add(new ArrayList<>());
                last = spot.first();
            }
            sections.get(sections.size() - 1).add(blank(pieces.get(spot.piece()),
                along.at()[lengths ? spot.first() : spot.second()],
                across.at()[lengths ? spot.second() : spot.first()]));
        }
        List<List<Blank>> closed = new Closer(board, wood, usable, saw, sure).closed(sections, order);
        double value = closed.stream().flatMap(List::stream).mapToDouble(Blank::value).sum();
        return new Layout(order, Region.whole(board), closed, saw.kerf(),
            cutting.isExact() ? value : Math.max(value, cutting.bound()));
    }

    private Blank blank(Piece piece, double x, double y) {
        BillItem item = bill.items().get(piece.item());
        Region region = new Region(x, y, Math.min(along.to(), x + piece.along()), Math.min(across.to(), y
            + piece.across()));
        return new Blank(item.name(), piece.item(), region, piece.turned(), item.thickness(), wood.range(region),
            bill.worth(item));
    }
}
