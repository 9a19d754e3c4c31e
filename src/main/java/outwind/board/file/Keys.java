package outwind.board.file;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.BadValue;
import outwind.board.Fault;
import outwind.board.text.Cell;
import outwind.board.text.Delimiter;
import outwind.board.text.FaultList;
import outwind.board.text.Line;
import outwind.board.text.Row;
import outwind.board.text.Sheet;

/** The values that a file's key lines state, as written; {@link #one} and {@link #each} read them. */
final class Keys {

    private static final Pattern BEGINNING = Pattern.compile("\\s*+\"?\\s*+#\\s*+(?<rest>.*\\S)\\s*");

    private final Map<Key, List<Cell>> values = new EnumMap<>(Key.class);
    private final FaultList faults;

    private Keys(FaultList faults) {
        this.faults = faults;
    }

    static Keys in(Sheet sheet, FaultList faults) {
        Keys keys = new Keys(faults);
        List<String> words = Key.words();
        for (Line line : sheet.keyLines()) {
            refuseForgottenColon(line, words, faults);
            statement(line, sheet.delimiter(), faults).ifPresent(keys::add);
        }
        return keys;
    }

    /** The keys that stand beside a scan. */
    static Keys stated(List<Statement> statements, FaultList faults) {
        Keys keys = new Keys(faults);
        for (Statement stated : statements) {
            faults.read(new Cell(stated.key(), stated.line(), 1), Key::named).ifPresent(key ->
                keys.values.computeIfAbsent(key, k -> new ArrayList<>()).add(
                    new Cell(stated.value(), stated.line(), stated.column())));
        }
        return keys;
    }

    boolean has(Key key) {
        return values.containsKey(key);
    }

    /** The value of a key that can have only one; a fault if it is stated twice and differently. */
    <T> Optional<T> one(Key key, Function<String, T> reader) {
        List<Cell> cells = values.getOrDefault(key, List.of());
        Optional<T> first = cells.stream().findFirst().flatMap(cell -> faults.read(cell, reader));
        for (Cell again : cells.subList(Math.min(1, cells.size()), cells.size())) {
            Optional<T> other = faults.read(again, reader);
            if (first.isPresent() && other.isPresent() && !other.equals(first)) {
                faults.add(again, "one " + key.word(), "Line " + cells.get(0).line() + " says "
                    + Fault.shown(cells.get(0).text()) + ", line " + again.line() + " says "
                    + Fault.shown(again.text()) + ": keep the one that is right.");
            }
        }
        return first;
    }

    /** All values of a key that may be repeated, in the order of the file. */
    <T> List<T> each(Key key, Function<String, T> reader) {
        return values.getOrDefault(key, List.of()).stream()
            .flatMap(cell -> faults.read(cell, reader).stream()).toList();
    }

    /** Reads a name or the like, which must not be blank. */
    static String text(Key key, String text) {
        if (text.isBlank()) {
            throw new BadValue("a value for " + key.word(), text, "Write it after the colon, or take the line out.");
        }
        return text;
    }

    /** What follows the # of a line, as one cell; nothing if the line is but a remark. */
    static Optional<Cell> statement(Line line, Delimiter delimiter, FaultList faults) {
        Optional<Cell> whole = line.text().stripLeading().startsWith("#")
            ? Optional.of(new Cell(line.text(), line.number(), 1))
            : unquoted(line, delimiter == Delimiter.SPACE ? Delimiter.COMMA : delimiter, faults);
        return whole.filter(cell -> cell.text().indexOf(':') >= 0)
            .map(cell -> from(cell, cell.text().indexOf('#') + 1));
    }

    /** The first cell of a line that a spreadsheet has put in quotes for a comma in it; it begins behind the quote. */
    private static Optional<Cell> unquoted(Line line, Delimiter delimiter, FaultList faults) {
        return Row.split(line, delimiter, faults).map(row -> row.cell(0))
            .map(cell -> new Cell(cell.text(), cell.line(), cell.column() + 1));
    }

    /** Notes a fault where a remark begins with the word of a key: most likely its colon was forgotten. */
    static void refuseForgottenColon(Line line, List<String> words, FaultList faults) {
        if (line.text().indexOf(':') >= 0) {
            return;
        }
        Matcher begins = BEGINNING.matcher(line.text());
        if (begins.lookingAt()) {
            String rest = begins.group("rest").toLowerCase(Locale.ROOT);
            words.stream().filter(word -> rest.startsWith(word)
                && (rest.length() == word.length() || !Character.isLetterOrDigit(rest.charAt(word.length()))))
                .findFirst().ifPresent(word -> faults.add(line.number(), begins.start("rest") + 1,
                    "a colon after \"" + word + "\"", Fault.shown(begins.group("rest")),
                    "Write \"# " + word + ": …\", or begin the remark with another word."));
        }
    }

    private void add(Cell statement) {
        faults.read(word(statement), Key::named).ifPresent(key ->
            values.computeIfAbsent(key, k -> new ArrayList<>()).add(value(statement)));
    }

    /** What stands before the colon of a statement. */
    static Cell word(Cell statement) {
        return from(new Cell(statement.text().substring(0, statement.text().indexOf(':')), statement.line(),
            statement.column()), 0);
    }

    /** What stands behind the colon of a statement. */
    static Cell value(Cell statement) {
        return from(statement, statement.text().indexOf(':') + 1);
    }

    /**
     * The rest of a cell from an index on, without the spaces around it and without the delimiters that a spreadsheet
     * writes for the empty cells before and behind it.
     */
    private static Cell from(Cell cell, int index) {
        String text = cell.text();
        int start = index;
        int end = text.length();
        while (start < end && isFiller(text.charAt(start))) {
            start++;
        }
        while (end > start && isFiller(text.charAt(end - 1))) {
            end--;
        }
        return new Cell(text.substring(start, end), cell.line(), cell.column() + start);
    }

    private static boolean isFiller(char c) {
        return Character.isWhitespace(c) || c == ',' || c == ';' || c == '\u00a0';
    }
}
