package outwind.flatten;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.TouchGrid;
import outwind.numeric.plane.Plane;
import outwind.surface.ImaginedBoard;
import outwind.surface.MeasuredShape;
import outwind.surface.Region;

/**
 * How well a board's thickness will be known once it is touched off on a grid, stated before any reading.
 *
 * <p>Boards are made up as a board of this size may be, touched off on the grid with the usual noise, and judged like
 * real ones; what is expected is the mean width of their ranges. Every grid sees the same boards, so that grids differ
 * by what they show and not by luck.
 *
 * @param grid  where
 * @param range width of the range of the levelled thickness (90 %), mean over boards (mm)
 */
public record GridPromise(TouchGrid grid, double range) {

    /** Few enough to be quick; their mean came out within a twentieth or so of that over 300. */
    static final int BOARDS = 12;

    /** With 1000 the ranges came out 1 % wider. */
    static final int DRAWS = 400;

    /**
     * Fewer columns than four show a sharp kink as a bow, and four show it roughly: on the kinked boards of the
     * accuracy benchmark 95 % of errors stayed under 0.36 mm with four columns and under 0.22 mm with five.
     */
    private static final int COLUMNS_FOR_KINKS = 5;

    /** On the kinked boards of the benchmark the range is a fifth narrower with seven than with five. */
    private static final int COLUMNS_FOR_A_KNOWN_KINK = 7;

    /** Fewer rows show no cup. */
    private static final int ROWS_FOR_CUP = 3;

    /** What a grid promises; the same seed gives the same answer. */
    public static GridPromise of(TouchGrid grid, long seed) {
        return of(grid, BOARDS, DRAWS, seed);
    }

    static GridPromise of(TouchGrid grid, int boards, int draws, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        long[] seeds = random.longs(boards).toArray();
        // Judged side by side; summed in their order, so that the sum is the same every time.
        double[] ranges = IntStream.range(0, boards).parallel()
            .mapToDouble(i -> range(grid, (i + 0.5) / boards, draws, seeds[i])).toArray();
        double sum = 0;
        for (double range : ranges) {
            sum += range;
        }
        return new GridPromise(grid, sum / boards);
    }

    private static double range(TouchGrid grid, double roughness, int draws, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        ImaginedBoard imagined = ImaginedBoard.of(grid.length(), grid.width(), roughness, random);
        Board board = imagined.touchedOff(grid.tour(), random);
        LiftLimit free = new LiftLimit(new Plane(0, 0, 0), Double.POSITIVE_INFINITY, grid.length(), grid.width());
        return Simulation.of(MeasuredShape.of(board), Region.whole(board), 0, free, draws, seed)
            .levelled().width();
    }

    /** True if a sharp kink, as at a knot, can be distinguished from a bow. Where it is not, the range is too narrow. */
    public boolean seesKinks() {
        return grid.columns() >= COLUMNS_FOR_KINKS;
    }

    /** True if it shows where a kink that is known of begins, and how sharp it is. */
    boolean seesKinksWell() {
        return grid.columns() >= COLUMNS_FOR_A_KNOWN_KINK;
    }

    /** True if cup shows. */
    public boolean seesCup() {
        return grid.rows() >= ROWS_FOR_CUP;
    }
}
