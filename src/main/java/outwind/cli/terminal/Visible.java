package outwind.cli.terminal;

import java.util.regex.Pattern;

/**
 * Text without signs that are not seen but steer a terminal: names of files and what stands in scans are printed too.
 *
 * <p>Line ends, tabs and the carriage return of a progress bar stay. Everything else among the control characters (ISO
 * 6429, C0 and C1) and the marks that turn the direction of writing (Unicode Standard Annex 9) becomes a question mark.
 */
final class Visible {

    private static final Pattern STEERING =
        Pattern.compile("[\\p{Cntrl}\\u0080-\\u009f\\u200e\\u200f\\u061c\\u202a-\\u202e\\u2066-\\u2069&&[^\\n\\r\\t]]");

    private Visible() { }

    /** The text with a question mark for each of them. */
    static String in(String text) {
        return STEERING.matcher(text).replaceAll("?");
    }
}
