package outwind.board.file;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.BadValue;
import outwind.board.LengthReader;
import outwind.board.Quantity;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.Line;
import outwind.board.text.Row;
import outwind.board.text.Sheet;
import outwind.shop.BedSize;
import outwind.shop.Cutter;
import outwind.shop.Force;
import outwind.shop.SawLimits;
import outwind.shop.Shop;
import outwind.shop.Sled;
import outwind.shop.Wedge;

/**
 * Reads what a shop has from a text file: lines {@code # key: value}, then a table of cutters. Delimiters, units and
 * fractions are those of {@link BoardFile}.
 */
public final class ShopFile {

    /** What a shop file is called. */
    public static final String NAME = "outwind-shop.txt";

    /** A shop of many cutters fits into this many times over. */
    private static final int MOST_BYTES = 100_000;

    private static final Pattern SIZES = Pattern.compile("(?<first>[^x×]+)[x×](?<second>[^x×]+)");
    private static final Pattern RATE = Pattern.compile("[^\\d.,-]*(?<amount>\\d{1,9}([.,]\\d{1,4})?)[^\\d.,]*");

    /** A key of a shop file. */
    enum Key implements Worded {
        UNITS, BED, CLAMPS, STOPS, SHIMS, TAPERED_SHIM, RATE, SKIM, PUSH, SLED, SHORTEST, WIDEST, FIRST_EDGE, OVER_LENGTH,
        OVER_WIDTH
    }

    private final Sheet sheet;
    private final FaultList faults;
    private final Keys<Key> keys;

    private ShopFile(Sheet sheet, FaultList faults) {
        this.sheet = sheet;
        this.faults = faults;
        this.keys = Keys.in(sheet, Key.class, " of a shop file", faults);
    }

    /**
     * Reads a file.
     *
     * @throws IOException  if the file cannot be opened or read
     * @throws BadBoardFile if it is no shop file; holds every fault found
     */
    public static Shop read(Path file) throws IOException, BadBoardFile {
        FaultList faults = new FaultList(file.toString());
        byte[] bytes = BoardFile.bytes(file, MOST_BYTES, "A shop file has a few lines and a row for each cutter.",
            faults);
        return parse(file.toString(), BoardFile.decode(bytes, faults));
    }

    /**
     * Reads a file's text.
     *
     * @param fileName how faults name the file
     * @throws BadBoardFile if it is no shop file; holds every fault found
     */
    public static Shop parse(String fileName, String text) throws BadBoardFile {
        FaultList faults = new FaultList(fileName);
        List<Line> lines = Line.split(text, faults);
        faults.throwIfAny();
        return new ShopFile(Sheet.ofTable(lines), faults).shop();
    }

    private Shop shop() throws BadBoardFile {
        Units units = keys.units(Key.UNITS).orElse(Units.MILLIMETRES);
        LengthReader gauge = new LengthReader(units, sheet.delimiter().allowsDecimalComma());
        Shop shop = new Shop(keys.one(Key.BED, text -> {
            double[] sizes = sizes(text, gauge, Quantity.LENGTH, "bed as length x width");
            return new BedSize(sizes[0], sizes[1]);
        }), cutters(gauge), length(Key.CLAMPS, Quantity.THICKNESS, gauge), length(Key.STOPS, Quantity.THICKNESS, gauge),
            keys.one(Key.SHIMS, text -> shims(text, gauge)).orElse(List.of()),
            keys.one(Key.TAPERED_SHIM, text -> {
                double[] sizes = sizes(text, gauge, Quantity.THICKNESS, "tapered shim as length x butt");
                return new Wedge(sizes[0], sizes[1]);
            }), keys.one(Key.RATE, ShopFile::rate), length(Key.SKIM, Quantity.SKIM, gauge),
            optional(keys.one(Key.PUSH, Force::push)), keys.one(Key.SLED, Sled::named), new SawLimits(
                length(Key.SHORTEST, Quantity.LENGTH, gauge).orElse(SawLimits.NONE.shortest()),
                length(Key.WIDEST, Quantity.LENGTH, gauge).orElse(SawLimits.NONE.widest()),
                length(Key.FIRST_EDGE, Quantity.TRIM, gauge).orElse(SawLimits.NONE.firstEdge()),
                length(Key.OVER_LENGTH, Quantity.TRIM, gauge).orElse(SawLimits.NONE.overLength()),
                length(Key.OVER_WIDTH, Quantity.TRIM, gauge).orElse(SawLimits.NONE.overWidth())));
        faults.throwIfAny();
        return shop;
    }

    private OptionalDouble length(Key key, Quantity quantity, LengthReader gauge) {
        return optional(keys.one(key, text -> gauge.read(quantity, text)));
    }

    private static double[] sizes(String text, LengthReader gauge, Quantity quantity, String expected) {
        Matcher written = SIZES.matcher(text);
        if (!written.matches()) {
            throw new BadValue(expected, text, "Write two lengths with an x between them, as "
                + quantity.example(gauge.units()) + " x " + Quantity.WIDTH.example(gauge.units()) + ".");
        }
        return new double[] {gauge.read(quantity, written.group("first").strip()),
            gauge.read(quantity, written.group("second").strip())};
    }

    private static List<Double> shims(String text, LengthReader gauge) {
        return Arrays.stream(text.split(gauge.decimalComma() ? "[;\\s]+" : "[,;]"))
            .map(String::strip).filter(part -> !part.isEmpty())
            .map(part -> gauge.read(Quantity.THICKNESS, part)).toList();
    }

    private static BigDecimal rate(String text) {
        Matcher written = RATE.matcher(text.strip());
        if (!written.matches()) {
            throw new BadValue("price of an hour", text, "Type a number such as 48.");
        }
        return new BigDecimal(written.group("amount").replace(',', '.'));
    }

    private List<Cutter> cutters(LengthReader gauge) {
        if (sheet.rows().isEmpty()) {
            return List.of();
        }
        Optional<Header<CutterColumn>> header = Row.split(sheet.rows().get(0), sheet.delimiter(), faults)
            .flatMap(row -> Header.read(row, Form.SHOP, gauge.units(), faults));
        List<Cutter> cutters = new ArrayList<>();
        header.ifPresent(named -> sheet.rows().subList(1, sheet.rows().size()).forEach(line ->
            Row.split(line, sheet.delimiter(), faults).flatMap(row -> cutter(row, named, gauge))
                .ifPresent(cutters::add)));
        return cutters;
    }

    private Optional<Cutter> cutter(Row row, Header<CutterColumn> header, LengthReader gauge) {
        header.refuseUnnamed(row, sheet.delimiter(), faults);
        Function<CutterColumn, Cell> cell = column -> header.cell(column, row);
        Function<CutterColumn, Optional<Double>> read = column ->
            faults.read(cell.apply(column), text -> gauge.read(Quantity.LENGTH, text));
        Function<CutterColumn, Optional<Double>> perhaps = column ->
            cell.apply(column).isBlank() ? Optional.of(Double.NaN) : read.apply(column);
        Optional<String> name = faults.read(cell.apply(CutterColumn.CUTTER), ShopFile::name);
        Optional<Double> diameter = read.apply(CutterColumn.DIAMETER);
        Optional<Double> deepest = read.apply(CutterColumn.DEEPEST_PASS);
        Optional<Double> feed = read.apply(CutterColumn.FEED);
        Optional<Double> rows = perhaps.apply(CutterColumn.ROWS);
        Optional<Double> last = perhaps.apply(CutterColumn.LAST_PASS);
        if (name.isEmpty() || diameter.isEmpty() || deepest.isEmpty() || feed.isEmpty() || rows.isEmpty()
            || last.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(Cutter.usual(name.get(), diameter.get(), deepest.get(), feed.get(),
                optional(rows.filter(value -> !value.isNaN())), optional(last.filter(value -> !value.isNaN()))));
        } catch (IllegalArgumentException refused) {
            faults.add(row.cell(0), "a cutter that can be", "With this row, " + refused.getMessage() + ".");
            return Optional.empty();
        }
    }

    private static String name(String text) {
        if (text.isBlank()) {
            throw new BadValue("a name", text, "Write what the shop calls the cutter.");
        }
        return text;
    }

    private static OptionalDouble optional(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
