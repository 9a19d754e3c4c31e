package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ForkJoinPool;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import outwind.board.BadValue;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Length;
import outwind.board.Turned;
import outwind.board.text.BadBoardFile;
import outwind.cli.option.BadInput;
import outwind.cli.option.BoardOptions;
import outwind.cli.option.HoldingOptions;
import outwind.cli.option.MachineOptions;
import outwind.cli.option.OutputOptions;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.files.ReportNames;
import outwind.report.files.Reports;
import outwind.report.json.JsonReport;
import outwind.report.sheet.BoardSheet;
import outwind.report.sheet.DetailSheet;
import outwind.report.text.DetailsReport;
import outwind.report.text.TextReport;
import outwind.report.words.Figures;
import outwind.surface.ImpossibleBoard;
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

    /** A place typed on the command line is that of a reading if it is no further from it than this (mm). */
    private static final double SAME_PLACE = 0.6;

    /** So many boards are judged before what came of them is written, on as many cores as there are. */
    private static final int TOGETHER = 16;

    /** What is appended to a report's name for the files beside it. */
    private static final String DETAILS = "-details";

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Board files, or scans.")
    private List<Path> files;

    @Mixin
    private BoardOptions options;

    @Mixin
    private MachineOptions machine;

    @Mixin
    private HoldingOptions holding;

    @Mixin
    private OutputOptions output;

    @Option(names = "--face-b", paramLabel = "FILE", description = "Readings on face B, in a board file of their own;"
        + " it or the first file says how the board was turned.")
    private Path faceB;

    @Option(names = "--ignore", paramLabel = "LINE|PLACE", arity = "1", description = "Ignore the reading"
        + " on this line of the file, or at this place (600x106). Repeat for more.")
    private List<String> leftOut = List.of();

    @Option(names = "--anyway", description = "Print the plan even for a board that may not make its target.")
    private boolean anyway;

    @Option(names = "--details", description = "Print the details too. They are always written to a file.")
    private boolean details;

    @Override
    public Integer call() {
        requireOneFile("--face-b", faceB != null);
        requireOneFile("--ignore", !leftOut.isEmpty());
        Reports reports = output.reports(Stream.concat(files.stream(), Stream.ofNullable(faceB)).toList());
        ReportNames names = new ReportNames();
        if (output.charts()) {
            CompletableFuture.runAsync(BoardSheet::getReady).exceptionally(noFonts -> null);
        }
        boolean allAnswered = true;
        for (int first = 0; first < files.size(); first += TOGETHER) {
            List<Path> some = files.subList(first, Math.min(files.size(), first + TOGETHER));
            List<String> called = some.stream().map(file -> names.free(file, DETAILS)).toList();
            List<Answer> answers = IntStream.range(0, some.size()).parallel()
                .mapToObj(i -> answer(some.get(i), called.get(i))).toList();
            for (int i = 0; i < some.size(); i++) {
                allAnswered &= write(some.get(i), answers.get(i), reports, called.get(i));
            }
        }
        return allAnswered ? 0 : 1;
    }

    private void requireOneFile(String option, boolean isGiven) {
        if (isGiven && files.size() > 1) {
            throw new ParameterException(spec.commandLine(), option + " goes with one board file, not with "
                + files.size());
        }
    }

    /** Judges a board and gets all that is written of it; other boards may be judged at the same time. */
    private Answer answer(Path file, String name) {
        try {
            Board board = options.asAsked(without(withFaceB(read(file))));
            Judgement judgement = Judgement.of(board, request(board, file));
            Figures figures = new Figures(options.unitsFor(board));
            // Drawn beside each other and beside the text: most of a short run is getting these ready.
            CompletableFuture<byte[]> sheet = output.charts() ? drawn(() -> BoardSheet.png(judgement, figures)) : null;
            CompletableFuture<byte[]> drawing = output.charts() ? drawn(() -> DetailSheet.png(judgement, figures)) : null;
            return new Answer("", TextReport.summary(judgement, figures), TextReport.of(judgement, figures, name + DETAILS
                + ".txt"), DetailsReport.of(judgement, figures), output.json() ? JsonReport.of(judgement) : "", sheet, drawing);
        } catch (BadBoardFile e) {
            return Answer.none(e.getMessage());
        } catch (BadInput | ImpossibleBoard e) {
            return Answer.none(file + ": " + e.getMessage());
        } catch (IOException e) {
            return Answer.none(FileTrouble.inWords(file, e));
        }
    }

    /** On another core if there is but one board; with several, all cores have a board of their own. */
    private CompletableFuture<byte[]> drawn(Supplier<byte[]> drawing) {
        return CompletableFuture.supplyAsync(drawing, files.size() == 1 ? ForkJoinPool.commonPool() : Runnable::run);
    }

    /** Says and writes what came of a board; false if nothing did. */
    private boolean write(Path file, Answer answer, Reports reports, String name) {
        if (answer.trouble().isEmpty()) {
            try {
                write(answer, reports, name);
                return true;
            } catch (IOException e) {
                spec.commandLine().getErr().println(FileTrouble.inWords(file, e));
                return false;
            }
        }
        spec.commandLine().getErr().println(answer.trouble());
        return false;
    }

    private JudgeOptions request(Board board, Path file) throws IOException, BadBoardFile {
        JudgeOptions request = holding.held(machine.request(board, machine.shop(file), options.seed()), board.units());
        return options.isForLater() ? request.forLater() : anyway ? request.cuttingAnyway() : request;
    }

    private Board read(Path path) throws IOException, BadBoardFile {
        return BoardInput.read(path, options.given(), spec.commandLine().getOut());
    }

    private void write(Answer answer, Reports reports, String name) throws IOException {
        PrintWriter terminal = spec.commandLine().getOut();
        if (files.size() > 1) {
            answer.summary().forEach(terminal::println);
        } else {
            terminal.println(answer.report());
        }
        if (details) {
            terminal.println(answer.details());
        }
        List<Path> written = new ArrayList<>();
        written.add(reports.write(name + ".txt", answer.report()));
        written.add(reports.write(name + DETAILS + ".txt", answer.details()));
        if (output.json()) {
            written.add(reports.write(name + ".json", answer.json()));
        }
        if (output.charts()) {
            OutputOptions.drawn(terminal, reports, name + ".png", answer.sheet()::join).ifPresent(written::add);
            OutputOptions.drawn(terminal, reports, name + DETAILS + ".png", answer.drawing()::join).ifPresent(written::add);
        }
        terminal.println((files.size() > 1 ? "  " : "") + "Written: " + written.get(0) + written.stream().skip(1)
            .map(path -> ", " + path.getFileName()).collect(Collectors.joining()));
    }

    /**
     * All that is written of a board.
     *
     * @param trouble why nothing is; empty if all is well
     * @param sheet   being drawn, likewise {@code drawing}; null where no charts are wanted
     */
    private record Answer(String trouble, List<String> summary, String report, String details, String json,
            CompletableFuture<byte[]> sheet, CompletableFuture<byte[]> drawing) {

        static Answer none(String trouble) {
            return new Answer(trouble, List.of(), "", "", "", null, null);
        }
    }

    private Board withFaceB(Board board) throws IOException, BadBoardFile, BadInput {
        if (faceB == null) {
            return board;
        }
        Board other = read(faceB);
        if (other.length() != board.length() || other.width() != board.width()) {
            throw new BadInput("the board is of another size in " + faceB + "; both faces have one length and one"
                + " width");
        }
        if (other.readings().size() > other.readingsOf(Face.A).size() || !other.calipers().isEmpty()) {
            throw new BadInput(faceB + " may hold nothing but touch-offs of the one face; caliper readings and the bed"
                + " belong into the first file, at places as they lie on face A");
        }
        if (other.turned().isPresent() && board.turned().isPresent() && !other.turned().equals(board.turned())) {
            throw new BadInput("the two files do not agree on how the board was turned over");
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

    private Board without(Board board) {
        if (leftOut.isEmpty()) {
            return board;
        }
        if (board.scan().isPresent()) {
            throw new ParameterException(spec.commandLine(), "--ignore takes a touch-off out; of a scan, stray"
                + " points are dropped as it is read");
        }
        Board rest = board;
        for (String left : leftOut) {
            Board less = left.matches("\\d{1,7}") ? rest.without(Integer.parseInt(left)) : withoutPlace(rest, left);
            if (less.equals(rest)) {
                throw new ParameterException(spec.commandLine(), "--ignore " + left + ": nothing was read there");
            }
            rest = less;
        }
        boolean unjudgeable = rest.readingsOf(Face.A).size() < 3 || rest.thickness().isEmpty()
            && rest.calipers().isEmpty();
        if (unjudgeable || rest.missingTie().isPresent()) {
            throw new ParameterException(spec.commandLine(), "--ignore leaves too few readings to judge the board"
                + " by" + rest.missingTie().map(missing -> ": " + missing)
                    .orElse(": it takes three touch-offs on face A, and a thickness"));
        }
        return rest;
    }

    private Board withoutPlace(Board board, String place) {
        String[] along = place.split("[x×]");
        if (along.length != 2) {
            throw new ParameterException(spec.commandLine(),
                "--ignore takes a line of the file, as 9, or a place, as"
                + " 600x106, not \"" + place + "\"");
        }
        try {
            double x = Length.parse(along[0], board.units());
            double y = Length.parse(along[1], board.units());
            return board.withReadings(board.readings().stream().filter(reading -> reading.face() != Face.A
                || Math.hypot(reading.x() - x, reading.y() - y) > SAME_PLACE).toList());
        } catch (BadValue e) {
            throw new ParameterException(spec.commandLine(), "--ignore " + place + ": " + e.getMessage());
        }
    }
}
