package outwind.scan;

import java.io.IOException;
import java.util.concurrent.atomic.AtomicInteger;
import outwind.board.BadBoardFile;
import outwind.board.PointCloud;

/**
 * The rows of a text scan, read on all cores.
 *
 * <p>The file is cut into parts of equal size. A first sweep counts the line ends of each, so that every part knows the
 * number of its first line and its place among the points; in a second sweep each reads the lines that begin in it.
 */
final class TextRows {

    private static final int BLOCK = 1 << 20;
    private static final long PART = 8L << 20;

    /** Read beyond a part at a time, for the end of its last line. */
    private static final int BEYOND = 1 << 12;

    /** What is longer is no row of numbers. */
    static final int LONGEST_LINE = 1 << 16;

    /** Points that three arrays can hold in the memory of an ordinary machine. */
    static final int MOST_POINTS = 300_000_000;

    private final ScanSource source;
    private final RowForm form;
    private final ScanFaults faults;
    private final long start;
    private final long firstLine;
    private final long mostLines;
    private final long part;
    private final AtomicInteger unmeasured = new AtomicInteger();

    /**
     * @param start     place of the first row's first byte
     * @param firstLine number of that row in the file, 1-based
     * @param mostLines rows to read at most
     */
    TextRows(ScanSource source, RowForm form, ScanFaults faults, long start, long firstLine, long mostLines) {
        this(source, form, faults, start, firstLine, mostLines, PART);
    }

    TextRows(ScanSource source, RowForm form, ScanFaults faults, long start, long firstLine, long mostLines,
             long part) {
        this.source = source;
        this.form = form;
        this.faults = faults;
        this.start = start;
        this.firstLine = firstLine;
        this.mostLines = mostLines;
        this.part = part;
    }

    /** Reads all rows. */
    PointCloud read() throws IOException, BadBoardFile {
        int parts = (int) Math.max(1, (source.size() - start + part - 1) / part);
        long[] ends = new long[parts];
        boolean[] endsWithLineEnd = new boolean[parts];
        ScanSource.inParts(parts, i -> ends[i] = lineEnds(i, endsWithLineEnd));
        int[] from = new int[parts];
        long[] line = new long[parts];
        long lines = 0;
        for (int i = 0; i < parts; i++) {
            // A part whose beginning is the middle of a line leaves that line to the part before.
            line[i] = lines + (i == 0 || endsWithLineEnd[i - 1] ? 0 : 1);
            from[i] = (int) Math.min(Math.min(line[i], mostLines), MOST_POINTS);
            lines += ends[i];
        }
        lines = Math.min(mostLines, lines + (endsWithLineEnd[parts - 1] ? 0 : 1));
        if (lines > MOST_POINTS) {
            throw faults.whole("a scan of at most " + MOST_POINTS + " points", lines + " rows",
                "Thin out the scan, for instance to every tenth point.");
        }
        Portions portions = new Portions(from, (int) lines);
        ScanSource.inParts(parts, i -> readPart(i, line[i], endsWithLineEnd, portions));
        faults.throwIfAny();
        return portions.closed();
    }

    /** Points left out by {@link #read} because they were not measured. */
    int unmeasured() {
        return unmeasured.get();
    }

    private long lineEnds(int i, boolean[] endsWithLineEnd) {
        byte[] block = new byte[BLOCK];
        long end = Math.min(source.size(), start + (i + 1) * part);
        long count = 0;
        byte last = '\n';
        for (long at = start + i * part; at < end;) {
            int read = source.read(at, block, 0, (int) Math.min(BLOCK, end - at));
            if (read == 0) {
                break;
            }
            count += lineEnds(block, read);
            last = block[read - 1];
            at += read;
        }
        endsWithLineEnd[i] = last == '\n';
        return count;
    }

    private static int lineEnds(byte[] block, int length) {
        int count = 0;
        for (int k = 0; k < length; k++) {
            count += block[k] == '\n' ? 1 : 0;
        }
        return count;
    }

    private void readPart(int i, long firstOfPart, boolean[] endsWithLineEnd, Portions portions) {
        RowReader reader = new RowReader(form, faults);
        byte[] block = new byte[BLOCK + LONGEST_LINE];
        long end = Math.min(source.size(), start + (i + 1) * part);
        long at = start + i * part;
        boolean skipping = i > 0 && !endsWithLineEnd[i - 1];
        long line = firstOfPart;
        int kept = 0;
        while (line < mostLines && !faults.isFull()) {
            int read = source.read(at, block, kept, (int) Math.min(BLOCK, Math.max(end - at, 0) + BEYOND));
            at += read;
            source.advance(read);
            int filled = kept + read;
            int from = 0;
            int lineEnd;
            while ((lineEnd = lineEnd(block, from, filled)) >= 0) {
                // The line's place in the file tells whose it is.
                if (at - (filled - from) >= end && !skipping || line >= mostLines) {
                    finish(reader);
                    return;
                }
                if (!skipping) {
                    row(i, reader, block, from, lineEnd, line++, portions);
                }
                skipping = false;
                from = lineEnd + 1;
            }
            kept = filled - from;
            boolean over = at - kept >= end && !skipping;
            if (read == 0 || over) {
                // The last line of the file may have no end.
                if (read == 0 && kept > 0 && !over && !skipping) {
                    row(i, reader, block, from, filled, line, portions);
                }
                break;
            }
            if (kept > LONGEST_LINE) {
                tooLong(line);
                break;
            }
            System.arraycopy(block, from, block, 0, kept);
        }
        finish(reader);
    }

    private void row(int i, RowReader reader, byte[] block, int from, int to, long line, Portions portions) {
        if (to - from > LONGEST_LINE) {
            tooLong(line);
        } else if (reader.read(block, from, to, firstLine + line) > 0) {
            portions.add(i, reader.point()[0], reader.point()[1], reader.point()[2]);
        }
    }

    private void tooLong(long line) {
        faults.add(firstLine + line, 1, "a row of at most " + LONGEST_LINE + " bytes", "a longer line",
            "Save the scan as text with one point on each line.");
    }

    private void finish(RowReader reader) {
        unmeasured.addAndGet(reader.unmeasured());
    }

    private static int lineEnd(byte[] block, int from, int to) {
        for (int k = from; k < to; k++) {
            if (block[k] == '\n') {
                return k;
            }
        }
        return -1;
    }
}
