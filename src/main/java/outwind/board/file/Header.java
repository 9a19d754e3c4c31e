package outwind.board.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.Fault.Kind;
import outwind.board.Units;
import outwind.board.text.Cell;
import outwind.board.text.Delimiter;
import outwind.board.text.FaultList;
import outwind.board.text.Row;
import outwind.board.text.Spelling;

/** Which column of a table holds what, as its first row names them. */
final class Header<C extends Enum<C> & TableColumn> {

    private static final Pattern CORNER = Pattern.compile("(?<depth>depth\\s++)?y\\s*+[\\\\/]\\s*+x", Pattern.CASE_INSENSITIVE);

    private final Row row;
    private final Map<C, Integer> places;
    private final List<String> ignored;

    private Header(Row row, Map<C, Integer> places, List<String> ignored) {
        this.row = row;
        this.places = places;
        this.ignored = ignored;
    }

    /** Whether a cell is the corner {@code y\\x} of a table that holds readings in its cells. */
    static boolean isCorner(Cell cell) {
        return CORNER.matcher(cell.text()).matches();
    }

    /** Whether such a corner says that its cells hold depths, as {@code depth y\\x}. */
    static boolean isOfDepths(Cell corner) {
        Matcher words = CORNER.matcher(corner.text());
        return words.matches() && words.group("depth") != null;
    }

    /** The columns that a row names, or nothing if a needed one is missing; a fault for whatever is wrong. */
    static <C extends Enum<C> & TableColumn> Optional<Header<C>> read(Row row, Form<C> form, Units units,
            FaultList faults) {
        if (isOfOtherForm(row, form, faults)) {
            return Optional.empty();
        }
        if (row.cells().stream().noneMatch(cell -> ColumnName.of(cell, form.all()).isPresent())) {
            Cell first = row.firstFrom(0).orElse(row.cell(0));
            if (!Keys.isForgottenColon(first, form.keys(), faults)) {
                faults.add(first, "a header row such as " + form.example(), "Above the first row of numbers put a row"
                    + " that names the columns: " + String.join(", ", Worded.words(form.columns())) + ".");
            }
            return Optional.empty();
        }
        Map<C, Integer> places = new EnumMap<>(form.columns());
        List<Cell> others = new ArrayList<>();
        for (int index = 0; index < row.cells().size(); index++) {
            place(row.cell(index), index, form, units, places, others, faults);
        }
        List<String> ignored = new ArrayList<>();
        for (Cell other : others) {
            // A name near that of a column which is there already is no slip for that.
            String near = Spelling.suggestion(other.text(), form.all().stream()
                .filter(column -> !form.lenient() || !places.containsKey(column)).map(Worded::word).toList());
            if (form.lenient() && near.isEmpty()) {
                ignored.add(other.text().strip());
            } else {
                faults.add(Kind.COLUMN, other, "a column " + form.listed(), near + "Rename it or take it out" + form.remarks()
                    + ".");
            }
        }
        boolean whole = true;
        for (C needed : form.all()) {
            if (needed.isNeeded() && !places.containsKey(needed)) {
                faults.add(Kind.MISSING_COLUMN, row.line(), row.end(), "a column " + needed.word(), "the end of the row", form.missing());
                whole = false;
            }
        }
        return whole ? Optional.of(new Header<>(row, places, List.copyOf(ignored))) : Optional.empty();
    }

    /** Notes a fault where a row names the columns of another kind of file. */
    static boolean isOfOtherForm(Row row, Form<?> form, FaultList faults) {
        Optional<Form<?>> other = form.insteadOfThis(row);
        other.ifPresent(found -> faults.add(Kind.WHOLE_FILE, row.line(), 1, form.word(), found.word(),
            "Name " + form.word() + " here, and give this file to " + found.use() + "."));
        return other.isPresent();
    }

    /** The row's cell in a column; blank if the table has no such column, or nothing was read. */
    Cell cell(C column, Row below) {
        Cell cell = below.cell(places.getOrDefault(column, Integer.MAX_VALUE));
        return column.isReading() ? cell.ofReading() : cell;
    }

    /** Notes a fault where a row has something in a column that has no name. */
    void refuseUnnamed(Row below, Delimiter delimiter, FaultList faults) {
        for (int index = 0; index < below.cells().size(); index++) {
            if (row.cell(index).isBlank() && !below.cell(index).isBlank()) {
                faults.add(Kind.UNNAMED_CELL, below.cell(index), "no cell beyond the columns named in line " + row.line(),
                    delimiter == Delimiter.COMMA
                        ? "Take it out or name its column; decimal commas need semicolons between the cells."
                        : "Take it out or name its column.");
                return;
            }
        }
    }

    /** These columns and one more behind them. */
    Header<C> with(C column) {
        Map<C, Integer> more = new EnumMap<>(places);
        more.put(column, row.cells().size());
        return new Header<>(row, more, ignored);
    }

    /** Names of columns that are left alone. */
    List<String> ignored() {
        return ignored;
    }

    boolean has(C column) {
        return places.containsKey(column);
    }

    /**
     * A row that holds these cells under their columns. Blank cells at its end are left out, up to the one under
     * {@code last}: a row shows that a place was not touched.
     *
     * @param cells as they are written, quoted where they must be
     * @param mark  what stands between cells
     */
    String row(Map<C, String> cells, C last, char mark) {
        int end = places.get(last);
        for (Map.Entry<C, String> cell : cells.entrySet()) {
            end = cell.getValue().isEmpty() ? end : Math.max(end, places.get(cell.getKey()));
        }
        String[] written = new String[end + 1];
        Arrays.fill(written, "");
        cells.forEach((column, text) -> {
            if (!text.isEmpty()) {
                written[places.get(column)] = text;
            }
        });
        return String.join(String.valueOf(mark), written);
    }

    int line() {
        return row.line();
    }

    private static <C extends Enum<C> & TableColumn> void place(Cell cell, int index, Form<C> form, Units units,
            Map<C, Integer> places, List<Cell> others, FaultList faults) {
        Optional<ColumnName<C>> named = ColumnName.of(cell, form.all());
        if (named.isEmpty()) {
            if (!cell.isBlank()) {
                others.add(cell);
            }
            return;
        }
        C column = named.get().column();
        named.get().unit().filter(unit -> unit != units).ifPresent(unit -> faults.add(cell, column.word() + " in "
            + units.symbol(), "Bare numbers of this file are read in " + units.symbol()
            + ": correct the column's name, or state the units in a line \"# units: " + unit.symbol() + "\"."));
        if (places.putIfAbsent(column, index) != null) {
            faults.add(Kind.COLUMN, cell, "one column " + column.word(), "Rename it or take it out.");
        }
    }
}
