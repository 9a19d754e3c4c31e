package outwind.shop;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.BadValue;

/** A force as it is written: {@code 50}, {@code 50 N} or {@code 11 lbf}. */
public final class Force {

    /** One pound-force (N): the pound of 0.45359237 kg under standard gravity (NIST SP 811, appendix B). */
    public static final double POUND = 0.45359237 * 9.80665;

    private static final Pattern WRITTEN = Pattern.compile("(?<amount>\\d{1,6}([.,]\\d{1,4})?)\\s*(?<unit>[A-Za-z]*)");
    private static final String MEND = "Type a number such as 50 N or 11 lbf.";

    private Force() { }

    /**
     * Reads a push; a bare number is in newtons.
     *
     * @return newtons, above zero
     * @throws BadValue if it is none
     */
    public static double push(String text) {
        Matcher written = WRITTEN.matcher(text.strip());
        String unit = written.matches() ? written.group("unit").toLowerCase(Locale.ROOT) : "?";
        double each = switch (unit) {
            case "", "n" -> 1;
            case "lb", "lbf" -> POUND;
            default -> throw new BadValue("push in N or lbf", text, MEND);
        };
        double amount = Double.parseDouble(written.group("amount").replace(',', '.'));
        if (!(amount > 0)) {
            throw new BadValue("push above zero", text, MEND);
        }
        return amount * each;
    }
}
