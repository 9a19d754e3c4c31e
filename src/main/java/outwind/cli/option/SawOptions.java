package outwind.cli.option;

import java.util.Objects;
import java.util.stream.Stream;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.flatten.Verdict;
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

    /** Chance of its thickness from which on a blank counts, 0 to 1. */
    public double sure() {
        return sure == null ? Verdict.SURE : sure;
    }

    /** True if anything was said of it. */
    public boolean isGiven() {
        return Stream.of(sure, kerf, endTrim, raster).anyMatch(Objects::nonNull);
    }

    /**
     * How a board is cut.
     *
     * @throws IllegalArgumentException if the saw cannot be so
     */
    public Saw saw(Board board) {
        Saw usual = Saw.usual(board);
        return new Saw(LengthOption.in(board.units(), kerf).orElse(usual.kerf()),
            LengthOption.in(board.units(), endTrim).orElse(usual.endTrim()),
            LengthOption.in(board.units(), raster).orElse(usual.raster()));
    }
}
