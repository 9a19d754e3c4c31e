package outwind.report.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Units;

class FiguresTest {

    private static final Figures MM = new Figures(Units.MILLIMETRES);
    private static final Figures IN = new Figures(Units.INCHES);

    @ParameterizedTest
    @CsvSource({"0, 0", "25.4, 1", "30.1625, 1 3/16", "-1.984375, -5/64", "0.1, 0", "0.2, 1/64", "25.3, 1",
        "12.7, 1/2"})
    void inchesAreFractionsInLowestTerms(double mm, String text) {
        assertEquals(text.replace(' ', '\u00a0'), IN.number(mm));
    }

    @Test
    void aNumberAndItsUnitStayTogether() {
        assertEquals("24.3\u00a0mm", MM.length(24.26));
        assertEquals("1\u00a03/16\u00a0in", IN.length(30.1625));
    }

    @Test
    void nothingIsMinusZero() {
        assertEquals("0.0", MM.number(-0.01));
        assertEquals("0.00", MM.signed(-0.001));
        assertEquals("+0.12", MM.signed(0.12));
    }

    @ParameterizedTest
    @CsvSource({"0.5, 0.5", "0.25, 0.25", "0.05, 0.05", "2, 2.0", "3.14159, 3.1"})
    void smallLengthsShowWhatWasSet(double mm, String text) {
        assertEquals(text + "\u00a0mm", MM.small(mm));
    }

    @Test
    void tiltsAreToldPerMetreOrPerFoot() {
        assertEquals("5.00 mm per m", MM.tilt(0.005) + " " + MM.tiltUnit());
        assertEquals("0.060 inches per foot", IN.tilt(0.005) + " " + IN.tiltUnit());
    }

    @Test
    void aGainIsTheDifferenceOfWhatIsPrinted() {
        Figures mm = new Figures(Units.MILLIMETRES);

        assertEquals("0.2\u00a0mm", mm.gain(29.84, 29.96));
        assertEquals("29.8\u00a0mm 30.0\u00a0mm", mm.precise(29.84) + " " + mm.precise(29.96));
        assertEquals("0.002\u00a0in", new Figures(Units.INCHES).gain(25.4, 25.4 * 1.0016));
    }

    @Test
    void aPromiseIsRoundedDown() {
        assertEquals("28.5\u00a0mm", MM.atMost(28.584));
        assertEquals("28.6\u00a0mm", MM.atMost(28.6));
        assertEquals("29/32\u00a0in", IN.atMost(23.403));
    }

    @ParameterizedTest
    @CsvSource({"26, 26.0", "20.6375, 20.64", "19.05, 19.05", "27.1000001, 27.1"})
    void aSettingIsNotRoundedAway(double mm, String text) {
        assertEquals(text + "\u00a0mm", MM.setting(mm));
    }

    @Test
    void aSettingInInchesIsAFractionOnlyWhereItIsExact() {
        assertEquals("13/16\u00a0in", IN.setting(20.6375));
        assertEquals("0.787\u00a0in", IN.setting(20));
    }

    // By definition a cubic foot is 12³ in³ of 25.4³ mm³.
    @Test
    void woodIsCountedAsItIsTraded() {
        assertEquals("2.50\u00a0ft³", new Figures(Units.INCHES).wood(2.5 * 1728 * 25.4 * 25.4 * 25.4));
        assertEquals("0.0708\u00a0m³", new Figures(Units.MILLIMETRES).wood(2.5 * 1728 * 25.4 * 25.4 * 25.4));
    }

    // Common practice: a sign stands before the amount, a code behind it.
    @Test
    void moneyIsInTheCurrencyGiven() {
        assertEquals("$12.50", Figures.money("12.50", "$"));
        assertEquals("£1400.00", Figures.money("1400.00", "£"));
        assertEquals("12.50\u00a0EUR", Figures.money("12.50", "EUR"));
        assertEquals("12.50\u00a0kr", Figures.money("12.50", "kr"));
        assertEquals("12.50", Figures.money("12.50", ""));
    }

    @Test
    void longTimesAreHoursAndMinutes() {
        assertEquals("90 minutes", Figures.minutes(90.2));
        assertEquals("7\u00a0h 10\u00a0min", Figures.minutes(430));
        assertEquals("3\u00a0h", Figures.minutes(180));
    }
}
