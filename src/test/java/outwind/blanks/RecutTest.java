package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.shop.SawLimits;
import outwind.surface.Faces;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

/** Offcuts that are cut again, and the bound for any cuts right through, against enumeration. */
class RecutTest {

    private static final double KERF = 10;
    private static final Saw SAW = new Saw(KERF, 0, 10, SawLimits.NONE, true);

    /** The most that cuts right through bring, in however many stages, found by trying all of them. */
    private static final class EveryCut {

        private final CuttingBill bill;
        private final TreeSet<Integer> lengths;
        private final TreeSet<Integer> widths;
        private final Map<List<Integer>, Double> known = new HashMap<>();

        EveryCut(CuttingBill bill, int length, int width) {
            this.bill = bill;
            this.lengths = sums(length, bill.items().stream().map(item -> (int) item.length()).toList());
            this.widths = sums(width, bill.items().stream().map(item -> (int) item.width()).toList());
        }

        /** Where a cut can go without loss: behind blanks laid against each other (Herz 1972, from memory). */
        private static TreeSet<Integer> sums(int most, List<Integer> extents) {
            TreeSet<Integer> sums = new TreeSet<>();
            for (int at = 0; at <= most; at++) {
                for (int extent : extents) {
                    if (at == extent || sums.contains(at - extent - (int) KERF)) {
                        sums.add(at);
                    }
                }
            }
            return sums;
        }

        double most(int length, int width, int[] left) {
            List<Integer> key = new ArrayList<>(List.of(length, width));
            Arrays.stream(left).forEach(key::add);
            Double before = known.get(key);
            if (before != null) {
                return before;
            }
            double most = 0;
            for (int i = 0; i < left.length; i++) {
                BillItem item = bill.items().get(i);
                if (left[i] > 0 && item.length() <= length && item.width() <= width) {
                    most = Math.max(most, bill.worth(item));
                }
            }
            if (most > 0 && Arrays.stream(left).sum() > 1) {
                int[] none = new int[left.length];
                double all = 0;
                for (int i = 0; i < left.length; i++) {
                    all += left[i] * bill.worth(bill.items().get(i));
                }
                for (int at : lengths.headSet(length)) {
                    most = most >= all ? most : Math.max(most, parted(left, none, 0, at, width, length - at - (int) KERF, width));
                }
                for (int at : widths.headSet(width)) {
                    most = most >= all ? most : Math.max(most, parted(left, none, 0, length, at, length, width - at - (int) KERF));
                }
            }
            known.put(key, most);
            return most;
        }

        private double parted(int[] left, int[] here, int item, int length, int width, int restLength, int restWidth) {
            if (item == left.length) {
                int[] rest = left.clone();
                Arrays.setAll(rest, i -> left[i] - here[i]);
                return most(length, width, here.clone()) + (restLength > 0 && restWidth > 0
                    ? most(restLength, restWidth, rest) : 0);
            }
            double most = 0;
            for (int count = 0; count <= left[item]; count++) {
                here[item] = count;
                most = Math.max(most, parted(left, here, item + 1, length, width, restLength, restWidth));
            }
            here[item] = 0;
            return most;
        }
    }

    private static BillItem item(String name, double length, double width, int quantity) {
        return new BillItem(name, length, width, 20, quantity, OptionalDouble.empty(), false);
    }

    private static Board board() {
        ShapeOf shape = new ShapeOf(400, 200, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        return shape.read(5, 3, (x, y) -> 0);
    }

    // Reference: enumeration of all cuts right through, on 100 small boards, both orders. What comes out again is never more, and the
    // bound never less.
    @Test
    @Tag("long")
    void offcutsBringNoMoreThanEveryCutAndTheBoundNoLess() {
        Faces faces = Faces.of(board());
        BlankThickness wood = BlankThickness.of(faces.shape(), new Region(0, 0, 400, 200), 0.3, 1);
        SplittableRandom random = new SplittableRandom(8);
        int better = 0;
        int whole = 0;
        for (int run = 0; run < 100; run++) {
            int length = 110 + 10 * random.nextInt(5);
            int width = 90 + 10 * random.nextInt(4);
            List<BillItem> items = List.of(item("long", length - 10 * random.nextInt(3), 30 + 10 * random.nextInt(2), 1),
                item("middle", 30 + 10 * random.nextInt(4), 40 + 10 * random.nextInt(2), 1),
                item("peg", 10 + 10 * random.nextInt(3), 10 + 10 * random.nextInt(2), 1 + random.nextInt(6)));
            CuttingBill bill = new CuttingBill(items);
            Region part = new Region(0, 0, length, width);
            BlankPlaces places = BlankPlaces.in(part, wood, Piece.of(bill, SawLimits.NONE), faces.board(), bill, SAW, 0.95, 1);
            double most = new EveryCut(bill, length, width).most(length, width, bill.quantities());
            double best = 0;
            double twoStages = 0;
            for (CutOrder order : CutOrder.values()) {
                Layout first = places.layout(TwoStage.priced(places.sections(order), bill.worths(), bill.quantities())
                    .searched(0), order, part);
                Layout again = places.recut(first);

                BlankPlanTest.assertIsCuttable(faces.board(), again, run);
                assertTrue(again.value() >= first.value(), run + " " + order);
                assertTrue(again.value() <= most + 1e-9, run + " " + order + ": " + again.value() + " of " + most);
                assertTrue(again.bound() >= most - 1e-9, run + " " + order + ": bound " + again.bound() + " of " + most);
                for (int i = 0; i < 3; i++) {
                    assertTrue(again.count(i) <= items.get(i).quantity(), run + " " + again);
                }
                twoStages = Math.max(twoStages, first.value());
                best = Math.max(best, again.value());
            }
            better += best > twoStages + 1e-9 ? 1 : 0;
            whole += best > most - 1e-9 ? 1 : 0;
        }
        assertTrue(better >= 2, "more came out " + better + " times");
        assertTrue(whole >= 90, "all that can came out " + whole + " times");
    }

    // Worked by hand: the long rail takes the board's length, so strips come first. Behind the short rail 400 − 150 − 4 =
    // 246 x 60 mm are left. In a strip seven pegs follow each other (7 · 28 + 6 · 4 = 220); cut again two rows do.
    @Test
    void whatHasNoRoomInTwoStagesComesOutOfAnOffcut() {
        ShapeOf shape = new ShapeOf(400, 124, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        CuttingBill bill = new CuttingBill(List.of(item("long rail", 390, 60, 1), item("short rail", 150, 60, 1),
            item("peg", 28, 18, 14)));
        Board board = shape.read(5, 3, (x, y) -> 0);

        BlankPlan two = BlankPlan.of(board, bill, new Saw(4, 0, 5), 0.95, 0.3, 1);
        BlankPlan again = BlankPlan.of(board, bill, new Saw(4, 0, 5, SawLimits.NONE, true), 0.95, 0.3, 1);

        assertEquals(7, two.cut(2));
        assertEquals(Optional.of(BlankPlan.Missing.NO_ROOM), two.missing().get(2));
        assertEquals(14, again.cut(2));
        assertEquals(16, again.chosen().blanks().size());
        assertEquals(Optional.empty(), again.missing().get(2));
        BlankPlanTest.assertIsCuttable(board, again.chosen(), 0);
        // Pegs behind the sections of the board are numbered on, and each is cut out by its own cuts.
        List<SawCut> cuts = again.chosen().recuts().stream().flatMap(List::stream).toList();
        int first = again.chosen().sections().stream().mapToInt(List::size).sum();
        assertTrue(cuts.stream().filter(cut -> cut.section() > 0).allMatch(cut -> cut.before() == 0
            || cut.before() > first && cut.before() <= 16), cuts.toString());
        double used = again.chosen().offcuts().stream().mapToDouble(Region::area).sum();
        assertTrue(used < two.chosen().offcuts().stream().mapToDouble(Region::area).sum());
    }

    // Worked by hand: with a kerf of 10 mm a board of 190 x 90 mm counts as 200 x 100. Two of 90 x 40 (100 x 50) worth 30 take
    // half of it; half of one of 190 x 90 worth 40 takes the rest; pegs are worth least for their area. What is nowhere
    // thick enough brings nothing.
    @Test
    void theBoundFillsTheAreaByWorth() {
        double bound = bound(new Region(0, 0, 190, 90), valued("peg", 40, 40, 20, 9, 2), valued("whole", 190, 90, 20, 1, 40),
            valued("rail", 90, 40, 20, 2, 30), valued("thick", 90, 40, 35, 5, 1000));

        assertEquals(2 * 30 + 40 / 2.0, bound, 1e-9);
    }

    // Worked by hand: as many as are wanted, though there is room for more.
    @Test
    void theBoundCountsNoMoreThanIsWanted() {
        assertEquals(3 * 2, bound(new Region(20, 30, 400, 200), valued("peg", 40, 40, 20, 3, 2)), 1e-9);
    }

    // Worked by hand: the part counts as 380 + 10 by 170 + 10 mm, which is room for 28.08 pegs.
    @Test
    void theBoundIsThatOfThePart() {
        assertEquals(390 * 180 / 2500.0 * 2, bound(new Region(20, 30, 400, 200), valued("peg", 40, 40, 20, 99, 2)), 1e-9);
    }

    /** What offcuts of a part could bring at most, of a board that makes 30 mm everywhere. */
    private static double bound(Region part, BillItem... items) {
        CuttingBill bill = new CuttingBill(List.of(items));
        return new Recut(BlankPlaces.in(part, BlankThickness.of(KnownBoards.thinnerBy(0), part, 0, 1),
            Piece.of(bill, SawLimits.NONE), board(), bill, SAW, 0.95, 1)).bound();
    }

    private static BillItem valued(String name, double length, double width, double thickness, int quantity, double value) {
        return new BillItem(name, length, width, thickness, quantity, OptionalDouble.of(value), false);
    }
}
