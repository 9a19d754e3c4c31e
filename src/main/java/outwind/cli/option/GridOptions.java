package outwind.cli.option;

import java.util.Optional;
import outwind.board.TouchGrid;
import outwind.board.Units;
import picocli.CommandLine.Option;

/** The grid of places to touch off, as far as a person knows it. */
public final class GridOptions {

    @Option(names = "--columns", paramLabel = "NUMBER", description = "Places to touch along the grain.")
    private Integer columns;

    @Option(names = "--rows", paramLabel = "NUMBER", description = "Places to touch across.")
    private Integer rows;

    @Option(names = "--inset", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "How far the outer places lie in from ends and edges (usually 15 mm, less on a narrow board).")
    private LengthOption inset;

    public Optional<Integer> columns() {
        return Optional.ofNullable(columns);
    }

    public Optional<Integer> rows() {
        return Optional.ofNullable(rows);
    }

    public boolean hasInset() {
        return inset != null;
    }

    /**
     * A grid on a board of this size (mm); an inset that is asked for is taken as it is.
     *
     * @throws IllegalArgumentException if it does not fit
     */
    public TouchGrid on(double length, double width, Units units, int along, int across) {
        return TouchGrid.byRule(length, width, along, across, LengthOption.in(units, inset), units);
    }
}
