package outwind.board.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.Fault;

/**
 * A line split into cells, each with its place. A cell may stand in double quotes; a double quote inside such a cell
 * is written twice.
 *
 * @param line  line of the file, 1-based
 * @param cells from left to right, at least one
 * @param end   column just behind the line's last character, where a missing cell would begin
 */
public record Row(int line, List<Cell> cells, int end) {

    private static final Pattern WORD = Pattern.compile("\\S++");

    /** The cells of a line, or nothing and a fault if its quotes do not match. */
    public static Optional<Row> split(Line line, Delimiter delimiter, FaultList faults) {
        return delimiter == Delimiter.SPACE ? Optional.of(words(line)) : cells(line, delimiter, faults);
    }

    /** The cell at an index; a row that is too short continues with blank cells. */
    public Cell cell(int index) {
        return index < cells.size() ? cells.get(index) : new Cell("", line, end);
    }

    /** The first cell at or after an index that is not blank. */
    public Optional<Cell> firstFrom(int index) {
        return cells.stream().skip(index).filter(cell -> !cell.isBlank()).findFirst();
    }

    private static Row words(Line line) {
        Matcher words = WORD.matcher(line.text());
        List<Cell> cells = words.results()
            .map(word -> new Cell(word.group(), line.number(), word.start() + 1)).toList();
        return new Row(line.number(), cells, line.text().length() + 1);
    }

    private static Optional<Row> cells(Line line, Delimiter delimiter, FaultList faults) {
        String text = line.text();
        List<Cell> cells = new ArrayList<>();
        for (int from = 0; from <= text.length();) {
            int start = skipSpaces(text, from, delimiter);
            boolean quoted = text.startsWith("\"", start);
            int close = quoted ? closingQuote(text, start) : start;
            if (quoted && close == text.length()) {
                faults.add(line.number(), start + 1, "a closing quote", "the end of the line",
                    "Close the cell with a double quote; a double quote inside it is written twice.");
                return Optional.empty();
            }
            int end = endOfCell(text, close, delimiter);
            if (quoted && !text.substring(close + 1, end).isBlank()) {
                faults.add(line.number(), close + 2, delimiter.word() + " after the closing quote",
                    Fault.shown(text.substring(close + 1, end).strip()),
                    "A double quote inside a quoted cell is written twice.");
                return Optional.empty();
            }
            cells.add(new Cell(content(text, start, quoted ? close : end), line.number(), start + 1));
            from = end + 1;
        }
        return Optional.of(new Row(line.number(), cells, text.length() + 1));
    }

    private static int skipSpaces(String text, int from, Delimiter delimiter) {
        int at = from;
        while (at < text.length() && text.charAt(at) != delimiter.mark() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
        return at;
    }

    /** Index of the quote that closes the one at {@code open}, or the text's length if none does. */
    private static int closingQuote(String text, int open) {
        int at = open + 1;
        while (at < text.length() && (text.charAt(at) != '"' || text.startsWith("\"", at + 1))) {
            at += text.charAt(at) == '"' ? 2 : 1;
        }
        return Math.min(at, text.length());
    }

    private static int endOfCell(String text, int from, Delimiter delimiter) {
        int end = text.indexOf(delimiter.mark(), from);
        return end < 0 ? text.length() : end;
    }

    /** What stands between {@code start} and {@code end}, which is the closing quote if there is an opening one. */
    private static String content(String text, int start, int end) {
        String content = text.startsWith("\"", start)
            ? text.substring(start + 1, end).replace("\"\"", "\"")
            : text.substring(start, end);
        // A spreadsheet's no-break space alone is still a blank cell.
        return content.replace('\u00a0', ' ').isBlank() ? "" : content.strip();
    }
}
