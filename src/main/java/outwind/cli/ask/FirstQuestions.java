package outwind.cli.ask;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import outwind.board.BadValue;
import outwind.board.LengthReader;
import outwind.board.Quantity;
import outwind.board.file.StatedThickness;
import outwind.board.Units;

/**
 * Learns what must be known of a board before it is touched off: what the file states stays, what an option states is
 * taken, the rest is asked for. What need not be known is asked for only where something else has to be, so that a
 * machine's log can be piped in as it is.
 */
public final class FirstQuestions {

    private static final String UNITS = "units";
    private static final String SPECIES = "species";
    private static final List<Quantity> NEEDED = List.of(Quantity.LENGTH, Quantity.WIDTH, Quantity.THICKNESS);

    private final Asker asker;
    private final PrintWriter out;
    private final Map<String, String> stated;
    private final Map<String, String> options;
    private final List<String> statements = new ArrayList<>();

    /**
     * @param stated  what the file states, by the words of its keys
     * @param options what the command line states, likewise
     */
    public FirstQuestions(Asker asker, PrintWriter out, Map<String, String> stated, Map<String, String> options) {
        this.asker = asker;
        this.out = out;
        this.stated = stated;
        this.options = options;
    }

    /**
     * The key lines that the file lacks; empty if the answers broke off.
     *
     * @throws BadValue if an option is not what it should be
     */
    public Optional<List<String>> learn() throws IOException {
        boolean asks = NEEDED.stream().anyMatch(size -> isUnknown(size.word()));
        boolean known = state(UNITS, asks && stated.isEmpty(), true, "Unit, mm or in (Enter for mm): ", text -> {
            Units.named(text);
            return text;
        });
        if (known && stated.isEmpty() && statements.isEmpty()) {
            statements.add(UNITS + ": " + Units.MILLIMETRES.symbol());
        }
        // At a prompt a comma parts nothing.
        LengthReader gauge = new LengthReader(units(), true);
        String in = gauge.units().symbol();
        known = known && state(Quantity.LENGTH, gauge, true, "Length along the grain, " + in + ": ")
            && state(Quantity.WIDTH, gauge, true, "Width, " + in + ": ")
            && state(Quantity.THICKNESS.word(), true, false, "Rough thickness by caliper, " + in + ": ",
                text -> {
                    StatedThickness.parse(text, gauge);
                    return text.replace(',', '.');
                })
            && state(Quantity.TARGET, gauge, asks, "Thickness wanted, " + in + " (Enter for none): ")
            && state(SPECIES, asks, true, "Wood (Enter if it does not matter): ", text -> text);
        return known ? Optional.of(List.copyOf(statements)) : Optional.empty();
    }

    private boolean isUnknown(String word) {
        return !stated.containsKey(word) && !options.containsKey(word);
    }

    private Units units() {
        try {
            return Units.named(Optional.ofNullable(stated.get(UNITS)).or(() -> statements.stream().findFirst()
                .map(statement -> statement.substring(UNITS.length() + 1))).orElse(Units.MILLIMETRES.symbol()));
        } catch (BadValue e) {
            // A fault of the file, which is reported with all its others when it is read.
            return Units.MILLIMETRES;
        }
    }

    private boolean state(Quantity size, LengthReader gauge, boolean asks, String question) throws IOException {
        return state(size.word(), asks, !NEEDED.contains(size), question, text -> {
            gauge.read(size, text);
            return text.replace(',', '.');
        });
    }

    /**
     * Takes or asks for one statement.
     *
     * @param asks      true if it is asked for where neither file nor option state it
     * @param mayBeLeft true if Enter alone will do
     * @param check     the answer as it is kept; throws {@link BadValue} for what the statement cannot be
     * @return false if the answers broke off
     */
    private boolean state(String word, boolean asks, boolean mayBeLeft, String question, UnaryOperator<String> check)
            throws IOException {
        if (stated.containsKey(word)) {
            return true;
        }
        if (options.containsKey(word)) {
            statements.add(word + ": " + check.apply(options.get(word)));
            return true;
        }
        while (asks) {
            Optional<String> answer = asker.ask(question);
            if (answer.isEmpty()) {
                return false;
            }
            String text = answer.get().strip();
            if (mayBeLeft && text.isEmpty()) {
                return true;
            }
            try {
                statements.add(word + ": " + check.apply(text));
                return true;
            } catch (BadValue e) {
                out.println(e.getMessage() + ". " + e.mend());
            }
        }
        return true;
    }
}
