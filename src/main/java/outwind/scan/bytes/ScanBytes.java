package outwind.scan.bytes;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/**
 * An open file whose places may be read by several threads at once.
 *
 * @param name how faults name the file
 * @param size    in bytes, when it was opened
 * @param returns whether a carriage return alone may end a line
 */
public record ScanBytes(String name, FileChannel channel, long size, boolean returns) {

    /** Bytes at the end of a file that may be blank. */
    private static final int TAIL = 1024;

    private static final Pattern LONE_RETURN = Pattern.compile("\\r(?!\\n)");

    /** Whether nothing but blanks and line ends stand in the file from here on. */
    public boolean isBlankFrom(long from) throws IOException {
        return size - from <= TAIL && lastByte(from) < 0;
    }

    /** How many lines at the end of the file are blank. */
    public int blankLinesAtEnd() throws IOException {
        long from = Math.max(0, size - TAIL);
        byte[] tail = new byte[TAIL];
        int length = read(from, size, tail);
        int lines = 0;
        // The last line's own end begins no further line.
        for (int at = lastByte(from) + 1; at < length - 1; at++) {
            lines += tail[at] == '\n' ? 1 : 0;
        }
        return lines;
    }

    /** The last place from {@code from} on that is not blank, counted from there; -1 if all is blank. */
    private int lastByte(long from) throws IOException {
        byte[] tail = new byte[TAIL];
        int at = read(from, size, tail) - 1;
        while (at >= 0 && isBlank(tail[at])) {
            at--;
        }
        return at;
    }

    private static boolean isBlank(byte c) {
        return c == ' ' || c == '\t' || c == '\r' || c == '\n';
    }

    /** As {@code int}, which faults and key lines have; files with more lines hold more points than can be read. */
    public static int lineNumber(long line) {
        return (int) Math.min(line, Integer.MAX_VALUE);
    }

    public static String decoded(byte[] text, int from, int to) {
        return new String(text, from, to - from, StandardCharsets.UTF_8);
    }

    /** This text, its lines ended by \\n where they are ended by \\r alone. */
    public ScanBytes withLineEnds() throws IOException {
        byte[] start = new byte[(int) Math.min(size, Opening.LONGEST)];
        read(0, start.length, start);
        return new ScanBytes(name, channel, size, LONE_RETURN.matcher(new String(start, StandardCharsets.ISO_8859_1))
            .find());
    }

    /**
     * Fills {@code bytes} from its start with what the file holds from {@code from} up to {@code to}.
     *
     * @return how many bytes came
     * @throws IOException also if the file has become shorter since it was opened
     */
    public int read(long from, long to, byte[] bytes) throws IOException {
        int wanted = (int) Math.max(0, Math.min(to, size) - from);
        ByteBuffer buffer = ByteBuffer.wrap(bytes, 0, wanted);
        while (buffer.hasRemaining()) {
            if (channel.read(buffer, from + buffer.position()) < 0) {
                throw new IOException(name + " became shorter while it was read");
            }
        }
        if (returns) {
            endLines(bytes, wanted, from + wanted);
        }
        return wanted;
    }

    /** Puts \\n in place of each \\r that none follows. */
    private void endLines(byte[] bytes, int length, long behind) throws IOException {
        ByteBuffer next = ByteBuffer.allocate(1);
        boolean cut = length > 0 && bytes[length - 1] == '\r' && channel.read(next, behind) == 1 && next.get(0) == '\n';
        for (int at = 0; at < length; at++) {
            boolean followed = at + 1 < length ? bytes[at + 1] == '\n' : cut;
            bytes[at] = bytes[at] == '\r' && !followed ? (byte) '\n' : bytes[at];
        }
    }
}
