package outwind.cli;

import java.util.Optional;
import outwind.board.Board;
import outwind.board.Given;
import outwind.board.Units;
import outwind.cutting.Cutter;
import outwind.setup.Push;
import outwind.stock.Request;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What every command that judges boards may be told about them and about the machine. */
final class BoardOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

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

    @Option(names = "--push", paramLabel = "NEWTON", converter = ForceConverter.class,
        description = "Push that the board has to stand anywhere (usually 50).")
    private Double push;

    @Option(names = "--give", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "How far such a push may move it (usually 0.1 mm).")
    private LengthOption give;

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

    @Option(names = "--seed", paramLabel = "NUMBER", defaultValue = "1",
        description = "Seed of the possible boards that are tried (default: ${DEFAULT-VALUE}).")
    private long seed;

    /** What is stated beside a file, for a file that does not say. */
    Given given() {
        return new Given(Optional.ofNullable(units), typed(length), typed(width), typed(thickness));
    }

    private static Optional<String> typed(LengthOption option) {
        return Optional.ofNullable(option).map(LengthOption::text);
    }

    /** The board with the target and skim that were asked for. */
    Board asAsked(Board board) {
        try {
            Board asked = target == null ? board : board.withTarget(target.in(board.units()));
            return skim == null ? asked : asked.withSkim(skim.in(board.units()));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    /** The unit that reports on this board are printed in. */
    Units unitsFor(Board board) {
        return Optional.ofNullable(units).orElse(board.units());
    }

    /** What is asked of a board. */
    Request request(Board board) {
        Units own = board.units();
        try {
            Request request = Request.usual(board).with(cutter(own)).withSeed(seed);
            request = request.standing(new Push(push == null ? Push.USUAL.force() : push,
                LengthOption.in(own, give).orElse(Push.USUAL.give())));
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
        double down = LengthOption.in(boardUnits, stepDown).orElse(usual.stepDown());
        return new Cutter(down, LengthOption.in(boardUnits, finish).orElse(Math.min(usual.finishing(), down)), wide,
            over,
            LengthOption.in(boardUnits, feed).orElse(usual.feed()), past);
    }
}
