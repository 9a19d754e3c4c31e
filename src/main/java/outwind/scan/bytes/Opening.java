package outwind.scan.bytes;

import java.io.IOException;
import java.util.Optional;

/** The first lines of a file, one after the other: where its header is looked for. */
public final class Opening {

    /** Bytes that are looked at. A header longer than that is none. */
    public static final int LONGEST = 64 * 1024;

    private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    private final byte[] bytes = new byte[LONGEST];
    private final int length;
    private int next;
    private int lineNumber;

    /** Begins behind a byte order mark, if there is one. */
    public Opening(ScanBytes file) throws IOException {
        length = file.read(0, LONGEST, bytes);
        next = startsWith(MARK) ? MARK.length : 0;
    }

    /** The next line without its end, or nothing at the end of the file or of what is looked at. */
    public Optional<String> line() {
        int end = next;
        while (end < length && bytes[end] != '\n') {
            end++;
        }
        if (next >= length || end == LONGEST) {
            return Optional.empty();
        }
        int textEnd = end > next && bytes[end - 1] == '\r' ? end - 1 : end;
        String line = ScanBytes.decoded(bytes, next, textEnd);
        next = Math.min(end + 1, length);
        lineNumber++;
        return Optional.of(line);
    }

    /** Number of the line read last, 1-based; 0 before the first. */
    public int lineNumber() {
        return lineNumber;
    }

    /** Where in the file the next line begins. */
    public int next() {
        return next;
    }

    /** Whether there is more than is looked at. */
    public boolean isCut() {
        return length == LONGEST;
    }

    private boolean startsWith(byte[] start) {
        for (int i = 0; i < start.length; i++) {
            if (bytes[i] != start[i]) {
                return false;
            }
        }
        return true;
    }
}
