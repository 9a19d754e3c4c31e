package outwind.cli.ask;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;

/** Asks where there is no terminal to edit lines on: on a pipe, and on a terminal that can do nothing else. */
public final class PlainAsker implements Asker {

    private final BufferedReader in;
    private final PrintWriter out;

    public PlainAsker(BufferedReader in, PrintWriter out) {
        this.in = in;
        this.out = out;
    }

    @Override
    public Optional<String> ask(String question) throws IOException {
        out.println(question.stripTrailing());
        out.flush();
        String line = in.readLine();
        // Where the input was closed, Java's own library files take its place.
        if (line != null && line.indexOf('\0') >= 0) {
            throw new IOException("what comes in is no text. Type the heights, or pipe in a text in UTF-8");
        }
        return Optional.ofNullable(line);
    }

    @Override
    public boolean hasMore() throws IOException {
        return in.ready();
    }
}
