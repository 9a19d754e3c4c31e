package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

public class BlankPlanTest {

    private static final double SURE = 0.95;

    private static BillItem item(String name, double length, double width, double thickness, int quantity) {
        return new BillItem(name, length, width, thickness, quantity, OptionalDouble.empty(), false);
    }

    public static Board with(Board board, Defect... defects) {
        return new Board(board.name(), board.units(), board.length(), board.width(), board.thickness(), board.species(),
            board.repeatability(), board.price(), board.target(), board.skim(), board.trim(), board.underside(),
            board.turned(), List.of(defects), board.readings(), board.calipers(), board.remarks(), Optional.empty(),
            board.thickness().isPresent());
    }

    private static Board flat(double length, double width) {
        ShapeOf shape = new ShapeOf(length, width, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        return shape.read(5, 3, (x, y) -> 0);
    }

    private static BlankPlan plan(Board board, BillItem... items) {
        return plan(board, Saw.usual(board), items);
    }

    private static BlankPlan plan(Board board, Saw saw, BillItem... items) {
        return BlankPlan.of(board, new CuttingBill(List.of(items)), saw, SURE, 0.3, 1);
    }

    // Worked by hand: 4 x 247.6 + 3 x 3.2 = 1000.0 fits exactly; 4 x 247.7 + 3 x 3.2 = 1000.4 does not.
    @Test
    void blanksAndKerfsAddUpToTheBoard() {
        Board board = flat(1000, 100);

        BlankPlan fits = plan(board, item("a", 247.6, 100, 20, 9));
        BlankPlan fails = plan(board, item("a", 247.7, 100, 20, 9));

        assertEquals(4, fits.chosen().blanks().size());
        assertEquals(3, fails.chosen().blanks().size());
        assertEquals(Optional.of(BlankPlan.Missing.NO_ROOM), fits.missing().get(0));
    }

    // Worked by hand: each cut takes the 3.2 mm behind a blank; nothing is cut where a blank ends with the board.
    @Test
    void cutsLieBetweenTheBlanks() {
        Layout layout = plan(flat(1000, 100), item("a", 247.6, 100, 20, 4)).chosen();

        List<SawCut> cuts = layout.cuts();

        double[] from = {247.6, 498.4, 749.2};
        assertEquals(3, cuts.size());
        for (int i = 0; i < 3; i++) {
            assertTrue(cuts.get(i).crosscut());
            assertEquals(from[i], cuts.get(i).from(), 1e-9);
            assertEquals(from[i] + 3.2, cuts.get(i).to(), 1e-9);
            assertEquals(SawCut.Keeps.BOTH, cuts.get(i).keeps());
        }
        assertEquals(List.of(), layout.offcuts());
    }

    // Worked by hand: 20 mm off each end leave 960 mm, room for 3 x 247.6 + 2 x 3.2 = 749.2 mm; 4 take 1000 mm.
    @Test
    void trimmedEndsHoldNoBlank() {
        Layout layout = plan(flat(1000, 100), new Saw(3.2, 20, 5), item("a", 247.6, 100, 20, 4)).chosen();

        assertEquals(3, layout.blanks().size());
        assertEquals(20, layout.blanks().get(0).region().x1(), 1e-9);
        assertTrue(layout.blanks().stream().allMatch(blank -> blank.region().x2() <= 980 + 1e-9));
    }

    // Worked by hand: 40 mm off each end by the saw's word, 12 mm off each edge by the board's.
    @Test
    void theSawTrimsEndsAndTheBoardItsEdges() {
        ShapeOf trimmed = ShapeOf.board().trimmed(25, 12);

        Region usable = new Saw(3.2, 40, 5).usable(trimmed.read(5, 3, (x, y) -> 0));

        assertEquals(new Region(40, 12, 900 - 40, 180 - 12), usable);
        assertEquals(25, Saw.usual(trimmed.read(5, 3, (x, y) -> 0)).endTrim());
    }

    // Worked by hand: of 200 mm, two defects leave 132.4 − 51.3 = 81.1 mm, as wide as the blank; likewise along.
    @Test
    void aBlankFitsExactlyBetweenTwoDefects() {
        Board between = with(flat(1000, 200), new Defect(0, 0, 1000, 51.3), new Defect(0, 132.4, 1000, 200));
        Board along = with(flat(1000, 200), new Defect(0, 0, 151.3, 200), new Defect(732.4, 0, 1000, 200));

        List<Blank> strip = plan(between, item("strip", 1000, 81.1, 20, 1)).chosen().blanks();
        List<Blank> length = plan(along, item("length", 581.1, 200, 20, 1)).chosen().blanks();

        assertEquals(List.of(51.3), strip.stream().map(blank -> blank.region().y1()).toList());
        assertEquals(List.of(151.3), length.stream().map(blank -> blank.region().x1()).toList());
    }

    // Worked by hand: a blank of 300 x 40 beside one of 400 x 56.8 in a section of 400 x 100, trimmed at 300; left over
    // are 400 − 300 − 3.2 = 96.8 by 40 mm.
    @Test
    void aShorterBlankIsTrimmedToSize() {
        Layout layout = plan(flat(400, 100), item("long", 400, 56.8, 20, 1), item("short", 300, 40, 20, 1))
            .chosen();

        assertEquals(2, layout.blanks().size());
        SawCut trim = layout.cuts().get(1);
        assertTrue(trim.blank() > 0 && trim.crosscut());
        assertEquals(300, trim.from(), 1e-9);
        assertEquals(1, layout.offcuts().size());
        assertEquals(96.8 * 40, layout.offcuts().get(0).area(), 1e-6);
    }

    @Test
    void anyGrainMayBeTurned() {
        CuttingBill bill = new CuttingBill(List.of(
            new BillItem("block", 90, 300, 20, 1, OptionalDouble.empty(), true)));
        Board board = flat(1000, 100);

        Blank blank = BlankPlan.of(board, bill, Saw.usual(board), SURE, 0.3, 1).chosen().blanks().get(0);

        assertTrue(blank.turned());
        assertEquals(300, blank.along(), 1e-9);
    }

    @Test
    void whatIsMissingIsSaidWhy() {
        BlankPlan plan = plan(flat(1000, 100), item("too long", 1001, 50, 20, 1),
            item("too thick", 100, 50, 31, 1), item("there", 100, 50, 20, 1));

        assertEquals(List.of(Optional.of(BlankPlan.Missing.TOO_LARGE), Optional.of(BlankPlan.Missing.TOO_THICK),
            Optional.empty()), plan.missing());
    }

    // Properties of every plan, on random twisted and kinked boards with random defects and bills.
    @Test
    void noBlankLiesOverADefectOrWhereItFailsOrMeetsAnother() {
        SplittableRandom random = new SplittableRandom(21);
        int cut = 0;
        for (int run = 0; run < 12; run++) {
            double twist = 3 * random.nextDouble();
            double kink = 6 * random.nextDouble();
            ShapeOf shape = new ShapeOf(900, 180, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
                ShapeOf.board().trim());
            Board board = with(shape.read(6, 3, (x, y) -> shape.twist(twist).applyAsDouble(x, y)
                + kink * Math.max(0, x / 900 - 0.6)), defect(random), defect(random));
            BillItem[] items = IntStream.range(0, 4).mapToObj(i -> new BillItem("item " + i, 60 + random.nextInt(400),
                30 + random.nextInt(100), 24 + 5 * random.nextDouble(), 1 + random.nextInt(3), OptionalDouble.empty(),
                random.nextBoolean())).toArray(BillItem[]::new);

            BlankPlan plan = plan(board, items);

            for (Layout layout : List.of(plan.chosen(), plan.other())) {
                assertIsCuttable(board, layout, run);
                cut += layout.blanks().size();
                assertTrue(layout.bound() >= layout.value() - 1e-9);
                for (int i = 0; i < items.length; i++) {
                    int item = i;
                    assertTrue(layout.blanks().stream().filter(blank -> blank.item() == item).count()
                        <= items[i].quantity());
                }
            }
        }
        assertTrue(cut > 60, "only " + cut + " blanks to look at");
    }

    private static Defect defect(SplittableRandom random) {
        double x = 800 * random.nextDouble();
        double y = 140 * random.nextDouble();
        return new Defect(x, y, x + 20 + 60 * random.nextDouble(), y + 10 + 30 * random.nextDouble());
    }

    public static void assertIsCuttable(Board board, Layout layout, int run) {
        List<Blank> blanks = layout.blanks();
        for (Blank blank : blanks) {
            Region r = blank.region();
            assertTrue(r.x1() >= 0 && r.y1() >= 0 && r.x2() <= board.length() && r.y2() <= board.width(), run + " "
                + r);
            assertTrue(blank.chance() >= SURE, run + ": " + blank.chance());
            for (Defect defect : board.defects()) {
                assertTrue(r.x2() <= defect.x1() + 1e-6 || r.x1() >= defect.x2() - 1e-6 || r.y2() <= defect.y1() + 1e-6
                    || r.y1() >= defect.y2() - 1e-6, run + ": " + r + " lies over " + defect);
            }
        }
        for (SawCut cut : layout.cuts()) {
            Region kerf = cut.crosscut() ? new Region(cut.from(), cut.within().y1(), cut.to(), cut.within().y2())
                : new Region(cut.within().x1(), cut.from(), cut.within().x2(), cut.to());
            for (Blank blank : blanks) {
                Region r = blank.region();
                assertTrue(Math.min(r.x2(), kerf.x2()) - Math.max(r.x1(), kerf.x1()) < 1e-6
                    || Math.min(r.y2(), kerf.y2()) - Math.max(r.y1(), kerf.y1()) < 1e-6, run + ": a cut goes through "
                        + r);
            }
        }
        for (int i = 0; i < blanks.size(); i++) {
            for (int j = 0; j < i; j++) {
                Region a = blanks.get(i).region();
                Region b = blanks.get(j).region();
                double apart = Math.max(Math.max(a.x1() - b.x2(), b.x1() - a.x2()),
                    Math.max(a.y1() - b.y2(), b.y1() - a.y2()));
                assertTrue(apart >= 3.2 - 1e-6, run + ": " + a + " and " + b + " are " + apart + " mm apart");
            }
        }
    }

    @Test
    void theSamePlanComesOutTwice() {
        Board board = ShapeOf.board().read(5, 3, ShapeOf.board().twist(2));
        BillItem[] items = {item("a", 300, 60, 28, 3), item("b", 200, 40, 27, 5)};

        assertEquals(plan(board, items).chosen().cuts(), plan(board, items).chosen().cuts());
    }

    @Test
    void trimThatLeavesNothingIsRefused() {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class,
            () -> plan(flat(1000, 100), new Saw(3.2, 500, 5), item("a", 100, 50, 20, 1)));

        assertEquals("an end trim of 500.0 mm at each end leaves nothing of a board 1000.0 mm long",
            refused.getMessage());
    }
}
