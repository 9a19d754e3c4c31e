package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RangeTest {

    // Independent: the streams of the JDK. The extremes are put at every place of short arrays, and of long ones at the
    // ends and the seams of what the cores share out.
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12, 13})
    void leastAndMostAreFoundWhereverTheyStand(int n) {
        for (int low = 0; low < n; low++) {
            for (int high = 0; high < n; high++) {
                double[] values = new double[n];
                values[low] -= 3;
                values[high] += 5;
                assertFound(values);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {32_767, 32_768, 32_769, 65_536, 65_537, 100_003})
    void leastAndMostOfALongArrayAreFoundAtItsSeams(int n) {
        double[] values = new SplittableRandom(7).doubles(n, -1, 1).toArray();
        for (int at : new int[] {0, 1, 8_191, 8_192, n / 2, 32_766, Math.min(n - 1, 32_768), n - 2, n - 1}) {
            double before = values[at];
            for (double extreme : new double[] {-9, 9}) {
                values[at] = extreme;
                assertFound(values);
            }
            for (double wrong : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
                values[at] = wrong;
                assertFalse(Range.of(values).isFinite(), wrong + " at " + at + " of " + n);
            }
            values[at] = before;
        }
    }

    private static void assertFound(double[] values) {
        Range range = Range.of(values);

        assertEquals(Arrays.stream(values).min().orElseThrow(), range.least(), Arrays.toString(values));
        assertEquals(Arrays.stream(values).max().orElseThrow(), range.most(), Arrays.toString(values));
        assertTrue(range.isFinite());
    }

    // Worked by hand.
    @Test
    void widthMiddleAndSizeAreThoseOfTheExtremes() {
        Range range = new Range(-7, 3);

        assertEquals(10, range.width());
        assertEquals(-2, range.middle());
        assertEquals(7, range.size());
        assertEquals(new Range(-7, 4), range.and(new Range(1, 4)));
        assertEquals(new Range(-8, 3), range.and(new Range(-8, 0)));
    }

    // Two values so far apart that their difference is none: no range to compute in.
    @Test
    void aWidthBeyondAllNumbersIsNotFinite() {
        assertFalse(Range.of(new double[] {-1e308, 1e308}).isFinite());
    }
}
