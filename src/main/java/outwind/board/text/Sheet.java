package outwind.board.text;

import java.util.List;

/**
 * A file's lines by what they are for.
 *
 * @param keyLines  lines that begin with #
 * @param rows      the table's lines, header first where it has one; no blank lines
 * @param delimiter what stands between the table's cells
 */
public record Sheet(List<Line> keyLines, List<Line> rows, Delimiter delimiter) {

    /** A table with a header, which shows the delimiter. */
    public static Sheet ofTable(List<Line> lines) {
        List<Line> rows = rows(lines);
        return new Sheet(keyLines(lines), rows, rows.isEmpty() ? Delimiter.COMMA : Delimiter.of(rows.get(0)));
    }

    /** Points without a header, separated by white space. */
    public static Sheet ofPoints(List<Line> lines) {
        return new Sheet(keyLines(lines), rows(lines), Delimiter.SPACE);
    }

    private static List<Line> keyLines(List<Line> lines) {
        return lines.stream().filter(Line::isKeyLine).toList();
    }

    private static List<Line> rows(List<Line> lines) {
        return lines.stream().filter(line -> !line.isBlank() && !line.isKeyLine()).toList();
    }
}
