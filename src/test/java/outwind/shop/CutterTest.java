package outwind.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CutterTest {

    private static Cutter cutter(double deepest, double lastPass) {
        return new Cutter("facing cutter", 40, deepest, lastPass, 16, 2500, 26);
    }

    // Common practice, no source: 7 mm between highest and lowest reading needs 14 passes at 0.5 mm, 2 at 5 mm. A last
    // pass of 0.2 mm comes on top of what is left above it.
    @ParameterizedTest
    @CsvSource({"0.5, 0, 14", "5, 0, 2", "0.5, 0.2, 15", "5, 0.2, 3"})
    void sevenMillimetresInPasses(double deepest, double lastPass, int passes) {
        assertEquals(passes, cutter(deepest, lastPass).passes(7).size());
    }

    @Test
    void lastPassReachesTheDepth() {
        assertEquals(List.of(0.5, 1.0, 1.2), cutter(0.5, 0).passes(1.2));
        assertEquals(List.of(0.5, 1.0, 1.2), cutter(0.5, 0.2).passes(1.2));
    }

    @Test
    void aDepthOfTheLastPassAloneTakesOnePass() {
        assertEquals(List.of(0.2), cutter(0.5, 0.2).passes(0.2));
        assertEquals(List.of(0.1), cutter(0.5, 0.2).passes(0.1));
    }

    @Test
    void nothingToCutTakesNoPass() {
        assertEquals(List.of(), cutter(0.5, 0.2).passes(0));
    }

    @Test
    void roundingOfTheDepthAddsNoPass() {
        assertEquals(3, cutter(0.1, 0).passes(0.1 + 0.1 + 0.1).size());
    }

    // Common practice: rows half a half-inch end mill apart, a quarter inch, and a quarter inch past every edge.
    @Test
    void theRestOfACutterIsAsUsual() {
        Cutter usual = Cutter.usual("end mill", 12.7, 5, 2500, OptionalDouble.empty(), OptionalDouble.empty());

        assertEquals(6.35, usual.rows(), 1e-12);
        assertEquals(6.35 + 6.35, usual.overrun(), 1e-12);
        assertEquals(0, usual.lastPass());
    }

    @Test
    void cuttersThatCannotBeAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> cutter(0, 0));
        assertThrows(IllegalArgumentException.class, () -> cutter(Double.NaN, 0.2));
        assertThrows(IllegalArgumentException.class, () -> cutter(0.5, -1));
        assertThrows(IllegalArgumentException.class, () -> cutter(1e-9, 0));
        assertThrows(IllegalArgumentException.class, () -> cutter(0.5, 0.6));
        assertThrows(IllegalArgumentException.class, () -> new Cutter("wide", 40, 0.5, 0.2, 20, 1000, 19));
        assertThrows(IllegalArgumentException.class, () -> new Cutter("wide", 40, 0.5, 0.2, 41, 1000, 20));
    }
}
