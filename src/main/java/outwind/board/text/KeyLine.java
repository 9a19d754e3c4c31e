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
    public static Optional<KeyLine> of(Line line, Delimiter delimiter, FaultList faults) {
        Optional<Cell> whole = line.text().stripLeading().startsWith("\"")
            ? unquoted(line, delimiter == Delimiter.SPACE ? Delimiter.COMMA : delimiter, faults)
            : Optional.of(new Cell(line.text(), line.number(), 1));
        return whole.filter(cell -> cell.text().indexOf(':') >= 0).map(cell -> {
            int begin = cell.text().stripLeading().startsWith("#") ? cell.text().indexOf('#') + 1 : 0;
            int colon = cell.text().indexOf(':');
            return new KeyLine(part(cell, begin, Math.max(begin, colon)), part(cell, colon + 1, cell.text().length()));
        });
    }

    /** The first cell of a line that a spreadsheet has put in quotes for a comma in it; it begins behind the quote. */
    private static Optional<Cell> unquoted(Line line, Delimiter delimiter, FaultList faults) {
        return Row.split(line, delimiter, faults).map(row -> row.cell(0))
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
