package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import outwind.board.Board;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.cli.option.BadInput;
import outwind.cli.option.BoardOptions;
import outwind.cli.option.MachineOptions;
import outwind.cli.option.ReportOptions;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.SecondCut;
import outwind.report.files.ReportNames;
import outwind.report.json.FinishJson;
import outwind.report.text.FinishReport;
import outwind.report.words.Figures;
import outwind.surface.ImpossibleBoard;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Face A is cut: what is left to do, and what the board makes now. */
@Command(name = "finish", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Face A is cut and lies on the bed: has the board moved, and will it finish at the target? Says how"
        + " deep to cut face B.",
    footer = {"", "Heights of face B are counted from the bed: set zero on it, or add a row with face bed.", "",
        "Example: outwind finish hall-table.csv hall-table-face-b.csv"})
final class FinishCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FIRST", description = "The board file judged before face A was cut.")
    private Path first;

    @Parameters(index = "1", paramLabel = "SECOND", description = "Readings of face B, face A down; no thickness"
        + " needed.")
    private Path second;

    @Mixin
    private BoardOptions options;

    @Mixin
    private MachineOptions machine;

    @Mixin
    private ReportOptions output;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        Path reading = first;
        try {
            Board before = options.asAsked(read(first, options.given()));
            JudgeOptions request = machine.request(before, machine.shop(first), options.seed());
            reading = second;
            Board after = read(second, Defaults.ofFaceB(before));
            if (after.length() != before.length() || after.width() != before.width()) {
                throw new BadInput("the board is of another size than in " + first + "; it keeps its length and width"
                    + " while it is cut");
            }
            SecondCut left = SecondCut.of(Judgement.of(before, request), after);
            output.write(spec.commandLine().getOut(), output.reports(List.of(first, second)),
                ReportNames.stem(second) + "-finish",
                FinishReport.of(left, new Figures(options.unitsFor(before))), () -> FinishJson.of(left));
            return 0;
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (BadInput | ImpossibleBoard e) {
            err.println(reading + ": " + e.getMessage());
        } catch (IOException e) {
            err.println(FileTrouble.inWords(reading, e));
        }
        return 1;
    }

    private Board read(Path file, Defaults given) throws IOException, BadBoardFile {
        return BoardInput.read(file, given, spec.commandLine().getOut());
    }
}
