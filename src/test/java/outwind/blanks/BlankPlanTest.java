package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.shop.SawLimits;
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

    private static Saw limited(double shortest, double widest, double firstEdge, double overLength, double overWidth) {
        return new Saw(3.2, 0, 5, new SawLimits(shortest, widest, firstEdge, overLength, overWidth));
    }

    // Worked by hand: 2 x 46.9 + 3.2 = 97.0 fill what 3 mm off the first edge leave of 100 mm; 3.1 mm leave too little.
    @Test
    void cutsStartFromTheStraightenedEdge() {
        Layout fits = plan(flat(1000, 100), limited(0, 1000, 3, 0, 0), item("a", 1000, 46.9, 20, 2)).chosen();
        Layout fails = plan(flat(1000, 100), limited(0, 1000, 3.1, 0, 0), item("a", 1000, 46.9, 20, 2)).chosen();

        assertEquals(2, fits.blanks().size());
        assertEquals(3, fits.blanks().get(0).region().y1(), 1e-9);
        assertEquals(1, fails.blanks().size());
        assertEquals(1, fits.cuts().size());
        assertEquals(46.9, fits.cuts().get(0).setting(), 1e-9);
        assertEquals(49.9, fits.cuts().get(0).from(), 1e-9);
    }

    // Worked by hand: 240 + 7.6 long and 90 + 10 wide take what blanks of 247.6 x 100 take, four on the board.
    @Test
    void overLengthAndOverWidthAreCut() {
        Layout layout = plan(flat(1000, 100), limited(0, 1000, 0, 7.6, 10), item("a", 240, 90, 20, 9)).chosen();

        assertEquals(4, layout.blanks().size());
        assertEquals(247.6, layout.blanks().get(0).along(), 1e-9);
        assertEquals(100, layout.blanks().get(0).across(), 1e-9);
        assertEquals(4 * 240 * 90, layout.blanks().stream().mapToDouble(Blank::worth).sum(), 1e-6);
    }

    // Worked by hand against a shortest of 150 and a widest of 80 mm.
    @Test
    void whatIsTooShortOrTooWideIsNotCut() {
        BillItem turnable = new BillItem("turned", 60, 200, 20, 1, OptionalDouble.empty(), true);

        BlankPlan plan = plan(flat(1000, 100), limited(150, 80, 0, 0, 0), item("short", 149, 40, 20, 1),
            item("wide", 200, 81, 20, 1), turnable, item("fits", 150, 80, 20, 1));

        assertEquals(List.of(Optional.of(BlankPlan.Missing.OUT_OF_LIMITS), Optional.of(BlankPlan.Missing.OUT_OF_LIMITS),
            Optional.empty(), Optional.empty()), plan.missing());
        assertTrue(plan.chosen().blanks().stream().filter(blank -> blank.name().equals("turned"))
            .allMatch(Blank::turned));
    }

    @Test
    void aBillOfWhichTheSawTakesNothingSaysWhy() {
        for (boolean recut : new boolean[] {false, true}) {
            BlankPlan plan = plan(flat(1000, 100), new Saw(3.2, 0, 5, new SawLimits(350, 1000, 0, 0, 0), recut),
                item("short", 300, 60, 20, 2));

            assertEquals(List.of(Optional.of(BlankPlan.Missing.OUT_OF_LIMITS)), plan.missing());
            assertEquals(List.of(), plan.chosen().blanks());
        }
    }

    /** A piece on the saw: how long and how wide it is now. */
    private record Sawn(double along, double across) {

        Sawn of(boolean crosscut, double extent) {
            return crosscut ? new Sawn(extent, across) : new Sawn(along, extent);
        }

        double side(boolean crosscut) {
            return crosscut ? along : across;
        }
    }

    /** Only what the sheet says is done: fence or stop, and the kerf; what comes off last is what is left. */
    private static Map<Integer, Sawn> sawn(Layout layout, Sawn board) {
        Map<Integer, Sawn> sections = new HashMap<>(Map.of(1, board));
        Map<Integer, Sawn> blanks = new HashMap<>();
        List<SawCut> cuts = layout.cuts();
        saw(cuts.stream().filter(cut -> cut.section() == 0).toList(), board, sections, 1);
        int first = 1;
        for (int s = 1; s <= layout.sections().size(); s++) {
            int section = s;
            saw(cuts.stream().filter(cut -> cut.section() == section && cut.blank() == 0).toList(), sections.get(s), blanks,
                first);
            first += layout.sections().get(s - 1).size();
        }
        for (int b = 1; b <= layout.blanks().size(); b++) {
            int blank = b;
            saw(cuts.stream().filter(cut -> cut.blank() == blank).toList(), blanks.get(b), blanks, b);
        }
        return blanks;
    }

    private static void saw(List<SawCut> cuts, Sawn piece, Map<Integer, Sawn> freed, int only) {
        Sawn left = piece;
        int last = cuts.isEmpty() ? only : 0;
        for (SawCut cut : cuts) {
            double side = left.side(cut.crosscut());
            assertTrue(cut.setting() >= 0 && cut.setting() <= side + 1e-9, cut + " of " + side);
            if (cut.before() > 0) {
                freed.put(cut.before(), left.of(cut.crosscut(), cut.setting()));
            }
            left = left.of(cut.crosscut(), Math.max(0, side - cut.setting() - (cut.to() - cut.from())));
            last = cut.behind();
        }
        if (last > 0) {
            freed.put(last, left);
        }
    }

    // The sheet is followed at the saw by its settings alone, on random boards, bills and limits.
    @Test
    @Tag("long")
    void settingsAloneGiveEveryBlankItsSize() {
        SplittableRandom random = new SplittableRandom(4);
        int cut = 0;
        for (int run = 0; run < 12; run++) {
            Board board = with(flat(1200, 220), defect(random));
            SawLimits limits = new SawLimits(100 * random.nextDouble(), 120 + 100 * random.nextDouble(),
                6 * random.nextDouble(), 12 * random.nextDouble(), 5 * random.nextDouble());
            BillItem[] items = IntStream.range(0, 4).mapToObj(i -> new BillItem("item " + i, 60 + random.nextInt(400),
                30 + random.nextInt(100), 22, 1 + random.nextInt(4), OptionalDouble.empty(), random.nextBoolean()))
                .toArray(BillItem[]::new);

            BlankPlan plan = plan(board, new Saw(3.2, 10 * random.nextDouble(), 5, limits), items);

            for (Layout layout : List.of(plan.chosen(), plan.other())) {
                assertIsCuttable(board, layout, run);
                Map<Integer, Sawn> sawn = sawn(layout, new Sawn(1200, 220 - limits.firstEdge()));
                assertEquals(layout.blanks().size(), sawn.size());
                for (int b = 0; b < layout.blanks().size(); b++) {
                    Blank blank = layout.blanks().get(b);
                    BillItem item = items[blank.item()];
                    double length = item.length() + limits.overLength();
                    double width = item.width() + limits.overWidth();
                    assertEquals(blank.turned() ? width : length, sawn.get(b + 1).along, 1e-6, run + " " + blank);
                    assertEquals(blank.turned() ? length : width, sawn.get(b + 1).across, 1e-6, run + " " + blank);
                    assertTrue(blank.along() >= limits.shortest() && blank.across() <= limits.widest(), run + " " + blank);
                    assertTrue(blank.region().y1() >= limits.firstEdge() - 1e-9, run + " " + blank);
                    cut++;
                }
                layout.cuts().stream().filter(saw -> !saw.crosscut()).forEach(rip -> assertTrue(
                    rip.within().x2() - rip.within().x1() >= limits.shortest(), rip.toString()));
            }
        }
        assertTrue(cut > 120, "only " + cut + " blanks");
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
    @Tag("long")
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
        for (SawCut cut : Stream.concat(layout.cuts().stream(), layout.recuts().stream().flatMap(List::stream)).toList()) {
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

    // Worked by hand: beside a strip of the whole length two short ones follow each other only if strips are ripped first.
    // Behind a length of the whole width two narrow ones lie side by side only if lengths are crosscut first.
    @Test
    void theOrderThatBringsMoreIsChosen() {
        BlankPlan strips = plan(flat(1000, 100), item("long", 1000, 48, 20, 1), item("short", 480, 48, 20, 2));
        BlankPlan lengths = plan(flat(1000, 100), item("wide", 480, 100, 20, 1), item("narrow", 480, 48, 20, 2));

        assertEquals(CutOrder.RIP_FIRST, strips.chosen().order());
        assertEquals(CutOrder.CROSSCUT_FIRST, strips.other().order());
        assertEquals(1000 * 48 + 2 * 480 * 48, strips.chosen().value(), 1e-6);
        assertEquals(1000 * 48 + 480 * 48, strips.other().value(), 1e-6);
        assertEquals(CutOrder.CROSSCUT_FIRST, lengths.chosen().order());
        assertEquals(CutOrder.RIP_FIRST, lengths.other().order());
        assertEquals(480 * 100 + 2 * 480 * 48, lengths.chosen().value(), 1e-6);
    }

    @Test
    void bothEndsOfWhatIsSureAreAllowed() {
        BlankPlan.requireSure(0.5);
        BlankPlan.requireSure(1);
        assertThrows(IllegalArgumentException.class, () -> BlankPlan.requireSure(0.499));
        assertThrows(IllegalArgumentException.class, () -> BlankPlan.requireSure(Double.NaN));
    }
}
