package outwind.report.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import outwind.scan.file.ScanFile;

/**
 * The folder that reports go to. A file is written beside its place and moved there when it is whole, so that neither
 * a crash nor a full disk leaves half of one, and of two runs at once each file is one run's or the other's; a file
 * that was given as input is never replaced. No name leads out of the folder: see {@link ReportNames}.
 *
 * @param folder where; made if it is not there
 * @param inputs files that must not be replaced
 */
public record Reports(Path folder, Collection<Path> inputs) {

    private static final String PART = ".outwind-";
    private static final String PART_END = ".part";

    /** No run takes so long: what is older was left by one that was killed. */
    private static final Duration LEFT_BEHIND = Duration.ofDays(1);

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
        Path file = place(name);
        try {
            if (!Files.isDirectory(folder)) {
                Files.createDirectories(folder);
            }
            refuseInput(file);
            moveInto(file, part(bytes));
        } catch (NotWritten e) {
            throw e;
        } catch (IOException e) {
            throw new NotWritten(file, e);
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
        Path file = place(name);
        return Files.exists(file) ? file : write(name, text);
    }

    /**
     * Refuses what {@link #writeNew} would, before anything is written.
     *
     * @throws IOException if there is another file of this name
     */
    public void refuseOther(String name, String text) throws IOException {
        Path file = place(name);
        if (Files.exists(file)
            && !(Files.isRegularFile(file) && Arrays.equals(Files.readAllBytes(file),
                text.getBytes(StandardCharsets.UTF_8)))) {
            throw new NotWritten(file + " is there already and is left as it is. Move it away, or choose another"
                + " --name or another folder with --out");
        }
    }

    /**
     * Clears away what runs that were killed have left in the folder. Left where it is, it hinders nothing; so what
     * cannot be cleared away is let be.
     */
    public void sweep() {
        Instant before = Instant.now().minus(LEFT_BEHIND);
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, Reports::isPart)) {
            for (Path part : parts) {
                if (Files.getLastModifiedTime(part).toInstant().isBefore(before)) {
                    Files.deleteIfExists(part);
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            // The reports matter; this does not.
        }
    }

    private static boolean isPart(Path file) {
        String name = file.getFileName().toString();
        return name.startsWith(PART) && name.endsWith(PART_END);
    }

    private Path place(String name) {
        String fit = ReportNames.fit(name);
        try {
            return folder.resolve(fit);
        } catch (InvalidPathException e) {
            // A file system whose names are plain ASCII, as in the locale C.
            return folder.resolve(fit.replaceAll("[^ -~]", "_"));
        }
    }

    private void refuseInput(Path file) throws IOException {
        if (Files.exists(file) && ScanFile.isBeside(file)) {
            throw new NotWritten(file + " tells of the scan beside it; it is left as it is. Choose another folder with"
                + " --out");
        }
        for (Path input : inputs) {
            if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
                throw new NotWritten(file + " is a file that was given to read; it is left as it is. Choose another"
                    + " folder with --out");
            }
        }
    }

    /** A new file in the folder with all the bytes in it, or none. */
    private Path part(byte[] bytes) throws IOException {
        Path part = newPart();
        try {
            Files.write(part, bytes);
            return part;
        } catch (IOException e) {
            remove(part, e);
            throw e;
        }
    }

    /** A file that no other run has; made with the permissions that files usually get here. */
    private Path newPart() throws IOException {
        String start = PART + ProcessHandle.current().pid() + "-";
        for (int i = 0; ; i++) {
            try {
                return Files.createFile(folder.resolve(start + i + PART_END));
            } catch (FileAlreadyExistsException e) {
                // Another thread's, or that of a run on another machine: the next number is free.
            }
        }
    }

    private static void moveInto(Path file, Path part) throws IOException {
        try {
            try {
                Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException e) {
            remove(part, e);
            throw e;
        }
    }

    private static void remove(Path part, IOException why) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            why.addSuppressed(e);
        }
    }
}
