package outwind.board;

import java.util.Locale;

/**
 * One thing in a board file that cannot be read, and its cure.
 *
 * @param file     the file as it was given to the reader
 * @param line     line of the file, 1-based; 1 where the fault belongs to the whole file
 * @param column   place of the cell's first character in the line, 1-based, not counting a byte order mark
 * @param expected what should have stood there, for instance {@code z in mm}
 * @param found    what stood there, as it is shown: in quotes and shortened, or {@code nothing}
 * @param mend     one sentence on how to mend it
 */
public record Fault(String file, int line, int column, String expected, String found, String mend) {

    // Enough to recognise a cell by; a whole line of garbage would hide the rest of the message.
    private static final int LONGEST_SHOWN = 40;

    /** Two lines: place, expected and found; then the cure, indented by two spaces. */
    public String message() {
        return file + ":" + line + ":" + column + ": expected " + expected + " but found " + found + "\n  " + mend;
    }

    /** A text as a fault shows it: in quotes, shortened, what cannot be seen as escapes; {@code nothing} if blank. */
    public static String shown(String text) {
        if (text.isBlank()) {
            return "nothing";
        }
        String start = text.length() > LONGEST_SHOWN ? text.substring(0, LONGEST_SHOWN) : text;
        StringBuilder shown = new StringBuilder("\"");
        start.chars().forEach(c -> shown.append(visible((char) c)));
        return shown.append(start.length() < text.length() ? "…\"" : "\"").toString();
    }

    private static String visible(char c) {
        boolean unseen = switch (Character.getType(c)) {
            case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.LINE_SEPARATOR,
                Character.PARAGRAPH_SEPARATOR -> true;
            case Character.SPACE_SEPARATOR -> c != ' ';
            default -> false;
        };
        return unseen ? String.format(Locale.ROOT, "\\u%04x", (int) c) : String.valueOf(c);
    }
}
