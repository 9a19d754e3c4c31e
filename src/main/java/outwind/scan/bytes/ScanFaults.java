package outwind.scan.bytes;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import outwind.board.Fault;
import outwind.board.text.BadBoardFile;

/** The faults of a scan, in the order of the file; who reads stops when there are {@link #MOST}. */
public final class ScanFaults {

    /** About a screen. A scan is written by a program, so that one fault most likely runs through all of it. */
    public static final int MOST = 20;

    private final String file;
    private final List<Fault> faults = new ArrayList<>();

    public ScanFaults(String file) {
        this.file = file;
    }

    public String file() {
        return file;
    }

    public void add(long line, int column, String expected, String found, String mend) {
        if (!isFull()) {
            faults.add(new Fault(Fault.Kind.CAUSE, file, lineNumber(line), column, expected, found, mend));
        }
    }

    /** Notes a fault at bytes {@code from} to {@code to} of a line that begins at {@code begin}. */
    public void add(long line, byte[] text, int begin, int from, int to, String expected, String mend) {
        int column = decoded(text, begin, from).length() + 1;
        add(line, column, expected, Fault.shown(decoded(text, from, to)), mend);
    }

    public void addAll(ScanFaults later) {
        later.faults.forEach(fault ->
            add(fault.line(), fault.column(), fault.expected(), fault.found(), fault.mend()));
    }

    public int count() {
        return faults.size();
    }

    public boolean isFull() {
        return faults.size() >= MOST;
    }

    public void throwIfAny() throws BadBoardFile {
        if (!faults.isEmpty()) {
            throw asException();
        }
    }

    /** Notes a last fault, one that belongs to the whole file, and is ready to be thrown. */
    public BadBoardFile withLast(String expected, String found, String mend) {
        add(1, 1, expected, found, mend);
        return asException();
    }

    /** All faults noted, ready to be thrown. */
    public BadBoardFile asException() {
        return new BadBoardFile(faults, isFull() ? "\nReading stopped here; there may be more." : "");
    }

    /** As {@code int}, which faults and header lines have; files with more lines hold more points than can be read. */
    public static int lineNumber(long line) {
        return (int) Math.min(line, Integer.MAX_VALUE);
    }

    public static String decoded(byte[] text, int from, int to) {
        return new String(text, from, to - from, StandardCharsets.UTF_8);
    }
}
