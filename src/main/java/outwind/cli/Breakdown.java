package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import outwind.board.text.Line;
import outwind.report.words.Release;

/**
 * What is said when a command ends as it should not: memory runs out, or the program itself is at fault. One plain
 * line; with {@code OUTWIND_TRACE=1} in the environment the whole cause after it.
 */
final class Breakdown {

    private static final int LONGEST_SHOWN = 160;

    private Breakdown() { }

    /** Says it. */
    static void tell(Throwable thrown, PrintWriter err, boolean trace) {
        err.println(inWords(thrown));
        if (trace) {
            thrown.printStackTrace(err);
        }
        err.flush();
    }

    private static String inWords(Throwable thrown) {
        // Threads and streams wrap what was thrown in them.
        for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
            if (cause instanceof OutOfMemoryError) {
                return "This takes more memory than Java was given, " + (Runtime.getRuntime().maxMemory() >> 20)
                    + " MB. Give it more, as java -Xmx4g -jar outwind.jar and so on, or ask for less at once."
                    + " Less is fewer readings or sizes of blanks, or a coarser raster.";
            }
            if (cause instanceof IOException || cause instanceof UncheckedIOException && cause.getCause() == null) {
                return cause instanceof IOException trouble ? FileTrouble.inWords(trouble)
                    : "A file cannot be read or written.";
            }
        }
        Throwable root = thrown;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        return "Outwind itself is at fault here, not your input. Please report this line, the command and its files: "
            + "outwind " + Release.version() + ", Java " + System.getProperty("java.version") + ", " + root.getClass().getSimpleName()
            + place(root) + message(root);
    }

    /** Where in our own code it happened. */
    private static String place(Throwable root) {
        for (StackTraceElement frame : root.getStackTrace()) {
            if (frame.getClassName().startsWith("outwind.")) {
                return " at " + frame.getClassName() + ":" + frame.getLineNumber();
            }
        }
        return "";
    }

    private static String message(Throwable root) {
        if (root.getMessage() == null) {
            return "";
        }
        return ": " + Line.fit(root.getMessage(), LONGEST_SHOWN);
    }
}
