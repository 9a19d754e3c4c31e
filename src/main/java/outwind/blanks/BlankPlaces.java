package outwind.blanks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.forecast.Forecast;
import outwind.surface.Faces;
import outwind.surface.ImpossibleBoard;
import outwind.surface.Region;

/**
 * Where on a board each blank of a bill may begin, and how sure it is there of its thickness.
 *
 * @param board  as measured from the bed
 * @param usable the board without its trimmed ends and edges
 * @param wood   what any rectangle of it finishes at
 * @param pieces ways in which blanks may lie
 * @param along  stops along the board
 * @param across stops across it
 * @param chance of each piece over the stops along and across, zero where it must not lie
 */
public record BlankPlaces(Board board, CuttingBill bill, Saw saw, double sure, Region usable, BlankThickness wood,
        List<Piece> pieces, Stops along, Stops across, float[][][] chance) {

    /**
     * Finds the places.
     *
     * @param measured as read; its defects are cut around, its trim is cut away
     * @param sure     0.5 to 1
     * @param enough   chance above which more makes no difference, {@code sure} to 1
     * @throws IllegalArgumentException if {@code sure} is out of range or the end trim leaves no board
     * @throws ImpossibleBoard          if no board can have given such readings
     */
    public static BlankPlaces of(Board measured, CuttingBill bill, Saw saw, double sure, double enough, double skim,
            long seed) {
        BlankPlan.requireSure(sure);
        Faces faces = Faces.of(measured);
        Forecast.requireWood(faces);
        Board board = faces.board();
        Region usable = saw.usable(board);
        return in(usable, BlankThickness.of(faces.shape(), usable, skim, seed), Piece.of(bill, saw.limits()), board, bill, saw,
            sure, enough);
    }

    /** The places of the blanks that are still wanted in a part of the board. */
    BlankPlaces within(Region part, int[] left) {
        Region inside = new Region(Math.max(part.x1(), usable.x1()), Math.max(part.y1(), usable.y1()),
            Math.min(part.x2(), usable.x2()), Math.min(part.y2(), usable.y2()));
        return in(inside, wood, pieces.stream().filter(piece -> left[piece.item()] > 0
            && piece.along() <= inside.x2() - inside.x1() + Stops.SAME
            && piece.across() <= inside.y2() - inside.y1() + Stops.SAME).toList(), board, bill, saw, sure, 1);
    }

    static BlankPlaces in(Region usable, BlankThickness wood, List<Piece> pieces, Board board, CuttingBill bill, Saw saw,
            double sure, double enough) {
        Stops along = Stops.of(usable.x1(), usable.x2(), saw, pieces.stream().map(Piece::along).distinct().toList(),
            board.defects().stream().map(Defect::x1).toList(), board.defects().stream().map(Defect::x2).toList());
        Stops across = Stops.of(usable.y1(), usable.y2(), saw, pieces.stream().map(Piece::across).distinct().toList(),
            board.defects().stream().map(Defect::y1).toList(), board.defects().stream().map(Defect::y2).toList());
        ChanceTable table = new ChanceTable(wood, along, across, sure, enough, saw);
        float[][][] chance = pieces.stream().map(piece -> board.kind().serves(bill.items().get(piece.item()).kind())
            ? table.of(piece, bill.items().get(piece.item()).thickness(), board.defects())
            : new float[along.count()][across.count()]).toArray(float[][][]::new);
        return new BlankPlaces(board, bill, saw, sure, usable, wood, pieces, along, across, chance);
    }

    /** The same where a blank counts, once it is sure, as one. */
    public BlankPlaces counted() {
        float[][][] counted = new float[chance.length][along.count()][across.count()];
        for (int p = 0; p < chance.length; p++) {
            for (int x = 0; x < along.count(); x++) {
                for (int y = 0; y < across.count(); y++) {
                    counted[p][x][y] = chance[p][x][y] > 0 ? 1 : 0;
                }
            }
        }
        return new BlankPlaces(board, bill, saw, sure, usable, wood, pieces, along, across, counted);
    }

    /** Whether the board is of the kind of wood that an item asks for. */
    boolean serves(int item) {
        return board.kind().serves(bill.items().get(item).kind());
    }

    /** Whether saw and machine can take a blank of an item. */
    boolean handles(int item) {
        return pieces.stream().anyMatch(piece -> piece.item() == item);
    }

    /** Whether a blank of an item is small enough for the board. */
    boolean fits(int item) {
        return pieces.stream().filter(piece -> piece.item() == item)
            .anyMatch(piece -> along.roomFor(piece.along()) > 0 && across.roomFor(piece.across()) > 0);
    }

    /** Whether there is a place where a blank of an item is sure enough of its thickness. */
    public boolean takes(int item) {
        for (int p = 0; p < pieces.size(); p++) {
            for (float[] row : pieces.get(p).item() == item ? chance[p] : new float[0][]) {
                for (float value : row) {
                    if (value > 0) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** A layout with what comes out of its offcuts, where the saw cuts those again. */
    public Layout recut(Layout layout) {
        int[] left = bill.quantities();
        Arrays.setAll(left, i -> left[i] - layout.count(i));
        return recut(layout, left);
    }

    /** The same where fewer blanks are wanted of the offcuts. */
    public Layout recut(Layout layout, int[] left) {
        return saw.recuts() ? new Recut(this).of(layout, left) : layout;
    }

    /** What the two nested programmes start from. */
    public Sections sections(CutOrder order) {
        return new Sections(pieces, chance, order, along, across, saw.kerf());
    }

    /** The blanks of an answer, each with what it finishes at, laid on the board with the gaps between them closed. */
    public Layout layout(TwoStage.Cutting cutting, CutOrder order) {
        return layout(cutting, order, saw.straightened(board));
    }

    /** The same for a part of the board, as it lies at the saw. */
    Layout layout(TwoStage.Cutting cutting, CutOrder order, Region part) {
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
        List<List<Blank>> closed = new Compaction(this).closed(sections, order);
        double value = closed.stream().flatMap(List::stream).mapToDouble(Blank::value).sum();
        return new Layout(order, part, closed, saw.kerf(),
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
