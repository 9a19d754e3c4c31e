package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import outwind.board.BadBoardFile;
import outwind.board.Board;
import outwind.board.BoardFile;
import outwind.board.Face;
import outwind.board.Turned;
import outwind.report.Chart;
import outwind.report.Figures;
import outwind.report.JsonReport;
import outwind.report.Reports;
import outwind.report.TextReport;
import outwind.stock.Judgement;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The main job: board files in; for each a verdict on the terminal, and report, chart and JSON in a folder. */
@Command(name = "judge", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Judge boards: will they finish at the target, how to set them down, how deep to cut.",
    footer = {"", "Lengths take a unit (20mm, 13/16in) or else the board's own.", "",
        "Example: outwind judge --target 20mm hall-table.csv"})
final class JudgeCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Board files.")
    private List<Path> files;

    @Mixin
    private BoardOptions options;

    @Option(names = "--face-b", paramLabel = "FILE", description = "Readings on face B, in a board file of their own;"
        + " it or the first file says how the board was turned.")
    private Path faceB;

    @Option(names = "--before-cut", paramLabel = "FILE", description = "The board file that this board was judged by"
        + " before face A was cut; tells how it has moved since.")
    private Path beforeCut;

    @Option(names = "--leave-out", paramLabel = "LINE", arity = "1", description = "Leave out what was read on this line"
        + " of the file; may be given more than once.")
    private List<Integer> leftOut = List.of();

    @Option(names = "--out", paramLabel = "DIR", defaultValue = "reports",
        description = "Folder for the reports (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Option(names = "--json", description = "Write a JSON file beside each report.")
    private boolean json;

    @Option(names = "--no-chart", description = "Write no chart.")
    private boolean noChart;

    @Override
    public Integer call() {
        Reports reports = new Reports(out, files);
        Set<String> names = new HashSet<>();
        boolean allAnswered = true;
        for (Path file : files) {
            allAnswered &= judge(file, reports, names);
        }
        return allAnswered ? 0 : 1;
    }

    private boolean judge(Path file, Reports reports, Set<String> names) {
        PrintWriter err = spec.commandLine().getErr();
        try {
            Board board = options.asAsked(withoutLines(withFaceB(BoardFile.read(file, options.given()))));
            Judgement judgement = sinceFaceA(Judgement.of(board, options.request(board)));
            write(judgement, reports, freeName(file, names));
            return true;
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (BadInput e) {
            err.println(file + ": " + e.getMessage());
        } catch (IOException e) {
            err.println(file + ": " + FileTrouble.inWords(e));
        }
        return false;
    }

    private void write(Judgement judgement, Reports reports, String name) throws IOException {
        PrintWriter terminal = spec.commandLine().getOut();
        Figures figures = new Figures(options.unitsFor(judgement.board()));
        String text = TextReport.of(judgement, figures);
        terminal.println(text);
        terminal.println("Written: " + reports.write(name + ".txt", text));
        if (!noChart) {
            terminal.println("Written: " + reports.write(name + ".png", Chart.png(judgement, figures)));
        }
        if (json) {
            terminal.println("Written: " + reports.write(name + ".json", JsonReport.of(judgement)));
        }
    }

    private Judgement sinceFaceA(Judgement judgement) throws IOException, BadBoardFile, BadInput {
        if (beforeCut == null) {
            return judgement;
        }
        Board before = options.asAsked(BoardFile.read(beforeCut, options.given()));
        if (before.length() != judgement.board().length() || before.width() != judgement.board().width()) {
            throw new BadInput("the board is of another size in " + beforeCut
                + "; it keeps its length and width while it is cut");
        }
        return judgement.since(Judgement.of(before, options.request(before)));
    }

    private Board withFaceB(Board board) throws IOException, BadBoardFile, BadInput {
        if (faceB == null) {
            return board;
        }
        if (files.size() > 1) {
            throw new ParameterException(spec.commandLine(), "--face-b goes with one board file, not with "
                + files.size());
        }
        Board other = BoardFile.read(faceB, options.given());
        if (other.length() != board.length() || other.width() != board.width()) {
            throw new BadInput("the board is of another size in " + faceB + "; both faces have one length and one"
                + " width");
        }
        Turned turned = other.turned().or(board::turned).orElseThrow(() -> new BadInput("neither file says how the"
            + " board was turned over: add \"# turned: along\" or \"# turned: end over end\" to " + faceB));
        Board both = board.withFaceB(other.readingsOf(Face.A), turned);
        Optional<String> missing = both.missingTie();
        if (missing.isPresent()) {
            throw new BadInput(missing.get());
        }
        return both;
    }

    private Board withoutLines(Board board) {
        Board rest = board;
        for (int line : leftOut) {
            Board without = rest.without(line);
            if (without.equals(rest)) {
                throw new ParameterException(spec.commandLine(), "--leave-out " + line
                    + ": nothing was read on line " + line + " of the file");
            }
            rest = without;
        }
        if (rest.readingsOf(Face.A).size() < 3 || rest.thickness().isEmpty() && rest.calipers().isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--leave-out leaves too few readings to judge the board"
                + " by: it takes three touch-offs on face A, and a thickness");
        }
        return rest;
    }

    /** The file's name without its ending; numbered if another file of this run has the same. */
    private static String freeName(Path file, Set<String> taken) {
        String whole = file.getFileName().toString();
        int dot = whole.lastIndexOf('.');
        String name = dot > 0 ? whole.substring(0, dot) : whole;
        String free = name;
        for (int i = 2; !taken.add(free); i++) {
            free = name + "-" + i;
        }
        return free;
    }
}
