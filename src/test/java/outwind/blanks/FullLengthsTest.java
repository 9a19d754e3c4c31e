package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.Defect;
import outwind.board.Trim;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.shop.SawLimits;
import outwind.shop.Shop;
import outwind.surface.ImpossibleBoard;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

class FullLengthsTest {

    private static final ShapeOf BOARD = ShapeOf.board();

    private static FullLengths twisted(double target) {
        Board board = BOARD.read(7, 5, BOARD.twist(3));
        return FullLengths.of(board, target, Saw.usual(board), 0.95, 0, 1);
    }

    // Identity: of a pure twist with corners ±3 mm over 900 mm, a length l finishes at 30 − 6·l/900. For 26 mm that is
    // 600 mm; a touch-off good to 0.2 mm takes some 30 mm off what is sure.
    @Test
    void theLongestLengthOfATwistedBoard() {
        Blank longest = twisted(26).longest().orElseThrow();

        assertEquals(575, longest.along(), 30);
        assertTrue(longest.chance() >= 0.95);
    }

    // Worked by hand: two lengths of (900 − 3.2)/2 = 448.4 mm finish at 30 − 6·448.4/900 = 27.0 mm.
    @Test
    void oneCutSavesATwistedBoard() {
        List<Blank> lengths = twisted(26).fewest().orElseThrow().lengths();

        assertEquals(2, lengths.size());
        assertEquals(448.4, lengths.get(0).along(), 1e-9);
        assertEquals(451.6, lengths.get(1).region().x1(), 1e-9);
        assertEquals(27.0, lengths.get(0).range().median(), 0.2);
    }

    // Worked by hand: three lengths of 297.9 mm would do for 27.5 mm, but are shorter than can be planed safely.
    @Test
    void lengthsTooShortToPlaneAreNotOffered() {
        assertEquals(Optional.empty(), twisted(27.5).equal(3));
    }

    @Test
    void aBoardThinnerThanItsTargetIsNotSaved() {
        assertEquals(Optional.empty(), twisted(30.5).fewest());
        assertEquals(Optional.empty(), twisted(30.5).longest());
    }

    // The verdict is no: 24 mm come out of it whole; see above for the halves.
    @Test
    void aBoardThatFallsShortIsRescuedAndAGoodOneIsLeftAlone() {
        Judgement falls = judged(26);
        Judgement makes = judged(20);

        EqualLengths rescue = falls.rescue().orElseThrow();

        assertEquals(2, rescue.count());
        assertEquals(448.4, rescue.length(), 1e-9);
        assertEquals(27.0, rescue.thickness(), 0.2);
        assertTrue(rescue.chance() >= 0.95);
        assertEquals(Optional.empty(), makes.rescue());
    }

    // Two lengths of 448.4 mm, or one of at most 600 mm, as worked out above; the last would leave no board at all.
    @Test
    @Tag("long")
    void aRescueObeysTheSawOfTheShop() {
        assertEquals(2, judged(26, new SawLimits(448, 1000, 0, 0, 0)).rescue().orElseThrow().count());
        assertEquals(1, judged(26, new SawLimits(449, 1000, 0, 0, 0)).rescue().orElseThrow().count());
        assertEquals(Optional.empty(), judged(26, new SawLimits(601, 1000, 0, 0, 0)).rescue());
        assertEquals(Optional.empty(), judged(26, new SawLimits(0, 1000, 5000, 0, 0)).rescue());
    }

    private static Judgement judged(double target) {
        return judged(target, SawLimits.NONE);
    }

    private static Judgement judged(double target, SawLimits limits) {
        Board board = BOARD.wanted(target).read(7, 5, BOARD.twist(3));
        Shop none = Shop.UNKNOWN;
        return Judgement.of(board, JudgeOptions.usual(board, new Shop(none.bed(), none.cutters(), none.clamps(), none.stops(),
            none.shims(), none.wedge(), none.rate(), none.skim(), none.push(), none.sled(), limits)));
    }

    private static final Saw SAW = new Saw(3.2, 0, 5);

    /** A flat board of 960 x 180 mm, 30 mm thick. */
    private static Board plain(Defect... defects) {
        ShapeOf shape = new ShapeOf(960, 180, 30, BOARD.underside(), BOARD.target(), BOARD.trim());
        return BlankPlanTest.with(shape.read(3, 3, (x, y) -> 0), defects);
    }

    /** Lengths at 29 mm of a board of 960 mm; each finishes at 30 − (most of g − least of g). Only multiples of 40 bend g. */
    private static FullLengths twisting(DoubleUnaryOperator g, Saw saw) {
        return FullLengths.of(plain(), KnownBoards.twisting(180, g, 0), 29, saw, 0.95, 0, 1);
    }

    /** Lengths of a board without any warp that makes its thickness wherever it has no defect. */
    private static FullLengths flat(Saw saw, Defect... defects) {
        return FullLengths.of(plain(defects), KnownBoards.thinnerBy(0), 29, saw, 0.95, 0, 1);
    }

    private static Saw shortest(double length) {
        return new Saw(3.2, 0, 5, new SawLimits(length, 1000, 0, 0, 0));
    }

    private static Defect across(double from, double to) {
        return new Defect(from, 40, to, 60);
    }

    /** Rises by 1 in 50 from 200 mm towards the near end, and by 1 in 100 from 600 mm towards the far end. */
    private static double trough(double x) {
        return Math.max(0, Math.max((200 - x) / 50, (x - 600) / 100));
    }

    // Worked by hand: g rises by 1 mm from 200 to 150 mm and from 600 to 700 mm; each end is found to a mm.
    @Test
    void bothEndsOfTheLongestLengthAreMovedOutwards() {
        Region longest = twisting(FullLengthsTest::trough, SAW).longest().orElseThrow().region();

        assertEquals(150.5, longest.x1(), 0.5);
        assertEquals(699.5, longest.x2(), 0.5);
        assertEquals(0, longest.y1());
        assertEquals(180, longest.y2());
    }

    // Worked by hand: the same, mirrored; the ends lie at 960 − 700 = 260 and 960 − 150 = 810 mm.
    @Test
    void aMirroredBoardHasItsLongestLengthMirrored() {
        Region longest = twisting(x -> trough(960 - x), SAW).longest().orElseThrow().region();

        assertEquals(260.5, longest.x1(), 0.5);
        assertEquals(809.5, longest.x2(), 0.5);
    }

    // Worked by hand: the whole board, and between defects 600 mm before and 310 mm behind, whichever comes first.
    @Test
    void theLongestLengthReachesFromDefectToDefect() {
        assertEquals(new Region(0, 0, 960, 180), flat(SAW).longest().orElseThrow().region());
        assertEquals(new Region(0, 0, 600, 180), flat(SAW, across(600, 650)).longest().orElseThrow().region());
        assertEquals(new Region(360, 0, 960, 180), flat(SAW, across(310, 360)).longest().orElseThrow().region());
        assertEquals(new Region(510, 0, 960, 180),
            flat(SAW, across(0, 100), across(500, 510)).longest().orElseThrow().region());
        assertEquals(new Region(60, 0, 910, 180),
            flat(SAW, across(10, 60), across(910, 960)).longest().orElseThrow().region());
    }

    // Worked by hand: trimmed ends leave 40 to 920 mm; a defect that lies in the trim is no concern of any length.
    @Test
    void whatLiesInTheTrimIsNoConcern() {
        Saw trimming = new Saw(3.2, 40, 5);

        assertEquals(new Region(40, 0, 920, 180), flat(trimming, across(0, 20)).longest().orElseThrow().region());
        assertEquals(new Region(60, 0, 920, 180), flat(trimming, across(0, 60)).longest().orElseThrow().region());
    }

    @Test
    void aLengthOfJustTheShortestIsOffered() {
        assertEquals(960, flat(shortest(960)).longest().orElseThrow().along());
        assertEquals(Optional.empty(), flat(shortest(960.01)).longest());
        // Behind a defect it is the difference of both ends that counts.
        assertEquals(Optional.empty(), flat(shortest(600.01), across(310, 360)).longest());
        assertEquals(2, flat(shortest((960 - 3.2) / 2)).equal(2).orElseThrow().size());
        assertEquals(Optional.empty(), flat(shortest(478.41)).equal(2));
    }

    // Worked by hand: within the trim 180 − 2 · 10 = 160 mm are left, which go through the machine whole or not at all.
    @Test
    void aBoardTooWideForTheMachineGivesNoLength() {
        Board trimmed = new ShapeOf(960, 180, 30, BOARD.underside(), BOARD.target(), new Trim(0, 10))
            .read(3, 3, (x, y) -> 0);
        for (double widest : new double[] {160, 159.9}) {
            Optional<Blank> longest = FullLengths.of(trimmed, KnownBoards.thinnerBy(0), 29, new Saw(3.2, 0, 5,
                new SawLimits(0, widest, 0, 0, 0)), 0.95, 0, 1).longest();

            assertEquals(widest == 160, longest.isPresent());
        }
    }

    // Worked by hand: board k is thinner by 0.01·k mm. So 475 of 500 (95 %) make 25.255 mm, and 474 make 25.265 mm.
    @Test
    void aLengthJustAsSureAsWantedCounts() {
        KnownBoards boards = KnownBoards.thinnerBy(0.01);

        assertEquals(960, FullLengths.of(plain(), boards, 25.255, SAW, 0.95, 0, 1).longest().orElseThrow().along());
        assertEquals(Optional.empty(), FullLengths.of(plain(), boards, 25.265, SAW, 0.95, 0, 1).longest());
    }

    // Worked by hand: of 960 − 2 · 40 = 880 mm each of two lengths gets (880 − 3.2)/2 = 438.4 mm.
    @Test
    void equalLengthsLieSideBySideWithinTheTrim() {
        List<Blank> lengths = flat(new Saw(3.2, 40, 5)).equal(2).orElseThrow();

        assertArrayEquals(new double[] {40, 481.6}, lengths.stream().mapToDouble(blank -> blank.region().x1()).toArray(), 1e-9);
        assertArrayEquals(new double[] {478.4, 920}, lengths.stream().mapToDouble(blank -> blank.region().x2()).toArray(),
            1e-9);
    }

    // Worked by hand: g rises by 1 mm in 400 mm, and places lie 12 mm apart: 33 · 12 = 396 mm are sure. Behind the first
    // length and a kerf, 398.2 mm, what began at 396 mm would reach to 792 mm; from 408 mm on there is room.
    @Test
    void whatBeginsBetweenTwoPlacesReachesAsFarAsFromTheNearerOne() {
        List<Blank> lengths = twisting(x -> x / 400, SAW).equal(2).orElseThrow();

        assertEquals(395, lengths.get(0).along(), 1e-9);
        assertEquals(List.of(0.0, 408.0), lengths.stream().map(blank -> blank.region().x1()).toList());
    }

    // Worked by hand: 400 mm before the defect and 460 mm behind it; equal lengths are found to a mm and cut to a whole one.
    @Test
    void equalLengthsAreAsLongAsTheShorterSideOfADefect() {
        List<Blank> lengths = flat(SAW, across(400, 500)).equal(2).orElseThrow();

        assertEquals(List.of(new Region(0, 0, 399, 180), new Region(500, 0, 899, 180)),
            lengths.stream().map(Blank::region).toList());
    }

    // Worked by hand: 310 mm before the defect take one length. Behind it two of (610 − 3.2)/2 = 303.4 mm would fit; found to
    // a mm that is more than 302.4 mm, and here less than 303.
    @Test
    void equalLengthsFollowEachOtherAKerfApart() {
        List<Blank> lengths = flat(SAW, across(310, 350)).equal(3).orElseThrow();

        assertEquals(List.of(0.0, 350.0, 350 + 302 + 3.2),
            lengths.stream().map(blank -> blank.region().x1()).toList());
    }

    // Worked by hand: with a raster of 100 mm a length that fails at 0 is tried at 100, then at 200 mm. From 100 mm on g falls
    // by 1.5 mm, which is too much; from 200 mm on it is level.
    @Test
    void equalLengthsBeginOnTheRaster() {
        Saw coarse = new Saw(3.2, 0, 100);

        List<Blank> lengths = twisting(x -> Math.max(0, (160 - x) / 40), coarse).equal(2).orElseThrow();

        assertEquals(200, lengths.get(0).region().x1(), 1e-9);
    }

    // Worked by hand: places lie an eightieth of 960 − 2 · 80 = 800 mm apart, from the trim on. From 122 mm on g falls by no
    // more than 1 mm, and the first place behind that is 80 + 5 · 10 mm.
    @Test
    void equalLengthsBeginAtAnEightiethOfWhatIsLeftWithinTheTrim() {
        List<Blank> lengths = twisting(x -> Math.max(0, (160 - x) / 38), new Saw(3.2, 80, 5)).equal(2).orElseThrow();

        assertEquals(130, lengths.get(0).region().x1(), 1e-9);
    }

    // Worked by hand: one length of 600 mm against two of 309 (3 % more wood) and of 319 (6 % more).
    @Test
    void aFurtherCutMustBringATwentiethMoreWood() {
        assertEquals(1, flat(SAW, across(600, 650)).fewest().orElseThrow().count());
        assertEquals(2, flat(SAW, across(600, 640)).fewest().orElseThrow().count());
    }

    // Worked by hand: 890 mm in one piece; all further cuts only take kerfs.
    @Test
    void oneLengthIsEnoughWhereCutsBringNothing() {
        assertEquals(890, flat(SAW, across(890, 910)).fewest().orElseThrow().length());
    }

    // Worked by hand: where g rises by 1 mm in 80 mm twelve lengths take all wood. Where it does so in 72 mm a thirteenth
    // length would bring more.
    @Test
    void noMoreThanTwelveLengthsAreTried() {
        Saw any = new Saw(0, 0, 5, new SawLimits(10, 1000, 0, 0, 0));

        assertEquals(12, twisting(x -> 0.999 * x / 80, any).fewest().orElseThrow().count());
        assertEquals(12, twisting(x -> x / 72, any).fewest().orElseThrow().count());
    }

    @Test
    void aFaceBelowItsUndersideIsRefused() {
        Board impossible = BOARD.lyingFlat().read(3, 2, (x, y) -> 0.15 * (x - 450));

        assertThrows(ImpossibleBoard.class, () -> FullLengths.of(impossible, 20, SAW, 0.95, 0, 1));
    }
}
