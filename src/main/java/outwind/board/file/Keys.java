package outwind.board.file;

import java.util.ArrayList;
import java.util.Arrays;
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
import outwind.board.Fault.Kind;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.KeyLine;
import outwind.board.text.Line;
import outwind.board.text.Sheet;
import outwind.board.text.Spelling;

/** The values that a file's key lines state, as written; {@link #one} and {@link #each} read them. */
final class Keys<K extends Enum<K> & Worded> {

    private static final Pattern REMARK = Pattern.compile("\\s*+\"?\\s*+(?:#\\s*+)?(?<rest>.*[^\\s,;])");

    private final Class<K> kind;
    private final String of;
    private final Map<K, List<Cell>> values;
    private final FaultList faults;

    private Keys(Class<K> kind, String of, FaultList faults) {
        this.kind = kind;
        this.of = of;
        this.values = new EnumMap<>(kind);
        this.faults = faults;
    }

    /**
     * The keys of a sheet.
     *
     * @param kind the keys that there are
     * @param of   whose they are, as {@code " of a shop file"}; empty for a board file
     */
    static <K extends Enum<K> & Worded> Keys<K> in(Sheet sheet, Class<K> kind, String of, FaultList faults) {
        Keys<K> keys = new Keys<>(kind, of, faults);
        for (Line line : sheet.keyLines()) {
            said(line, Worded.words(kind), faults).ifPresent(keys::add);
        }
        return keys;
    }

    /** The key that a line states with its value; nothing, and perhaps a fault, if it is but a remark. */
    static Optional<KeyLine> said(Line line, List<String> words, FaultList faults) {
        if (line.text().indexOf(':') < 0) {
            isForgottenColon(new Cell(line.text(), line.number(), 1), words, faults);
        }
        return KeyLine.of(line, faults);
    }

    /** The keys that stand beside a scan. */
    static Keys<Key> stated(List<KeyLine> statements, FaultList faults) {
        Keys<Key> keys = new Keys<>(Key.class, "", faults);
        statements.forEach(keys::add);
        return keys;
    }

    private void add(KeyLine line) {
        Cell word = line.key();
        String lower = word.text().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        List<String> words = Worded.words(kind);
        Arrays.stream(kind.getEnumConstants()).filter(key -> key.word().equals(lower)).findFirst().ifPresentOrElse(
            key -> values.computeIfAbsent(key, k -> new ArrayList<>()).add(line.value()),
            () -> faults.add(Kind.KEY, word, "a key", Spelling.suggestion(word.text(), words) + "Keys" + of + " are "
                + String.join(", ", words) + "; a remark after # must hold no colon."));
    }

    boolean has(K key) {
        return values.containsKey(key);
    }

    /** Where the value of a key stands first. */
    Optional<Cell> place(K key) {
        return values.getOrDefault(key, List.of()).stream().findFirst();
    }

    /** The value of a key that can have only one; a fault if it is stated twice and differently. */
    <T> Optional<T> one(K key, Function<String, T> reader) {
        List<Cell> cells = values.getOrDefault(key, List.of());
        Optional<T> first = place(key).flatMap(cell -> faults.read(cell, reader));
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
    <T> List<T> each(K key, Function<String, T> reader) {
        return values.getOrDefault(key, List.of()).stream()
            .flatMap(cell -> faults.read(cell, reader).stream()).toList();
    }

    /** The unit that a key states. Every other number depends on it: faults found without it would mislead. */
    Optional<Units> units(K key) throws BadBoardFile {
        Optional<Units> units = one(key, Units::named);
        if (units.isEmpty() && has(key)) {
            faults.throwIfAny();
        }
        return units;
    }

    /** Reads a name or the like, which must not be blank. */
    static String text(Key key, String text) {
        if (text.isBlank()) {
            throw new BadValue("a value for " + key.word(), text, "Write it after the colon, or take the line out.");
        }
        return text;
    }

    /** Notes a fault where a remark begins with the word of a key: most likely its colon was forgotten. */
    static boolean isForgottenColon(Cell line, List<String> words, FaultList faults) {
        Matcher remark = REMARK.matcher(line.text());
        if (!remark.lookingAt()) {
            return false;
        }
        String rest = remark.group("rest").toLowerCase(Locale.ROOT);
        Optional<String> word = words.stream().filter(key -> rest.startsWith(key)
            && (rest.length() == key.length() || !Character.isLetterOrDigit(rest.charAt(key.length())))).findFirst();
        word.ifPresent(key -> faults.add(Kind.KEY, line.line(), line.column() + remark.start("rest"),
            "a colon after \"" + key + "\"", Fault.shown(remark.group("rest")),
            "Write \"# " + key + ": …\", or begin the remark with another word."));
        return word.isPresent();
    }
}
