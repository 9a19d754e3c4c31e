package outwind.board.file;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.BadValue;
import outwind.board.BillItem;
import outwind.board.CuttingBill;
import outwind.board.LengthReader;
import outwind.board.Quantity;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.Line;
import outwind.board.text.Row;
import outwind.board.text.Sheet;

/**
 * Reads a cutting bill from a text file: a table with the columns {@code name}, {@code length}, {@code width},
 * {@code thickness} and {@code quantity}, perhaps {@code value}, {@code any grain}, {@code species} and {@code grade};
 * other columns are left alone. Before it may stand a line {@code # units: mm}. Delimiters, units and fractions are those of {@link BoardFile}.
 */
public final class BillFile {

    /** More rows than a board has room for blanks, and few enough to read at once. */
    static final int MOST_ROWS = 1000;

    /** Room for as many rows, at 1000 characters each. */
    private static final int MOST_BYTES = 1_000 * MOST_ROWS;

    private static final int MOST_OF_ONE = 10_000;

    /** What a line {@code # key: value} of a bill can state. */
    enum Key implements Worded {
        UNITS
    }

    private final Sheet sheet;
    private final FaultList faults;
    private final Map<String, Integer> lineOfName = new HashMap<>();

    private BillFile(Sheet sheet, FaultList faults) {
        this.sheet = sheet;
        this.faults = faults;
    }

    /**
     * Reads a file. Faults name it as {@code file} does.
     *
     * @param whenUnsaid unit of bare numbers where the file names none
     * @throws IOException  if the file cannot be opened or read
     * @throws BadBoardFile if it is no cutting bill; holds every fault found
     */
    public static CuttingBill read(Path file, Units whenUnsaid) throws IOException, BadBoardFile {
        FaultList faults = new FaultList(file.toString());
        byte[] bytes = BoardFile.bytes(file, MOST_BYTES, "A cutting bill has one row for each size of blank.", faults);
        return parse(file.toString(), BoardFile.decode(bytes, faults), whenUnsaid);
    }

    /**
     * Reads a file's text.
     *
     * @param fileName   how faults name the file
     * @param text       the file's content, with or without a byte order mark
     * @param whenUnsaid unit of bare numbers where the text names none
     * @throws BadBoardFile if it is no cutting bill; holds every fault found
     */
    public static CuttingBill parse(String fileName, String text, Units whenUnsaid) throws BadBoardFile {
        FaultList faults = new FaultList(fileName);
        List<Line> lines = Line.split(text, faults);
        faults.throwIfAny();
        return new BillFile(Sheet.ofTable(lines), faults).bill(whenUnsaid);
    }

    private CuttingBill bill(Units whenUnsaid) throws BadBoardFile {
        Units units = Keys.in(sheet, Key.class, " of a cutting bill", faults).units(Key.UNITS).orElse(whenUnsaid);
        if (sheet.rows().size() < 2 || sheet.rows().size() > MOST_ROWS) {
            faults.addForFile("a header row and 1 to " + (MOST_ROWS - 1) + " rows of blanks",
                Math.max(0, sheet.rows().size() - 1) + " rows of blanks",
                "Write a row \"name,length,width,thickness,quantity\" and below it one row for each size of blank.");
            faults.throwIfAny();
        }
        LengthReader gauge = new LengthReader(units, sheet.delimiter().allowsDecimalComma());
        Optional<Header<BillColumn>> header = Row.split(sheet.rows().get(0), sheet.delimiter(), faults)
            .flatMap(row -> Header.read(row, Form.BILL, units, faults));
        List<BillItem> items = new ArrayList<>();
        header.ifPresent(named -> sheet.rows().subList(1, sheet.rows().size()).forEach(line ->
            Row.split(line, sheet.delimiter(), faults).flatMap(row -> item(row, named, gauge)).ifPresent(items::add)));
        faults.throwIfAny();
        return new CuttingBill(items, header.map(Header::ignored).orElse(List.of()));
    }

    private Optional<BillItem> item(Row row, Header<BillColumn> header, LengthReader gauge) {
        header.refuseUnnamed(row, sheet.delimiter(), faults);
        Optional<String> name = faults.read(header.cell(BillColumn.NAME, row), text -> name(text, row.line()));
        Optional<Double> length = size(header.cell(BillColumn.LENGTH, row), Quantity.LENGTH, gauge);
        Optional<Double> width = size(header.cell(BillColumn.WIDTH, row), Quantity.WIDTH, gauge);
        Optional<Double> thickness = size(header.cell(BillColumn.THICKNESS, row), Quantity.THICKNESS, gauge);
        Optional<Integer> quantity = faults.read(header.cell(BillColumn.QUANTITY, row), BillFile::quantity);
        Optional<OptionalDouble> value = header.has(BillColumn.VALUE)
            ? faults.read(header.cell(BillColumn.VALUE, row), text -> value(text, gauge))
            : Optional.of(OptionalDouble.empty());
        Optional<Boolean> anyGrain = faults.read(header.cell(BillColumn.ANY_GRAIN, row), BillFile::anyGrain);
        boolean whole = name.isPresent() && length.isPresent() && width.isPresent() && thickness.isPresent()
            && quantity.isPresent() && value.isPresent() && anyGrain.isPresent();
        return whole
            ? Optional.of(new BillItem(name.get(), length.get(), width.get(), thickness.get(), quantity.get(),
                value.get(), anyGrain.get(), new WoodKind(words(header.cell(BillColumn.SPECIES, row)),
                    words(header.cell(BillColumn.GRADE, row)))))
            : Optional.empty();
    }

    private static Optional<String> words(Cell cell) {
        return Optional.of(cell.text().strip()).filter(text -> !text.isEmpty());
    }

    private Optional<Double> size(Cell cell, Quantity quantity, LengthReader gauge) {
        return faults.read(cell, text -> gauge.read(quantity, text));
    }

    private String name(String text, int line) {
        if (text.isBlank()) {
            throw new BadValue("a name", text, "Write what the blank is for, such as leg.");
        }
        Integer before = lineOfName.putIfAbsent(text.toLowerCase(Locale.ROOT), line);
        if (before != null) {
            throw new BadValue("a name of its own", text, "Line " + before
                + " has this name already: give each row another, or add the quantities together.");
        }
        return text;
    }

    private static int quantity(String text) {
        if (!text.matches("[1-9]\\d{0,4}") || Integer.parseInt(text) > MOST_OF_ONE) {
            throw new BadValue("quantity from 1 to " + MOST_OF_ONE, text, "Type a whole number such as 4.");
        }
        return Integer.parseInt(text);
    }

    private static OptionalDouble value(String text, LengthReader gauge) {
        String decimal = gauge.decimalComma() ? text.replace(',', '.') : text;
        if (!decimal.matches("\\d{1,9}(\\.\\d{0,9})?") || Double.parseDouble(decimal) == 0) {
            throw new BadValue("value above 0", text, "Type a number such as 12.50; where one row has a value, every"
                + " row needs one.");
        }
        return OptionalDouble.of(Double.parseDouble(decimal));
    }

    private static boolean anyGrain(String text) {
        return switch (text.strip().toLowerCase(Locale.ROOT)) {
            case "yes" -> true;
            case "no", "" -> false;
            default -> throw new BadValue("any grain yes or no", text,
                "Write yes if the grain may run across the blank as well; empty means no.");
        };
    }
}
