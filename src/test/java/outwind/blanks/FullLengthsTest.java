package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.shop.SawLimits;
import outwind.shop.Shop;
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
}
