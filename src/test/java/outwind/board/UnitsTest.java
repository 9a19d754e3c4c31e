package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitsTest {

    @ParameterizedTest
    @CsvSource(quoteCharacter = '\'', value = {"mm, MILLIMETRES", "Millimetres, MILLIMETRES", "in, INCHES",
        "inch, INCHES", "INCHES, INCHES", "'\"', INCHES"})
    void areKnownByTheirNames(String name, Units units) {
        assertEquals(units, Units.named(name));
    }

    @Test
    void refusesAnotherUnit() {
        BadValue bad = assertThrows(BadValue.class, () -> Units.named("cm"));

        assertEquals("expected units mm or in but found \"cm\"", bad.getMessage());
        assertEquals("Write mm or in.", bad.mend());
    }

    @Test
    void anInchIs25Point4Millimetres() {
        assertEquals(50.8, Units.INCHES.toMillimetres(2));
        assertEquals(2, Units.INCHES.fromMillimetres(50.8));
        assertEquals(7, Units.MILLIMETRES.toMillimetres(7));
    }

    @Test
    void plainNumbersHaveNoIdleDecimalsAndNoExponent() {
        assertEquals("1180", Units.MILLIMETRES.plain(1180));
        assertEquals("20000", Units.MILLIMETRES.plain(2e4));
        assertEquals("0.333", Units.MILLIMETRES.plain(1 / 3.0));
        assertEquals("46.4567", Units.INCHES.plain(1180));
        assertEquals("0", Units.MILLIMETRES.plain(1e-9));
    }
}
