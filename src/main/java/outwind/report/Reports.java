package outwind.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/**
 * The folder that reports go to. A file is written beside its place and moved there when it is whole, so that neither
 * a crash nor a full disk leaves half of one; a file that was given as input is never replaced.
 *
 * @param folder where; made if it is not there
 * @param inputs files that must not be replaced
 */
public record Reports(Path folder, Collection<Path> inputs) {

    public Reports {
        inputs = List.copyOf(inputs);
    }

    /**
     * Writes a report.
     *
     * @param name file name within the folder
     * @return the file
     * @throws IOException if it cannot be written; what was there before is still there
     */
    public Path write(String name, String text) throws IOException {
        return write(name, text.getBytes(StandardCharsets.UTF_8));
    }

    /** The same for bytes. */
    public Path write(String name, byte[] bytes) throws IOException {
        Files.createDirectories(folder);
        Path file = folder.resolve(name);
        refuseInput(file);
        Path part = Files.createTempFile(folder, "." + name, ".part");
        try {
            Files.write(part, bytes);
            moveInto(file, part);
        } finally {
            Files.deleteIfExists(part);
        }
        return file;
    }

    /**
     * Writes a file that a person will write in: one of that name is never replaced. One that holds just this is as
     * good as written.
     *
     * @return the file
     * @throws IOException if there is another file of this name, or it cannot be written
     */
    public Path writeNew(String name, String text) throws IOException {
        refuseOther(name, text);
        Path file = folder.resolve(name);
        return Files.exists(file) ? file : write(name, text);
    }

    /**
     * Refuses what {@link #writeNew} would, before anything is written.
     *
     * @throws IOException if there is another file of this name
     */
    public void refuseOther(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        if (Files.exists(file)
            && !(Files.isRegularFile(file) && Arrays.equals(Files.readAllBytes(file),
                text.getBytes(StandardCharsets.UTF_8)))) {
            throw new IOException(file + " is there already and is left as it is. Move it away, or choose another"
                + " --name or another folder with --out");
        }
    }

    private void refuseInput(Path file) throws IOException {
        for (Path input : inputs) {
            if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
                throw new IOException(file + " is a file that was given to read; it is left as it is. Choose another"
                    + " folder with --out");
            }
        }
    }

    private static void moveInto(Path file, Path part) throws IOException {
        try {
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
