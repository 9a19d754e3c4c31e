package outwind.scan;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import outwind.board.BadBoardFile;
import outwind.board.Fault;
import outwind.board.PointCloud;

/**
 * A scan written as text: lines that begin with {@code #}, perhaps a line that names the columns, then a row for each
 * point. Without names the first three numbers of a row are x, y and z.
 *
 * <p>The first row tells what parts its cells: a semicolon, else a tab, else commas or blanks. With semicolons or tabs
 * a decimal comma is fine.
 */
final class TextScan {

    /** A header is a few lines; more of it than this is none. */
    private static final int LONGEST_HEADER = 1 << 16;

    private static final Pattern NUMBER_OR_WORD = Pattern.compile("(?i)[-+]?([0-9.,]|nan\\b|inf).*");

    /** Behind a separator that is none in a quoted name: quotes come in pairs from there to the end. */
    private static final String OUTSIDE_QUOTES = "(?=([^\"]*\"[^\"]*\")*[^\"]*$)";

    private final ScanSource source;
    private final ScanFaults faults;
    private final List<HeaderLine> header = new ArrayList<>();

    private TextScan(ScanSource source, ScanFaults faults) {
        this.source = source;
        this.faults = faults;
    }

    static Scan read(ScanSource source, ScanFaults faults) throws IOException, BadBoardFile {
        return new TextScan(source, faults).read();
    }

    private Scan read() throws IOException, BadBoardFile {
        byte[] start = source.start(LONGEST_HEADER);
        int at = start.length >= 3 && start[0] == (byte) 0xEF && start[1] == (byte) 0xBB && start[2] == (byte) 0xBF
            ? 3 : 0;
        for (int line = 1; at < start.length; line++) {
            int end = at;
            while (end < start.length && start[end] != '\n') {
                end++;
            }
            String whole = new String(start, at, end - at, StandardCharsets.UTF_8);
            String text = whole.strip();
            if (text.startsWith("#")) {
                HeaderLine.in(faults.file(), line, whole, whole.indexOf('#') + 1).ifPresent(header::add);
            } else if (!text.isEmpty()) {
                boolean names = !NUMBER_OR_WORD.matcher(text.replace("\"", "")).matches();
                RowForm form = names ? named(text, line, firstRow(start, end + 1)) : bare(text);
                return rows(form, names ? end + 1 : at, names ? line + 1 : line);
            }
            at = end + 1;
        }
        throw faults.whole("rows of x y z", start.length < source.size() ? "a header of more than "
            + LONGEST_HEADER + " bytes" : "no rows", "Save the scan as text with one point x y z on each line.");
    }

    private Scan rows(RowForm form, long start, long firstLine) throws IOException, BadBoardFile {
        TextRows rows = new TextRows(source, form, faults, Math.min(start, source.size()), firstLine, Long.MAX_VALUE);
        PointCloud points = rows.read();
        if (points.size() == 0) {
            throw faults.whole("rows of x y z", "no measured point",
                "Save the scan as text with one point x y z on each line.");
        }
        return new Scan(header, points, rows.unmeasured());
    }

    /** The first row after the names, if it lies within the header's reach. */
    private static String firstRow(byte[] start, int from) {
        int end = from;
        while (end < start.length && start[end] != '\n') {
            end++;
        }
        return from >= start.length ? "" : new String(start, from, end - from, StandardCharsets.UTF_8);
    }

    private static RowForm bare(String row) {
        byte separator = separator(row, RowForm.BLANKS);
        return RowForm.bare(separator, decimalMark(separator, row));
    }

    private RowForm named(String names, int line, String firstRow) throws BadBoardFile {
        byte separator = separator(names, names.contains(",") ? (byte) ',' : RowForm.BLANKS);
        String[] cells = names.split(separator == RowForm.BLANKS ? "\\s+" : (char) separator + OUTSIDE_QUOTES, -1);
        int[] columns = {-1, -1, -1};
        for (int i = 0; i < cells.length; i++) {
            String name = cells[i].replace("\"", "").strip().toLowerCase(Locale.ROOT);
            int axis = name.length() == 1 ? "xyz".indexOf(name) : -1;
            if (axis >= 0 && columns[axis] < 0) {
                columns[axis] = i;
            }
        }
        if (columns[0] < 0 || columns[1] < 0 || columns[2] < 0) {
            faults.add(line, 1, "columns named x, y and z", Fault.shown(names),
                "Name the columns in the line above the rows: x,y,z.");
            faults.throwIfAny();
        }
        return new RowForm(separator, decimalMark(separator, firstRow), columns);
    }

    private static byte separator(String row, byte otherwise) {
        return row.contains(";") ? (byte) ';' : row.contains("\t") ? (byte) '\t' : otherwise;
    }

    private static byte decimalMark(byte separator, String row) {
        return (byte) ((separator == ';' || separator == '\t') && row.contains(",") && !row.contains(".") ? ',' : '.');
    }
}
