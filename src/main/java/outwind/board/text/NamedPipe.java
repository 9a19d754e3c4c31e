package outwind.board.text;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/** A pipe with a name in a folder. To open one that nobody writes to would mean to wait for ever. */
public final class NamedPipe {

    private NamedPipe() { }

    /**
     * Refuses such a pipe, and a device; those that a shell makes are under {@code /dev} and {@code /proc}, and have a
     * writer.
     *
     * @throws IOException  if nothing can be learnt about the file
     * @throws BadBoardFile if it is one
     */
    public static void refuse(Path file) throws IOException, BadBoardFile {
        if (file.startsWith("/dev") || file.startsWith("/proc") || !Files.exists(file)) {
            return;
        }
        if (Files.readAttributes(file, BasicFileAttributes.class).isOther()) {
            FaultList faults = new FaultList(file.toString());
            faults.addForFile("a file", "a pipe or a device", "Write its content to a file, and name that.");
            faults.throwIfAny();
        }
    }
}
