package outwind.board;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A length as people write it: {@code 20mm}, {@code 13/16in}, {@code 1 3/16"}, {@code 1-3/16"}, {@code -5/64}, {@code +0.3}; boards
 * are sold by {@code 1.9m} and {@code 6ft} too.
 *
 * <p>A unit may follow; where none does, the caller says which is meant. Fractions are read in inches and feet only,
 * since nobody reads a rule in fractions of a mm and a fraction there is most likely a forgotten unit.
 */
public final class Length {

    private static final Pattern WRITTEN = Pattern.compile("(?<sign>[+\\-−]?)"
        + "(?:(?<decimal>(?:\\d++(?:\\.\\d*+)?|\\.\\d++)(?:[eE][+-]?\\d{1,4})?)"
        + "|(?:(?<whole>\\d++)(?:\\s++|-))?(?<over>\\d++)/(?<under>\\d++))"
        + "\\s*+(?<unit>[^\\d\\s.,/+-].*)?");

    // Slips worth a sentence of their own; bounded and of signs that show, since the sentence repeats them.
    private static final Pattern WITH_COMMA = Pattern.compile("[+\\-−]?\\d{1,9},\\d{1,9} ?[\\p{L}'\"′″”]{0,8}");
    private static final Pattern FRACTION = Pattern.compile("[+\\-−]?(?:\\d{1,9}[\\s-])?\\d{1,9}/[1-9]\\d{0,8}");

    private Length() { }

    /**
     * Reads a length with a decimal point.
     *
     * @param text     a number or fraction, with or without a unit
     * @param whenBare the unit meant where the text names none
     * @return the length (mm), finite
     * @throws BadValue if the text is no length or is too large for a double
     */
    public static double parse(String text, Units whenBare) {
        return parse(text, whenBare, false);
    }

    /**
     * Reads a length.
     *
     * @param text         a number or fraction, with or without a unit
     * @param whenBare     the unit meant where the text names none
     * @param decimalComma whether a decimal comma is accepted as well as a point
     * @return the length (mm), finite
     * @throws BadValue if the text is no length or is too large for a double
     */
    public static double parse(String text, Units whenBare, boolean decimalComma) {
        return read(text, whenBare, decimalComma).orElseThrow(() -> new BadValue("a length such as 20mm or 13/16in",
            text, slip(text, whenBare, decimalComma).orElse("Type a number with mm, cm, m, in or ft after it.")));
    }

    /** The length (mm), or nothing if the text is none. */
    static Optional<Double> read(String text, Units whenBare, boolean decimalComma) {
        Matcher written = WRITTEN.matcher(tidied(text, decimalComma));
        if (!written.matches()) {
            return Optional.empty();
        }
        boolean fraction = written.group("decimal") == null;
        return unit(written, whenBare)
            .filter(unit -> !fraction || unit.inFractions)
            .map(unit -> unit.millimetres * (fraction ? fraction(written) : decimal(written)))
            .filter(Double::isFinite);
    }

    /** How to mend a text that is no length, where it shows a slip that people often make. */
    static Optional<String> slip(String text, Units whenBare, boolean decimalComma) {
        String tidied = tidied(text, decimalComma).replaceAll("\\s+", " ");
        if (WITH_COMMA.matcher(tidied).matches()) {
            return Optional.of("Write " + tidied.replace(',', '.') + " with a point; only a file with semicolons or "
                + "tabs between its cells may use a decimal comma.");
        }
        if (isFraction(text) && whenBare != Units.INCHES) {
            return Optional.of("Fractions are read in inches only: write " + tidied
                + "in, or state the units as inches.");
        }
        return Optional.empty();
    }

    /** Whether a text is a bare fraction, as people write who read in inches. */
    static boolean isFraction(String text) {
        return FRACTION.matcher(tidied(text, false)).matches();
    }

    private static String tidied(String text, boolean decimalComma) {
        // Spreadsheets write no-break spaces where a person typed plain ones.
        String spaced = text.replace('\u00a0', ' ').strip();
        return decimalComma ? spaced.replace(',', '.') : spaced;
    }

    /**
     * What a length is counted in.
     *
     * @param inFractions true if people write fractions of it
     */
    private record Unit(double millimetres, boolean inFractions) {

        static final Unit CENTIMETRE = new Unit(10, false);
        static final Unit METRE = new Unit(1000, false);
        static final Unit FOOT = new Unit(304.8, true);

        static Unit of(Units units) {
            return new Unit(units.toMillimetres(1), units == Units.INCHES);
        }
    }

    private static Optional<Unit> unit(Matcher written, Units whenBare) {
        String name = written.group("unit");
        if (name == null) {
            return Optional.of(Unit.of(whenBare));
        }
        return Units.find(name).map(Unit::of).or(() -> switch (name.strip().toLowerCase(Locale.ROOT)) {
            case "cm" -> Optional.of(Unit.CENTIMETRE);
            case "m" -> Optional.of(Unit.METRE);
            case "ft", "foot", "feet", "'", "′" -> Optional.of(Unit.FOOT);
            default -> Optional.empty();
        });
    }

    private static double decimal(Matcher written) {
        return signed(written, Double.parseDouble(written.group("decimal")));
    }

    /** The fraction's value, infinite or NaN if it divides by zero. */
    private static double fraction(Matcher written) {
        double whole = written.group("whole") == null ? 0 : Double.parseDouble(written.group("whole"));
        double part = Double.parseDouble(written.group("over")) / Double.parseDouble(written.group("under"));
        return signed(written, whole + part);
    }

    private static double signed(Matcher written, double value) {
        boolean negative = !written.group("sign").isEmpty() && !written.group("sign").equals("+");
        // Zero has no sign on a board: 0 − 0 is +0 where −0 would not equal it in a record.
        return negative ? 0 - value : value;
    }
}
