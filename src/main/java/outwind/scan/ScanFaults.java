package outwind.scan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import outwind.board.BadBoardFile;
import outwind.board.Fault;

/** The faults of one scan file; whoever finds them may be one of several threads. */
final class ScanFaults {

    /** A scan with so many faults is of another kind, and one screen of them shows it. */
    private static final int MOST = 20;

    private final String file;
    private final List<Fault> faults = new ArrayList<>();

    ScanFaults(String file) {
        this.file = file;
    }

    /** The file as faults name it. */
    String file() {
        return file;
    }

    /** Notes a fault at a place of the file, 1-based. */
    synchronized void add(long line, int column, String expected, String found, String mend) {
        if (faults.size() < MOST) {
            faults.add(new Fault(file, (int) Math.min(Integer.MAX_VALUE, line), column, expected, found, mend));
        }
    }

    /** A fault that ends the reading at once. */
    BadBoardFile at(int line, int column, String expected, String found, String mend) {
        return new BadBoardFile(List.of(new Fault(file, line, column, expected, found, mend)), 0);
    }

    /** A fault of the file as a whole, which ends the reading at once. */
    BadBoardFile whole(String expected, String found, String mend) {
        return at(1, 1, expected, found, mend);
    }

    /** True once so many are found that reading on is of no use. */
    synchronized boolean isFull() {
        return faults.size() >= MOST;
    }

    synchronized void throwIfAny() throws BadBoardFile {
        if (!faults.isEmpty()) {
            faults.sort(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column));
            throw new BadBoardFile(faults, 0);
        }
    }
}
