package outwind.board.text;

/**
 * A piece of a line: one cell of a table, or the value of a key.
 *
 * @param text   what stands there, without quotes and outer spaces
 * @param line   line of the file, 1-based
 * @param column place of its first character in the line, 1-based
 */
public record Cell(String text, int line, int column) {

    public boolean isBlank() {
        return text.isEmpty();
    }
}
