package outwind.report.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** What is asked of the disk to keep a recording: each of its acts is a moment at which the power may fail. */
interface Disk {

    /** Writes all of {@code bytes} and waits until they are on the disk. */
    void write(Path file, byte[] bytes, OpenOption... how) throws IOException;

    /** Cuts a file off and waits until that is on the disk. */
    void cutOff(Path file, long length) throws IOException;

    /** Puts one file in the place of another at one stroke, and waits until that is on the disk. */
    void replace(Path file, Path by) throws IOException;

    /** The disk that there is. */
    Disk REAL = new Disk() {

        @Override
        public void write(Path file, byte[] bytes, OpenOption... how) throws IOException {
            try (FileChannel channel = FileChannel.open(file, how)) {
                ByteBuffer rest = ByteBuffer.wrap(bytes);
                while (rest.hasRemaining()) {
                    channel.write(rest);
                }
                channel.force(true);
            }
        }

        @Override
        public void cutOff(Path file, long length) throws IOException {
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
                channel.truncate(length).force(true);
            }
        }

        @Override
        public void replace(Path file, Path by) throws IOException {
            try {
                Files.move(by, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(by, file, StandardCopyOption.REPLACE_EXISTING);
            }
            forceFolder(file.toAbsolutePath().getParent());
        }

        private void forceFolder(Path folder) {
            try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
                channel.force(true);
            } catch (IOException e) {
                // Some systems do not open folders; they put a move on the disk by themselves.
                return;
            }
        }
    };
}
