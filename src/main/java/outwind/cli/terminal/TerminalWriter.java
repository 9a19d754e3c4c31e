package outwind.cli.terminal;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.Charset;

/**
 * Text on its way to a terminal: folded where the terminal is narrower than a report, and with stand-ins for characters
 * that it cannot show. What is written between two flushes is folded as a whole.
 */
final class TerminalWriter extends Writer {

    private final StringBuilder pending = new StringBuilder();
    private final PrintStream stream;
    private final int columns;
    private final Charset charset;
    private final Writer bytes;

    TerminalWriter(PrintStream stream, int columns, Charset charset) {
        this.stream = stream;
        this.columns = columns;
        this.charset = charset;
        this.bytes = new OutputStreamWriter(stream, charset);
    }

    @Override
    public void write(char[] text, int from, int length) {
        synchronized (lock) {
            pending.append(text, from, length);
        }
    }

    @Override
    public void flush() throws IOException {
        synchronized (lock) {
            String text = Visible.in(pending.toString());
            pending.setLength(0);
            bytes.write(StandIns.in(columns < Terminal.USUAL ? FoldedText.of(text, columns) : text, charset));
            bytes.flush();
            if (stream.checkError()) {
                throw new IOException("not all of it is printed");
            }
        }
    }

    @Override
    public void close() throws IOException {
        flush();
        bytes.close();
    }
}
