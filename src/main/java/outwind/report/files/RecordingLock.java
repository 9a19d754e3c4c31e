package outwind.report.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * One recording at a time into one file. The lock is that of the system on a file of its own beside the board file, so
 * it ends with the process whatever happens; the file says which process has it.
 */
public final class RecordingLock implements AutoCloseable {

    /** Locked far behind what is written, because some systems let nobody read what is locked. */
    private static final long FAR = 1L << 40;

    private final Path board;
    private final Path file;
    private final FileChannel channel;
    private final FileLock lock;

    private RecordingLock(Path board, Path file, FileChannel channel, FileLock lock) {
        this.board = board;
        this.file = file;
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * Takes the lock of a board file.
     *
     * @throws IOException if another recording has it, with its process, or if there can be no lock
     */
    public static RecordingLock of(Path board) throws IOException {
        Path real = Files.exists(board) ? board.toRealPath() : board.toAbsolutePath();
        RecordingFile.requirePlain(real);
        Files.createDirectories(real.getParent());
        Path file = real.resolveSibling("." + real.getFileName() + ".lock");
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ,
            StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
        try {
            FileLock lock = tried(channel);
            if (lock == null) {
                throw new IOException("another recording into " + board + " is running" + processIn(channel)
                    + ". End it there first");
            }
            channel.truncate(0);
            channel.write(ByteBuffer.wrap(String.valueOf(ProcessHandle.current().pid()).getBytes(StandardCharsets.UTF_8)));
            return new RecordingLock(board, file, channel, lock);
        } catch (IOException e) {
            channel.close();
            throw e;
        }
    }

    private static FileLock tried(FileChannel channel) throws IOException {
        try {
            return channel.tryLock(FAR, 1, false);
        } catch (OverlappingFileLockException e) {
            // The other recording runs in this very process.
            return null;
        }
    }

    private static String processIn(FileChannel channel) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(20);
        channel.read(bytes, 0);
        String process = new String(bytes.array(), 0, bytes.position(), StandardCharsets.UTF_8);
        return process.matches("\\d+") ? ", process " + process : "";
    }

    /** The board file that this lock is for. */
    public RecordingFile recording() throws IOException {
        return RecordingFile.at(board);
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(file);
        lock.release();
        channel.close();
    }
}
