package outwind.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ShimStackTest {

    private static final ShimStack SET = new ShimStack(List.of(0.1, 0.2, 0.5, 1.0, 2.0, 5.0));

    // Worked by hand, as coins are paid out.
    @Test
    void makesAHeightUpOfTheFewestShims() {
        assertEquals(Optional.of(List.of(2.0, 0.2, 0.1)), SET.madeUp(2.3));
        assertEquals(Optional.of(List.of(0.2, 0.2)), SET.madeUp(0.4));
        assertEquals(Optional.of(List.of(5.0)), SET.madeUp(5.04));
    }

    // Taking the thickest that fits first would need 4 + 1 + 1.
    @Test
    void isNotMisledByTheThickest() {
        assertEquals(Optional.of(List.of(3.0, 3.0)), new ShimStack(List.of(1.0, 3.0, 4.0)).madeUp(6));
    }

    @Test
    void aHeightThatNoFewShimsMakeHasNone() {
        assertEquals(Optional.empty(), new ShimStack(List.of(0.5, 1.0)).madeUp(0.2));
        assertEquals(Optional.empty(), new ShimStack(List.of(0.1)).madeUp(2));
        assertEquals(Optional.empty(), new ShimStack(List.of()).madeUp(1));
    }

    // Against enumeration of all stacks of up to four.
    @Test
    void noStackOfFewerShimsComesAsNear() {
        SplittableRandom random = new SplittableRandom(11);
        for (int trial = 0; trial < 200; trial++) {
            double height = random.nextInt(10, 900) / 100.0;
            int fewest = fewest(height, 4);
            Optional<List<Double>> made = SET.madeUp(height);
            if (fewest <= 4) {
                assertEquals(fewest, made.orElseThrow().size(), "of " + height + ": " + made);
            }
            made.ifPresent(pieces -> assertTrue(Math.abs(pieces.stream().mapToDouble(piece -> piece).sum() - height)
                <= ShimStack.OFF + 1e-9));
        }
    }

    private static int fewest(double left, int more) {
        if (Math.abs(left) <= ShimStack.OFF + 1e-9) {
            return 0;
        }
        if (left < 0 || more == 0) {
            return 99;
        }
        return 1 + SET.thicknesses().stream().mapToInt(piece -> fewest(left - piece, more - 1)).min().orElse(99);
    }
}
