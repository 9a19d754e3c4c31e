package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LengthTest {

    // Expected values worked by hand from 1 in = 25.4 mm (ISO 31-1 and the 1959 yard agreement: exact). Tolerance:
    // one rounding of the product and one of the quotient.
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '\'', value = {
        "unit joined        | 20mm      | 20",
        "unit apart         | 20 mm     | 20",
        "unit in words      | 2 Inches  | 50.8",
        "fraction           | 13/16in   | 20.6375",
        "fraction apart     | 13/16 in  | 20.6375",
        "mixed, ditto mark  | 1 3/16\"  | 30.1625",
        "negative mixed     | -1 1/2in  | -38.1",
        "tied by a hyphen   | 1-3/16\"  | 30.1625",
        "negative, tied     | -1-1/2in  | -38.1",
        "bare               | 31.5      | 31.5",
        "plus               | +0.3      | 0.3",
        "true minus sign    | −0.42     | -0.42",
        "no leading zero    | .5        | 0.5",
        "no decimals        | 5.        | 5",
        "scientific         | 1e-3      | 0.001",
        "scientific in      | 1E1 in    | 254",
        // International foot: exactly 0.3048 m.
        "feet               | 6ft       | 1828.8",
        "feet by a mark     | 5 1/2'    | 1676.4",
        "metres             | 1.9 m     | 1900",
        "centimetres        | 21cm      | 210",
    })
    void readsWhatPeopleWrite(String name, String text, double millimetres) {
        assertEquals(millimetres, Length.parse(text, Units.MILLIMETRES), 1e-14 * Math.abs(millimetres));
    }

    @Test
    void bareNumberTakesTheUnitItIsToldTo() {
        assertEquals(-5 * 25.4 / 64, Length.parse("-5/64", Units.INCHES), 1e-15);
        assertEquals(25.4, Length.parse("1", Units.INCHES));
        assertEquals(1, Length.parse("1 mm", Units.INCHES));
    }

    @Test
    void noBreakSpacesCountAsSpaces() {
        assertEquals(1.5 * 25.4, Length.parse("\u00a01\u00a01/2\u00a0in", Units.MILLIMETRES));
    }

    @Test
    void minusZeroIsZero() {
        assertEquals(Double.valueOf(0.0), Double.valueOf(Length.parse("-0", Units.MILLIMETRES)));
    }

    @Test
    void decimalCommaIsReadOnlyWhereItIsAllowed() {
        assertEquals(20.5, Length.parse("20,5mm", Units.INCHES, true));
        assertEquals(20.5, Length.parse("20.5mm", Units.INCHES, true));
        assertThrows(BadValue.class, () -> Length.parse("20,5mm", Units.INCHES));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "-", ".", "/", "1/", "/2", "1/0", "0/0", "NaN", "Infinity", "-Infinity", "0x1F",
        "1d", "1f", "1.5D", "1e", "1e+", "1e400", "1e308in", "1.2.3", "1,2,3", "1 2", "1 180", "1-3/16", "1/2/3",
        "1.5 1/2in", "13/16mm", "--1", "- 1", "-1.1O", "20dm", "20 mm mm", "1/2m", "1 1/2cm", "mm", "½", "١٢", "1_000"})
    void refusesWhatIsNoLength(String text) {
        assertThrows(BadValue.class, () -> Length.parse(text, Units.MILLIMETRES));
        assertThrows(BadValue.class, () -> Length.parse(text, Units.MILLIMETRES, true));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '\'', value = {
        "20dm   | \"20dm\"   | Type a number with mm, cm, m, in or ft after it.",
        "''     | nothing    | Type a number with mm, cm, m, in or ft after it.",
        "13/16  | \"13/16\"  | Fractions are read in inches only: write 13/16in, or state the units as inches.",
        "1-3/16 | \"1-3/16\" | Fractions are read in inches only: write 1-3/16in, or state the units as inches.",
        "20,5mm | \"20,5mm\" | Write 20.5mm with a point; only a file with semicolons or tabs between its cells "
            + "may use a decimal comma.",
    })
    void saysHowToMendIt(String text, String found, String mend) {
        BadValue bad = assertThrows(BadValue.class, () -> Length.parse(text, Units.MILLIMETRES));

        assertEquals("expected a length such as 20mm or 13/16in but found " + found, bad.getMessage());
        assertEquals("a length such as 20mm or 13/16in", bad.expected());
        assertEquals(found, bad.found());
        assertEquals(mend, bad.mend());
    }

    // Once the sentence on how to mend it repeated whatever stood behind the digits.
    @ParameterizedTest
    @ValueSource(strings = {"12,5\u202e", "12,5\ufeff", "1,5\u001b[2J", "31,5\u0000", "46\t1/2", "1,9\tm"})
    void repeatsNothingThatDoesNotShow(String text) {
        BadValue bad = assertThrows(BadValue.class, () -> Length.parse(text, Units.MILLIMETRES));

        assertTrue((bad.getMessage() + bad.mend()).chars().noneMatch(c -> Character.isISOControl(c)
            || Character.getType(c) == Character.FORMAT), bad.mend());
    }
}
