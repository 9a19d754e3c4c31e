package outwind.board.file;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.Row;

/**
 * Numbers that a comma has split in two, or that two marks make doubtful: what looks like a table of other numbers.
 *
 * <p>{@code 20,15,0,50} under {@code x,y,z,note} is a height of 0.50 with a decimal comma, read as 0 with a note of
 * "50". It is refused where every note is a bare number and no number has a point: a note of digits alone says nothing.
 */
final class DecimalMarks {

    private static final Pattern DIGITS = Pattern.compile("\\d{1,4}");
    private static final Pattern WHOLE = Pattern.compile("[+\\-−]?\\d+");
    private static final Pattern WITH_COMMA = Pattern.compile("[+\\-−]?\\d+,\\d+");
    private static final Pattern WITH_POINT = Pattern.compile("[+\\-−]?\\d*\\.\\d+");

    /** Caliper readings of one board lie nearer to each other than this share of the largest: our choice. */
    private static final double SPREAD = 0.4;

    private DecimalMarks() { }

    /** Notes a fault where commas under named columns are most likely decimal ones. */
    static void refuseSplitNumbers(List<Row> rows, Header<Column> header, FaultList faults) {
        boolean hasPoint = rows.stream().flatMap(row -> row.cells().stream())
            .anyMatch(cell -> WITH_POINT.matcher(cell.text()).matches());
        if (hasPoint) {
            return;
        }
        List<Cell> notes = filled(rows, header, Column.NOTE);
        if (!notes.isEmpty() && notes.stream().allMatch(note -> DIGITS.matcher(note.text()).matches())) {
            faults.add(notes.get(0), "a note in words",
                "Is it the part of a number behind a decimal comma? Decimal commas need semicolons between the cells.");
            return;
        }
        List<Cell> calipers = filled(rows, header, Column.THICKNESS);
        if (!calipers.isEmpty() && calipers.stream().allMatch(cell -> DIGITS.matcher(cell.text()).matches())) {
            double least = calipers.stream().mapToDouble(cell -> Double.parseDouble(cell.text())).min().orElse(1);
            double most = calipers.stream().mapToDouble(cell -> Double.parseDouble(cell.text())).max().orElse(1);
            if (least < (1 - SPREAD) * most) {
                faults.add(calipers.get(0), "caliper readings that are alike",
                    "Are they parts of numbers behind a decimal comma? Decimal commas need semicolons between the cells.");
            }
        }
    }

    /** True, and a fault, where each row of cells holds two whole numbers for each place of the first row. */
    static boolean splitCells(List<Row> rows, Row header, FaultList faults) {
        int places = header.cells().size() - 1;
        boolean isSplit = rows.size() > 1 && rows.stream().allMatch(row -> row.cells().size() == 1 + 2 * places
            && row.cells().stream().skip(1).allMatch(cell -> WHOLE.matcher(cell.text()).matches()));
        if (isSplit) {
            faults.add(rows.get(0).line(), rows.get(0).cell(1).column(), "one height below each of " + places + " places",
                2 * places + " numbers", "Are half of them parts of numbers behind a decimal comma? Write points, or semicolons"
                + " between the cells.");
        }
        return isSplit;
    }

    private static List<Cell> filled(List<Row> rows, Header<Column> header, Column column) {
        return rows.stream().map(row -> header.cell(column, row)).filter(cell -> !cell.isBlank()).toList();
    }

    /** Notes a fault where both a comma and a point are decimal marks between semicolons or tabs. */
    static void refuseTwoMarks(List<Row> rows, FaultList faults) {
        boolean hasComma = cells(rows).anyMatch(cell -> WITH_COMMA.matcher(cell.text()).matches());
        if (hasComma) {
            cells(rows).filter(cell -> WITH_POINT.matcher(cell.text()).matches()).findFirst().ifPresent(cell ->
                faults.add(cell, "one decimal mark in all numbers",
                    "Other numbers here have a comma: write all of them with a comma, or all with a point."));
        }
    }

    private static Stream<Cell> cells(List<Row> rows) {
        return rows.stream().flatMap(row -> row.cells().stream());
    }

    /** Notes a fault where the places along the first row of a table of cells neither rise nor fall throughout. */
    static void requireOrder(Row header, List<Optional<Double>> x, FaultList faults) {
        double direction = 0;
        double before = Double.NaN;
        for (int k = 0; k < x.size(); k++) {
            if (x.get(k).isEmpty()) {
                continue;
            }
            double at = x.get(k).get();
            double step = Math.signum(at - before);
            if (!Double.isNaN(before) && (step == 0 || direction != 0 && step != direction)) {
                faults.add(header.cell(k + 1), "an x that goes on rising",
                    "Places in the first row rise from one end to the other. Decimal commas need semicolons between the"
                        + " cells.");
                return;
            }
            direction = Double.isNaN(before) ? 0 : step;
            before = at;
        }
    }
}
