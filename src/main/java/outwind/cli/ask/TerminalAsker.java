package outwind.cli.ask;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Attributes;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import org.jline.utils.InfoCmp;
import org.jline.utils.NonBlockingReader;

/**
 * Asks on a terminal, where a line can be edited and earlier ones come back with the arrow keys. Ctrl-C drops a line
 * that is begun; on an empty one it ends, as Ctrl-D does.
 */
public final class TerminalAsker implements Asker {

    private static final int NOTHING_WAITS = NonBlockingReader.READ_EXPIRED;

    /** What every terminal can do that is in use today (ISO 6429), for one the library has no table of. */
    private static final String ANY_TERMINAL = "ansi";

    private final Terminal terminal;
    private final LineReader reader;
    private final PrintWriter out;

    /** @throws IOException if there is no terminal after all */
    public TerminalAsker(PrintWriter out) throws IOException {
        this.out = out;
        try {
            terminal = system();
        } catch (IllegalStateException e) {
            throw new IOException(e.getMessage(), e);
        }
        reader = LineReaderBuilder.builder().terminal(terminal)
            // A pasted row is a line, a row after it the next; and what is typed means what it says.
            .option(LineReader.Option.BRACKETED_PASTE, false)
            .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
            .option(LineReader.Option.HISTORY_IGNORE_SPACE, false)
            .build();
    }

    /**
     * The terminal by calls of the system alone: the library's other ways, and its search for what an unknown terminal
     * can do, start programs.
     */
    private static Terminal system() throws IOException {
        TerminalBuilder builder = TerminalBuilder.builder().system(true).dumb(false).provider("jni");
        String name = System.getenv("TERM");
        if (File.separatorChar == '/') {
            String known = name != null && InfoCmp.getDefaultInfoCmp(name) != null ? name : ANY_TERMINAL;
            InfoCmp.setLoadedInfoCmp(known, InfoCmp.getDefaultInfoCmp(known));
            builder.type(known);
        }
        return builder.build();
    }

    @Override
    public Optional<String> ask(String question) {
        out.flush();
        while (true) {
            try {
                return Optional.of(reader.readLine(question));
            } catch (UserInterruptException e) {
                if (e.getPartialLine().isBlank()) {
                    return Optional.empty();
                }
            } catch (EndOfFileException e) {
                return Optional.empty();
            }
        }
    }

    @Override
    public boolean hasMore() throws IOException {
        // In its usual mode a terminal hands out whole lines, and looking for one would wait for it.
        Attributes usual = terminal.enterRawMode();
        try {
            return terminal.reader().peek(1) != NOTHING_WAITS;
        } finally {
            terminal.setAttributes(usual);
        }
    }

    @Override
    public boolean isPerson() {
        return true;
    }

    @Override
    public void close() throws IOException {
        terminal.close();
    }
}
