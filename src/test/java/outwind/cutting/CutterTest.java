package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CutterTest {

    private static Cutter cutter(double stepDown, double finishing) {
        return new Cutter(stepDown, finishing, 40, 16, 2500, 26);
    }

    // Common practice, no source: 7 mm between highest and lowest touch-off needs 14 passes at 0.5 mm, 2 at 5 mm.
    // A finishing pass of 0.2 mm comes out of the last of them and is counted apart.
    @ParameterizedTest
    @CsvSource({"0.5, 0, 14", "5, 0, 2", "0.5, 0.2, 14", "5, 0.2, 2"})
    void sevenMillimetresInPasses(double stepDown, double finishing, int passes) {
        assertEquals(passes, cutter(stepDown, finishing).roughingPasses(7));
    }

    @Test
    void lastPassReachesTheDepth() {
        assertEquals(List.of(0.5, 1.0, 1.2), cutter(0.5, 0).passes(1.2));
        assertEquals(List.of(0.5, 1.0, 1.2), cutter(0.5, 0.2).passes(1.2));
    }

    @Test
    void aDepthOfTheFinishingPassAloneTakesOnePass() {
        assertEquals(List.of(0.2), cutter(0.5, 0.2).passes(0.2));
        assertEquals(List.of(0.1), cutter(0.5, 0.2).passes(0.1));
    }

    @Test
    void nothingToCutTakesNoPass() {
        assertEquals(List.of(), cutter(0.5, 0.2).passes(0));
    }

    @Test
    void roundingOfTheDepthAddsNoPass() {
        assertEquals(3, cutter(0.1, 0).roughingPasses(0.1 + 0.1 + 0.1));
    }

    @Test
    void aStepDownOfNothingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> cutter(0, 0.2));
        assertThrows(IllegalArgumentException.class, () -> cutter(Double.NaN, 0.2));
        assertThrows(IllegalArgumentException.class, () -> cutter(0.5, -1));
        assertThrows(IllegalArgumentException.class, () -> cutter(1e-9, 0));
        assertThrows(IllegalArgumentException.class, () -> cutter(0.5, 0.6));
    }
}
