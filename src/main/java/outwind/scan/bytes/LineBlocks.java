package outwind.scan.bytes;

import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * The lines of a file from a place on, in blocks of about equal size. A line belongs to the block in which it begins,
 * so each block can be read without its neighbours: with one byte before it, which tells whether a line begins at its
 * first, and as many behind it as the longest line may need.
 *
 * <p>Lines end in \n or \r\n, the last perhaps in nothing.
 */
public final class LineBlocks {

    /** In bytes, without the line's end. What is longer is no row of a table. */
    public static final int LONGEST_LINE = 10_000;

    private static final VarHandle EIGHT =
        MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.nativeOrder());
    private static final long LOW_BITS = 0x7F7F7F7F7F7F7F7FL;
    private static final long LINE_ENDS = 0x0A0A0A0A0A0A0A0AL;

    private final ScanBytes file;
    private final long from;
    private final int blockSize;

    /**
     * @param from      where the first line begins (bytes)
     * @param blockSize bytes in a block, as far as the file has so many
     */
    LineBlocks(ScanBytes file, long from, int blockSize) {
        this.file = file;
        this.from = from;
        this.blockSize = (int) Math.min(blockSize, Math.max(1, file.size() - from));
    }

    public int count() {
        return Math.toIntExact((file.size() - from + blockSize - 1) / blockSize);
    }

    /** Bytes in each block but the last. */
    public int size() {
        return blockSize;
    }

    /** A place for the bytes of one block at a time. */
    public Block block() {
        return new Block();
    }

    /** The bytes of one block. */
    public final class Block {

        private final byte[] text = new byte[1 + blockSize + LONGEST_LINE + 1 + NumberScanner.MARGIN];
        private int begin;
        private int limit;

        /** The bytes; they change with the block. A line end follows the last. */
        public byte[] text() {
            return text;
        }

        /** Where the first line begins that belongs to the block; {@link #limit} or more if there is none. */
        public int begin() {
            return begin;
        }

        /** Lines that begin here or later belong to the next block. */
        public int limit() {
            return limit;
        }

        public void load(int block) throws IOException {
            long first = from + (long) block * blockSize;
            int before = block == 0 ? 0 : 1;
            int length = file.read(first - before, first + blockSize + LONGEST_LINE + 1, text);
            text[length] = '\n';
            limit = Math.min(before + blockSize, length);
            begin = block == 0 ? 0 : lineEnd(0) + 1;
        }

        /** Where the line ends in which {@code at} lies: the place of its \n, or of the end of all bytes. */
        public int lineEnd(int at) {
            int end = at;
            while (text[end] != '\n') {
                end++;
            }
            return end;
        }

        /** How many lines belong to a block; loads it. */
        int lines(int block) throws IOException {
            long first = from + (long) block * blockSize;
            int before = block == 0 ? 0 : 1;
            int length = file.read(first - before, Math.min(first + blockSize, file.size()) - 1, text);
            return lineEnds(length) + 1 - before;
        }

        private int lineEnds(int length) {
            int ends = 0;
            int at = 0;
            for (; at + 8 <= length; at += 8) {
                // The top bit of each byte that is zero after this, and of no other.
                long other = (long) EIGHT.get(text, at) ^ LINE_ENDS;
                ends += Long.bitCount(~((other & LOW_BITS) + LOW_BITS | other | LOW_BITS));
            }
            for (; at < length; at++) {
                ends += text[at] == '\n' ? 1 : 0;
            }
            return ends;
        }
    }
}
