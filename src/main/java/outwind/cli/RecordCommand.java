package outwind.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import outwind.board.BadValue;
import outwind.board.Board;
import outwind.board.Place;
import outwind.board.Quantity;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.board.file.Recording;
import outwind.board.file.ShopSearch;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Line;
import outwind.cli.ask.Asker;
import outwind.cli.ask.Dialogue;
import outwind.cli.ask.FirstQuestions;
import outwind.cli.ask.NotKept;
import outwind.cli.ask.PlainAsker;
import outwind.cli.ask.TerminalAsker;
import outwind.cli.option.BadInput;
import outwind.cli.option.GridOptions;
import outwind.cli.option.LengthConverter;
import outwind.cli.option.LengthOption;
import outwind.cli.option.UnitsConverter;
import outwind.judge.Prospect;
import outwind.report.files.RecordingFile;
import outwind.report.files.RecordingLock;
import outwind.report.words.Figures;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Takes a board's touch-offs at the bed, one question after the other, into a board file. */
@Command(name = "record", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Measure a board, place by place. Each height is checked against the others and saved at once. The"
        + " same command goes on where you stopped.",
    footer = {"", "Lengths take a unit (20mm, 13/16in) or else the board's own. A new file has 5 columns and 3 rows of"
        + " places; to one that is begun, --columns or --rows add those that it lacks.", "",
        "Example: outwind record hall-table.csv --length 1180 --width 212 --thickness 31.5"})
final class RecordCommand implements Callable<Integer> {

    /** Three along each edge and three down the middle are the least, five columns are better; common practice. */
    private static final int USUAL_COLUMNS = 5;
    private static final int USUAL_ROWS = 3;

    @Spec
    private CommandSpec spec;

    private final InputStream input;

    @Parameters(arity = "1", paramLabel = "FILE", description = "Board file; a new one is made.")
    private Path file;

    @Option(names = "--length", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Length of the board. Sizes that neither an option nor the file states are asked for.")
    private LengthOption length;

    @Option(names = "--width", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Width of the board.")
    private LengthOption width;

    @Option(names = "--thickness", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Rough thickness of the board, by caliper.")
    private LengthOption thickness;

    @Option(names = "--target", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Thickness wanted.")
    private LengthOption target;

    @Option(names = "--species", paramLabel = "WOOD", description = "The wood.")
    private String species;

    @Option(names = "--units", paramLabel = "mm|in", converter = UnitsConverter.class,
        description = "Unit of a new file.")
    private Units units;

    @Mixin
    private GridOptions grid;

    @Option(names = "--repeats", paramLabel = "NUMBER", defaultValue = "3",
        description = "How many of the first places to measure again at the end, for the repeatability"
            + " (default: ${DEFAULT-VALUE}).")
    private int repeats;

    /** @param input where answers are typed */
    RecordCommand(InputStream input) {
        this.input = input;
    }

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        boolean isQuiet = Main.isQuiet(spec.root().commandLine().getParseResult());
        if (isTyped() && isQuiet) {
            throw new ParameterException(spec.commandLine(), "--quiet would hide the questions: leave it out, or pipe"
                + " the heights in");
        }
        try (RecordingLock lock = RecordingLock.of(file); Asker asker = asker(out)) {
            RecordingFile kept = lock.recording();
            Recording begun = begin(asker, out);
            if (asker.isPerson()) {
                // A person takes longer over the first places than this takes.
                CompletableFuture.runAsync(() -> Prospect.getReady(begun.board()));
            }
            ShopSearch.ofThisUser().shopNear(file).bed().flatMap(bed -> BedWarning.of(bed, begun.board(),
                new Figures(begun.board().units()))).ifPresent((isQuiet ? err : out)::println);
            boolean all = new Dialogue(asker, out, isQuiet ? err : out, kept, file.toString(), begun).run();
            // The person has seen it at once.
            return isTyped() || all ? 0 : 1;
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (BadInput e) {
            err.println(file + ": " + e.getMessage());
        } catch (NotKept e) {
            err.println(FileTrouble.inWords(file, e.why()) + ". What was typed last is not kept. Once that is mended, the"
                + " same command goes on.");
        } catch (IOException e) {
            err.println(FileTrouble.inWords(file, e));
        }
        return 1;
    }

    private Asker asker(PrintWriter out) {
        // A dumb terminal shows what is typed and can do no more: lines are read from it as from a pipe.
        if (isTyped() && !"dumb".equals(System.getenv("TERM"))) {
            try {
                return new TerminalAsker(out);
            } catch (IOException e) {
                // What looks like a terminal need not be one.
                return plainAsker(out);
            }
        }
        return plainAsker(out);
    }

    /** True if a person types into a terminal and reads from it. */
    private boolean isTyped() {
        return input == System.in && System.console() != null;
    }

    private Asker plainAsker(PrintWriter out) {
        return new PlainAsker(new BufferedReader(new InputStreamReader(input, StandardCharsets.UTF_8)), out);
    }

    /** The recording as it stands, with every place planned. */
    private Recording begin(Asker asker, PrintWriter out) throws IOException, BadBoardFile, BadInput {
        String text = Files.exists(file) ? Recording.textOf(file) : "";
        Optional<List<String>> statements;
        try {
            statements = new FirstQuestions(asker, out, Recording.statedIn(text), options()).learn();
        } catch (BadValue e) {
            throw new ParameterException(spec.commandLine(), e.getMessage() + ". " + e.mend());
        }
        if (statements.isEmpty()) {
            throw new BadInput("nothing is written before the board's length, width and thickness are known");
        }
        Recording begun = Recording.of(file.toString(), Recording.stating(text, statements.get()));
        boolean isNew = begun.plan().isEmpty() && begun.entries().isEmpty();
        if (!isNew && grid.hasInset() && grid.columns().isEmpty() && grid.rows().isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--inset goes with --columns or --rows where the file has"
                + " its places already");
        }
        boolean plans = isNew || grid.columns().isPresent() || grid.rows().isPresent();
        return plans ? begun.planning(places(begun, isNew)) : begun;
    }

    /** What the command line states of the board, by the words of the file's keys. */
    private Map<String, String> options() {
        Map<String, String> options = new HashMap<>();
        put(options, Quantity.LENGTH, length);
        put(options, Quantity.WIDTH, width);
        put(options, Quantity.THICKNESS, thickness);
        put(options, Quantity.TARGET, target);
        if (units != null) {
            options.put("units", units.symbol());
        }
        if (species != null) {
            options.put("species", Line.fit(species, Line.LONGEST_NOTE));
        }
        return options;
    }

    private static void put(Map<String, String> options, Quantity size, LengthOption option) {
        if (option != null) {
            options.put(size.word(), option.text());
        }
    }

    /** The places that a new file plans, or those that one lacks which has some already. */
    private List<Place> places(Recording recording, boolean isNew) {
        List<Place> tour = tour(recording.board()).stream().map(spot -> new Place(spot.x(), spot.y())).toList();
        if (!isNew) {
            return tour.stream().filter(place -> !recording.knows(place)).toList();
        }
        return Stream.concat(tour.stream(), tour.stream().limit(Math.max(0, repeats))).toList();
    }

    private List<TouchGrid.Spot> tour(Board board) {
        try {
            return grid.on(board.length(), board.width(), board.units(), grid.columns().orElse(USUAL_COLUMNS),
                grid.rows().orElse(USUAL_ROWS)).tour();
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }
}
