package outwind.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** Trouble with reading or writing a file, in words. */
final class FileTrouble {

    private FileTrouble() { }

    /** What went wrong while a board was read; names the file that it went wrong with, or else the board's. */
    static String inWords(Path board, IOException e) {
        return e instanceof FileSystemException named && named.getFile() != null ? inWords(e)
            : board + ": " + inWords(e);
    }

    /** What went wrong, without the names of classes. */
    static String inWords(IOException e) {
        if (e instanceof NoSuchFileException missing) {
            return "there is no file of this name: " + missing.getFile();
        }
        if (e instanceof AccessDeniedException denied) {
            return "no permission to read or write " + denied.getFile();
        }
        if (e instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason() + ": " + system.getFile();
        }
        return "Is a directory".equals(e.getMessage()) ? "this is a folder; name the files in it"
            : Optional.ofNullable(e.getMessage()).orElse("it cannot be read or written");
    }
}
