package outwind.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reference throughout: {@link Double#parseDouble}, bit for bit. */
class NumberScannerTest {

    private final NumberScanner scanner = new NumberScanner((byte) '.');

    private void assertSameAsJdk(String text) {
        byte[] bytes = (text + " 7").getBytes(StandardCharsets.ISO_8859_1);

        assertEquals(text.length(), scanner.scan(bytes, 0, bytes.length), text);
        assertEquals(Double.doubleToRawLongBits(Double.parseDouble(text)), Double.doubleToRawLongBits(scanner.value()),
            text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-0", "-0.0", "+1", "1.", ".5", "-.5e-1", "1e22", "1e23", "9007199254740992",
        "9007199254740993", "9007199254740992.5", "123456789012345678", "1234567890123456789", "0.1", "1e-22", "1e-23",
        "4.9e-324", "2.4703282292062327e-324", "2.4703282292062328e-324", "2.2250738585072011e-308",
        "2.2250738585072014e-308", "1.7976931348623157e308", "1.7976931348623159e308", "1e400", "1e-400",
        "1e999999999999", "0e999999999999", "0.000000000000000000000000000000000000001", "00000000000000000000000123.4",
        "100000000000000000000000000000000000000000", "8.5e15", "1E+05", "6.02e+23", "17976931348623158079372897140530",
        "0.500000000000000166533453693773481063544750213623046875", "3.141592653589793238462643383279502884"})
    void hardCasesAreReadAsTheJdkDoes(String text) {
        assertSameAsJdk(text);
    }

    @Test
    void whatScannersWriteIsReadAsTheJdkDoes() {
        SplittableRandom random = new SplittableRandom(41);
        for (int i = 0; i < 200_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(6));
            assertSameAsJdk(BigDecimal.valueOf(value).setScale(random.nextInt(9), java.math.RoundingMode.HALF_UP)
                .toPlainString());
        }
    }

    @Test
    void anyDoublePrintedInFullIsReadBack() {
        SplittableRandom random = new SplittableRandom(42);
        for (int i = 0; i < 200_000; i++) {
            double value = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(value)) {
                assertSameAsJdk(Double.toString(value));
            }
        }
    }

    @Test
    void anyStringOfDigitsIsReadAsTheJdkDoes() {
        SplittableRandom random = new SplittableRandom(43);
        for (int i = 0; i < 200_000; i++) {
            StringBuilder text = new StringBuilder(random.nextBoolean() ? "-" : "");
            int digits = 1 + random.nextInt(24);
            int point = random.nextInt(digits + 1);
            for (int k = 0; k < digits; k++) {
                text.append(k == point ? "." : "").append(random.nextInt(4) == 0 ? 0 : random.nextInt(10));
            }
            if (random.nextInt(3) == 0) {
                text.append('e').append(random.nextInt(-330, 310));
            }
            assertSameAsJdk(text.toString());
        }
    }

    // A double halfway between two others rounds to the even one; a digit far behind may decide.
    @Test
    void numbersHalfwayBetweenTwoDoublesAreReadAsTheJdkDoes() {
        SplittableRandom random = new SplittableRandom(44);
        for (int i = 0; i < 20_000; i++) {
            double value = random.nextDouble() * Math.pow(2, random.nextInt(-60, 60));
            BigDecimal half = new BigDecimal(value).add(new BigDecimal(Math.nextUp(value)))
                .divide(BigDecimal.valueOf(2));
            assertSameAsJdk(half.toPlainString());
            assertSameAsJdk(half.toPlainString() + (half.scale() > 0 ? "1" : ".1"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", ".", "-.", "e5", "1e", "1e+", "x", "na", "--1", "+-1"})
    void whatIsNoNumberIsRefused(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);

        assertEquals(-1, scanner.scan(bytes, 0, bytes.length), text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"nan", "NaN", "-nan", "inf", "-INF", "Infinity"})
    void wordsForWhatWasNotMeasuredAreRead(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);

        assertEquals(text.length(), scanner.scan(bytes, 0, bytes.length));
        assertEquals(false, Double.isFinite(scanner.value()));
    }

    @Test
    void decimalCommaIsReadWhereItIsTheMark() {
        NumberScanner comma = new NumberScanner((byte) ',');
        byte[] bytes = "-12,75;3,1415926535897932384626".getBytes(StandardCharsets.ISO_8859_1);

        assertEquals(6, comma.scan(bytes, 0, bytes.length));
        assertEquals(-12.75, comma.value());
        assertEquals(bytes.length, comma.scan(bytes, 7, bytes.length));
        assertEquals(Math.PI, comma.value());
    }
}
