package outwind.board.file;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.Units;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.Row;

/** Which column of a cutting bill holds what, as its first row names them. */
final class BillHeader {

    // length, length (mm), length [mm]
    private static final Pattern NAME = Pattern.compile("(?<name>[^(\\[]++)(?:[(\\[](?<unit>[^)\\]]*+)[)\\]])?+");

    private final Row row;
    private final Map<BillColumn, Integer> places;

    private BillHeader(Row row, Map<BillColumn, Integer> places) {
        this.row = row;
        this.places = places;
    }

    /** The columns that a row names, or nothing if a needed one is missing; a fault for whatever is wrong. */
    static Optional<BillHeader> read(Row row, Units units, FaultList faults) {
        Map<BillColumn, Integer> places = new EnumMap<>(BillColumn.class);
        int before = faults.count();
        for (int index = 0; index < row.cells().size(); index++) {
            place(row.cell(index), index, units, places, faults);
        }
        for (BillColumn needed : BillColumn.values()) {
            if (needed.isNeeded() && !places.containsKey(needed)) {
                faults.add(row.line(), row.end(), "a column " + needed.word(), "the end of the row",
                    "A cutting bill needs the columns name, length, width, thickness and quantity.");
            }
        }
        return faults.count() == before ? Optional.of(new BillHeader(row, places)) : Optional.empty();
    }

    /** The row's cell in a column; blank if the bill has no such column. */
    Cell cell(BillColumn column, Row below) {
        return below.cell(places.getOrDefault(column, Integer.MAX_VALUE));
    }

    boolean has(BillColumn column) {
        return places.containsKey(column);
    }

    /** The first filled cell of a row that stands in no named column. */
    Optional<Cell> unnamed(Row below) {
        return below.cells().stream()
            .filter(cell -> !cell.isBlank() && row.cell(below.cells().indexOf(cell)).isBlank()).findFirst();
    }

    int line() {
        return row.line();
    }

    private static void place(Cell cell, int index, Units units, Map<BillColumn, Integer> places, FaultList faults) {
        Matcher written = NAME.matcher(cell.text());
        Optional<BillColumn> column = written.matches() ? BillColumn.find(written.group("name")) : Optional.empty();
        String unit = column.isPresent() ? written.group("unit") : null;
        if (column.isEmpty() || unit != null && (!column.get().isLength() || Units.find(unit).isEmpty())) {
            if (!cell.isBlank()) {
                faults.add(cell, "a column name, length, width, thickness, quantity, value or any grain",
                    BillColumn.suggestion(cell.text()) + "Rename it or take it out.");
            }
            return;
        }
        if (unit != null && Units.find(unit).get() != units) {
            faults.add(cell, column.get().word() + " in " + units.symbol(), "Bare numbers of this file are read in "
                + units.symbol() + ": correct the column's name, or state the units in a line \"# units: "
                + Units.find(unit).get().symbol() + "\".");
        }
        if (places.putIfAbsent(column.get(), index) != null) {
            faults.add(cell, "one column " + column.get().word(), "Rename it or take it out.");
        }
    }
}
