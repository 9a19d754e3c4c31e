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
