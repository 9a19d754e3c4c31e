package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.SplittableRandom;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.api.Test;

class ThicknessRangeTest {

    private static final double[] SOME = new SplittableRandom(41).doubles(137, 20, 24).toArray();

    // Independent: percentiles of commons-math3, R's type 7.
    @Test
    void quantilesAreThoseOfAnotherLibrary() {
        Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
        percentile.setData(SOME);
        ThicknessRange range = ThicknessRange.of(SOME);

        for (int share = 1; share <= 100; share++) {
            assertEquals(percentile.evaluate(share), range.quantile(share / 100.0), 1e-12);
        }
        assertEquals(percentile.evaluate(5), range.low(), 1e-12);
        assertEquals(percentile.evaluate(50), range.median(), 1e-12);
        assertEquals(percentile.evaluate(95), range.high(), 1e-12);
        assertEquals(percentile.evaluate(95) - percentile.evaluate(5), range.width(), 1e-12);
        assertEquals(range.sorted()[0], range.quantile(0));
    }

    // Counted by hand.
    @Test
    void theChanceIsTheShareThatMakesTheTargetAndNoLess() {
        ThicknessRange range = ThicknessRange.of(new double[] {22, 20, 21, 21, 23});

        assertEquals(1, range.chanceOf(19.9));
        assertEquals(1, range.chanceOf(20));
        assertEquals(0.8, range.chanceOf(20.1), 1e-12);
        assertEquals(0.8, range.chanceOf(21), 1e-12);
        assertEquals(0.2, range.chanceOf(23), 1e-12);
        assertEquals(0, range.chanceOf(23.1));
    }

    // By hand: of 0, 1, 2, 3, 4 in three figures the ends and the middle stay, in nine the halves come between.
    @Test
    void fewerFiguresAreSpreadEvenly() {
        ThicknessRange range = ThicknessRange.of(new double[] {4, 3, 2, 1, 0});

        assertEquals(new ThicknessRange(new double[] {0, 2, 4}), range.thinned(3));
        assertEquals(new ThicknessRange(new double[] {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4}), range.thinned(9));
        assertEquals(range.thinned(3).hashCode(), new ThicknessRange(new double[] {0, 2, 4}).hashCode());
        assertNotEquals(range.hashCode(), range.thinned(3).hashCode());
        assertNotEquals(range, range.thinned(3));
    }
}
