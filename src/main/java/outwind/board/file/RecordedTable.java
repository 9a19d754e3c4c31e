package outwind.board.file;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import outwind.board.Face;
import outwind.board.Fault;
import outwind.board.LengthReader;
import outwind.board.Place;
import outwind.board.Quantity;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Delimiter;
import outwind.board.text.FaultList;
import outwind.board.text.Line;
import outwind.board.text.Row;
import outwind.board.text.Sheet;
import outwind.board.text.TornTail;

/**
 * The text of a board file to which rows are added: its lines as they stand, ends and all, and what its table's rows
 * on face A hold.
 */
final class RecordedTable {

    private static final Pattern DECIMAL_COMMA = Pattern.compile("\\d,\\d");

    /** The note of a planned place that is left out. */
    private static final String SKIPPED = "skipped";

    private static final Pattern BEHIND_LINE_END = Pattern.compile("(?<=\n)|(?<=\r)(?!\n)");

    /** Name of a file that was read before and had no faults. */
    private static final String FAULTLESS = "";

    /**
     * A row on face A that plans a touch-off or holds one.
     *
     * @param line   line of the file, 1-based
     * @param place  where
     * @param height as it is written; empty if the row holds none
     * @param note   what stands beside it
     * @param alone  true if it holds no caliper reading as well
     */
    record Touch(int line, Place place, String height, String note, boolean alone) {

        boolean isSkipped() {
            return height.isEmpty() && note.equals(SKIPPED);
        }

        boolean isPlanned() {
            return height.isEmpty() && !isSkipped();
        }
    }

    private final List<String> lines;
    private final Header<Column> header;
    private final Delimiter delimiter;
    private final LengthReader gauge;
    private final List<Touch> rows;
    private final List<Touch> calipers;

    private RecordedTable(List<String> lines, Header<Column> header, Delimiter delimiter, LengthReader gauge, List<Touch> rows,
                          List<Touch> calipers) {
        this.lines = lines;
        this.header = header;
        this.delimiter = delimiter;
        this.gauge = gauge;
        this.rows = rows;
        this.calipers = calipers;
    }

    /** Takes a text apart that can be read as a board with a table of named columns, and whose last line ends. */
    static RecordedTable of(String text, Units units) {
        FaultList faults = new FaultList(FAULTLESS);
        Sheet sheet = Sheet.ofTable(Line.split(text, faults));
        LengthReader gauge = new LengthReader(units, sheet.delimiter().allowsDecimalComma());
        Header<Column> header = Row.split(sheet.rows().get(0), sheet.delimiter(), faults)
            .flatMap(row -> Header.read(row, Form.BOARD, units, faults)).orElseThrow();
        List<Touch> rows = new ArrayList<>();
        List<Touch> calipers = new ArrayList<>();
        for (Line line : sheet.rows().subList(1, sheet.rows().size())) {
            Row row = Row.split(line, sheet.delimiter(), faults).orElseThrow();
            String height = header.cell(Column.Z, row).text();
            boolean alone = header.cell(Column.THICKNESS, row).isBlank();
            if (Face.named(header.cell(Column.FACE, row).text()) == Face.A) {
                Place place = new Place(gauge.read(Quantity.X, header.cell(Column.X, row).text()),
                    gauge.read(Quantity.Y, header.cell(Column.Y, row).text()));
                (alone || !height.isEmpty() ? rows : calipers)
                    .add(new Touch(line.number(), place, height, header.cell(Column.NOTE, row).text(), alone));
            }
        }
        return new RecordedTable(rawLines(text), header, sheet.delimiter(), gauge, List.copyOf(rows),
            List.copyOf(calipers));
    }

    /**
     * A text made ready for rows to be added: its last line ends, a remark says that every line does, and there is a
     * header row.
     *
     * @throws BadBoardFile if the table has no named columns with one for heights
     */
    static String prepared(String text, FaultList faults) throws BadBoardFile {
        List<Line> split = Line.split(text, faults);
        faults.throwIfAny();
        Sheet sheet = Sheet.ofTable(split);
        if (!sheet.rows().isEmpty()) {
            requireHeights(sheet, faults);
        }
        boolean marked = split.stream().anyMatch(line -> line.text().equals(TornTail.REMARK));
        String ended = above(text, marked ? List.of() : List.of(TornTail.REMARK));
        return sheet.rows().isEmpty() ? ended + "x,y,z,note" + lineEnd(text) : ended;
    }

    /** A text whose last line ends, with more lines above its table. */
    static String above(String text, List<String> more) {
        List<String> lines = rawLines(text);
        String end = lineEnd(text);
        int last = lines.size() - 1;
        if (last >= 0 && !lines.get(last).endsWith("\n") && !lines.get(last).endsWith("\r")) {
            lines.set(last, lines.get(last) + end);
        }
        List<Line> rows = Sheet.ofTable(Line.split(text, new FaultList(FAULTLESS))).rows();
        lines.addAll(rows.isEmpty() ? lines.size() : rows.get(0).number() - 1,
            more.stream().map(line -> line + end).toList());
        return String.join("", lines);
    }

    /** Whether the first row of a sheet names a column. */
    static boolean names(Sheet sheet, Column column) {
        return !sheet.rows().isEmpty() && Row.split(sheet.rows().get(0), sheet.delimiter(), new FaultList(FAULTLESS))
            .stream().flatMap(row -> row.cells().stream())
            .anyMatch(cell -> ColumnName.of(cell, List.of(column)).isPresent());
    }

    private static void requireHeights(Sheet sheet, FaultList faults) throws BadBoardFile {
        if (!names(sheet, Column.Z)) {
            faults.add(sheet.rows().get(0).number(), 1, "a table with the columns x, y and z",
                Fault.shown(sheet.rows().get(0).text()), "Rows can be added only to a table that names its columns:"
                    + " begin another file for what is touched from here on.");
        }
        faults.throwIfAny();
    }

    /** Whether a column is named and some row has something in it. */
    static boolean fills(Sheet sheet, Column column) {
        FaultList ignored = new FaultList(FAULTLESS);
        List<Row> rows = sheet.rows().stream()
            .flatMap(line -> Row.split(line, sheet.delimiter(), ignored).stream()).toList();
        return names(sheet, column) && Header.read(rows.get(0), Form.BOARD, Units.MILLIMETRES, ignored).stream()
            .anyMatch(header -> rows.stream().skip(1).anyMatch(row -> !header.cell(column, row).isBlank()));
    }

    String text() {
        return String.join("", lines);
    }

    LengthReader gauge() {
        return gauge;
    }

    /** The rows on face A that plan a touch-off or hold one, in the order of the file. */
    List<Touch> rows() {
        return rows;
    }

    /** The rows that hold a caliper reading and no height. */
    List<Touch> calipers() {
        return calipers;
    }

    /** The height (mm) that a row holds; empty if it holds none. */
    OptionalDouble height(Touch row) {
        return row.height().isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(gauge.read(Quantity.Z, row.height()));
    }

    String withRow(Place place, String height) {
        return text() + row(place, height, "") + lineEnd(text());
    }

    String withSkipped(Place place) {
        return withColumn(Column.NOTE) + row(place, "", SKIPPED) + lineEnd(text());
    }

    String withCaliper(Place place, String thickness) {
        Map<Column, String> cells = at(place);
        cells.put(Column.THICKNESS, quoted(decimalMark().apply(thickness)));
        return withColumn(Column.THICKNESS) + having(Column.THICKNESS).row(cells, Column.Z, delimiter.mark()) + lineEnd(text());
    }

    String withNote(Touch row, String note) {
        List<String> changed = rawLines(withColumn(Column.NOTE));
        changed.set(row.line() - 1, row(row.place(), row.height(), note) + lineEnd(text()));
        return String.join("", changed);
    }

    /** The text without the lines of some rows. */
    String without(List<Touch> left) {
        List<String> kept = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            int line = i + 1;
            if (left.stream().noneMatch(row -> row.line() == line)) {
                kept.add(lines.get(i));
            }
        }
        return String.join("", kept);
    }

    private String withColumn(Column column) {
        if (header.has(column)) {
            return text();
        }
        List<String> wider = new ArrayList<>(lines);
        String names = wider.get(header.line() - 1).stripTrailing();
        wider.set(header.line() - 1, names + delimiter.mark() + column.word() + lineEnd(text()));
        return String.join("", wider);
    }

    private String row(Place place, String height, String note) {
        Map<Column, String> cells = at(place);
        cells.put(Column.Z, quoted(decimalMark().apply(height)));
        // A note must not be taken for a line of its own.
        cells.put(Column.NOTE, quoted(Line.fit(note.replaceFirst("^[\\s#]+", ""), Line.LONGEST_NOTE)));
        return (note.isEmpty() ? header : having(Column.NOTE)).row(cells, Column.Z, delimiter.mark());
    }

    private Map<Column, String> at(Place place) {
        Map<Column, String> cells = new EnumMap<>(Column.class);
        cells.put(Column.X, quoted(decimalMark().apply(gauge.units().plain(place.x()))));
        cells.put(Column.Y, quoted(decimalMark().apply(gauge.units().plain(place.y()))));
        return cells;
    }

    private Header<Column> having(Column column) {
        return header.has(column) ? header : header.with(column);
    }

    /** Gives a number the decimal mark that the table has: two marks in one file would be doubtful. */
    private UnaryOperator<String> decimalMark() {
        if (!delimiter.allowsDecimalComma()) {
            return number -> number;
        }
        boolean hasComma = lines.stream().anyMatch(line -> !line.stripLeading().startsWith("#")
            && DECIMAL_COMMA.matcher(line).find());
        return hasComma ? number -> number.replace('.', ',') : number -> number.replace(',', '.');
    }

    private String quoted(String cell) {
        boolean plain = cell.indexOf(delimiter.mark()) < 0 && cell.indexOf('"') < 0;
        return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }

    /** The lines of a text with their ends; split as {@link Line#split} does. */
    private static List<String> rawLines(String text) {
        return new ArrayList<>(text.isEmpty() ? List.of() : List.of(BEHIND_LINE_END.split(text)));
    }

    private static String lineEnd(String text) {
        return text.contains("\r\n") ? "\r\n" : "\n";
    }
}
