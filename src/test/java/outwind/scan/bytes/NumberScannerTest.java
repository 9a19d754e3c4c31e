package outwind.scan.bytes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference throughout is {@link Double#parseDouble} of the JDK, bit for bit. */
class NumberScannerTest {

    private static final int CASES = 100_000;

    private final SplittableRandom random = new SplittableRandom(20);
    private final byte[] text = new byte[2_000];
    private final NumberScanner scanner = new NumberScanner(text, '.');

    @Test
    void numbersAsScansHaveThemAreReadExactly() {
        for (int i = 0; i < CASES; i++) {
            assertAsJdk(sign() + digits(1 + random.nextInt(8)) + "." + digits(1 + random.nextInt(9)));
        }
    }

    @Test
    void anyDecimalIsReadExactly() {
        for (int i = 0; i < CASES; i++) {
            assertAsJdk(sign() + digits(random.nextInt(24)) + "7" + (random.nextBoolean() ? "." : "")
                + digits(random.nextInt(24)) + exponent(330));
        }
    }

    @Test
    void nineteenDigitsAreReadExactly() {
        for (int i = 0; i < CASES; i++) {
            assertAsJdk(sign() + (1 + random.nextInt(9)) + "." + digits(random.nextInt(19)) + exponent(60));
        }
    }

    @Test
    void everyDoubleComesBackFromItsShortestText() {
        for (int i = 0; i < CASES; i++) {
            double value = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(value)) {
                assertAsJdk(Double.toString(value));
            }
        }
    }

    // Halfway between two neighbouring doubles and next to it: the hardest to round, with all their digits (up to 770)
    // and cut to 17 to 20.
    @Test
    void halfwayCasesAreRoundedAsTheJdkRounds() {
        for (int i = 0; i < CASES / 50; i++) {
            double low = Math.scalb(1 + random.nextDouble(), random.nextInt(-1074, 1023));
            BigDecimal half = new BigDecimal(low).add(new BigDecimal(Math.nextUp(low))).divide(BigDecimal.valueOf(2));
            assertAsJdk(half.toString());
            assertAsJdk(half + "1");
            for (int digits = 17; digits <= 20; digits++) {
                assertAsJdk(half.round(new MathContext(digits)).toString());
            }
        }
    }

    // Integers halfway between doubles, exact in at most 19 digits: ties that go to the even neighbour.
    @Test
    void tiesGoToEven() {
        for (int i = 0; i < CASES; i++) {
            int shift = 1 + random.nextInt(10);
            long half = (1L << 53 | random.nextLong(1L << 53)) << shift | 1L << shift - 1;
            assertAsJdk(Long.toUnsignedString(half));
            assertAsJdk(BigDecimal.valueOf(half).movePointLeft(random.nextInt(5)).toPlainString());
            long odd = (1L << 53 | random.nextLong(1L << 53)) * 2 + 1;
            assertAsJdk(new BigDecimal(odd).divide(BigDecimal.valueOf(1L << random.nextInt(4))).toString());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-0", "-0.0", "+0", "0.", ".0", "-.5", "+.5", "5.", "00012.50", "1e5", "1E5", "1e+5",
        "1e-5", "1.e5", ".1e5", "0e999", "0.0000000000000000000000000", "000000000000000000000000001",
        "0.00000000000000000000000000012345", "1e22", "1e23", "9007199254740991", "9007199254740992",
        "9007199254740993", "18446744073709551615", "18446744073709551616", "9999999999999999999", "4.9e-324",
        "2.4703282292062327e-324",
        "2.4703282292062328e-324", "2.2250738585072011e-308", "2.2250738585072012e-308", "2.2250738585072014e-308",
        "1.7976931348623157e308", "1.7976931348623158e308", "1.7976931348623159e308", "1e309", "-1e309", "1e-400",
        "1e99999999999", "1e-99999999999", "12345678", "1234567.12345678", "1234567.123456789", "12345678.12345678",
        "8.5e0000000000000001", "123456789012345678901234567890", "0.1", "1180.25", "-0.4200", "1e55", "1e56", "7e-27",
        "7e-28"})
    void namedCasesAreReadAsTheJdkReadsThem(String number) {
        assertAsJdk(number);
    }

    @ParameterizedTest
    @CsvSource({"nan,3", "NaN,3", "-nan,4", "-nan(ind),9", "inf,3", "-INF,4", "+Infinity,9"})
    void wordsForNoNumberAreNaN(String word, int length) {
        assertTrue(Double.isNaN(read(word + " ")));
        assertEquals(length, scanner.end());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", "+", ".", "-.", "e5", "x", ",5", "--1", "#", "\"1\"", "in", "e"})
    void whatIsNoNumberLeavesTheEndAtTheStart(String word) {
        assertTrue(Double.isNaN(read(word + " ")));
        assertEquals(0, scanner.end());
    }

    @ParameterizedTest
    @CsvSource({"1.2.3,3", "1e,1", "1e+,1", "1-2,1", "0x10,1", "1f,1", "'1,5',1", "1.5mm,3", "12 34,2"})
    void aNumberEndsWhereItsTextDoes(String word, int length) {
        read(word + " ");

        assertEquals(length, scanner.end());
    }

    @Test
    void anotherDecimalMarkIsReadWhereItIsAllowed() {
        byte[] number = Arrays.copyOf("-1180,25;".getBytes(StandardCharsets.US_ASCII), 64);
        byte[] longer = Arrays.copyOf("0,123456789012345678901;".getBytes(StandardCharsets.US_ASCII), 64);

        assertEquals(-1180.25, new NumberScanner(number, ',').at(0));
        assertEquals(Double.parseDouble("0.123456789012345678901"), new NumberScanner(longer, ',').at(0));
    }

    private void assertAsJdk(String number) {
        double expected = Double.parseDouble(number);
        // What lies behind the end must not matter, even if it looks like more digits.
        Arrays.fill(text, number.length() + 1, number.length() + 1 + NumberScanner.MARGIN, (byte) '5');
        double actual = read(number + " \n;\r".charAt(random.nextInt(4)));
        if (Double.doubleToRawLongBits(expected) != Double.doubleToRawLongBits(actual)
                || scanner.end() != number.length()) {
            throw new AssertionError(String.format(Locale.ROOT, "%s: expected %s but got %s, ended at %d", number,
                Double.toHexString(expected), Double.toHexString(actual), scanner.end()));
        }
    }

    private double read(String written) {
        for (int i = 0; i < written.length(); i++) {
            text[i] = (byte) written.charAt(i);
        }
        return scanner.at(0);
    }

    private String sign() {
        return switch (random.nextInt(4)) {
            case 0 -> "-";
            case 1 -> "+";
            default -> "";
        };
    }

    private String digits(int count) {
        StringBuilder digits = new StringBuilder();
        for (int i = 0; i < count; i++) {
            digits.append((char) ('0' + random.nextInt(10)));
        }
        return digits.toString();
    }

    private String exponent(int most) {
        return switch (random.nextInt(3)) {
            case 0 -> "";
            case 1 -> "e" + random.nextInt(-most, most);
            default -> "E" + (random.nextBoolean() ? "+" : "-") + "0" + random.nextInt(most);
        };
    }
}
