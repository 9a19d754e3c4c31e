package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.flatten.ThicknessRange;
import outwind.surface.MeasuredShape;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

class BlankThicknessTest {

    private static final ShapeOf BOARD = ShapeOf.board();

    private static BlankThickness of(Board board) {
        return of(board, 0);
    }

    private static BlankThickness of(Board board, double skim) {
        return BlankThickness.of(MeasuredShape.of(board), Region.whole(board), skim, 1);
    }

    private static Region random(SplittableRandom random) {
        double length = 40 + 800 * random.nextDouble();
        double width = 20 + 150 * random.nextDouble();
        double x = (BOARD.length() - length) * random.nextDouble();
        double y = (BOARD.width() - width) * random.nextDouble();
        return new Region(x, y, x + length, y + width);
    }

    // Identity: a rectangle of u·L x v·W of a pure twist with corners ±q is itself a twist with corners ±u·v·q, and
    // such a board finishes at T − 2·u·v·q. A touch-off is only good to a fifth of a mm, so the tolerance is wide.
    @Test
    void aPartOfATwistedBoardIsTwistedInProportion() {
        BlankThickness wood = of(BOARD.read(7, 5, BOARD.twist(3)));

        assertEquals(24, wood.range(new Region(0, 0, 900, 180)).median(), 0.2);
        assertEquals(27, wood.range(new Region(0, 0, 450, 180)).median(), 0.2);
        assertEquals(28.5, wood.range(new Region(450, 90, 900, 180)).median(), 0.2);
    }

    // By definition: the skim comes off each of two faces.
    @Test
    void aSkimIsLostTwice() {
        Board board = BOARD.read(5, 3, BOARD.twist(3));
        Region part = new Region(100, 20, 500, 150);

        double[] bare = of(board).range(part).sorted();
        double[] skimmed = of(board, 0.4).range(part).sorted();

        for (int i = 0; i < bare.length; i++) {
            assertEquals(bare[i] - 2 * 0.4, skimmed[i], 1e-9);
        }
    }

    // Identity: what lies inside is part of what must clean up.
    @Test
    void aRectangleNeverFinishesThickerThanOneInsideIt() {
        BlankThickness wood = of(BOARD.read(5, 3, (x, y) -> 4 * Math.sin(x / 150) * y / 180));
        SplittableRandom random = new SplittableRandom(5);
        for (int run = 0; run < 20; run++) {
            Region outer = random(random);
            double u = random.nextDouble() / 3;
            double v = random.nextDouble() / 3;
            Region inner = new Region(outer.x1() + u * (outer.x2() - outer.x1()), outer.y1()
                + v * (outer.y2() - outer.y1()),
                outer.x2() - v * (outer.x2() - outer.x1()), outer.y2() - u * (outer.y2() - outer.y1()));

            ThicknessRange whole = wood.range(outer);
            ThicknessRange part = wood.range(inner);

            for (int i = 0; i < whole.sorted().length; i++) {
                assertTrue(whole.sorted()[i] <= part.sorted()[i] + 1e-9, outer + " " + inner);
            }
        }
    }

    // Identity: bounds from other answers must decide as the linear program itself does.
    @Test
    void theChanceIsTheShareOfTheRange() {
        BlankThickness wood = of(BOARD.read(5, 3, (x, y) -> 4 * Math.sin(x / 150) * y / 180), 0.4);
        SplittableRandom random = new SplittableRandom(6);
        for (int run = 0; run < 40; run++) {
            Region rectangle = random(random);
            ThicknessRange range = wood.range(rectangle);
            double thickness = range.quantile(random.nextDouble()) + 1e-7;

            assertEquals(range.chanceOf(thickness), wood.chance(rectangle, thickness, 0), 1e-12, rectangle.toString());
        }
    }

    private static BlankThickness of(KnownBoards boards, double skim) {
        return BlankThickness.of(boards, new Region(0, 0, 900, 180), skim, 1);
    }

    // Worked by hand: board k of 500 finishes at 30 − 0.01·k mm. So 26 of them make 29.745 mm, and 51 make 29.495 mm.
    @Test
    void theChanceCountsTheBoardsThatMakeIt() {
        BlankThickness wood = of(KnownBoards.thinnerBy(0.01), 0);
        BlankThickness skimmed = of(KnownBoards.thinnerBy(0.01), 0.125);
        Region part = new Region(100, 20, 500, 150);

        assertEquals(26 / 500.0, wood.chance(part, 29.745, 0), 1e-12);
        assertEquals(51 / 500.0, wood.chance(part, 29.495, 0), 1e-12);
        assertEquals(26 / 500.0, skimmed.chance(part, 29.495, 0), 1e-12);
        assertEquals(1, wood.chance(part, 25, 1), 0);
        assertEquals(0, wood.chance(part, 30.005, 0), 0);
    }

    // Worked by hand: 450 of the 500 boards make 25.505 mm, 449 make 25.515 mm; 90 % of 500 are 450.
    @Test
    void justAsSureAsWantedIsSureAndOneBoardFewerIsNot() {
        BlankThickness wood = of(KnownBoards.thinnerBy(0.01), 0);
        Region part = new Region(100, 20, 500, 150);

        assertEquals(0.9, wood.chance(part, 25.505, 0.9), 0);
        assertEquals(0, wood.chance(part, 25.515, 0.9), 0);
        assertEquals(0.898, wood.chance(part, 25.515, 0.89), 1e-12);
    }

    // Each share of whole boards is what a person writes for it: 465 of 500 are 93 %, to the last bit.
    @Test
    void aShareThatWasAskedForIsReachedToTheLastBit() {
        BlankThickness wood = of(KnownBoards.thinnerBy(0.01), 0);
        Region part = new Region(100, 20, 500, 150);
        for (int percent = 50; percent <= 99; percent++) {
            double sure = percent / 100.0;
            double thickness = 30 - 0.01 * (5 * percent) + 0.005;

            assertEquals(sure, wood.chance(part, thickness, sure), 0);
            assertEquals(sure, wood.range(part).chanceOf(thickness), 0);
        }
    }

    // Worked by hand: all boards are exactly as thick as wanted.
    @Test
    void exactlyTheThicknessIsEnough() {
        Region part = new Region(100, 20, 500, 150);

        assertEquals(1, of(KnownBoards.thinnerBy(0), 0).chance(part, 30, 1), 0);
    }

    /** Board k leans by {@code slopes[k mod their number]} thousandths along; each is as thick as the others. */
    private static BlankThickness leaning(double... slopes) {
        return of(KnownBoards.alike((k, x, y) -> slopes[k % slopes.length] * 1e-3 * x, 0), 0);
    }

    // Worked by hand: all boards are 30 mm thick, and board k leans by k thousandths. At the slope of another board, 400 mm
    // leave at most 30 − 0.4 mm. So each but the likely one needs a programme of its own, and six are solved.
    @Test
    void quickBoundsSolveSixProgrammes() {
        BlankThickness wood = leaning(IntStream.range(0, 500).asDoubleStream().toArray());
        Region part = new Region(100, 20, 500, 150);

        assertEquals(1, wood.chance(part, 29.9, 0), 0);
        assertEquals(7 / 500.0, wood.atLeast(part, 29.9, 0), 1e-12);
        assertEquals(1, wood.atMost(part, 29.9, 0), 0);
    }

    // Worked by hand: the same boards fall short of 30.1 mm. The contacts of any answer show it, without a programme.
    @Test
    void contactsShowWhatFallsShort() {
        BlankThickness wood = leaning(IntStream.range(0, 500).asDoubleStream().toArray());

        assertEquals(0, wood.atMost(new Region(100, 20, 500, 150), 30.1, 0), 0);
    }

    // Worked by hand: the first board leans as the likely one does and needs no programme. Those that lean by 2 to 7 are
    // solved; then six answers are kept, and the likely one has gone. Of 63 boards that lean by 1, 62 are left undecided.
    @Test
    void theLastSixAnswersDecideForBoardsThatLeanAlike() {
        Region part = new Region(100, 20, 500, 150);

        assertEquals(1, leaning(1, 2, 3, 4, 5, 6).atLeast(part, 29.9, 0), 0);
        assertEquals(1 - 62 / 500.0, leaning(1, 2, 3, 4, 5, 6, 7, 2).atLeast(part, 29.9, 0), 1e-12);
    }

    // Worked by hand: with slopes (2y/180 − 1)·x/900 the part from 300 to 600 mm is thinner by 1/3 mm, on each board.
    @Test
    void theRangeIsThatOfTheBoards() {
        BlankThickness wood = of(KnownBoards.twisting(180, x -> x / 900, 0.01), 0.25);

        double[] range = wood.range(new Region(300, 0, 600, 180)).sorted();

        assertEquals(500, range.length);
        for (int k = 0; k < 500; k++) {
            assertEquals(30 - 1 / 3.0 - 0.5 - 0.01 * (499 - k), range[k], 1e-9);
        }
    }

    // Worked by hand: likely board and others lean alike, along and across, so that none needs a programme of its own.
    @Test
    void boardsThatLeanAlikeBothWaysAreDecidedByOneAnswer() {
        BlankThickness wood = of(KnownBoards.alike((k, x, y) -> 1e-3 * x + 2e-3 * y, 1e-5), 0);

        assertEquals(1, wood.atLeast(new Region(100, 20, 500, 150), 29.9, 0), 0);
    }

    /** Boards with a ridge of 1 mm on the underside, halfway between two lines of the usual grid. */
    private static BlankThickness ridged(boolean along, int fineness) {
        double from = along ? 12.5 * 900 / 24 : 4.5 * 180 / 8;
        return of(new KnownBoards() {
            @Override
            public double top(int board, double x, double y) {
                return THICKNESS;
            }

            @Override
            public double underside(int board, double x, double y) {
                return Math.abs((along ? x : y) - from) < 1e-6 ? 1 : 0;
            }

            @Override
            public int fineness() {
                return fineness;
            }
        }, 0);
    }

    // Worked by hand: lines of twice as fine a grid run along the ridge; those of the usual grid run beside it.
    @Test
    void aRoughFaceIsLookedAtOnAFinerGrid() {
        Region board = new Region(0, 0, 900, 180);
        for (boolean along : new boolean[] {true, false}) {
            assertEquals(29, ridged(along, 2).range(board).median(), 1e-9);
            assertEquals(30, ridged(along, 1).range(board).median(), 1e-9);
        }
    }
}
