package outwind.scan;

import java.nio.charset.StandardCharsets;
import outwind.board.Fault;

/** Reads rows of a text scan, one after another, into a portion of the points. One reader serves one thread. */
final class RowReader {

    private static final String[] NAMES = {"x", "y", "z"};

    private final RowForm form;
    private final int lastColumn;
    private final NumberScanner scanner;
    private final ScanFaults faults;
    private final double[] point = new double[3];
    private int unmeasured;

    RowReader(RowForm form, ScanFaults faults) {
        this.form = form;
        this.lastColumn = form.lastColumn();
        this.scanner = new NumberScanner(form.decimalMark());
        this.faults = faults;
    }

    /** Rows so far whose point has a number that was not measured. */
    int unmeasured() {
        return unmeasured;
    }

    /**
     * Reads one row; a blank line and a remark are passed over.
     *
     * @param from first byte of the line
     * @param to   behind its last, line end not counted
     * @param line its number in the file, for faults
     * @return 1 if {@link #point} now holds a point, else 0
     */
    int read(byte[] bytes, int from, int to, long line) {
        int at = from;
        while (at < to && isBlank(bytes[at])) {
            at++;
        }
        if (at == to || bytes[at] == '#') {
            return 0;
        }
        boolean ofBlanks = form.separator() == RowForm.BLANKS;
        at = ofBlanks ? at : from;
        for (int column = 0; column <= lastColumn; column++) {
            int wanted = wanted(column);
            at = ofBlanks ? passSeparators(bytes, at, to) : column == 0 ? at : next(bytes, at, to);
            if (at < 0 || at >= to && ofBlanks) {
                faults.add(line, to - from + 1, "x, y and z in each row", "the end of the row",
                    "Write the row anew with all its numbers, or delete it.");
                return 0;
            }
            int end = wanted < 0 ? ofBlanks ? word(bytes, at, to) : at : number(bytes, at, to, wanted);
            if (end < 0) {
                faults.add(line, at - from + 1, NAMES[wanted] + " as a number", shown(bytes, at, to),
                    "Write a plain number such as -1.25, with a decimal point.");
                return 0;
            }
            at = end;
        }
        if (Double.isFinite(point[0] + point[1] + point[2])) {
            return 1;
        }
        unmeasured++;
        return 0;
    }

    /** x, y and z of the row that was read last. */
    double[] point() {
        return point;
    }

    private int wanted(int column) {
        int[] columns = form.columns();
        return columns[0] == column ? 0 : columns[1] == column ? 1 : columns[2] == column ? 2 : -1;
    }

    /** Reads a wanted cell; −1 if it is no number. An empty cell was not measured. */
    private int number(byte[] bytes, int from, int to, int wanted) {
        int at = from;
        while (at < to && isBlank(bytes[at]) && bytes[at] != form.separator()) {
            at++;
        }
        boolean quoted = at < to && bytes[at] == '"';
        if (!quoted && isEnd(bytes, at, to)) {
            point[wanted] = Double.NaN;
            return at;
        }
        int end = scanner.scan(bytes, quoted ? at + 1 : at, to);
        if (end < 0 || quoted && (end == to || bytes[end] != '"')) {
            return -1;
        }
        end += quoted ? 1 : 0;
        while (form.separator() != RowForm.BLANKS && end < to && isBlank(bytes[end])
            && bytes[end] != form.separator()) {
            end++;
        }
        point[wanted] = scanner.value();
        return isEnd(bytes, end, to) ? end : -1;
    }

    private boolean isEnd(byte[] bytes, int at, int to) {
        return at == to || (form.separator() == RowForm.BLANKS ? isBlank(bytes[at]) || bytes[at] == ','
            : bytes[at] == form.separator());
    }

    private static boolean isBlank(byte b) {
        return b == ' ' || b == '\t' || b == '\r';
    }

    /** Where the next cell of a row of blanks begins. One comma parts two cells, with blanks about it or without. */
    private static int passSeparators(byte[] bytes, int from, int to) {
        int at = from;
        while (at < to && isBlank(bytes[at])) {
            at++;
        }
        if (at < to && bytes[at] == ',') {
            at++;
            while (at < to && isBlank(bytes[at])) {
                at++;
            }
        }
        return at;
    }

    /** End of a cell of a row of blanks that is passed over. */
    private static int word(byte[] bytes, int from, int to) {
        int at = from;
        while (at < to && !isBlank(bytes[at]) && bytes[at] != ',') {
            at++;
        }
        return at;
    }

    /** Behind the separator that ends the cell at {@code from}; −1 if the row ends first. Quotes hide separators. */
    private int next(byte[] bytes, int from, int to) {
        boolean quoted = false;
        for (int at = from; at < to; at++) {
            if (bytes[at] == '"') {
                quoted = !quoted;
            } else if (!quoted && bytes[at] == form.separator()) {
                return at + 1;
            }
        }
        return -1;
    }

    private String shown(byte[] bytes, int from, int to) {
        int end = from;
        while (end < to && !isEnd(bytes, end, to)) {
            end++;
        }
        return Fault.shown(new String(bytes, from, Math.min(end, from + 80) - from, StandardCharsets.UTF_8));
    }
}
