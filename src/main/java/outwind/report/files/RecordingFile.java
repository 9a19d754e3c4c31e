package outwind.report.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Arrays;

/**
 * The file that a recording is kept in. A text that goes on from what the file holds is added to its end; any other is
 * written beside it and moved into its place. Either way it is on the disk when {@link #keep} returns. Whenever power
 * fails before, the file holds the text before or the text after; behind the text before there may be a torn line.
 */
public final class RecordingFile {

    private final Path file;
    private final Disk disk;
    /** What the file holds; null if there is none. */
    private byte[] held;

    private RecordingFile(Path file, Disk disk, byte[] held) {
        this.file = file;
        this.disk = disk;
        this.held = held;
    }

    /** The file of this name, be it there or not. */
    public static RecordingFile at(Path file) throws IOException {
        return at(file, Disk.REAL);
    }

    static RecordingFile at(Path file, Disk disk) throws IOException {
        // Moved into place, a file would replace a link to it.
        Path real = Files.exists(file) ? file.toRealPath() : file;
        requirePlain(real);
        return new RecordingFile(real, disk, Files.exists(real) ? Files.readAllBytes(real) : null);
    }

    /** Refuses what is there and no file. */
    static void requirePlain(Path file) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new IOException("this is a folder, a pipe or a device, and heights cannot be kept in it; name a file");
        }
    }

    /**
     * Keeps a text.
     *
     * @throws IOException if it cannot be written, or somebody else has written to the file; what was kept before is
     *                     still there
     */
    public void keep(String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        if (held != null && Arrays.equals(held, bytes)) {
            return;
        }
        requireUntouched();
        if (held != null && bytes.length > held.length
                && Arrays.equals(held, 0, held.length, bytes, 0, held.length)) {
            append(Arrays.copyOfRange(bytes, held.length, bytes.length));
        } else {
            replace(bytes);
        }
        held = bytes;
    }

    private void requireUntouched() throws IOException {
        boolean there = Files.exists(file);
        if (there != (held != null) || there && !Arrays.equals(Files.readAllBytes(file), held)) {
            throw new IOException(file + " was changed by somebody else meanwhile; it is left as it is");
        }
    }

    private void append(byte[] more) throws IOException {
        try {
            disk.write(file, more, StandardOpenOption.WRITE, StandardOpenOption.APPEND);
        } catch (IOException e) {
            // A full disk may have taken half a line.
            disk.cutOff(file, held.length);
            throw e;
        }
    }

    private void replace(byte[] bytes) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        Files.createDirectories(folder);
        // Always the same name, so that what a crash leaves is written over and not piled up.
        Path part = folder.resolve("." + file.getFileName() + ".part");
        try {
            // Whoever may write to the folder could have put a link there, which must not be followed.
            Files.deleteIfExists(part);
            disk.write(part, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            keepPermissions(part);
            disk.replace(file, part);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private void keepPermissions(Path part) throws IOException {
        PosixFileAttributeView was = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (held != null && was != null) {
            Files.setPosixFilePermissions(part, was.readAttributes().permissions());
        }
    }
}
