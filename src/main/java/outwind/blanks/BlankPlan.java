package outwind.blanks;

import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
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
        /** It asks for another kind of wood. */
        OTHER_WOOD,
        /** It is too short to rip or too wide for the machine. */
        OUT_OF_LIMITS,
        /** It is longer or wider than the board. */
        TOO_LARGE,
        /** Nowhere on the board is its thickness sure enough. */
        TOO_THICK,
        /** Where it would be thick enough, other blanks are worth more, or there is no room for more. */
        NO_ROOM;

        /** For each item of a bill why fewer of it are cut than wanted; empty where all are. */
        public static List<Optional<Missing>> of(CuttingBill bill, IntUnaryOperator cut, List<BlankPlaces> boards) {
            int[] wanted = bill.quantities();
            return IntStream.range(0, wanted.length).mapToObj(item -> cut.applyAsInt(item) == wanted[item]
                ? Optional.<Missing>empty() : Optional.of(why(item, boards))).toList();
        }

        private static Missing why(int item, List<BlankPlaces> boards) {
            List<BlankPlaces> right = boards.stream().filter(board -> board.serves(item)).toList();
            return right.isEmpty() ? OTHER_WOOD
                : right.stream().anyMatch(board -> board.takes(item)) ? NO_ROOM
                : right.stream().anyMatch(board -> board.fits(item)) ? TOO_THICK
                : right.stream().anyMatch(board -> board.handles(item)) ? TOO_LARGE : OUT_OF_LIMITS;
        }
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
        Layout first = places.recut(places.layout(better, ripFirst ? CutOrder.RIP_FIRST : CutOrder.CROSSCUT_FIRST));
        Layout second = places.recut(places.layout(worse, ripFirst ? CutOrder.CROSSCUT_FIRST : CutOrder.RIP_FIRST));
        Layout chosen = isBetter(second, first) ? second : first;
        return new BlankPlan(places.board(), bill, saw, sure, places.usable(), chosen,
            chosen == first ? second : first, Missing.of(bill, chosen::count, List.of(places)));
    }

    public static void requireSure(double sure) {
        if (!(sure >= 0.5 && sure <= 1)) {
            throw new IllegalArgumentException("sure must be from 50 to 100 %, got " + 100 * sure + " %");
        }
    }

    private static TwoStage priced(CuttingBill bill, Sections sections) {
        return TwoStage.priced(sections, bill.worths(), bill.quantities());
    }

    /** More value; for the same to a thousandth, fewer cuts. */
    private static boolean isBetter(Layout one, Layout other) {
        double least = 0.001 * Math.max(one.value(), other.value());
        return Math.abs(one.value() - other.value()) > least
            ? one.value() > other.value()
            : one.cutCount() < other.cutCount();
    }

    /** How many blanks of an item come out. */
    public int cut(int item) {
        return chosen.count(item);
    }
}
