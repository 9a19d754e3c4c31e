package outwind.board;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a rough board costs.
 *
 * @param amount   money asked for one unit, never negative, with the decimals it was written with
 * @param currency label as written, for instance {@code $} or {@code EUR}; empty where none was
 * @param per      the unit
 */
public record Price(BigDecimal amount, String currency, PriceUnit per) {

    // Twelve digits hold any price of wood in any currency, and keep the arithmetic short.
    private static final Pattern WRITTEN = Pattern.compile("(?<before>[\\p{L}\\p{Sc}.]{1,6})?\\s*+"
        + "(?<amount>(?:\\d{1,3}(?:,\\d{3}){1,3}|\\d{1,12})(?:\\.\\d{1,6})?)\\s*+"
        + "(?<after>[\\p{L}\\p{Sc}.]{1,6}?)?\\s*+(?:per\\s|/)(?<per>[^/]*)", Pattern.CASE_INSENSITIVE);

    public Price {
        Objects.requireNonNull(currency, "currency");
        Objects.requireNonNull(per, "per");
        if (amount.signum() < 0) {
            throw new IllegalArgumentException("price must not be negative, got " + amount.toPlainString());
        }
    }

    /** Reads {@code 9.50 per bf}, {@code $9.50 per bf}, {@code 1400 EUR per m3} {@code 38 per board} or {@code GBP 1,400 per m3}. */
    public static Price parse(String text, boolean decimalComma) {
        Matcher written = WRITTEN.matcher(decimalComma ? text.replace(',', '.') : text);
        if (!written.matches() || written.group("before") != null && written.group("after") != null) {
            throw unreadable(text);
        }
        PriceUnit per = PriceUnit.find(written.group("per")).orElseThrow(() -> unreadable(text));
        String before = Objects.requireNonNullElse(written.group("before"), "");
        String after = Objects.requireNonNullElse(written.group("after"), "");
        return new Price(new BigDecimal(written.group("amount").replace(",", "")), before + after, per);
    }

    private static BadValue unreadable(String text) {
        return new BadValue("price per bf, ft3, m3, ft2, m2 or board", text,
            "Write it like \"9.50 per bf\", \"1400 EUR per m3\" or \"38 per board\", with a decimal point.");
    }
}
