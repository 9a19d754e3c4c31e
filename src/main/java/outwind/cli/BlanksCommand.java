package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import outwind.board.BadBoardFile;
import outwind.board.BillFile;
import outwind.board.Board;
import outwind.board.BoardFile;
import outwind.board.Given;
import outwind.board.Units;
import outwind.report.BlankChart;
import outwind.report.BlankJson;
import outwind.report.BlankReport;
import outwind.report.Figures;
import outwind.report.Reports;
import outwind.stock.BlankPlan;
import outwind.stock.LengthsPlan;
import outwind.stock.Request;
import outwind.stock.Saw;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plans how to cut one board into blanks, and writes report, plan and JSON. */
@Command(name = "blanks", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Cut a board into the blanks of a cutting bill, each judged by its own thickness; without a"
        + " bill, into"
        + " lengths that make the target.",
    footer = {"", "Lengths take a unit (20mm, 13/16in) or else the board's own.", "",
        "Example: outwind blanks hall-table.csv --bill small-table.csv"})
final class BlanksCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1", paramLabel = "FILE", description = "Board file.")
    private Path file;

    @Option(names = "--bill", paramLabel = "BILL",
        description = "Cutting bill: name, length, width, thickness, quantity, perhaps value and any grain.")
    private Path bill;

    @Option(names = "--target", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Thickness wanted where there is no bill; goes before the file's own.")
    private LengthOption target;

    @Option(names = "--sure", paramLabel = "PERCENT", converter = ShareConverter.class, defaultValue = "95%",
        description = "Chance of its thickness from which on a blank counts (default: ${DEFAULT-VALUE}).")
    private double sure;

    @Option(names = "--kerf", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Wood that one cut takes (usually 3.2 mm).")
    private LengthOption kerf;

    @Option(names = "--end-trim", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Cut away at each end first (usually nothing, or the file's trim along).")
    private LengthOption endTrim;

    @Option(names = "--raster", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "How finely places for blanks are tried (usually 5 mm).")
    private LengthOption raster;

    @Option(names = "--skim", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Least depth to come off each rough face (usually 0.3 mm).")
    private LengthOption skim;

    @Option(names = "--units", paramLabel = "mm|in", converter = UnitsConverter.class,
        description = "Unit of files that do not name one, and of the report.")
    private Units units;

    @Option(names = "--seed", paramLabel = "NUMBER", defaultValue = "1",
        description = "Seed of the possible boards that are tried (default: ${DEFAULT-VALUE}).")
    private long seed;

    @Option(names = "--out", paramLabel = "DIR", defaultValue = "reports",
        description = "Folder for the reports (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Option(names = "--json", description = "Write a JSON file beside the report.")
    private boolean json;

    @Option(names = "--no-chart", description = "Write no plan.")
    private boolean noChart;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        try {
            Board board = asAsked(BoardFile.read(file,
                new Given(Optional.ofNullable(units), Optional.empty(), Optional.empty(), Optional.empty())));
            if (bill == null) {
                cutToLength(board);
            } else {
                cutToBill(board);
            }
            return 0;
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (BadInput e) {
            err.println(file + ": " + e.getMessage());
        } catch (NoSuchFileException e) {
            err.println("there is no file of this name: " + e.getFile());
        } catch (AccessDeniedException e) {
            err.println("no permission to read or write " + e.getFile());
        } catch (IOException e) {
            err.println(Optional.ofNullable(e.getMessage()).orElse(file + ": it cannot be read or written"));
        }
        return 1;
    }

    private void cutToBill(Board board) throws IOException, BadBoardFile {
        if (target != null) {
            throw new ParameterException(spec.commandLine(),
                "--target goes without --bill: a cutting bill states the thickness of each blank");
        }
        var wanted = BillFile.read(bill, Optional.ofNullable(units).orElse(board.units()));
        BlankPlan plan = asked(() -> BlankPlan.of(board, wanted, saw(board), sure, Request.usual(board).skim(), seed));
        Figures figures = figures(board);
        write(BlankReport.of(plan, figures), () -> BlankChart.png(plan, figures), () -> BlankJson.of(plan));
    }

    private void cutToLength(Board board) throws IOException, BadInput {
        if (board.target().isEmpty()) {
            throw new BadInput("there is neither a cutting bill nor a target: give --bill, or --target and a"
                + " thickness");
        }
        LengthsPlan plan = asked(() -> LengthsPlan.of(board, saw(board), sure, Request.usual(board).skim(), seed));
        Figures figures = figures(board);
        write(BlankReport.of(plan, figures), () -> BlankChart.png(plan, figures), () -> BlankJson.of(plan));
    }

    /** A plan; what the command line asks for in vain is told as such. */
    private <T> T asked(PlanMaker<T> maker) {
        try {
            return maker.plan();
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private interface PlanMaker<T> {
        T plan();
    }

    private interface Sheet<T> {
        T drawn();
    }

    private void write(String text, Sheet<byte[]> chart, Sheet<String> script) throws IOException {
        PrintWriter terminal = spec.commandLine().getOut();
        Reports reports = new Reports(out, bill == null ? List.of(file) : List.of(file, bill));
        String name = name();
        terminal.println(text);
        terminal.println("Written: " + reports.write(name + ".txt", text));
        if (!noChart) {
            terminal.println("Written: " + reports.write(name + ".png", chart.drawn()));
        }
        if (json) {
            terminal.println("Written: " + reports.write(name + ".json", script.drawn()));
        }
    }

    private Figures figures(Board board) {
        return new Figures(Optional.ofNullable(units).orElse(board.units()));
    }

    private String name() {
        String whole = file.getFileName().toString();
        int dot = whole.lastIndexOf('.');
        return (dot > 0 ? whole.substring(0, dot) : whole) + "-blanks";
    }

    private Board asAsked(Board board) {
        return asked(() -> {
            Board asked = target == null ? board : board.withTarget(target.in(board.units()));
            return skim == null ? asked : asked.withSkim(skim.in(board.units()));
        });
    }

    private Saw saw(Board board) {
        Saw usual = Saw.usual();
        return new Saw(LengthOption.in(board.units(), kerf).orElse(usual.kerf()),
            LengthOption.in(board.units(), endTrim).orElse(board.trim().along()),
            LengthOption.in(board.units(), raster).orElse(usual.raster()));
    }
}
