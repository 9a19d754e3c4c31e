package outwind.board.text;

import java.util.Optional;

/**
 * A line {@code # key: value}, also where a spreadsheet has put it in quotes, and without the # above a table.
 *
 * @param key   what stands before its first colon
 * @param value what stands behind it; may be blank
 */
public record KeyLine(Cell key, Cell value) {

    /** The key and its value; nothing if the line is but a remark. */
    public static Optional<KeyLine> of(Line line, FaultList faults) {
        Optional<Cell> whole = line.text().stripLeading().startsWith("\"")
            ? unquoted(line, faults)
            : Optional.of(new Cell(line.text(), line.number(), 1));
        return whole.flatMap(cell ->
            in(cell, cell.text().stripLeading().startsWith("#") ? cell.text().indexOf('#') + 1 : 0));
    }

    /** The key and its value in a text that holds them from a place on. */
    public static Optional<KeyLine> in(Cell cell, int begin) {
        int colon = cell.text().indexOf(':', begin);
        return colon < 0 ? Optional.empty()
            : Optional.of(new KeyLine(part(cell, begin, colon), part(cell, colon + 1, cell.text().length())));
    }

    /** The first cell of a line that a spreadsheet has put in quotes for a comma in it; it begins behind the quote. */
    private static Optional<Cell> unquoted(Line line, FaultList faults) {
        // The table may lie further down: what stands behind the quotes shows its delimiter.
        Line behind = new Line(line.number(), line.text().substring(line.text().lastIndexOf('"')));
        return Row.split(line, Delimiter.of(behind), faults).map(row -> row.cell(0))
            .map(cell -> new Cell(cell.text(), cell.line(), cell.column() + 1));
    }

    /**
     * A part of a cell without the spaces around it and without the delimiters that a spreadsheet writes for the empty
     * cells before and behind it.
     */
    private static Cell part(Cell cell, int from, int to) {
        String text = cell.text();
        int start = from;
        int end = to;
        while (start < end && isFiller(text.charAt(start))) {
            start++;
        }
        while (end > start && isFiller(text.charAt(end - 1))) {
            end--;
        }
        return new Cell(text.substring(start, end), cell.line(), cell.column() + start);
    }

    private static boolean isFiller(char c) {
        return Character.isWhitespace(c) || c == ',' || c == ';' || c == '\u00a0';
    }
}
