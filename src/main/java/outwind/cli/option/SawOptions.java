package outwind.cli.option;

import java.util.Objects;
import java.util.stream.Stream;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.flatten.Verdict;
import outwind.shop.SawLimits;
import picocli.CommandLine.Option;

/** How blanks are cut, and how sure of their thickness they must be. */
public final class SawOptions {

    @Option(names = "--min-chance", paramLabel = "PERCENT", converter = ShareConverter.class,
        description = "Least chance of its thickness that a blank must have (usually 95 %%).")
    private Double sure;

    @Option(names = "--kerf", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Wood that one cut takes (usually 3.2 mm).")
    private LengthOption kerf;

    @Option(names = "--end-trim", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Cut away at each end first (usually nothing, or the file's trim along).")
    private LengthOption endTrim;

    @Option(names = "--raster", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Step between the places tried for blanks (usually 5 mm).")
    private LengthOption raster;

    @Option(names = "--shortest", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Shortest length that may be ripped or put through the machine.")
    private LengthOption shortest;

    @Option(names = "--widest", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Widest blank that the machine takes.")
    private LengthOption widest;

    @Option(names = "--first-edge", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Comes off the near edge to make it straight (usually nothing).")
    private LengthOption firstEdge;

    @Option(names = "--over-length", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Cut each blank so much longer than finished (usually nothing).")
    private LengthOption overLength;

    @Option(names = "--over-width", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Cut each blank so much wider than finished (usually nothing).")
    private LengthOption overWidth;

    @Option(names = "--recut", description = "Cut offcuts again, in two more stages of cuts.")
    private boolean recut;

    /** Chance of its thickness from which on a blank counts, 0 to 1. */
    public double sure() {
        return sure == null ? Verdict.SURE : sure;
    }

    /** True if anything was said of it. */
    public boolean isGiven() {
        return recut || Stream.of(sure, kerf, endTrim, raster, shortest, widest, firstEdge, overLength, overWidth).anyMatch(Objects::nonNull);
    }

    /**
     * How a board is cut.
     *
     * @param limits of the shop; what is stated on the command line counts instead
     * @throws IllegalArgumentException if the saw cannot be so
     */
    public Saw saw(Board board, SawLimits limits) {
        Saw usual = Saw.usual(board);
        return new Saw(LengthOption.in(board.units(), kerf).orElse(usual.kerf()),
            LengthOption.in(board.units(), endTrim).orElse(usual.endTrim()),
            LengthOption.in(board.units(), raster).orElse(usual.raster()), new SawLimits(
                LengthOption.in(board.units(), shortest).orElse(limits.shortest()),
                LengthOption.in(board.units(), widest).orElse(limits.widest()),
                LengthOption.in(board.units(), firstEdge).orElse(limits.firstEdge()),
                LengthOption.in(board.units(), overLength).orElse(limits.overLength()),
                LengthOption.in(board.units(), overWidth).orElse(limits.overWidth())), recut);
    }
}
