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
        return Optional.ofNullable(in.readLine());
    }

    @Override
    public boolean hasMore() throws IOException {
        return in.ready();
    }
}
