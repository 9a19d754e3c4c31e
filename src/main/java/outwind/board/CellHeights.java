package outwind.board;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A scanned face in cells of one size: each with the height of its middle, how far its points scatter about the face,
 * and how many they are. Cells lie row by row from the near edge, along the grain within a row; that of (i, j) is
 * number {@code j·columns + i}, and its middle is at ((i + ½)·length/columns, (j + ½)·width/rows).
 *
 * @param length  of the board (mm)
 * @param width   of the board (mm)
 * @param columns cells along the grain
 * @param rows    cells across
 * @param height  of the middle of each (mm), robust against stray points, length columns × rows; NaN where nothing was
 *                measured
 * @param scatter standard deviation of one point about the cell's own plane (mm), robust as well: the scanner's noise
 *                and what of saw marks is narrower than the cell; NaN where nothing was measured
 * @param count   points in each; zero where nothing was measured
 * @param noise   what of the scatter is the scanner's noise (mm), standard deviation; empty if the points do not tell
 */
public record CellHeights(double length, double width, int columns, int rows, double[] height, double[] scatter,
        int[] count, OptionalDouble noise) {

    /**
     * Diameter, in cells, from which on a round dip is seen wherever it lies: it fills more than half of some cell even
     * with its centre on a corner of cells, its worst place, where it fills π·d²/16 of each of the four.
     */
    public static final double SURELY_SEEN = Math.sqrt(8 / Math.PI);

    public CellHeights {
        int cells = columns * rows;
        if (cells == 0 || height.length != cells || scatter.length != cells || count.length != cells) {
            throw new IllegalArgumentException("expected " + columns + " x " + rows + " cells, got " + height.length
                + " heights, " + scatter.length + " scatters and " + count.length + " counts");
        }
    }

    /** Number of cells, measured or not. */
    public int size() {
        return height.length;
    }

    /** Length of a cell (mm). */
    public double cellX() {
        return length / columns;
    }

    /** Width of a cell (mm). */
    public double cellY() {
        return width / rows;
    }

    /** Where the middle of cell {@code k} lies along the grain (mm). */
    public double x(int k) {
        return (k % columns + 0.5) * cellX();
    }

    /** Where the middle of cell {@code k} lies across (mm). */
    public double y(int k) {
        return (k / columns + 0.5) * cellY();
    }

    /** Whether any point lies in cell {@code k}. */
    public boolean isMeasured(int k) {
        return count[k] > 0;
    }

    /** The cell that a place on the board lies in. */
    public int at(double x, double y) {
        int i = Math.max(0, Math.min(columns - 1, (int) (x / cellX())));
        int j = Math.max(0, Math.min(rows - 1, (int) (y / cellY())));
        return j * columns + i;
    }

    /** Share of the cells that hold points, 0 to 1. */
    public double measuredShare() {
        int measured = 0;
        for (int points : count) {
            measured += points > 0 ? 1 : 0;
        }
        return measured / (double) size();
    }

    /** True for the same figures. */
    @Override
    public boolean equals(Object other) {
        return other instanceof CellHeights that && length == that.length && width == that.width
            && columns == that.columns && rows == that.rows && noise.equals(that.noise)
            && Arrays.equals(height, that.height) && Arrays.equals(scatter, that.scatter)
            && Arrays.equals(count, that.count);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(height) + 31 * Arrays.hashCode(scatter);
    }
}
