package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The search by itself, against enumeration of every layout. */
class LabelSearchTest {

    private static final CutOrder ORDER = CutOrder.CROSSCUT_FIRST;

    private static TwoStageTest.Case small(SplittableRandom random) {
        return TwoStageTest.Case.random(random, 2 + random.nextInt(2), 90 + random.nextInt(60), 60 + random.nextInt(40), 17);
    }

    private static double best(TwoStageTest.Case c) {
        return TwoStageTest.enumerated(c, ORDER, 0, c.wanted().clone());
    }

    /** Prices that are anything but the best ones: the bounds then are weak, but bounds. */
    private static double[] prices(TwoStageTest.Case c, SplittableRandom random) {
        return Arrays.stream(c.worth()).map(worth -> worth * 1.2 * random.nextDouble()).toArray();
    }

    private static LabelSearch search(TwoStageTest.Case c, double[] prices, double nothing, int most) {
        return new LabelSearch(c.sections(ORDER), c.worth(), c.wanted(), prices, nothing, most);
    }

    // Reference: enumeration. However few labels are kept, no answer is worth more than the bound that is reported.
    @Test
    void theBoundHoldsHoweverFewLabelsAreKept() {
        SplittableRandom random = new SplittableRandom(31);
        int exact = 0;
        int few = 0;
        for (int run = 0; run < 30; run++) {
            TwoStageTest.Case c = small(random);
            double[] prices = prices(c, random);
            double best = best(c);
            for (int most = 1; most <= 3; most++) {
                LabelSearch.Found found = search(c, prices, 1e-9, most).better(TwoStage.Cutting.NOTHING, 0);

                assertTrue(found.bound() >= best - 1e-6, run + ": " + found.bound() + " below " + best);
                assertTrue(found.best().value() <= best + 1e-6, run + ": " + found.best().value() + " above " + best);
                exact += found.best().value() >= best - 1e-6 ? 1 : 0;
                few += found.bound() > found.best().value() + 1e-6 ? 1 : 0;
            }
        }
        // Labels with the best bounds are kept: they lead to the best answer about every second time.
        assertTrue(exact >= 40, exact + " of 90 answers are best");
        assertTrue(few >= 10, few + " of 90 searches dropped labels");
    }

    // Reference: enumeration. Where no label is dropped the answer is best, and the bound says so, at whatever prices.
    @Test
    void withRoomForAllLabelsTheAnswerIsBest() {
        SplittableRandom random = new SplittableRandom(32);
        for (int run = 0; run < 60; run++) {
            TwoStageTest.Case c = small(random);
            double best = best(c);

            LabelSearch.Found found = search(c, prices(c, random), 1e-9, 100_000).better(TwoStage.Cutting.NOTHING, 0);

            assertEquals(best, found.best().value(), 1e-6, run + "");
            assertEquals(found.best().value() + 1e-9, found.bound(), 1e-12 * best, run + "");
        }
    }

    // Reference: enumeration. Above a floor that no answer reaches the bound is the floor; below one the best answer is found.
    @Test
    void onlyAnswersAboveTheFloorAreFound() {
        SplittableRandom random = new SplittableRandom(33);
        for (int run = 0; run < 40; run++) {
            TwoStageTest.Case c = small(random);
            double best = best(c);
            double[] prices = prices(c, random);

            LabelSearch.Found none = search(c, prices, 1e-9, 100_000).better(TwoStage.Cutting.NOTHING, 1.01 * best + 1);
            LabelSearch.Found found = search(c, prices, 1e-9, 100_000).better(TwoStage.Cutting.NOTHING, 0.99 * best);

            assertTrue(none.best().value() <= best + 1e-6);
            assertEquals(1.01 * best + 1 + 1e-9, none.bound(), 1e-12 * best);
            assertEquals(best, found.best().value(), 1e-6);
        }
    }

    // Worked by hand: one blank worth 10 fits. Gains of less than 4 are none, those of more are found.
    @Test
    void gainsBelowRoundingAreNone() {
        Stops one = new Stops(0, 100, new double[] {0});
        Sections sections = new Sections(List.of(new Piece(0, 100, 100, false)), new float[][][] {{{1}}}, ORDER, one, one, 0);
        LabelSearch search = new LabelSearch(sections, new double[] {10}, new int[] {1}, new double[1], 4, 10);
        TwoStage.Cutting seven = new TwoStage.Cutting(List.of(), 7, 7);
        TwoStage.Cutting five = new TwoStage.Cutting(List.of(), 5, 5);

        assertEquals(new LabelSearch.Found(seven, 11), search.better(seven, 0));
        assertEquals(10, search.better(five, 0).best().value());
        assertEquals(List.of(new TwoStage.Spot(0, 0, 0, 1)), search.better(five, 0).best().spots());
        assertEquals(14, search.better(five, 0).bound());
        assertEquals(new LabelSearch.Found(five, 11), search.better(five, 7));
    }
}
