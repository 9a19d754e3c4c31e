package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.blanks.TwoStage.Spot;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.board.WoodKind;
import outwind.shop.SawLimits;
import outwind.surface.ImpossibleBoard;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

/** Places on a board of 900 x 180 mm that is known exactly; kerfs are 4 mm wide. */
class BlankPlacesTest {

    private static final Saw SAW = new Saw(4, 0, 100);
    private static final Board BOARD = ShapeOf.board().read(3, 3, (x, y) -> 0);

    private static BillItem item(String name, double length, double width, double thickness, int quantity) {
        return new BillItem(name, length, width, thickness, quantity, OptionalDouble.of(10), false);
    }

    private static BlankPlaces places(KnownBoards boards, Board board, Saw saw, BillItem... items) {
        CuttingBill bill = new CuttingBill(List.of(items));
        Region usable = saw.usable(board);
        return BlankPlaces.in(usable, BlankThickness.of(boards, usable, 0, 1), Piece.of(bill, saw.limits()), board, bill, saw,
            0.5, 1);
    }

    private static BlankPlaces places(BillItem... items) {
        return places(KnownBoards.thinnerBy(0.01), BOARD, SAW, items);
    }

    // Worked by hand: of 500 boards 400 make 26.005 mm.
    @Test
    void countedPlacesAreSureOrNot() {
        BlankPlaces places = places(item("a", 500, 180, 26.005, 1), item("b", 400, 100, 20, 1));

        BlankPlaces counted = places.counted();

        assertEquals(0.8f, places.chance()[0][0][0]);
        for (int p = 0; p < 2; p++) {
            for (int x = 0; x < places.along().count(); x++) {
                for (int y = 0; y < places.across().count(); y++) {
                    assertEquals(places.chance()[p][x][y] > 0 ? 1 : 0, counted.chance()[p][x][y]);
                }
            }
        }
        assertEquals(1, counted.chance()[0][0][0]);
        assertEquals(0, counted.chance()[0][places.along().count() - 1][0]);
        assertSame(places.pieces(), counted.pieces());
        assertSame(places.along(), counted.along());
        assertSame(places.usable(), counted.usable());
    }

    // Worked by hand: 300 x 80 mm are as large as the part; 300.1 mm or 80.1 mm are larger; of the last none is left.
    @Test
    void aPartTakesWhatFitsIntoItAndIsStillWanted() {
        BlankPlaces places = places(item("fits", 300, 80, 20, 2), item("long", 300.1, 80, 20, 2),
            item("wide", 300, 80.1, 20, 2), item("done", 100, 50, 20, 2));

        BlankPlaces part = places.within(new Region(250, 40, 550, 120), new int[] {1, 1, 1, 0});

        assertEquals(List.of(new Piece(0, 300, 80, false)), part.pieces());
        assertEquals(new Region(250, 40, 550, 120), part.usable());
        assertEquals(250, part.along().from());
        assertEquals(550, part.along().to());
        assertEquals(40, part.across().from());
        assertEquals(120, part.across().to());
        assertEquals(1, part.chance()[0][0][0]);
    }

    // Worked by hand: the trim is not cut into, wherever a part reaches.
    @Test
    void aPartEndsAtTheTrim() {
        Board trimmed = ShapeOf.board().trimmed(0, 15).read(3, 3, (x, y) -> 0);
        BlankPlaces places = places(KnownBoards.thinnerBy(0), trimmed, new Saw(4, 30, 100), item("a", 100, 50, 20, 1));

        assertEquals(new Region(30, 15, 870, 165), places.within(new Region(0, 0, 900, 180), new int[] {1}).usable());
        assertEquals(new Region(40, 20, 500, 100), places.within(new Region(40, 20, 500, 100), new int[] {1}).usable());
    }

    // Worked by hand: blanks of 100 x 50 mm begin at the far sides of the defect, and end at its near ones.
    @Test
    void defectsGiveStops() {
        Board knotty = BlankPlanTest.with(BOARD, new Defect(310, 70, 510, 130));
        BlankPlaces places = places(KnownBoards.thinnerBy(0), knotty, SAW, item("a", 100, 50, 20, 1));
        int x = places.along().indexFrom(210);
        int y = places.across().indexFrom(20);

        assertEquals(210, places.along().at()[x], 1e-9);
        assertEquals(510, places.along().at()[places.along().indexFrom(510)], 1e-9);
        assertEquals(20, places.across().at()[y], 1e-9);
        assertEquals(130, places.across().at()[places.across().indexFrom(130)], 1e-9);
        assertEquals(1, places.chance()[0][x][places.across().indexFrom(100)]);
        assertEquals(0, places.chance()[0][places.along().indexFrom(400)][places.across().indexFrom(100)]);
    }

    // Worked by hand: the board is oak; its blanks may be at most 170 mm wide; it is 30 mm thick.
    @Test
    void whyNothingComesOut() {
        Board oak = new Board(BOARD.name(), BOARD.units(), BOARD.length(), BOARD.width(), BOARD.thickness(),
            Optional.of("oak"), BOARD.repeatability(), BOARD.price(), BOARD.target(), BOARD.skim(), BOARD.trim(),
            BOARD.underside(), BOARD.turned(), List.of(), BOARD.readings(), BOARD.calipers(), BOARD.remarks(),
            Optional.empty(), true);
        BillItem ash = new BillItem("ash", 300, 50, 20, 1, OptionalDouble.of(10), false,
            new WoodKind(Optional.of("ash"), Optional.empty()));
        BlankPlaces places = places(KnownBoards.thinnerBy(0), oak,
            new Saw(4, 0, 100, new SawLimits(0, 170, 0, 0, 0)), ash, item("wide", 300, 171, 20, 1),
            item("long", 900.1, 50, 20, 1), item("thick", 300, 50, 30.1, 1), item("there", 900, 170, 20, 1));

        boolean[] serves = {false, true, true, true, true};
        boolean[] handles = {true, false, true, true, true};
        boolean[] fits = {true, false, false, true, true};
        boolean[] takes = {false, false, false, false, true};
        for (int i = 0; i < 5; i++) {
            assertEquals(serves[i], places.serves(i), "serves " + i);
            assertEquals(handles[i], places.handles(i), "handles " + i);
            assertEquals(fits[i], places.fits(i), "fits " + i);
            assertEquals(takes[i], places.takes(i), "takes " + i);
        }
        assertEquals(List.of(Optional.of(BlankPlan.Missing.OTHER_WOOD), Optional.of(BlankPlan.Missing.OUT_OF_LIMITS),
            Optional.of(BlankPlan.Missing.TOO_LARGE), Optional.of(BlankPlan.Missing.TOO_THICK), Optional.empty()),
            BlankPlan.Missing.of(places.bill(), item -> item == 4 ? 1 : 0, List.of(places)));
        assertEquals(Optional.of(BlankPlan.Missing.NO_ROOM),
            BlankPlan.Missing.of(places.bill(), item -> 0, List.of(places)).get(4));
    }

    // Worked by hand: a blank wider than the board alone, and one longer than it alone, do not fit.
    @Test
    void aBlankMustFitBothWays() {
        BlankPlaces places = places(item("wide", 300, 181, 20, 1), item("long", 901, 50, 20, 1));

        assertFalse(places.fits(0));
        assertFalse(places.fits(1));
    }

    // Worked by hand: stops along are those of 100 mm each and sums of blanks; two blanks share the first section.
    @Test
    void anAnswerIsLaidOnTheBoard() {
        BlankPlaces places = places(item("a", 400, 80, 26.005, 3));
        int second = places.along().indexFrom(404);
        int beside = places.across().indexFrom(84);
        TwoStage.Cutting cutting = new TwoStage.Cutting(List.of(new Spot(0, 0, 0, 0.8f), new Spot(0, 0, beside, 0.8f),
            new Spot(0, second, 0, 0.8f)), 24, 24);

        Layout layout = places.layout(cutting, CutOrder.CROSSCUT_FIRST);

        assertEquals(List.of(List.of(new Region(0, 0, 400, 80), new Region(0, 84, 400, 164)),
            List.of(new Region(404, 0, 804, 80))),
            layout.sections().stream().map(section -> section.stream().map(Blank::region).toList()).toList());
        assertEquals(24, layout.value(), 1e-9);
        assertEquals(24, layout.bound(), 1e-9);
        Blank blank = layout.blanks().get(0);
        assertEquals("a", blank.name());
        assertEquals(26.005, blank.wanted());
        assertEquals(10, blank.worth());
        assertEquals(0.8, blank.chance(), 1e-9);
        assertEquals(new Region(0, 0, 900, 180), layout.board());
    }

    // Worked by hand: ripped first, the section's stop is that across.
    @Test
    void anAnswerInStripsIsLaidOnTheBoard() {
        BlankPlaces places = places(item("a", 400, 80, 20, 3));
        int strip = places.across().indexFrom(84);
        int behind = places.along().indexFrom(404);

        Layout layout = places.layout(new TwoStage.Cutting(List.of(new Spot(0, 0, behind, 1), new Spot(0, strip, 0, 1)), 20,
            20), CutOrder.RIP_FIRST);

        // Each moves up to the near end.
        assertEquals(List.of(new Region(0, 0, 400, 80), new Region(0, 84, 400, 164)),
            layout.blanks().stream().map(Blank::region).toList());
        assertEquals(2, layout.sections().size());
    }

    // An answer that is not exact keeps its bound; one that is exact is bounded by what its blanks count for.
    @Test
    void theBoundOfAnInexactAnswerStays() {
        BlankPlaces places = places(item("a", 400, 80, 26.005, 3));
        List<Spot> spots = List.of(new Spot(0, 0, 0, 0.79f));

        assertEquals(23, places.layout(new TwoStage.Cutting(spots, 7.9, 23), CutOrder.RIP_FIRST).bound(), 1e-9);
        assertEquals(8, places.layout(new TwoStage.Cutting(spots, 7.9, 7.9), CutOrder.RIP_FIRST).bound(), 1e-9);
        assertEquals(8, places.layout(new TwoStage.Cutting(spots, 8.5, 8.5), CutOrder.RIP_FIRST).bound(), 1e-9);
    }

    // Worked by hand: one blank of two is laid out, so that one is left for the offcuts.
    @Test
    void offcutsTakeWhatIsLeftOfTheBill() {
        Saw again = new Saw(4, 0, 100, SawLimits.NONE, true);
        BlankPlaces places = places(KnownBoards.thinnerBy(0), BOARD, again, item("a", 300, 80, 20, 2));
        Layout one = places.layout(new TwoStage.Cutting(List.of(new Spot(0, 0, 0, 1)), 10, 10), CutOrder.RIP_FIRST);

        assertEquals(2, places.recut(one).count(0));
        assertEquals(1, places.recut(one, new int[] {0}).count(0));
        assertSame(one, places(item("a", 300, 80, 20, 2)).recut(one));
    }

    @Test
    void whatNoBoardCanBeIsRefused() {
        CuttingBill bill = new CuttingBill(List.of(item("a", 300, 80, 20, 2)));
        Board impossible = ShapeOf.board().lyingFlat().read(3, 2, (x, y) -> 0.15 * (x - 450));

        assertThrows(ImpossibleBoard.class, () -> BlankPlaces.of(impossible, bill, SAW, 0.95, 1, 0, 1));
        assertEquals("sure must be from 50 to 100 %, got 49.0 %", assertThrows(IllegalArgumentException.class,
            () -> BlankPlaces.of(BOARD, bill, SAW, 0.49, 1, 0, 1)).getMessage());
        assertEquals("sure must be from 50 to 100 %, got 101.0 %", assertThrows(IllegalArgumentException.class,
            () -> BlankPlaces.of(BOARD, bill, SAW, 1.01, 1, 0, 1)).getMessage());
    }
}
