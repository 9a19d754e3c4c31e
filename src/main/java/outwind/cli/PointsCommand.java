package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import outwind.board.Board;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.board.file.ShopSearch;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Line;
import outwind.cli.option.GridOptions;
import outwind.cli.option.LengthConverter;
import outwind.cli.option.LengthOption;
import outwind.cli.option.OutputOptions;
import outwind.cli.option.UnitsConverter;
import outwind.flatten.TouchPlan;
import outwind.report.files.Reports;
import outwind.report.json.TouchJson;
import outwind.report.sheet.TouchChart;
import outwind.report.text.TouchForm;
import outwind.report.text.TouchReport;
import outwind.report.words.Figures;
import outwind.report.words.TouchSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Tells where to touch a board off, and writes a sheet and a board file to fill in. */
@Command(name = "points", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Where to measure a board, and in which order. Writes a sheet and a board file to fill in.",
    footer = {"", "Lengths take a unit (20mm, 13/16in) or else the one of --units. Without --columns and --rows,"
        + " of 2 to 25 each, a grid is looked for.", "",
        "Example: outwind points --length 1180mm --width 212mm --thickness 31.5mm --name \"hall table\""})
final class PointsCommand implements Callable<Integer> {

    /** More spots than anybody touches off by hand, and more columns or rows than a sheet has room for. */
    private static final int MOST_SPOTS = 99;
    private static final int MOST_LINES = 25;

    @Spec
    private CommandSpec spec;

    @Option(names = "--length", required = true, paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Length of the board, along the grain.")
    private LengthOption length;

    @Option(names = "--width", required = true, paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Width of the board.")
    private LengthOption width;

    @Option(names = "--thickness", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Rough thickness, for the board file; without it there is a column for caliper readings.")
    private LengthOption thickness;

    @Option(names = "--target", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Thickness wanted, for the board file.")
    private LengthOption target;

    @Option(names = "--name", paramLabel = "NAME", defaultValue = "board",
        description = "What you call the board; the files are named after it (default: ${DEFAULT-VALUE}).")
    private String name;

    @Mixin
    private GridOptions grid;

    @Option(names = "--within", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Range of thickness that is narrow enough for you, as 0.3mm.")
    private LengthOption within;

    @Option(names = "--kink", description = "The board has a kink, as beside a knot: measure seven places along."
        + " Twist, bow and cup need no more than usual.")
    private boolean kinked;

    @Option(names = "--seconds", paramLabel = "NUMBER", defaultValue = "40",
        description = "Time one reading takes you (default: ${DEFAULT-VALUE}).")
    private double seconds;

    @Option(names = "--units", paramLabel = "mm|in", converter = UnitsConverter.class, defaultValue = "mm",
        description = "Unit of the files and of lengths without one (default: ${DEFAULT-VALUE}).")
    private Units units;

    @Option(names = "--seed", paramLabel = "NUMBER", defaultValue = "1",
        description = "Seed of the simulated boards (default: ${DEFAULT-VALUE}).")
    private long seed;

    @Mixin
    private OutputOptions output;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try {
            TouchSheet sheet = sheet();
            Figures figures = new Figures(units);
            Reports reports = output.reports(List.of());
            String form = TouchForm.of(sheet);
            String formName = sheet.fileName() + ".csv";
            reports.refuseOther(formName, form);
            output.write(out, reports, sheet.fileName() + "-points", TouchReport.of(sheet, figures),
                () -> TouchChart.png(sheet, figures), () -> TouchJson.of(sheet));
            out.println("Fill in:  " + reports.writeNew(formName, form));
            ShopSearch.ofThisUser().shopNear(Path.of(".")).bed()
                .flatMap(bed -> BedWarning.of(bed, sheet.board(), figures)).ifPresent(out::println);
            return 0;
        } catch (BadBoardFile e) {
            spec.commandLine().getErr().println(e.getMessage());
            return 1;
        } catch (IOException e) {
            spec.commandLine().getErr().println(FileTrouble.inWords(e));
            return 1;
        }
    }

    private TouchSheet sheet() {
        try {
            // A line break would end the line of the board file that holds the name.
            Board board = Board.untouched(Line.fit(name, Line.LONGEST_NOTE), units, length.in(units),
                width.in(units), LengthOption.in(units, thickness), LengthOption.in(units, target));
            return new TouchSheet(board, TouchPlan.of(grid(2, 2), asked(), LengthOption.in(units, within),
                kinked, new TouchPlan.Pace(seconds, TouchPlan.Pace.USUAL.feed()), seed));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private Optional<TouchGrid> asked() {
        if (grid.columns().isEmpty() && grid.rows().isEmpty()) {
            return Optional.empty();
        }
        if (grid.columns().isEmpty() || grid.rows().isEmpty()) {
            throw new IllegalArgumentException("--columns and --rows go together");
        }
        if (within != null || kinked) {
            throw new IllegalArgumentException("--within and --kink look for a grid; they do not go with --columns and"
                + " --rows");
        }
        int columns = grid.columns().get();
        int rows = grid.rows().get();
        if (Math.max(columns, rows) > MOST_LINES || columns * rows > MOST_SPOTS) {
            throw new IllegalArgumentException("a sheet has room for " + MOST_SPOTS + " spots and " + MOST_LINES
                + " columns or rows, got " + columns + " x " + rows);
        }
        return Optional.of(grid(columns, rows));
    }

    private TouchGrid grid(int along, int across) {
        return grid.on(length.in(units), width.in(units), units, along, across);
    }
}
