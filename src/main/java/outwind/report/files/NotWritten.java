package outwind.report.files;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** A report that could not be written, and why, in words. */
final class NotWritten extends IOException {

    private static final long serialVersionUID = 1;

    NotWritten(Path file, IOException cause) {
        super(file + " is not written: " + reason(cause) + "." + (Files.exists(file) ? " What was there before is still"
            + " there." : "") + " Make room or see to the permissions of its folder, or choose another folder with --out.",
            cause);
    }

    NotWritten(String message) {
        super(message);
    }

    private static String reason(IOException cause) {
        if (cause instanceof AccessDeniedException) {
            return "there is no permission to write there";
        }
        if (cause instanceof FileAlreadyExistsException inTheWay) {
            return inTheWay.getFile() + " is a file, not a folder";
        }
        if (cause instanceof NoSuchFileException) {
            return "its folder is not there any more";
        }
        String said = cause instanceof FileSystemException system ? system.getReason() : cause.getMessage();
        return said == null || said.isBlank() ? "the disk does not take it" : said.strip();
    }
}
