package outwind.stock;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.surface.Region;

/**
 * A cutting bill against one board: which blanks to cut where, each judged by its own thickest slab.
 *
 * @param board    what was measured
 * @param bill     what is wanted
 * @param saw      how it is cut
 * @param sure     chance of its thickness from which on a blank counts, 0 to 1
 * @param usable   the board without its trimmed ends and edges
 * @param chosen   the better layout
 * @param other    the layout for the other order of cutting
 * @param missing  for each item of the bill why fewer were cut than wanted; empty where all were
 */
public record BlankPlan(Board board, CuttingBill bill, Saw saw, double sure, Region usable, Layout chosen, Layout other,
        List<Optional<Missing>> missing) {

    /** Why blanks of an item are missing. */
    public enum Missing {
        /** It is longer or wider than the board. */
        TOO_LARGE,
        /** Nowhere on the board is its thickness sure enough. */
        TOO_THICK,
        /** Where it would be thick enough, other blanks are worth more, or there is no room for more. */
        NO_ROOM
    }

    public BlankPlan {
        missing = List.copyOf(missing);
    }

    /**
     * Plans the cutting of a board.
     *
     * @param measured as read; its defects are cut around, its trim is cut away
     * @param sure     0.5 to 1
     * @throws IllegalArgumentException if {@code sure} is out of range or the end trim leaves no board
     */
    public static BlankPlan of(Board measured, CuttingBill bill, Saw saw, double sure, double skim, long seed) {
        BlankPlaces places = BlankPlaces.of(measured, bill, saw, sure, 1, skim, seed);
        TwoStage crosscut = priced(bill, places.sections(CutOrder.CROSSCUT_FIRST));
        TwoStage rip = priced(bill, places.sections(CutOrder.RIP_FIRST));
        // The order that looks better is searched first; the other then need not be where it cannot beat it.
        boolean ripFirst = rip.firstValue() > crosscut.firstValue();
        TwoStage.Cutting better = (ripFirst ? rip : crosscut).searched(0);
        TwoStage.Cutting worse = (ripFirst ? crosscut : rip).searched(better.value());
        Layout first = places.layout(better, ripFirst ? CutOrder.RIP_FIRST : CutOrder.CROSSCUT_FIRST);
        Layout second = places.layout(worse, ripFirst ? CutOrder.CROSSCUT_FIRST : CutOrder.RIP_FIRST);
        Layout chosen = isBetter(second, first) ? second : first;
        List<Optional<Missing>> missing = IntStream.range(0, bill.items().size())
            .mapToObj(item -> missing(item, chosen, places)).toList();
        return new BlankPlan(places.board(), bill, saw, sure, places.usable(), chosen,
            chosen == first ? second : first, missing);
    }

    static void requireSure(double sure) {
        if (!(sure >= 0.5 && sure <= 1)) {
            throw new IllegalArgumentException("sure must be from 50 to 100 %, got " + 100 * sure + " %");
        }
    }

    /** What is left when the ends and edges have been trimmed. */
    static Region usable(Board board, Saw saw) {
        Region usable = new Region(saw.endTrim(), board.trim().across(), board.length() - saw.endTrim(),
            board.width() - board.trim().across());
        if (!(usable.x1() < usable.x2())) {
            throw new IllegalArgumentException("an end trim of " + saw.endTrim() + " mm at each end leaves nothing of a"
                + " board " + board.length() + " mm long");
        }
        return usable;
    }

    private static TwoStage priced(CuttingBill bill, Sections sections) {
        return TwoStage.priced(sections, bill.items().stream().mapToDouble(bill::worth).toArray(),
            bill.items().stream().mapToInt(BillItem::quantity).toArray());
    }

    /** More value; for the same to a thousandth, fewer cuts. */
    private static boolean isBetter(Layout one, Layout other) {
        double least = 0.001 * Math.max(one.value(), other.value());
        return Math.abs(one.value() - other.value()) > least
            ? one.value() > other.value()
            : one.cuts().size() < other.cuts().size();
    }

    private static Optional<Missing> missing(int item, Layout layout, BlankPlaces places) {
        if (cut(item, layout) == places.bill().items().get(item).quantity()) {
            return Optional.empty();
        }
        return Optional.of(places.takes(item) ? Missing.NO_ROOM : places.fits(item) ? Missing.TOO_THICK
            : Missing.TOO_LARGE);
    }

    private static int cut(int item, Layout layout) {
        return (int) layout.blanks().stream().filter(blank -> blank.item() == item).count();
    }

    /** How many blanks of an item come out. */
    public int cut(int item) {
        return cut(item, chosen);
    }

    /** How many blanks are wanted in all. */
    public int wanted() {
        return bill.items().stream().mapToInt(BillItem::quantity).sum();
    }
}
