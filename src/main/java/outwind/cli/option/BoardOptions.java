package outwind.cli.option;

import java.util.List;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Quantity;
import outwind.board.Units;
import outwind.board.file.Defaults;
import outwind.judge.Drying;
import outwind.setup.Moisture;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What every command that reads boards may be given about them. */
public final class BoardOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--target", paramLabel = "LENGTH", split = ",", converter = LengthConverter.class,
        description = "Thickness wanted; overrides the file. With stack several, as 26mm,19mm.")
    private List<LengthOption> targets = List.of();

    @Option(names = "--skim", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Least depth to come off each rough face (usually 0.3 mm).")
    private LengthOption skim;

    @Option(names = "--units", paramLabel = "mm|in", converter = UnitsConverter.class,
        description = "Unit of the report, and of files that state none.")
    private Units units;

    @Option(names = "--length", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Length of the board, if the file states none.")
    private LengthOption length;

    @Option(names = "--width", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Width of the board, if the file states none.")
    private LengthOption width;

    @Option(names = "--thickness", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Rough thickness of the board, if the file states none.")
    private LengthOption thickness;

    @Option(names = "--moisture", paramLabel = "FROM:TO", converter = MoistureConverter.class,
        description = "Moisture of the wood as measured and in use, in percent, as 18:9. The answer is for later; judge"
            + " gives no steps then.")
    private Moisture moisture;

    @Option(names = "--seed", paramLabel = "NUMBER", defaultValue = "1",
        description = "Seed of the simulated boards (default: ${DEFAULT-VALUE}).")
    private long seed;

    /** What is stated beside a file, for a file that does not say. */
    public Defaults given() {
        return new Defaults(Optional.ofNullable(units), typed(length), typed(width), typed(thickness));
    }

    private static Optional<String> typed(LengthOption option) {
        return Optional.ofNullable(option).map(LengthOption::text);
    }

    /**
     * The board with the target, skim and moisture that were asked for.
     *
     * @throws BadInput if this board cannot be had so
     */
    public Board asAsked(Board board) throws BadInput {
        if (targets.size() > 1) {
            throw new ParameterException(spec.commandLine(), "give one --target, with a decimal point as in 28.5; stack takes several");
        }
        return forFirstTarget(board);
    }

    /** The same for the first of perhaps several targets. */
    public Board forFirstTarget(Board board) throws BadInput {
        LengthOption target = targets.isEmpty() ? null : targets.get(0);
        require(Quantity.TARGET, target, board);
        require(Quantity.SKIM, skim, board);
        try {
            Board asked = target == null ? board : board.withTarget(target.in(board.units()));
            asked = skim == null ? asked : asked.withSkim(skim.in(board.units()));
            return moisture == null ? asked : Drying.of(asked, moisture);
        } catch (IllegalArgumentException e) {
            throw new BadInput(e.getMessage());
        }
    }

    /** What no board at all can have is a fault of the command line. */
    private void require(Quantity quantity, LengthOption option, Board board) {
        try {
            LengthOption.in(board.units(), option).ifPresent(quantity::require);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    /** What is said of many boards that are computed at another moisture; empty if they are not. */
    public Optional<String> drying() {
        return Optional.ofNullable(moisture).map(Drying::ofMany);
    }

    /** True if the answer is for wood that has not yet dried or swollen. */
    public boolean isForLater() {
        return moisture != null;
    }

    /** The unit that reports on this board are printed in. */
    public Units unitsFor(Board board) {
        return Optional.ofNullable(units).orElse(board.units());
    }

    /** Seed of the possible boards. */
    public long seed() {
        return seed;
    }

    /** The thicknesses that were asked for, in mm. */
    public List<Double> targets(Units own) {
        return targets.stream().map(target -> target.in(own)).toList();
    }

    /** True if a target was asked for whose unit is that of each board. */
    public boolean hasBareTarget() {
        return targets.stream().anyMatch(LengthOption::isBare);
    }

    /** True if a target was asked for on the command line. */
    public boolean hasTarget() {
        return !targets.isEmpty();
    }
}
