package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import outwind.flatten.ThicknessRange;
import outwind.surface.Region;

/** Cuts and offcuts of layouts that are written down by hand; kerfs are 4 mm wide. */
class LayoutTest {

    private static final double KERF = 4;
    private static final Region BOARD = new Region(0, 10, 1000, 210);

    private static Blank blank(int item, double x1, double y1, double x2, double y2) {
        return new Blank("item " + item, item, new Region(x1, y1, x2, y2), false, 20,
            new ThicknessRange(new double[] {19, 21, 22, 23}), 100);
    }

    private static Layout crosscut(Region board, List<List<Blank>> sections) {
        return new Layout(CutOrder.CROSSCUT_FIRST, board, sections, KERF, 1000);
    }

    private static Layout ripped(Region board, List<List<Blank>> sections) {
        return new Layout(CutOrder.RIP_FIRST, board, sections, KERF, 1000);
    }

    /** Two lengths behind a trimmed end. The first holds two blanks, the second of which is shorter, the other a single one. */
    private static Layout twoLengths() {
        return crosscut(BOARD, List.of(
            List.of(blank(0, 30, 10, 330, 90), blank(1, 30, 94, 280, 150)),
            List.of(blank(0, 334, 40, 634, 120))));
    }

    private static SawCut through(boolean crosscut, Region board, double bears, double from, int before, int behind) {
        return new SawCut(crosscut, 0, 0, board, bears, from, from + KERF, before, behind);
    }

    // Worked by hand. The end is trimmed up to 30 mm, so that the kerf lies from 26 mm on; a single kerf parts the lengths.
    // In each length the same goes on across, and the shorter blank is trimmed by itself.
    @Test
    void lengthsAreCutThroughThenRippedThenTrimmed() {
        Region first = new Region(30, 10, 330, 210);
        Region second = new Region(334, 10, 634, 210);

        assertEquals(List.of(
            through(true, BOARD, 0, 26, 0, 1),
            through(true, BOARD, 30, 330, 1, 2),
            through(true, BOARD, 334, 634, 2, 0),
            new SawCut(false, 1, 0, first, 10, 90, 94, 1, 2),
            new SawCut(false, 1, 0, first, 94, 150, 154, 2, 0),
            new SawCut(true, 1, 2, new Region(30, 94, 330, 150), 30, 280, 284, 2, 0),
            new SawCut(false, 2, 0, second, 10, 36, 40, 0, 3),
            new SawCut(false, 2, 0, second, 40, 120, 124, 3, 0)), twoLengths().cuts());
        assertEquals(8, twoLengths().cutCount());
    }

    // Worked by hand, the largest first: behind the second length, across behind both, before the second, the trimmed
    // end, and the rest of the shorter blank.
    @Test
    void whatFallsOffIsListedByItsArea() {
        assertEquals(List.of(
            new Region(638, 10, 1000, 210),
            new Region(334, 124, 634, 210),
            new Region(30, 154, 330, 210),
            new Region(334, 10, 634, 36),
            new Region(0, 10, 26, 210),
            new Region(284, 94, 330, 150)), twoLengths().offcuts());
    }

    // Worked by hand: the same with the grain of both directions changed, on a board of 210 x 1000 mm.
    @Test
    void stripsAreRippedThenCrosscutThenTrimmed() {
        Region board = new Region(10, 0, 210, 1000);
        Layout layout = ripped(board, List.of(
            List.of(blank(0, 10, 30, 90, 330), blank(1, 94, 30, 150, 280)),
            List.of(blank(0, 40, 334, 120, 634))));

        assertEquals(List.of(
            through(false, board, 0, 26, 0, 1),
            through(false, board, 30, 330, 1, 2),
            through(false, board, 334, 634, 2, 0),
            new SawCut(true, 1, 0, new Region(10, 30, 210, 330), 10, 90, 94, 1, 2),
            new SawCut(true, 1, 0, new Region(10, 30, 210, 330), 94, 150, 154, 2, 0),
            new SawCut(false, 1, 2, new Region(94, 30, 150, 330), 30, 280, 284, 2, 0),
            new SawCut(true, 2, 0, new Region(10, 334, 210, 634), 10, 36, 40, 0, 3),
            new SawCut(true, 2, 0, new Region(10, 334, 210, 634), 40, 120, 124, 3, 0)), layout.cuts());
        assertEquals(List.of(
            new Region(10, 638, 210, 1000),
            new Region(124, 334, 210, 634),
            new Region(154, 30, 210, 330),
            new Region(10, 334, 36, 634),
            new Region(10, 0, 210, 26),
            new Region(94, 284, 150, 330)), layout.offcuts());
    }

    // Worked by hand: 3 mm at either end are less than a kerf. The blade takes only these, and nothing falls off.
    @Test
    void lessThanAKerfIsTrimmedToDust() {
        Layout layout = crosscut(BOARD, List.of(List.of(blank(0, 3, 10, 997, 210))));

        assertEquals(List.of(new SawCut(true, 0, 0, BOARD, 0, 0, 3, 0, 1), new SawCut(true, 0, 0, BOARD, 3, 997, 1000, 1, 0)),
            layout.cuts());
        assertEquals(List.of(), layout.offcuts());
    }

    // Worked by hand: 4 mm between two lengths take one cut. Of 9 mm two cuts leave 1 mm, and of 5 mm the second takes 1 mm.
    @Test
    void aGapOfMoreThanAKerfTakesTwoCuts() {
        Layout apart = crosscut(BOARD, List.of(List.of(blank(0, 0, 10, 300, 210)), List.of(blank(0, 309, 10, 1000, 210))));
        Layout close = crosscut(BOARD, List.of(List.of(blank(0, 0, 10, 300, 210)), List.of(blank(0, 304, 10, 1000, 210))));
        Layout sliver = crosscut(BOARD, List.of(List.of(blank(0, 0, 10, 300, 210)), List.of(blank(0, 305, 10, 1000, 210))));

        assertEquals(List.of(through(true, BOARD, 0, 300, 1, 0), through(true, BOARD, 304, 305, 0, 2)), apart.cuts());
        assertEquals(List.of(new Region(304, 10, 305, 210)), apart.offcuts());
        assertEquals(List.of(through(true, BOARD, 0, 300, 1, 2)), close.cuts());
        assertEquals(List.of(through(true, BOARD, 0, 300, 1, 0), new SawCut(true, 0, 0, BOARD, 304, 304, 305, 0, 2)),
            sliver.cuts());
    }

    // Worked by hand: sums of lengths and kerfs are off by far less than a thousandth of a mm.
    @Test
    void oneCutPartsWhatLiesAKerfApartButForRounding() {
        Layout layout = crosscut(BOARD, List.of(List.of(blank(0, 0, 10, 300, 210)),
            List.of(blank(0, 304 + 1e-9, 10, 1000 - 1e-9, 210))));

        assertEquals(1, layout.cuts().size());
        assertEquals(SawCut.Keeps.BOTH, layout.cuts().get(0).keeps());
        assertEquals(List.of(), layout.offcuts());
    }

    /** A blank at the near end; the offcut behind it gives two lengths with three blanks, that beside it one strip. */
    private static Layout cutAgain() {
        Region beside = new Region(0, 104, 300, 210);
        Region behind = new Region(304, 10, 1000, 210);
        Layout lengths = crosscut(behind, List.of(List.of(blank(1, 304, 10, 504, 60)),
            List.of(blank(1, 508, 10, 708, 110), blank(2, 508, 114, 708, 210))));
        Layout strip = ripped(beside, List.of(List.of(blank(1, 0, 104, 250, 150))));
        return new Layout(CutOrder.CROSSCUT_FIRST, BOARD, List.of(List.of(blank(0, 0, 10, 300, 100))), KERF, 1000,
            List.of(lengths, strip));
    }

    // Worked by hand: sections 1, then 2 and 3, then 4; blanks 1, then 2 to 4, then 5.
    @Test
    void whatIsCutAgainIsNumberedOn() {
        Region behind = new Region(304, 10, 1000, 210);

        List<List<SawCut>> recuts = cutAgain().recuts();

        assertEquals(List.of(
            List.of(through(true, behind, 304, 504, 2, 3),
                through(true, behind, 508, 708, 3, 0),
                new SawCut(false, 2, 0, new Region(304, 10, 504, 210), 10, 60, 64, 2, 0),
                new SawCut(false, 3, 0, new Region(508, 10, 708, 210), 10, 110, 114, 3, 4)),
            List.of(through(false, new Region(0, 104, 300, 210), 104, 150, 4, 0),
                new SawCut(true, 4, 0, new Region(0, 104, 300, 150), 0, 250, 254, 5, 0))), recuts);
        assertEquals(2, cutAgain().cuts().size());
        assertEquals(2 + 4 + 2, cutAgain().cutCount());
    }

    // Worked by hand: both offcuts of the board are gone, and theirs are listed instead.
    @Test
    void whatIsCutAgainIsNoOffcut() {
        assertEquals(List.of(
            new Region(712, 10, 1000, 210),
            new Region(304, 64, 504, 210),
            new Region(0, 154, 300, 210),
            new Region(254, 104, 300, 150)), cutAgain().offcuts());
    }

    // Worked by hand: each of five blanks is worth 100, and three boards in four make its thickness.
    @Test
    void allBlanksCountWhereverTheyComeFrom() {
        assertEquals(4, cutAgain().allSections().size());
        assertEquals(List.of(0, 1, 1, 2, 1), cutAgain().blanks().stream().map(Blank::item).toList());
        assertEquals(3, cutAgain().count(1));
        assertEquals(5 * 75, cutAgain().value(), 1e-9);
    }
}
