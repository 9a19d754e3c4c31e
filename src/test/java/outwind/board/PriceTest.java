package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PriceTest {

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "9.50 per bf,           9.50, '',  BOARD_FOOT",
        "$9.50 per bf,          9.50, $,   BOARD_FOOT",
        "9.50 EUR per bd ft,    9.50, EUR, BOARD_FOOT",
        "CA$ 9.50 per BF,       9.50, CA$, BOARD_FOOT",
        "9.50/bf,               9.50, '',  BOARD_FOOT",
        "1400 per m3,           1400, '',  CUBIC_METRE",
        "1400€ per m³,          1400, €,   CUBIC_METRE",
        "60 kr. per m2,         60,   kr., SQUARE_METRE",
        "7 USD per sq ft,       7,    USD, SQUARE_FOOT",
        "38 per board,          38,   '',  BOARD",
        "0 per board,           0,    '',  BOARD",
    })
    void readsAmountCurrencyAndUnit(String text, BigDecimal amount, String currency, PriceUnit per) {
        assertEquals(new Price(amount, currency, per), Price.parse(text, false));
    }

    @Test
    void readsADecimalCommaWhereItIsAllowed() {
        assertEquals(new Price(new BigDecimal("9.50"), "EUR", PriceUnit.BOARD_FOOT),
            Price.parse("9,50 EUR per bf", true));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "per bf", "9.50", "9.50 bf", "9.50 per", "9.50 per foot", "-1 per bf", "9,50 per bf",
        "$ 9.50 EUR per bf", "1e3 per m3", "NaN per bf", "9.50 per bf per board", "1234567890123 per m3"})
    void refusesWhatIsNoPrice(String text) {
        BadValue bad = assertThrows(BadValue.class, () -> Price.parse(text, false));

        assertEquals("price per bf, ft3, m3, ft2, m2 or board", bad.expected());
    }

    @Test
    void cannotBeNegative() {
        BigDecimal amount = new BigDecimal("-0.01");

        assertEquals("price must not be negative, got -0.01", assertThrows(IllegalArgumentException.class,
            () -> new Price(amount, "", PriceUnit.BOARD)).getMessage());
    }

    // Exact: a foot is 304.8 mm.
    @Test
    void thousandsMayBeSetApartAndCubicFeetPriced() {
        assertEquals(new Price(new BigDecimal("1400"), "GBP", PriceUnit.CUBIC_METRE),
            Price.parse("GBP 1,400 per m3", false));
        assertEquals(new Price(new BigDecimal("1400.50"), "£", PriceUnit.CUBIC_FOOT),
            Price.parse("£1,400.50 per ft3", false));
        assertEquals(new Price(new BigDecimal("9.50"), "", PriceUnit.BOARD_FOOT), Price.parse("9,50 per bf", true));
    }
}
