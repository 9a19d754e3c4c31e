package outwind.board.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * One line of a file.
 *
 * @param number 1-based
 * @param text   without its end
 */
public record Line(int number, String text) {

    /** Longer names and notes belong on paper. */
    public static final int LONGEST_NOTE = 200;

    // A row of a table is a hundred characters, a table of readings in cells a few thousand. What is longer is no
    // board file, and a bound keeps the work on any one line small.
    private static final int LONGEST = 10_000;

    private static final Pattern WITHOUT_MARK = Pattern.compile("\\s*+\"?\\s*+\\p{L}{2,20}+(?: \\p{L}{1,20}+)*+\\s*+:");

    /** What was typed, fit for one line of a file: a blank for every break and control character, and a bounded length. */
    public static String fit(String typed, int longest) {
        String line = typed.replaceAll("[\\s\\p{Cc}]+", " ").strip();
        // Not between the two halves of a rare letter.
        int end = longest < line.length() && Character.isLowSurrogate(line.charAt(longest)) ? longest - 1 : longest;
        return line.substring(0, Math.min(end, line.length())).strip();
    }

    /** Splits a text at \n, \r\n or \r; a byte order mark is dropped. */
    public static List<Line> split(String text, FaultList faults) {
        List<Line> lines = new ArrayList<>();
        int start = text.startsWith("\ufeff") ? 1 : 0;
        for (int at = start; at < text.length(); at++) {
            char c = text.charAt(at);
            if (c == '\n' || c == '\r') {
                lines.add(new Line(lines.size() + 1, text.substring(start, at)));
                at += c == '\r' && text.startsWith("\n", at + 1) ? 1 : 0;
                start = at + 1;
            }
        }
        lines.add(new Line(lines.size() + 1, text.substring(Math.min(start, text.length()))));
        lines.forEach(line -> line.check(faults));
        return lines;
    }

    /** Whether nothing stands in it but spaces and what separates cells. */
    public boolean isBlank() {
        return text.chars().allMatch(c -> Character.isWhitespace(c) || ",;\"\u00a0".indexOf(c) >= 0);
    }

    /** Whether it states a key or holds a remark, also where a spreadsheet has put it in quotes. */
    public boolean isKeyLine() {
        String start = text.stripLeading();
        return start.startsWith("#") || start.startsWith("\"") && start.substring(1).stripLeading().startsWith("#");
    }

    /** Whether it can be a key that lacks its #: words and a colon before anything else. */
    public boolean isKeyWithoutMark() {
        return WITHOUT_MARK.matcher(text).lookingAt();
    }

    private void check(FaultList faults) {
        if (text.length() > LONGEST) {
            faults.add(number, 1, "a line of at most " + LONGEST + " characters", text.length() + " characters",
                "Save the readings as text with one row on each line.");
            return;
        }
        for (int at = 0; at < text.length(); at++) {
            char c = text.charAt(at);
            if (Character.isISOControl(c) && c != '\t') {
                faults.add(number, at + 1, "text", String.format(Locale.ROOT, "the control character \\u%04x", (int) c),
                    "Save the file as plain text in UTF-8.");
                return;
            }
        }
    }
}
