package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class IndexingTest {

    // Worked by hand: 1900 mm on a bed of 1200: two set-ups overlap by 2400 − 1900 = 500 mm. 3300 mm: two would not
    // reach, three overlap by (3600 − 3300)/2 = 150, less than a fifth of 1200; four by (4800 − 3300)/3 = 500.
    @Test
    void setUpsOverlapByAFifthOfTheBedAtLeast() {
        assertEquals(2, Indexing.of(1900, 1200).setups());
        assertEquals(500, Indexing.of(1900, 1200).overlap(), 1e-9);
        assertEquals(4, Indexing.of(3300, 1200).setups());
        assertEquals(500, Indexing.of(3300, 1200).overlap(), 1e-9);
    }

    // Simulation of the definition: a line set to two spots 500 mm apart with 0.03 mm each, read at the far end of the
    // bed. Tolerance: three standard errors of a standard deviation from 20,000 trials.
    @Test
    void theStepIsThatOfALineCarriedOn() {
        SplittableRandom random = new SplittableRandom(1);
        double square = IntStream.range(0, 20_000).mapToDouble(i -> {
            double near = random.nextGaussian(0, 0.03);
            double far = random.nextGaussian(0, 0.03);
            return Math.pow(near + (far - near) * 1200 / 500, 2);
        }).average().orElseThrow();

        assertEquals(Math.sqrt(square), Indexing.of(1900, 1200).stepA(), 0.015 * Math.sqrt(square));
        assertEquals(0.0424, Indexing.of(1900, 1200).stepB(), 1e-4);
    }

    @Test
    void aBoardThatLiesOnTheBedIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Indexing.of(1200, 1200));
    }
}
