package outwind.scan.bytes;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;

/**
 * An open file whose places may be read by several threads at once.
 *
 * @param name how faults name the file
 * @param size in bytes, when it was opened
 */
public record ScanBytes(String name, FileChannel channel, long size) {

    /** Bytes at the end of a file that may be blank. */
    private static final int TAIL = 1024;

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
        return wanted;
    }
}
