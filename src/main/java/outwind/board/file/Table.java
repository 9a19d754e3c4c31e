package outwind.board.file;

import java.util.List;
import java.util.Optional;
import outwind.board.Face;
import outwind.board.Fault;
import outwind.board.Fault.Kind;
import outwind.board.Units;
import outwind.board.text.Cell;
import outwind.board.text.Delimiter;
import outwind.board.text.FaultList;
import outwind.board.text.Line;
import outwind.board.text.Row;
import outwind.board.text.Sheet;

/** Reads the rows of a sheet in whichever layout they have: named columns, readings in cells, or bare points. */
final class Table {

    // More than anybody touches off or types; a scan has a reader of its own.
    static final int MOST_READINGS = 50_000;

    private final Sheet sheet;
    private final Units units;
    private final Measurements measured;
    private final FaultList faults;

    private Table(Sheet sheet, Units units, Measurements measured, FaultList faults) {
        this.sheet = sheet;
        this.units = units;
        this.measured = measured;
        this.faults = faults;
    }

    /**
     * Hands every row's values to {@code measured}.
     *
     * @return whether the rows could be distinguished; if not, a fault says why
     */
    static boolean read(Sheet sheet, Units units, Measurements measured, FaultList faults) {
        return new Table(sheet, units, measured, faults).read();
    }

    private boolean read() {
        if (sheet.rows().isEmpty()) {
            faults.addForFile(Kind.NO_READINGS, "readings", "nothing", sheet.delimiter() == Delimiter.SPACE
                ? "Write one point x y z on each line."
                : "Add a header row such as \"x,y,z\" and below it one row for each point.");
            return false;
        }
        int headers = sheet.delimiter() == Delimiter.SPACE ? 0 : 1;
        if (sheet.rows().size() - headers > MOST_READINGS) {
            refuseReadings(sheet.rows().get(MOST_READINGS + headers), sheet.rows().size() - headers + " rows");
            return false;
        }
        if (sheet.delimiter() == Delimiter.SPACE) {
            sheet.rows().forEach(this::readPoint);
            return true;
        }
        return Row.split(sheet.rows().get(0), sheet.delimiter(), faults).map(this::readBelow).orElse(false);
    }

    private void refuseReadings(Line beyond, String found) {
        faults.add(beyond.number(), 1, "at most " + MOST_READINGS + " readings", found,
            "Thin them out, for instance to every tenth.");
    }

    private void readPoint(Line line) {
        Row row = split(line).orElseThrow();
        if (row.cells().size() != 3) {
            measured.missRow();
            faults.add(row.line(), row.cell(0).column(), "three numbers x y z", Fault.shown(line.text().strip()),
                "Write the place along the grain, the place across and the height, and nothing else.");
            return;
        }
        Optional<Double> x = measured.x(row.cell(0), Face.A);
        Optional<Double> y = measured.y(row.cell(1), Face.A);
        measured.touch(x, y, row.cell(2).ofReading(), Face.A, "");
    }

    private boolean readBelow(Row header) {
        if (Header.isCorner(header.cell(0))) {
            // One row of a table like this holds many readings.
            long cells = (header.cells().size() - 1L) * below().size();
            if (cells > MOST_READINGS) {
                refuseReadings(below().get(MOST_READINGS / (header.cells().size() - 1)), cells + " cells");
                return false;
            }
            if (Header.isOfDepths(header.cell(0))) {
                measured.countDownwards();
            }
            readCells(header);
            return true;
        }
        Optional<Header<Column>> named = Header.read(header, Form.BOARD, units, faults)
            .filter(columns -> hasValues(columns, header));
        named.ifPresent(this::readNamed);
        return named.isPresent();
    }

    private boolean hasValues(Header<Column> columns, Row header) {
        if (columns.has(Column.Z) && columns.has(Column.DEPTH)) {
            faults.add(Kind.COLUMN, header.line(), header.end(), "one column z or depth", "both",
                "Take one of them out: z counts upwards, depth downwards.");
            return false;
        }
        if (!columns.has(Column.Z) && !columns.has(Column.DEPTH) && !columns.has(Column.THICKNESS)) {
            faults.add(Kind.MISSING_COLUMN, header.line(), header.end(), "a column z or thickness", "the end of the row",
                "Add a column z with the heights touched off, or thickness with the caliper readings.");
            return false;
        }
        return true;
    }

    private void readNamed(Header<Column> header) {
        if (header.has(Column.DEPTH)) {
            measured.countDownwards();
        }
        List<Row> rows = below().stream().flatMap(line -> split(line).stream()).toList();
        if (sheet.delimiter() == Delimiter.COMMA) {
            DecimalMarks.refuseSplitNumbers(rows, header, faults);
        } else {
            DecimalMarks.refuseTwoMarks(rows, faults);
        }
        rows.forEach(row -> readNamed(row, header));
    }

    private void readNamed(Row row, Header<Column> header) {
        header.refuseUnnamed(row, sheet.delimiter(), faults);
        Face face = faults.read(header.cell(Column.FACE, row), Face::named).orElse(Face.A);
        Optional<Double> x = measured.x(header.cell(Column.X, row), face);
        Optional<Double> y = measured.y(header.cell(Column.Y, row), face);
        measured.touch(x, y, header.cell(measured.hasDepths() ? Column.DEPTH : Column.Z, row), face, header.cell(Column.NOTE, row).text());
        measured.caliper(x, y, header.cell(Column.THICKNESS, row), face);
    }

    private void readCells(Row header) {
        List<Optional<Double>> x = header.cells().stream().skip(1).map(this::position).toList();
        DecimalMarks.requireOrder(header, x, faults);
        List<Row> rows = below().stream().flatMap(line -> split(line).stream()).toList();
        if (sheet.delimiter() == Delimiter.COMMA && DecimalMarks.splitCells(rows, header, faults)) {
            x.forEach(place -> rows.forEach(row -> measured.missRow()));
            return;
        }
        rows.forEach(row -> readCells(row, header, x));
    }

    /** The x position over a column of readings, or nothing where the cell is blank. */
    private Optional<Double> position(Cell cell) {
        return cell.isBlank() ? Optional.empty() : measured.x(cell, Face.A);
    }

    private void readCells(Row row, Row header, List<Optional<Double>> x) {
        Optional<Double> y = measured.y(row.cell(0), Face.A);
        for (int index = 1; index < row.cells().size(); index++) {
            Cell z = row.cell(index).ofReading();
            if (!header.cell(index).isBlank()) {
                measured.touch(x.get(index - 1), y, z, Face.A, "");
            } else if (!z.isBlank()) {
                faults.add(z, "an x position in line " + header.line() + " above this cell",
                    "Write the x position into the first row, or take this cell out.");
            }
        }
    }

    private List<Line> below() {
        return sheet.rows().subList(1, sheet.rows().size());
    }

    private Optional<Row> split(Line line) {
        Optional<Row> row = Row.split(line, sheet.delimiter(), faults);
        if (row.isEmpty()) {
            measured.missRow();
        }
        return row;
    }
}
