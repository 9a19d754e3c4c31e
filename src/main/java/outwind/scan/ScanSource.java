package outwind.scan;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Bytes of a scan file, read in blocks at any place by several threads at once. */
final class ScanSource {

    private final FileChannel channel;
    private final Progress progress;
    private final long size;
    private final AtomicLong done = new AtomicLong();

    ScanSource(FileChannel channel, Progress progress) throws IOException {
        this.channel = channel;
        this.progress = progress;
        this.size = channel.size();
    }

    long size() {
        return size;
    }

    /**
     * Reads as many bytes as there are and fit.
     *
     * @return how many; 0 at the end of the file
     */
    int read(long position, byte[] into, int offset, int length) {
        try {
            ByteBuffer buffer = ByteBuffer.wrap(into, offset, length);
            long at = position;
            while (buffer.hasRemaining()) {
                int read = channel.read(buffer, at);
                if (read < 0) {
                    break;
                }
                at += read;
            }
            return length - buffer.remaining();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The first bytes of the file, at most so many. */
    byte[] start(int most) {
        byte[] bytes = new byte[(int) Math.min(most, size)];
        read(0, bytes, 0, bytes.length);
        return bytes;
    }

    /** Says that so many further bytes are read. */
    void advance(long bytes) {
        progress.at(Math.min(size, done.addAndGet(bytes)), size);
    }

    /** Does the parts of a work on all cores. */
    static void inParts(int parts, IntConsumer work) throws IOException {
        try {
            IntStream.range(0, parts).parallel().forEach(work);
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }
}
