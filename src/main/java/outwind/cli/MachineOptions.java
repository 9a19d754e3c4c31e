package outwind.cli;

import outwind.board.Board;
import outwind.board.Units;
import outwind.cutting.Cutter;
import outwind.stock.Request;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What every command that plans the cutting of boards may be told about the machine. */
final class MachineOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

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

    @Option(names = "--most-lift", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Most that levelling may lift one corner against another (usually 6 mm).")
    private LengthOption mostLift;

    /**
     * What is asked of a board.
     *
     * @param seed of the possible boards
     */
    Request request(Board board, long seed) {
        Units own = board.units();
        try {
            Request request = Request.usual(board).with(cutter(own)).withSeed(seed);
            request = mostLift == null ? request : request.liftingAtMost(mostLift.in(own));
            return stopAt == null ? request : request.stoppingAt(stopAt.in(own));
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
