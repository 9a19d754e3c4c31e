package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import outwind.blanks.BlankPlan;
import outwind.blanks.LengthsPlan;
import outwind.board.Board;
import outwind.board.file.BillFile;
import outwind.board.text.BadBoardFile;
import outwind.cli.option.BadInput;
import outwind.cli.option.BoardOptions;
import outwind.cli.option.LabelOptions;
import outwind.cli.option.OutputOptions;
import outwind.cli.option.SawOptions;
import outwind.cli.option.ShopOptions;
import outwind.forecast.JudgeOptions;
import outwind.report.files.ReportNames;
import outwind.report.files.Reports;
import outwind.report.json.BlankJson;
import outwind.report.sheet.BlankChart;
import outwind.report.text.BlankReport;
import outwind.report.text.CutList;
import outwind.report.words.Figures;
import outwind.report.words.Label;
import outwind.shop.Shop;
import outwind.surface.ImpossibleBoard;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plans how to cut one board into blanks, and writes report, plan and JSON. */
@Command(name = "blanks", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Cut a board into the blanks of a cutting bill, each judged on its own. Without a"
        + " bill: into lengths that make the target.",
    footer = {"", "Lengths take a unit (20mm, 13/16in) or else the board's own.", "",
        "Example: outwind blanks hall-table.csv --bill small-table.csv"})
final class BlanksCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1", paramLabel = "FILE", description = "Board file, or a scan.")
    private Path file;

    @Option(names = "--bill", paramLabel = "BILL",
        description = "Cutting bill: name, length, width, thickness, quantity, perhaps value, any grain,"
            + " species and grade.")
    private Path bill;

    @Mixin
    private SawOptions saw;

    @Mixin
    private ShopOptions shopFile;

    @Mixin
    private BoardOptions options;

    @Mixin
    private OutputOptions output;

    @Mixin
    private LabelOptions labels;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        try {
            Board board = options.asAsked(BoardInput.read(file, options.given(), spec.commandLine().getOut()));
            Shop shop = shopFile.shop(file);
            if (bill == null) {
                cutToLength(board, shop);
            } else {
                cutToBill(board, shop);
            }
            return 0;
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (BadInput | ImpossibleBoard e) {
            err.println(file + ": " + e.getMessage());
        } catch (IOException e) {
            err.println(FileTrouble.inWords(file, e));
        }
        return 1;
    }

    private void cutToBill(Board board, Shop shop) throws IOException, BadBoardFile {
        if (options.hasTarget()) {
            throw new ParameterException(spec.commandLine(),
                "--target goes without --bill: a cutting bill states the thickness of each blank");
        }
        var wanted = BillFile.read(bill, options.unitsFor(board));
        BlankPlan plan = asked(() -> BlankPlan.of(board, wanted, saw.saw(board, shop.limits()), saw.sure(),
            JudgeOptions.usual(board, shop).skim(), options.seed()));
        Figures figures = figures(board);
        write(BlankReport.of(plan, figures), () -> BlankChart.png(plan, figures), () -> BlankJson.of(plan));
        spec.commandLine().getOut().println("Written: " + reports().write(name() + ".csv",
            CutList.of(plan, file.toString(), figures)));
        labels.write(spec.commandLine().getOut(), reports(), name() + "-labels", () -> Label.of(plan, figures));
    }

    private void cutToLength(Board board, Shop shop) throws IOException, BadInput {
        if (board.target().isEmpty()) {
            throw new BadInput("there is neither a cutting bill nor a target: give --bill, or --target and a"
                + " thickness");
        }
        LengthsPlan plan = asked(() -> LengthsPlan.of(board, saw.saw(board, shop.limits()), saw.sure(),
            JudgeOptions.usual(board, shop).skim(), options.seed()));
        Figures figures = figures(board);
        write(BlankReport.of(plan, figures), () -> BlankChart.png(plan, figures), () -> BlankJson.of(plan));
    }

    /** A plan; what the command line asks for in vain is refused. */
    private <T> T asked(Supplier<T> maker) {
        try {
            return maker.get();
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private void write(String text, Supplier<byte[]> chart, Supplier<String> script) throws IOException {
        output.write(spec.commandLine().getOut(), reports(), name(), text, chart, script);
    }

    private Reports reports() {
        return output.reports(bill == null ? List.of(file) : List.of(file, bill));
    }

    private Figures figures(Board board) {
        return new Figures(options.unitsFor(board));
    }

    private String name() {
        return ReportNames.stem(file) + "-blanks";
    }
}
