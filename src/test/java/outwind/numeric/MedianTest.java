package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MiddleTest {

    // Independent: the sort of the JDK. Few values, so that many are alike, and many.
    @Test
    void middleIsThatOfTheSorted() {
        SplittableRandom random = new SplittableRandom(20260501);
        for (int trial = 0; trial < 2000; trial++) {
            int values = random.nextBoolean() ? 4 : 1000;
            double[] numbers = random.doubles(1 + random.nextInt(40)).map(d -> Math.rint(d * values)).toArray();
            double[] given = numbers.clone();
            double[] sorted = numbers.clone();
            Arrays.sort(sorted);

            assertEquals(sorted[sorted.length / 2], Median.of(numbers), Arrays.toString(given));
            assertArrayEquals(given, numbers);
        }
    }

    @Test
    void middleOfSomeLeavesTheOthersWhereTheyAre() {
        double[] numbers = {9, 3, 1, 2, 0};

        assertEquals(2, Median.of(numbers, 1, 4));
        assertEquals(9, numbers[0]);
        assertEquals(0, numbers[4]);
    }
}
