package outwind.board.file;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.Units;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.Row;

/** Which column of a table holds what, as its first row names them. */
final class Header {

    // x, x mm, x (mm), x [mm]
    private static final Pattern NAME = Pattern.compile("(?<name>[^\\s(\\[]++)\\s*+[(\\[]?+(?<unit>[^)\\]]*+)[)\\]]?+");
    private static final Pattern CORNER = Pattern.compile("y\\s*+[\\\\/]\\s*+x", Pattern.CASE_INSENSITIVE);

    private final Row row;
    private final Map<Column, Integer> places;

    private Header(Row row, Map<Column, Integer> places) {
        this.row = row;
        this.places = places;
    }

    /** Whether a cell is the corner {@code y\x} of a table that holds readings in its cells. */
    static boolean isCorner(Cell cell) {
        return CORNER.matcher(cell.text()).matches();
    }

    /** The columns that a row names, or nothing if a needed one is missing; a fault for whatever is wrong. */
    static Optional<Header> read(Row row, Units units, FaultList faults) {
        Map<Column, Integer> places = new EnumMap<>(Column.class);
        if (row.cells().stream().noneMatch(cell -> column(cell).isPresent())) {
            Cell first = row.firstFrom(0).orElse(row.cell(0));
            faults.add(first, "a header row such as x,y,z",
                "Above the first row of numbers put a row that names the columns: x, y, z, thickness, face, note.");
            return Optional.empty();
        }
        for (int index = 0; index < row.cells().size(); index++) {
            place(row.cell(index), index, units, places, faults);
        }
        return isWhole(row, places, faults) ? Optional.of(new Header(row, places)) : Optional.empty();
    }

    /** The row's cell in a column; blank if the table has no such column. */
    Cell cell(Column column, Row below) {
        return below.cell(places.getOrDefault(column, Integer.MAX_VALUE));
    }

    /** Whether nothing is written over a column. */
    boolean isUnnamed(int index) {
        return row.cell(index).isBlank();
    }

    /** These columns and one more behind them. */
    Header with(Column column) {
        Map<Column, Integer> more = new EnumMap<>(places);
        more.put(column, row.cells().size());
        return new Header(row, more);
    }

    boolean has(Column column) {
        return places.containsKey(column);
    }

    /**
     * A row that holds these cells under their columns. Blank cells at its end are left out, up to the one under z: a
     * row shows that a place was not touched.
     *
     * @param cells as they are written, quoted where they must be
     * @param mark  what stands between cells
     */
    String row(Map<Column, String> cells, char mark) {
        int last = places.get(Column.Z);
        for (Map.Entry<Column, String> cell : cells.entrySet()) {
            last = cell.getValue().isEmpty() ? last : Math.max(last, places.get(cell.getKey()));
        }
        String[] row = new String[last + 1];
        Arrays.fill(row, "");
        cells.forEach((column, text) -> {
            if (!text.isEmpty()) {
                row[places.get(column)] = text;
            }
        });
        return String.join(String.valueOf(mark), row);
    }

    int line() {
        return row.line();
    }

    private static void place(Cell cell, int index, Units units, Map<Column, Integer> places, FaultList faults) {
        Optional<Column> column = column(cell);
        if (column.isPresent()) {
            requireUnits(cell, column.get(), units, faults);
            if (places.putIfAbsent(column.get(), index) != null) {
                faults.add(cell, "one column " + column.get().word(), "Rename it or take it out.");
            }
        } else if (!cell.isBlank()) {
            faults.add(cell, "a column x, y, z, thickness, face or note",
                Column.suggestion(cell.text()) + "Rename it or take it out; remarks go into a column named note.");
        }
    }

    /** The column a cell names, with or without a unit behind the name. */
    static Optional<Column> column(Cell cell) {
        Matcher written = NAME.matcher(cell.text());
        return written.matches()
            ? Column.find(written.group("name"))
                .filter(column -> written.group("unit").isBlank() || column.isLength() && unit(cell).isPresent())
            : Optional.empty();
    }

    private static Optional<Units> unit(Cell cell) {
        Matcher written = NAME.matcher(cell.text());
        return written.matches() ? Units.find(written.group("unit")) : Optional.empty();
    }

    private static void requireUnits(Cell cell, Column column, Units units, FaultList faults) {
        if (unit(cell).isPresent() && unit(cell).get() != units) {
            faults.add(cell, column.word() + " in " + units.symbol(), "Bare numbers of this file are read in "
                + units.symbol() + ": correct the column's name, or state the units in a line \"# units: "
                + unit(cell).get().symbol() + "\".");
        }
    }

    private static boolean isWhole(Row row, Map<Column, Integer> places, FaultList faults) {
        boolean whole = true;
        for (Column needed : new Column[] {Column.X, Column.Y}) {
            if (!places.containsKey(needed)) {
                faults.add(row.line(), row.end(), "a column " + needed.word(), "the end of the row",
                    "Every reading needs its place: x along the grain and y across.");
                whole = false;
            }
        }
        if (!places.containsKey(Column.Z) && !places.containsKey(Column.THICKNESS)) {
            faults.add(row.line(), row.end(), "a column z or thickness", "the end of the row",
                "Add a column z with the heights touched off, or thickness with the caliper readings.");
            whole = false;
        }
        return whole;
    }
}
