package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import outwind.board.Board;
import outwind.board.text.BadBoardFile;
import outwind.cli.option.BadInput;
import outwind.cli.option.BoardOptions;
import outwind.cli.option.LengthConverter;
import outwind.cli.option.LengthOption;
import outwind.cli.option.ReportOptions;
import outwind.flatten.Flatness;
import outwind.report.files.ReportNames;
import outwind.report.text.FlatnessReport;
import outwind.report.words.Figures;
import outwind.surface.Faces;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A finished face: is it flat? */
@Command(name = "check", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Both faces are cut: is the face that was read still flat, or has the board moved?",
    footer = {"", "Measure it unclamped. No thickness is needed.", "",
        "Example: outwind check hall-table-done.csv --within 0.2mm"})
final class CheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FILE", description = "Readings of the finished face.")
    private Path file;

    @Option(names = "--within", paramLabel = "LENGTH", converter = LengthConverter.class, required = true,
        description = "How far apart two parallel planes may be that hold the whole face between them.")
    private LengthOption within;

    @Mixin
    private BoardOptions options;

    @Mixin
    private ReportOptions output;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        try {
            Board board = options.asAsked(BoardInput.read(file, options.given().lyingOnBed(),
                spec.commandLine().getOut()));
            double amount = within.in(board.units());
            if (!(amount > 0)) {
                throw new ParameterException(spec.commandLine(), "--within must be above zero, got " + within.text());
            }
            Faces faces = Faces.of(board.onFlatUnderside().zeroedOnBed());
            Flatness flatness = Flatness.of(faces.shape(), faces.region(), options.seed());
            output.write(spec.commandLine().getOut(), output.reports(List.of(file)),
                ReportNames.stem(file) + "-check", FlatnessReport.of(faces, flatness, amount,
                    new Figures(options.unitsFor(board))), () -> FlatnessReport.json(faces, flatness, amount));
            return 0;
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (BadInput e) {
            err.println(file + ": " + e.getMessage());
        } catch (IOException e) {
            err.println(FileTrouble.inWords(file, e));
        }
        return 1;
    }
}
