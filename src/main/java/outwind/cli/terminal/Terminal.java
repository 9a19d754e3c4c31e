package outwind.cli.terminal;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.Map;
import java.util.Properties;

/**
 * The terminal that the program talks to: how wide it is, and in which character set it reads.
 *
 * <p>Its width is what the environment variable {@code COLUMNS} says, as POSIX has it; asking the terminal itself would
 * take another process. Its character set is what the Java machine found out about it: {@code stdout.encoding} from
 * version 19 on, {@code sun.stdout.encoding} before, else {@code native.encoding}, the one of the locale.
 *
 * @param columns    characters in a line, 40 to 120
 * @param properties of the Java machine
 */
public record Terminal(int columns, Properties properties) {

    /** What reports are laid out for, and what a terminal is taken for that does not say. */
    static final int USUAL = 80;

    private static final int NARROWEST = 40;
    private static final int WIDEST = 120;

    /** Help needs two columns of words; in less than this picocli does not lay it out. */
    private static final int NARROWEST_HELP = 55;

    /** The terminal as environment and Java machine describe it. */
    public static Terminal of(Map<String, String> environment, Properties properties) {
        String said = environment.getOrDefault("COLUMNS", "").strip();
        int columns = said.matches("[1-9]\\d{0,5}") ? Integer.parseInt(said) : USUAL;
        return new Terminal(Math.max(NARROWEST, Math.min(WIDEST, columns)), properties);
    }

    /** The width that help is laid out for; where the terminal is narrower still, its lines are folded. */
    public int helpColumns() {
        return Math.max(NARROWEST_HELP, columns);
    }

    /**
     * Writes to the terminal what it can show.
     *
     * @param stream where it goes
     * @param name   which of the two it is, {@code stdout} or {@code stderr}
     */
    public PrintWriter writer(PrintStream stream, String name) {
        return new PrintWriter(new TerminalWriter(stream, columns, charset(name)), true);
    }

    private Charset charset(String name) {
        for (String key : new String[] {name + ".encoding", "sun." + name + ".encoding", "native.encoding"}) {
            try {
                Charset said = Charset.forName(properties.getProperty(key, ""));
                if (said.canEncode()) {
                    return said;
                }
            } catch (IllegalArgumentException e) {
                // Not said, or by a name that Java does not know: the next one tells.
            }
        }
        return Charset.defaultCharset();
    }
}
