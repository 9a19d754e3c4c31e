package outwind.board.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import outwind.board.BadValue;
import outwind.board.Fault;

/** The faults of one file, collected while it is read so that they can all be reported at once. */
public final class FaultList {

    // About three screens; whoever mends these has most likely found the pattern of the rest.
    static final int MOST_LISTED = 50;

    private final String file;
    private final List<Fault> ofTheFile = new ArrayList<>();
    private final List<Fault> ofCells = new ArrayList<>();
    private int count;

    public FaultList(String file) {
        this.file = file;
    }

    /** Notes a fault at a place in the file; {@code found} is written as it stands. */
    public void add(int line, int column, String expected, String found, String mend) {
        count++;
        if (ofCells.size() < MOST_LISTED) {
            ofCells.add(new Fault(file, line, column, expected, found, mend));
        }
    }

    /** Notes a fault at a cell, showing the cell's text. */
    public void add(Cell cell, String expected, String mend) {
        add(cell.line(), cell.column(), expected, Fault.shown(cell.text()), mend);
    }

    /** Notes a fault that belongs to no one place; such faults are always listed, and first. */
    public void addForFile(String expected, String found, String mend) {
        count++;
        ofTheFile.add(new Fault(file, 1, 1, expected, found, mend));
    }

    /** What {@code reader} makes of the cell's text, or nothing and a fault if it refuses it. */
    public <T> Optional<T> read(Cell cell, Function<String, T> reader) {
        try {
            return Optional.of(reader.apply(cell.text()));
        } catch (BadValue refused) {
            add(cell, refused.expected(), refused.mend());
            return Optional.empty();
        }
    }

    public int count() {
        return count;
    }

    public void throwIfAny() throws BadBoardFile {
        if (count > 0) {
            List<Fault> listed = new ArrayList<>(ofTheFile);
            ofCells.stream().sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column))
                .limit(MOST_LISTED - ofTheFile.size()).forEach(listed::add);
            throw new BadBoardFile(OneCause.of(listed), count - listed.size());
        }
    }
}
