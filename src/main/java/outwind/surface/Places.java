package outwind.surface;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.Face;
import outwind.board.Reading;

/**
 * Places on the board where its faces are looked at: a regular grid over a region, ends and edges included, perhaps
 * followed by the places of readings.
 *
 * @param x      mm along the grain, length n
 * @param y      mm across, length n
 * @param weight share of the region's area (mm², trapezoid rule) on the grid and zero at readings, length n, so that
 *               Σ weight·f is the integral of f
 * @param cellX  from one line of the grid to the next along the grain (mm)
 * @param cellY  the same across (mm)
 */
public record Places(double[] x, double[] y, double[] weight, double cellX, double cellY) {

    /** A twentyfourth of the length is closer than anybody touches off by hand. */
    private static final int LINES_ALONG = 25;
    private static final int LINES_ACROSS = 9;

    /**
     * A grid fine enough to judge the mean surface on: of a board that was touched off, with the place of every reading
     * on face A in the region; of one that was scanned, through the middle of every cell.
     */
    public static Places fine(Board board, Region region) {
        if (board.scan().isPresent()) {
            CellHeights cells = board.scan().get().cells();
            return lines(middles(region.x1(), region.x2(), cells.columns(), cells.cellX()),
                middles(region.y1(), region.y2(), cells.rows(), cells.cellY()), cells.cellX(), cells.cellY());
        }
        List<Reading> readings = board.readingsOf(Face.A).stream()
            .filter(reading -> region.holds(reading.x(), reading.y())).toList();
        return grid(region, LINES_ALONG, LINES_ACROSS, readings);
    }

    /** The same places in another order. */
    Places inOrder(int[] order) {
        return new Places(Arrays.stream(order).mapToDouble(k -> x[k]).toArray(),
            Arrays.stream(order).mapToDouble(k -> y[k]).toArray(),
            Arrays.stream(order).mapToDouble(k -> weight[k]).toArray(), cellX, cellY);
    }

    /** x of these and of other places after them, then y of the same; as many other x as y. */
    double[][] and(double[][] others) {
        return new double[][] {DoubleStream.concat(Arrays.stream(x), Arrays.stream(others[0])).toArray(),
            DoubleStream.concat(Arrays.stream(y), Arrays.stream(others[1])).toArray()};
    }

    /** A regular grid alone. */
    public static Places grid(Region region, int along, int across) {
        return grid(region, along, across, List.of());
    }

    /** The middles of those cells that lie in a stretch of the board, and both its ends. */
    private static double[] middles(double from, double to, int cells, double cell) {
        return DoubleStream.concat(DoubleStream.concat(DoubleStream.of(from),
            IntStream.range(0, cells).mapToDouble(i -> (i + 0.5) * cell).filter(at -> at > from && at < to)),
            DoubleStream.of(to)).toArray();
    }

    /** A grid of lines that need not be evenly spaced, ascending. */
    private static Places lines(double[] along, double[] across, double cellX, double cellY) {
        int n = along.length * across.length;
        double[] x = new double[n];
        double[] y = new double[n];
        double[] weight = new double[n];
        for (int k = 0; k < n; k++) {
            int i = k % along.length;
            int j = k / along.length;
            x[k] = along[i];
            y[k] = across[j];
            weight[k] = share(along, i) * share(across, j);
        }
        return new Places(x, y, weight, cellX, cellY);
    }

    /** Half of the way from the line before to the line after. */
    private static double share(double[] lines, int i) {
        return (lines[Math.min(i + 1, lines.length - 1)] - lines[Math.max(i - 1, 0)]) / 2;
    }

    private static Places grid(Region region, int along, int across, List<Reading> readings) {
        int grid = along * across;
        int n = grid + readings.size();
        double[] x = new double[n];
        double[] y = new double[n];
        double[] weight = new double[n];
        double cell = region.area() / ((along - 1) * (across - 1));
        for (int k = 0; k < grid; k++) {
            int i = k % along;
            int j = k / along;
            x[k] = line(region.x1(), region.x2(), i, along);
            y[k] = line(region.y1(), region.y2(), j, across);
            weight[k] = cell * trapezoid(i, along) * trapezoid(j, across);
        }
        for (int k = grid; k < n; k++) {
            x[k] = readings.get(k - grid).x();
            y[k] = readings.get(k - grid).y();
        }
        return new Places(x, y, weight, (region.x2() - region.x1()) / (along - 1),
            (region.y2() - region.y1()) / (across - 1));
    }

    /** Line i of count, evenly spaced; the last one exactly at the far end. */
    private static double line(double from, double to, int i, int count) {
        return i == count - 1 ? to : from + (to - from) * i / (count - 1);
    }

    private static double trapezoid(int i, int count) {
        return i == 0 || i == count - 1 ? 0.5 : 1;
    }

    /** Number of places. */
    public int size() {
        return x.length;
    }

    /** True for the same figures. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Places that && cellX == that.cellX && cellY == that.cellY && Arrays.equals(x, that.x)
            && Arrays.equals(y, that.y) && Arrays.equals(weight, that.weight);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(x) + 31 * Arrays.hashCode(y);
    }
}
