package outwind.blanks;

import java.util.Arrays;
import outwind.surface.Region;

/**
 * The places of a rectangle that can touch a plane, and how heights there follow from those on the board's grid.
 *
 * <p>A face is known on the grid and bilinear between its lines. Over a plane such a face is highest and lowest at
 * corners of cells, so the lines' crossings inside the rectangle, the rectangle's corners and where the lines meet its
 * sides are all that can touch.
 */
final class Lattice {

    private final int perLine;
    private final double[] x;
    private final double[] y;
    /** The crossing of the grid that a place is at; of others, the one that its cell begins with. */
    private final int[] corner;
    private final boolean[] isCrossing;
    private final double[] shareX;
    private final double[] shareY;

    /**
     * @param gridX lines of the grid across the board (mm), ascending
     * @param gridY lines along it
     */
    Lattice(double[] gridX, double[] gridY, Region rectangle) {
        perLine = gridX.length;
        double[] acrossLines = lines(gridX, rectangle.x1(), rectangle.x2());
        double[] alongLines = lines(gridY, rectangle.y1(), rectangle.y2());
        int n = acrossLines.length * alongLines.length;
        x = new double[n];
        y = new double[n];
        corner = new int[n];
        isCrossing = new boolean[n];
        shareX = new double[n];
        shareY = new double[n];
        for (int k = 0; k < n; k++) {
            x[k] = acrossLines[k % acrossLines.length];
            y[k] = alongLines[k / acrossLines.length];
            int i = cell(gridX, x[k]);
            int j = cell(gridY, y[k]);
            int onX = x[k] == gridX[i + 1] ? i + 1 : i;
            int onY = y[k] == gridY[j + 1] ? j + 1 : j;
            isCrossing[k] = x[k] == gridX[onX] && y[k] == gridY[onY];
            corner[k] = isCrossing[k] ? onY * perLine + onX : j * perLine + i;
            shareX[k] = (x[k] - gridX[i]) / (gridX[i + 1] - gridX[i]);
            shareY[k] = (y[k] - gridY[j]) / (gridY[j + 1] - gridY[j]);
        }
    }

    /** Where the places are along the board (mm); not to be modified. */
    double[] x() {
        return x;
    }

    /** Where they are across it (mm); not to be modified. */
    double[] y() {
        return y;
    }

    /**
     * Heights at the places (mm).
     *
     * @param onGrid at the crossings of the grid, line by line along the board
     */
    double[] heights(double[] onGrid) {
        double[] heights = new double[x.length];
        for (int k = 0; k < heights.length; k++) {
            int near = corner[k];
            if (isCrossing[k]) {
                heights[k] = onGrid[near];
                continue;
            }
            int far = near + perLine;
            double low = onGrid[near] + shareX[k] * (onGrid[near + 1] - onGrid[near]);
            double high = onGrid[far] + shareX[k] * (onGrid[far + 1] - onGrid[far]);
            heights[k] = low + shareY[k] * (high - low);
        }
        return heights;
    }

    private static double[] lines(double[] grid, double from, double to) {
        double[] inside = Arrays.stream(grid).filter(line -> line > from && line < to).toArray();
        double[] lines = new double[inside.length + 2];
        lines[0] = from;
        System.arraycopy(inside, 0, lines, 1, inside.length);
        lines[lines.length - 1] = to;
        return lines;
    }

    private static int cell(double[] grid, double place) {
        int i = 0;
        while (i < grid.length - 2 && grid[i + 1] <= place) {
            i++;
        }
        return i;
    }
}
