package outwind.numeric.plate;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigidityTest {

    // Bending in any way must take work: the form Dx·k² + 2·D1·k·l + Dy·l² is positive only where D1² < Dx·Dy.
    @ParameterizedTest
    @CsvSource({"0, 2, 0, 1", "2, 0, 0, 1", "2, 8, 1, 0", "2, 8, 4, 1", "2, 8, -4, 1", "Infinity, 8, 1, 1",
        "2, Infinity, 1, 1", "2, 8, 1, Infinity", "NaN, 8, 1, 1"})
    void aPlateThatCouldBendWithoutWorkIsRefused(double dx, double dy, double d1, double dxy) {
        assertEquals("plate needs positive rigidities and D1² under Dx·Dy, got Dx=" + dx + ", Dy=" + dy + ", D1=" + d1
            + ", Dxy=" + dxy, assertThrows(IllegalArgumentException.class, () -> new Rigidity(dx, dy, d1, dxy)).getMessage());
    }

    @Test
    void crossTermsUpToTheBoundAreTaken() {
        assertDoesNotThrow(() -> new Rigidity(2, 8, 3.999, 1));
        assertDoesNotThrow(() -> new Rigidity(2, 8, -3.999, 1));
    }
}
