package outwind.board.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import outwind.board.BadValue;
import outwind.board.Board;
import outwind.board.LengthReader;
import outwind.board.Place;
import outwind.board.Quantity;
import outwind.board.text.BadBoardFile;
import outwind.board.text.FaultList;
import outwind.board.text.Line;
import outwind.board.text.Sheet;
import outwind.board.text.TornTail;

/**
 * A board that is being touched off: its file's text and what that says. It never changes; each step gives another
 * recording, whose text has been read again, so that what is on the disk is what is known and can be read again.
 *
 * <p>The file is a board file with a table of named columns. A row without a height plans a touch-off. Each touch-off
 * is a row with a height, added at the end; the first of them at a place does the first row that plans that place, the
 * second the second. A row without a height that is noted as skipped leaves a planned place out. So the file alone
 * tells where to go on.
 */
public final class Recording {

    private final String fileName;
    private final Board board;
    private final RecordedTable table;
    private final List<Planned> plan;
    private final List<Entry> entries;
    /** Number of the planned place that was entered last; -1 if none was. */
    private final int last;

    /**
     * What was done at a place.
     *
     * @param place  where
     * @param height what was read (mm); empty if the place was left out
     * @param note   what the person wrote beside it; may be empty
     * @param line   line of the file, 1-based
     */
    public record Entry(Place place, OptionalDouble height, String note, int line) { }

    /**
     * A place of the plan.
     *
     * @param place where
     * @param again true if the plan has the same place earlier
     * @param entry what was done there, if it was
     */
    public record Planned(Place place, boolean again, Optional<Entry> entry) { }

    private Recording(String fileName, Board board, RecordedTable table) {
        this.fileName = fileName;
        this.board = board;
        this.table = table;
        List<RecordedTable.Touch> rows = table.rows();
        List<Place> places = rows.stream().filter(RecordedTable.Touch::isPlanned)
            .map(RecordedTable.Touch::place).toList();
        Entry[] done = new Entry[places.size()];
        this.entries = rows.stream().filter(row -> !row.isPlanned())
            .map(row -> new Entry(row.place(), table.height(row), row.note(), row.line())).toList();
        int latest = -1;
        for (Entry entry : entries) {
            OptionalInt index = IntStream.range(0, done.length)
                .filter(i -> done[i] == null && places.get(i).isAt(entry.place())).findFirst();
            if (index.isPresent()) {
                latest = index.getAsInt();
                done[latest] = entry;
            }
        }
        this.last = latest;
        this.plan = IntStream.range(0, done.length).mapToObj(i -> new Planned(places.get(i),
            places.subList(0, i).stream().anyMatch(places.get(i)::isAt), Optional.ofNullable(done[i]))).toList();
    }

    /**
     * Goes on with a file. A line that a crash has torn is left out.
     *
     * @throws IOException  if it cannot be read
     * @throws BadBoardFile if it is no board file with a table of named columns
     */
    public static Recording read(Path file) throws IOException, BadBoardFile {
        return of(file.toString(), textOf(file));
    }

    /** The text of a file without a line that a crash has torn. */
    public static String textOf(Path file) throws IOException, BadBoardFile {
        return BoardFile.decode(TornTail.of(Files.readAllBytes(file)).whole(), new FaultList(file.toString()));
    }

    /**
     * Goes on with a file's text, which may have a table or nothing but key lines yet.
     *
     * @throws BadBoardFile if it is no board file with a table of named columns
     */
    public static Recording of(String fileName, String text) throws BadBoardFile {
        FaultList faults = new FaultList(fileName);
        if (BoardFile.isOfType(fileName, ".xyz")) {
            faults.addForFile("a file with a table", "a file of bare points",
                "Name the file .csv; bare points x y z can be typed or pasted into it.");
            faults.throwIfAny();
        }
        String prepared = RecordedTable.prepared(text, faults);
        Board board = BoardFile.parse(fileName, prepared, Defaults.NOTHING, 0);
        return new Recording(fileName, board, RecordedTable.of(prepared, board.units()));
    }

    /**
     * What a text states of the board, as it is written, by the words of its keys; a caliper reading states the
     * thickness. Faults are left for {@link #of} to tell.
     */
    public static Map<String, String> statedIn(String text) {
        FaultList ignored = new FaultList("");
        Sheet sheet = Sheet.ofTable(Line.split(text, ignored));
        Keys<Key> keys = Keys.in(sheet, Key.class, "", ignored);
        Map<String, String> stated = new TreeMap<>();
        if (RecordedTable.fills(sheet, Column.THICKNESS)) {
            stated.put(Key.THICKNESS.word(), "");
        }
        for (Key key : Key.values()) {
            keys.each(key, value -> value).stream().findFirst().ifPresent(value -> stated.put(key.word(), value));
        }
        return stated;
    }

    /** A text with more key lines above its table, as {@code length: 1180}. */
    public static String stating(String text, List<String> statements) {
        return RecordedTable.above(text, statements.stream().map(statement -> "# " + statement).toList());
    }

    /** What the file holds, to the last character. */
    public String text() {
        return table.text();
    }

    /** The board with the touch-offs that there are yet. */
    public Board board() {
        return board;
    }

    /** How heights are read here. */
    public LengthReader gauge() {
        return table.gauge();
    }

    /** Touch-offs on face A and planned places that were left out, in the order they were entered. */
    public List<Entry> entries() {
        return entries;
    }

    /** The places to touch, in order, with what was done at each. */
    public List<Planned> plan() {
        return plan;
    }

    /** The last touch-off. */
    public Optional<Entry> lastTouch() {
        return entries.stream().filter(entry -> entry.height().isPresent()).reduce((first, second) -> second);
    }

    /** True if a place is planned or was entered. */
    public boolean knows(Place place) {
        return table.rows().stream().anyMatch(row -> row.place().isAt(place));
    }

    /** The last touch-off at a place, if it was touched. */
    public Optional<Entry> touchedAt(Place place) {
        return entries.stream().filter(entry -> entry.height().isPresent() && entry.place().isAt(place))
            .reduce((first, second) -> second);
    }

    /**
     * Number of the planned place that comes next, from 0: the first one not done after the one entered last, or else
     * from the beginning. Empty if the plan is done.
     */
    public OptionalInt next() {
        return IntStream.range(0, plan.size()).map(i -> (last + 1 + i) % plan.size())
            .filter(i -> plan.get(i).entry().isEmpty()).findFirst();
    }

    /**
     * With one more touch-off.
     *
     * @param height as it was typed
     * @throws BadValue if the height is none, or the place lies off the board
     */
    public Recording touched(Place place, String height) {
        gauge().read(Quantity.Z, height);
        requireOnBoard(Quantity.X, place.x(), Quantity.LENGTH, board.length());
        requireOnBoard(Quantity.Y, place.y(), Quantity.WIDTH, board.width());
        return reread(table.withRow(place, height.strip()));
    }

    /**
     * With one more caliper reading of the rough thickness.
     *
     * @param thickness as it was typed
     * @throws BadValue if the thickness is none, or the place lies off the board
     */
    public Recording calipered(Place place, String thickness) {
        gauge().read(Quantity.THICKNESS, thickness);
        requireOnBoard(Quantity.X, place.x(), Quantity.LENGTH, board.length());
        requireOnBoard(Quantity.Y, place.y(), Quantity.WIDTH, board.width());
        return reread(table.withCaliper(place, thickness.strip()));
    }

    /** Without the last caliper reading that has a line of its own; empty if there is none. */
    public Optional<Recording> withoutLastCaliper() {
        return table.calipers().stream().reduce((first, second) -> second)
            .map(row -> reread(table.without(List.of(row))));
    }

    private void requireOnBoard(Quantity axis, double at, Quantity side, double limit) {
        gauge().readOnBoard(axis, gauge().units().plain(at), side, OptionalDouble.of(limit));
    }

    /** With a planned place left out. */
    public Recording skipped(Place place) {
        return reread(table.withSkipped(place));
    }

    /** Without what was entered last; empty if nothing was, or its line holds a caliper reading as well. */
    public Optional<Recording> undone() {
        return lastRow(row -> !row.isPlanned()).map(row -> reread(table.without(List.of(row))));
    }

    /** With a note beside the last touch-off; empty if there is none, or its line holds a caliper reading as well. */
    public Optional<Recording> noted(String note) {
        return lastRow(row -> !row.height().isEmpty()).map(row -> reread(table.withNote(row, note)));
    }

    private Optional<RecordedTable.Touch> lastRow(Predicate<RecordedTable.Touch> kind) {
        return table.rows().stream().filter(kind).reduce((first, second) -> second)
            .filter(RecordedTable.Touch::alone);
    }

    /** With one more key line, as {@code repeatability: 0.06}. */
    public Recording stating(String statement) {
        return reread(stating(text(), List.of(statement)));
    }

    /** With more places planned at the end, planned already or not. */
    public Recording planning(List<Place> places) {
        Recording longer = this;
        for (Place place : places) {
            longer = longer.reread(longer.table.withRow(place, ""));
        }
        return longer;
    }

    /** Without the rows that planned what is done. */
    public Recording tidied() {
        List<RecordedTable.Touch> planned = table.rows().stream().filter(RecordedTable.Touch::isPlanned).toList();
        List<RecordedTable.Touch> done = new ArrayList<>();
        for (int i = 0; i < planned.size(); i++) {
            if (plan.get(i).entry().isPresent()) {
                done.add(planned.get(i));
            }
        }
        return done.isEmpty() ? this : reread(table.without(done));
    }

    private Recording reread(String text) {
        try {
            return of(fileName, text);
        } catch (BadBoardFile e) {
            throw new IllegalStateException("a row was written that cannot be read: " + e.getMessage(), e);
        }
    }
}
