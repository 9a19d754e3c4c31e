package outwind.report.words;

import java.math.BigDecimal;
import java.util.Locale;
import outwind.board.Units;
import outwind.shop.Force;

/**
 * Numbers as a person at a bench reads them: in the board's own unit, with the unit, and with no more digits than a
 * rule or a dial shows.
 *
 * @param units what lengths are printed in
 */
public record Figures(Units units) {

    private static final double INCH = Units.INCHES.toMillimetres(1);

    /** Keeps a number, and a number and its unit, on one line; {@link Page} prints it as a plain space. */
    private static final char HARD_SPACE = '\u00a0';

    /** A thickness, depth or height (mm): 0.1 mm, or 1/64 in. */
    public String length(double mm) {
        return number(mm) + HARD_SPACE + unit();
    }

    /** A thickness beside others that differ little from it (mm): 0.1 mm, or 0.001 in. */
    public String precise(double mm) {
        return units == Units.INCHES ? fineLength(mm) : length(mm);
    }

    /** {@link #precise} without its unit. */
    public String preciseNumber(double mm) {
        return units == Units.INCHES ? fine(mm) : number(mm);
    }

    /** How much thicker one is than the other (mm), each as {@link #precise} prints it: printed figures add up. */
    public String gain(double from, double to) {
        return new BigDecimal(preciseNumber(to)).subtract(new BigDecimal(preciseNumber(from))).toPlainString()
            + HARD_SPACE + unit();
    }

    /** {@link #length} without its unit, for tables whose heading states it. */
    public String number(double mm) {
        return units == Units.INCHES ? unbroken(fraction(mm / INCH, 64)) : decimals(mm, 1);
    }

    /** What is dialled in or is small (mm), with its unit: 0.1 mm and 0.05 mm where it is set so, or 0.001 in. */
    public String small(double mm) {
        String number = units == Units.INCHES ? decimals(mm / INCH, 3)
            : Math.abs(mm - Math.rint(mm * 10) / 10) > 0.004 && mm < 0.95 ? decimals(mm, 2)
            : decimals(mm, 1);
        return number + HARD_SPACE + unit();
    }

    /**
     * A height or thickness that the machine is set to (mm), with its unit: as {@link #length} where that is exact,
     * else to 0.01 mm or 0.001 in, so that nobody sets a rounded figure.
     */
    public String setting(double mm) {
        double step = units == Units.INCHES ? INCH / 64 : 0.1;
        return Math.abs(mm - Math.rint(mm / step) * step) < 0.004 ? length(mm) : fineLength(mm);
    }

    /** Height of a shim (mm), without its unit: 0.1 mm, or 0.001 in; a 64th of an inch is too coarse to stop rocking. */
    public String shim(double mm) {
        return units == Units.INCHES ? decimals(mm / INCH, 3) : decimals(mm, 1);
    }

    /** A length that is not to be taken for more than it is (mm): rounded down, with its unit. */
    public String atMost(double mm) {
        return length(roundedDown(mm));
    }

    /** The next lower length (mm) that {@link #number} tells. */
    public double roundedDown(double mm) {
        double step = units == Units.INCHES ? INCH / 64 : 0.1;
        // What lies on a step but for rounding stays on it.
        return Math.floor(mm / step + 1e-6) * step;
    }

    /** A place on the board (mm): whole mm, or 1/8 in. */
    public String place(double mm) {
        return units == Units.INCHES ? unbroken(fraction(mm / INCH, 8)) : decimals(mm, 0);
    }

    /** {@link #place} with its unit. */
    public String placeLength(double mm) {
        return place(mm) + HARD_SPACE + unit();
    }

    /** A place as it would be typed back (mm): decimals without a unit. */
    public String typed(double mm) {
        return plain(units.fromMillimetres(mm));
    }

    /** A height as it was read off (mm): 0.01 mm, or 0.001 in. */
    public String fine(double mm) {
        return units == Units.INCHES ? decimals(mm / INCH, 3) : decimals(mm, 2);
    }

    /** {@link #fine} with its unit. */
    public String fineLength(double mm) {
        return fine(mm) + HARD_SPACE + unit();
    }

    /** {@link #fine} with its sign, also where it is above zero. */
    public String signed(double mm) {
        String text = fine(mm);
        return text.startsWith("-") || isZero(text) ? text : "+" + text;
    }

    /** A feed (mm per minute) with its unit: whole mm or inches a minute. */
    public String feed(double mmPerMinute) {
        return decimals(units.fromMillimetres(mmPerMinute), 0) + HARD_SPACE + unit() + "/min";
    }

    /** A force (N) with its unit: newtons, or pounds-force. */
    public String force(double newtons) {
        return units == Units.INCHES ? decimals(newtons / Force.POUND, 0) + HARD_SPACE + "lbf"
            : decimals(newtons, 0) + HARD_SPACE + "N";
    }

    /** A tilt (mm per mm): mm per metre, or inches per foot. */
    public String tilt(double slope) {
        return units == Units.INCHES ? decimals(slope * 12, 3) : decimals(slope * 1000, 2);
    }

    public String tiltUnit() {
        return units == Units.INCHES ? "inches per foot" : "mm per m";
    }

    /** A volume of wood (mm³): whole cm³, or 0.1 in³. */
    public String volume(double cubicMillimetres) {
        return units == Units.INCHES
            ? decimals(cubicMillimetres / (INCH * INCH * INCH), 1)
            : decimals(cubicMillimetres / 1000, 0);
    }

    public String volumeUnit() {
        return units == Units.INCHES ? "in³" : "cm³";
    }

    /** A volume of wood as it is traded (mm³), with its unit: 0.0001 m³, or 0.01 ft³. */
    public String wood(double cubicMillimetres) {
        return decimals(cubicMillimetres / woodUnitCubicMillimetres(), units == Units.INCHES ? 2 : 4) + HARD_SPACE
            + woodUnit();
    }

    public String woodUnit() {
        return units == Units.INCHES ? "ft³" : "m³";
    }

    /** What one of {@link #woodUnit} is in mm³. */
    public double woodUnitCubicMillimetres() {
        return units == Units.INCHES ? Math.pow(12 * INCH, 3) : 1e9;
    }

    /** An area (mm²) with its unit: 0.01 m², or 0.1 ft². */
    public String area(double squareMillimetres) {
        return decimals(squareMillimetres / areaUnitSquareMillimetres(), units == Units.INCHES ? 1 : 2) + HARD_SPACE
            + areaUnit();
    }

    public String areaUnit() {
        return units == Units.INCHES ? "ft²" : "m²";
    }

    /** What one of {@link #areaUnit} is in mm². */
    public double areaUnitSquareMillimetres() {
        return units == Units.INCHES ? 144 * INCH * INCH : 1e6;
    }

    public String unit() {
        return units.symbol();
    }

    public String unitInFull() {
        return units == Units.INCHES ? "inches" : "mm";
    }

    /** A share from 0 to 1 as a whole percentage. */
    public static String percent(double share) {
        return decimals(share * 100, 0) + HARD_SPACE + "%";
    }

    /**
     * An amount of money with its label, before it where that is a sign such as $.
     *
     * @param currency perhaps empty
     */
    public static String money(String amount, String currency) {
        boolean sign = !currency.isEmpty() && currency.codePoints()
            .allMatch(letter -> Character.getType(letter) == Character.CURRENCY_SYMBOL);
        return sign ? currency + amount : amount + (currency.isEmpty() ? "" : HARD_SPACE + currency);
    }

    /** Minutes of work: whole ones, from two hours on as 7 h 10 min. */
    public static String minutes(double minutes) {
        int whole = (int) Math.round(minutes);
        return minutes < 1 ? "less than a minute" : whole < 120 ? count(whole, "minute", "minutes")
            : "" + whole / 60 + HARD_SPACE + "h" + (whole % 60 == 0 ? "" : " " + whole % 60 + HARD_SPACE + "min");
    }

    /** A number of things: 1 pass, 3 passes. */
    public static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** A large number of things, its thousands set apart: 5 000 000. */
    public static String grouped(int number) {
        return String.format(Locale.ROOT, "%,d", number).replace(',', HARD_SPACE);
    }

    /** A chance of success from 0 to 1, never said to be certain. */
    public static String chance(double p) {
        return p > 0.99 ? "over 99\u00a0%" : p < 0.01 ? "under 1\u00a0%" : percent(p);
    }

    /** A chance from 0 to 1; what is beyond a thousandth is said as such. */
    public static String probability(double p) {
        return p < 0.001 ? "< 0.001" : decimals(p, 3);
    }

    /** Fixed decimals with a point, never a minus zero. */
    public static String decimals(double value, int digits) {
        String text = String.format(Locale.ROOT, "%." + digits + "f", value);
        return text.startsWith("-") && isZero(text) ? text.substring(1) : text;
    }

    private static boolean isZero(String text) {
        return text.chars().allMatch(c -> c == '-' || c == '0' || c == '.');
    }

    /** A decimal with up to three digits and no trailing zeros, for what a person typed. */
    public static String plain(double value) {
        String text = decimals(value, 3);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }

    /** Words or numbers that stay on one line. */
    public static String unbroken(String text) {
        return text.replace(' ', HARD_SPACE);
    }

    /** Nearest fraction with this denominator, in lowest terms: 1 3/16, -5/64, 0. */
    public static String fraction(double inches, int denominator) {
        long parts = Math.round(Math.abs(inches) * denominator);
        if (parts == 0) {
            return "0";
        }
        long whole = parts / denominator;
        long numerator = parts % denominator;
        int bottom = denominator;
        while (numerator > 0 && numerator % 2 == 0) {
            numerator /= 2;
            bottom /= 2;
        }
        String text = numerator == 0 ? String.valueOf(whole)
            : whole == 0 ? numerator + "/" + bottom
            : whole + " " + numerator + "/" + bottom;
        return inches < 0 ? "-" + text : text;
    }
}
