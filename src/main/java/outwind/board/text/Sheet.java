package outwind.board.text;

import java.util.ArrayList;
import java.util.List;

/**
 * A file's lines by what they are for.
 *
 * @param keyLines  lines that begin with #, and lines {@code key: value} above the table
 * @param rows      the table's lines, header first where it has one; no blank lines
 * @param delimiter what stands between the table's cells
 */
public record Sheet(List<Line> keyLines, List<Line> rows, Delimiter delimiter) {

    /** A table with a header, which shows the delimiter. */
    public static Sheet ofTable(List<Line> lines) {
        Sheet sheet = ofPoints(lines);
        return new Sheet(sheet.keyLines, sheet.rows,
            sheet.rows.isEmpty() ? Delimiter.COMMA : Delimiter.of(sheet.rows.get(0)));
    }

    /** Points without a header, separated by white space. */
    public static Sheet ofPoints(List<Line> lines) {
        List<Line> keyLines = new ArrayList<>();
        List<Line> rows = new ArrayList<>();
        for (Line line : lines) {
            if (line.isKeyLine() || rows.isEmpty() && line.isKeyWithoutMark()) {
                keyLines.add(line);
            } else if (!line.isBlank()) {
                rows.add(line);
            }
        }
        return new Sheet(List.copyOf(keyLines), List.copyOf(rows), Delimiter.SPACE);
    }
}
