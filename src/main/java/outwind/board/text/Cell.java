package outwind.board.text;

import java.util.Locale;
import java.util.Set;

/**
 * A piece of a line: one cell of a table, or the value of a key.
 *
 * @param text   what stands there, without quotes and outer spaces
 * @param line   line of the file, 1-based
 * @param column place of its first character in the line, 1-based
 */
public record Cell(String text, int line, int column) {

    /** What people write where they read nothing. */
    private static final Set<String> NOT_READ = Set.of("-", "–", "—", "−", "n/a", "na", "n.a.");

    public boolean isBlank() {
        return text.isEmpty();
    }

    /** This cell of a reading: blank where it says in words that nothing was read. */
    public Cell ofReading() {
        return NOT_READ.contains(text.toLowerCase(Locale.ROOT)) ? new Cell("", line, column) : this;
    }
}
