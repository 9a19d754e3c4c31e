package outwind.board;

import java.util.Locale;
import java.util.Set;

/**
 * One thing in a board file that cannot be read, and its cure.
 *
 * @param kind     what it is, as far as that tells which other faults only follow from it
 * @param file     the file as it was given to the reader
 * @param line     line of the file, 1-based; 1 where the fault belongs to the whole file
 * @param column   place of the cell's first character in the line, 1-based, not counting a byte order mark
 * @param expected what should have stood there, for instance {@code z in mm}
 * @param found    what stood there, as it is shown: in quotes and shortened, or {@code nothing}
 * @param mend     one sentence on how to mend it
 */
public record Fault(Kind kind, String file, int line, int column, String expected, String found, String mend) {

    // Enough to recognise a cell by; a whole line of garbage would hide the rest of the message.
    private static final int LONGEST_SHOWN = 40;

    /** What faults are to each other: one cause gets one message. */
    public enum Kind {

        /** A cause of its own. */
        CAUSE,

        /** Another kind of file than was asked for, or sizes that no reading fits: the rest only follows. */
        WHOLE_FILE,

        /** There is not one reading. */
        NO_READINGS,

        /** A key that there is none of. */
        KEY,

        /** A column that there is none of, or that is named twice. */
        COLUMN,

        /** A needed column is missing. */
        MISSING_COLUMN,

        /** A size of the board is missing. */
        MISSING_SIZE,

        /** A cell with no column: as a rule it runs through all rows. */
        UNNAMED_CELL,

        /** A fraction in mm: as a rule the unit is missing. */
        FRACTION;

        /** Whether it only follows from others of the same file. */
        public boolean followsFrom(Set<Kind> others) {
            return this != WHOLE_FILE && others.contains(WHOLE_FILE) || switch (this) {
                case MISSING_SIZE -> others.contains(NO_READINGS) || others.contains(KEY);
                case FRACTION -> others.contains(KEY);
                case MISSING_COLUMN -> others.contains(COLUMN);
                default -> false;
            };
        }

        /** Whether the first of its kind stands for all. */
        public boolean isSaidOnce() {
            return this == WHOLE_FILE || this == UNNAMED_CELL || this == FRACTION;
        }
    }

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
