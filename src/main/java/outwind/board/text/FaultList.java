package outwind.board.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import outwind.board.BadValue;
import outwind.board.Fault;
import outwind.board.Fault.Kind;

/**
 * The faults of one file, collected while it is read so that they can all be reported at once. Those that only follow
 * from another are left out: one cause, one message.
 */
public final class FaultList {

    // About three screens; whoever mends these has most likely found the pattern of the rest.
    static final int MOST_LISTED = 50;

    // About a screen. A scan is written by a program, so that one fault most likely runs through all of it.
    private static final int MOST_OF_SCAN = 20;

    private final String file;
    private final int most;
    private final List<Fault> ofTheFile = new ArrayList<>();
    private final List<Fault> ofCells = new ArrayList<>();
    private final Map<Kind, Integer> counts = new EnumMap<>(Kind.class);

    public FaultList(String file) {
        this(file, MOST_LISTED);
    }

    private FaultList(String file, int most) {
        this.file = file;
        this.most = most;
    }

    /** For a scan: who reads stops when the list is full. */
    public static FaultList ofScan(String file) {
        return new FaultList(file, MOST_OF_SCAN);
    }

    public String file() {
        return file;
    }

    /** Whether no more faults are listed. */
    public boolean isFull() {
        return ofCells.size() >= most;
    }

    /** Notes the faults that another list of the same file has. */
    public void addAll(FaultList later) {
        Stream.concat(later.ofTheFile.stream(), later.ofCells.stream()).forEach(fault -> add(fault.kind(), fault.line(),
            fault.column(), fault.expected(), fault.found(), fault.mend()));
    }

    /** Notes a fault at a place in the file; {@code found} is written as it stands. */
    public void add(int line, int column, String expected, String found, String mend) {
        add(Kind.CAUSE, line, column, expected, found, mend);
    }

    /** The same for a fault of some kind. */
    public void add(Kind kind, int line, int column, String expected, String found, String mend) {
        if (isHeard(kind) && !isFull()) {
            ofCells.add(new Fault(kind, file, line, column, expected, found, mend));
        }
    }

    /** Notes a fault at a cell, showing the cell's text. */
    public void add(Cell cell, String expected, String mend) {
        add(Kind.CAUSE, cell, expected, mend);
    }

    /** The same for a fault of some kind. */
    public void add(Kind kind, Cell cell, String expected, String mend) {
        add(kind, cell.line(), cell.column(), expected, Fault.shown(cell.text()), mend);
    }

    /** Notes a fault that belongs to no one place; such faults are always listed, and first. */
    public void addForFile(String expected, String found, String mend) {
        addForFile(Kind.CAUSE, expected, found, mend);
    }

    /** The same for a fault of some kind. */
    public void addForFile(Kind kind, String expected, String found, String mend) {
        if (isHeard(kind)) {
            ofTheFile.add(new Fault(kind, file, 1, 1, expected, found, mend));
        }
    }

    /** What {@code reader} makes of the cell's text, or nothing and a fault if it refuses it. */
    public <T> Optional<T> read(Cell cell, Function<String, T> reader) {
        try {
            return Optional.of(reader.apply(cell.text()));
        } catch (BadValue refused) {
            add(refused.kind(), cell, refused.expected(), refused.mend());
            return Optional.empty();
        }
    }

    public int count() {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    public boolean isEmpty() {
        return counts.isEmpty();
    }

    public void throwIfAny() throws BadBoardFile {
        if (!isEmpty()) {
            throw asException();
        }
    }

    /** Notes a last fault, one that belongs to the whole file, and is ready to be thrown. */
    public BadBoardFile withLast(String expected, String found, String mend) {
        addForFile(expected, found, mend);
        return asException();
    }

    /** All faults noted, ready to be thrown. */
    public BadBoardFile asException() {
        List<Fault> listed = new ArrayList<>(ofTheFile);
        ofCells.stream().sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column)).forEach(listed::add);
        List<Fault> causes = listed.stream().filter(fault -> isCause(fault.kind()))
            .map(this::forAllOfItsKind).limit(most).toList();
        if (most == MOST_OF_SCAN) {
            return new BadBoardFile(causes, isFull() ? "\nReading stopped here; there may be more." : "");
        }
        int all = counts.entrySet().stream().filter(kind -> isCause(kind.getKey()))
            .mapToInt(kind -> kind.getKey().isSaidOnce() ? 1 : kind.getValue()).sum();
        return new BadBoardFile(causes, all - causes.size());
    }

    /** Counts a fault; whether it is to be listed. */
    private boolean isHeard(Kind kind) {
        return counts.merge(kind, 1, Integer::sum) == 1 || !kind.isSaidOnce();
    }

    private boolean isCause(Kind kind) {
        return !kind.followsFrom(counts.keySet());
    }

    /** One fraction in mm is a slip; several show that the whole file is in inches. */
    private Fault forAllOfItsKind(Fault fault) {
        return fault.kind() == Kind.FRACTION && counts.get(Kind.FRACTION) > 1
            ? new Fault(fault.kind(), fault.file(), fault.line(), fault.column(), fault.expected(), fault.found(),
                "Fractions are read in inches only: add a line \"# units: in\".")
            : fault;
    }
}
