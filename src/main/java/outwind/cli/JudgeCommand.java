package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
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
import outwind.board.Given;
import outwind.board.Turned;
import outwind.board.Units;
import outwind.cutting.Cutter;
import outwind.report.Chart;
import outwind.report.Figures;
import outwind.report.JsonReport;
import outwind.report.Reports;
import outwind.report.TextReport;
import outwind.stock.Judgement;
import outwind.stock.Request;
import picocli.CommandLine.Command;
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

    @Option(names = "--target", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Thickness wanted; goes before the file's own.")
    private LengthOption target;

    @Option(names = "--skim", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Least depth to come off each rough face (usually 0.3 mm).")
    private LengthOption skim;

    @Option(names = "--step-down", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Most that one pass takes (usually 0.5 mm).")
    private LengthOption stepDown;

    @Option(names = "--finish", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "What the last, finishing pass takes (usually 0.2 mm).")
    private LengthOption finish;

    @Option(names = "--cutter", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Diameter of the cutter (usually 40 mm).")
    private LengthOption diameter;

    @Option(names = "--step-over", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "From one row to the next (usually two fifths of the cutter).")
    private LengthOption stepOver;

    @Option(names = "--feed", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Feed, a length each minute (usually 2500 mm).")
    private LengthOption feed;

    @Option(names = "--overrun", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "How far the cutter's centre goes past every edge (usually its radius and a quarter inch).")
    private LengthOption overrun;

    @Option(names = "--stop-at", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Thickness to stop cutting at, where that is not the target.")
    private LengthOption stopAt;

    @Option(names = "--clamp", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Height of your clamps and stops above the bed; warned of if the cutter would meet them.")
    private LengthOption clamp;

    @Option(names = "--wedge", paramLabel = "LENGTHxBUTT", converter = WedgeConverter.class,
        description = "Tapered shims of this length and thickness, as 150mmx12mm: how far to slide each in.")
    private WedgeOption wedge;

    @Option(names = "--most-lift", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Most that levelling may lift one corner against another (usually 6 mm).")
    private LengthOption mostLift;

    @Option(names = "--units", paramLabel = "mm|in", converter = UnitsConverter.class,
        description = "Unit of files that do not name one, and of the report.")
    private Units units;

    @Option(names = "--length", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Length of the board, for a file that does not say.")
    private LengthOption length;

    @Option(names = "--width", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Width of the board, for a file that does not say.")
    private LengthOption width;

    @Option(names = "--thickness", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Rough thickness of the board, for a file that does not say.")
    private LengthOption thickness;

    @Option(names = "--face-b", paramLabel = "FILE", description = "Readings on face B, in a board file of their own;"
        + " it or the first file says how the board was turned.")
    private Path faceB;

    @Option(names = "--before-cut", paramLabel = "FILE", description = "The board file that this board was judged by"
        + " before face A was cut; tells how it has moved since.")
    private Path beforeCut;

    @Option(names = "--leave-out", paramLabel = "LINE", arity = "1", description = "Leave out what was read on this line"
        + " of the file; may be given more than once.")
    private List<Integer> leftOut = List.of();

    @Option(names = "--seed", paramLabel = "NUMBER", defaultValue = "1",
        description = "Seed of the possible boards that are tried (default: ${DEFAULT-VALUE}).")
    private long seed;

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
            Board board = asAsked(withFaceB(BoardFile.read(file, given())));
            Judgement judgement = sinceFaceA(Judgement.of(board, request(board)));
            write(judgement, reports, freeName(file, names));
            return true;
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (BadInput e) {
            err.println(file + ": " + e.getMessage());
        } catch (IOException e) {
            err.println(file + ": " + inWords(e));
        }
        return false;
    }

    private void write(Judgement judgement, Reports reports, String name) throws IOException {
        PrintWriter terminal = spec.commandLine().getOut();
        Figures figures = new Figures(Optional.ofNullable(units).orElse(judgement.board().units()));
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

    private Given given() {
        Units typed = Optional.ofNullable(units).orElse(Units.MILLIMETRES);
        try {
            return new Given(Optional.ofNullable(units), LengthOption.in(typed, length),
                LengthOption.in(typed, width), LengthOption.in(typed, thickness));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private Board asAsked(Board board) {
        try {
            Board asked = withoutLines(board);
            if (target != null) {
                asked = asked.withTarget(target.in(board.units()));
            }
            return skim == null ? asked : asked.withSkim(skim.in(board.units()));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private Judgement sinceFaceA(Judgement judgement) throws IOException, BadBoardFile, BadInput {
        if (beforeCut == null) {
            return judgement;
        }
        Board before = BoardFile.read(beforeCut, given());
        if (before.length() != judgement.board().length() || before.width() != judgement.board().width()) {
            throw new BadInput("the board is of another size in " + beforeCut
                + "; it keeps its length and width while it is cut");
        }
        return judgement.since(Judgement.of(before, request(before)));
    }

    private Board withFaceB(Board board) throws IOException, BadBoardFile, BadInput {
        if (faceB == null) {
            return board;
        }
        if (files.size() > 1) {
            throw new ParameterException(spec.commandLine(), "--face-b goes with one board file, not with "
                + files.size());
        }
        Board other = BoardFile.read(faceB, given());
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

    private Request request(Board board) {
        Units own = board.units();
        try {
            Request request = Request.usual(board).with(cutter(own)).withSeed(seed);
            request = mostLift == null ? request : request.liftingAtMost(mostLift.in(own));
            request = wedge == null ? request : request.withWedges(wedge.in(own));
            request = stopAt == null ? request : request.stoppingAt(stopAt.in(own));
            return clamp == null ? request : request.withClamps(clamp.in(own));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private Cutter cutter(Units boardUnits) {
        Cutter usual = Cutter.LIGHT;
        double wide = LengthOption.in(boardUnits, diameter).orElse(usual.diameter());
        // Told of another cutter and nothing else, it overlaps and runs out as the usual one does.
        double over = LengthOption.in(boardUnits, stepOver).orElse(wide * usual.stepOver() / usual.diameter());
        double past = LengthOption.in(boardUnits, overrun).orElse(wide / 2 + Cutter.CLEAR_OF_THE_EDGE);
        return new Cutter(LengthOption.in(boardUnits, stepDown).orElse(usual.stepDown()),
            LengthOption.in(boardUnits, finish).orElse(usual.finishing()), wide, over,
            LengthOption.in(boardUnits, feed).orElse(usual.feed()), past);
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

    private static String inWords(IOException e) {
        if (e instanceof NoSuchFileException missing) {
            return "there is no file of this name: " + missing.getFile();
        }
        if (e instanceof AccessDeniedException denied) {
            return "no permission to read or write " + denied.getFile();
        }
        if (e instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason() + ": " + system.getFile();
        }
        return Optional.ofNullable(e.getMessage()).orElse("it cannot be read or written");
    }
}
