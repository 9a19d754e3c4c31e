package outwind.scan.find;

import java.util.stream.IntStream;
import outwind.board.CellHeights;
import outwind.numeric.Median;

/**
 * The face in cells: in each a plane through its points, robust against the few that are off it.
 *
 * <pre>
 *   z = a + b·u + c·v + e,   u, v from −1 to 1 over the cell;   height of its middle = a
 *   weights 1 for |e| ≤ 1.345·s, else 1.345·s/|e|;   s = 1.4826 · median |e|
 * </pre>
 * begun with the plain plane, two rounds of weights. Where the points of a cell lie so that they do not tell a plane,
 * the median stands for it.
 *
 * <p>Source: P. J. Huber, Annals of Mathematical Statistics 35 (1964) 73–101; reweighting: A. E. Beaton and J. W.
 * Tukey, Technometrics 16 (1974) 147–185.
 */
final class Cells {

    private static final double HUBER = 1.345;
    private static final int ROUNDS = 2;

    /** A plane through fewer points than this follows each of them. */
    private static final int FEWEST = 9;

    /** Points whose middle is further than this from the cell's (half cells) tell of its edge, not of its middle. */
    private static final double OFF_CENTRE = 0.5;

    /** Determinant of the normal matrix per point³ from which on the points spread over the cell; (1/3)² if evenly. */
    private static final double LEAST_SPREAD = 0.01;

    private final CellPoints points;
    private final CellHeights cells;

    private Cells(CellPoints points) {
        CellGrid grid = points.grid();
        int size = grid.columns() * grid.rows();
        this.points = points;
        this.cells = new CellHeights(grid.length(), grid.width(), grid.columns(), grid.rows(), new double[size],
            new double[size], new int[size], PointNoise.of(points));
    }

    static CellHeights of(CellPoints points) {
        Cells all = new Cells(points);
        IntStream.range(0, all.cells.size()).parallel().forEach(all::judge);
        return all.cells;
    }

    private void judge(int cell) {
        int from = points.start()[4 * cell];
        int to = points.start()[4 * cell + 4];
        cells.count()[cell] = to - from;
        if (to == from) {
            cells.height()[cell] = Double.NaN;
            cells.scatter()[cell] = Double.NaN;
            return;
        }
        double[] residual = new double[to - from];
        double[] plane = {0, 0, 0};
        double deviation = Double.POSITIVE_INFINITY;
        boolean fits = to - from >= FEWEST;
        for (int round = 0; fits && round <= ROUNDS; round++) {
            fits = fit(cell, from, to, plane, residual, HUBER * deviation);
            if (fits) {
                deviation = deviation(cell, from, to, plane, residual);
            }
        }
        if (!fits) {
            System.arraycopy(points.points().z(), from, residual, 0, residual.length);
            plane = new double[] {Median.of(residual, 0, residual.length), 0, 0};
            deviation = deviation(cell, from, to, plane, residual);
        }
        cells.height()[cell] = plane[0];
        cells.scatter()[cell] = deviation;
    }

    /** Fits the plane with the weights of the last one; false if the points do not tell it. */
    private boolean fit(int cell, int from, int to, double[] plane, double[] residual, double bound) {
        PlaneSums sums = new PlaneSums();
        double base = points.points().z()[from];
        for (int i = from; i < to; i++) {
            double e = residual[i - from];
            sums.add(Math.abs(e) <= bound ? 1 : bound / Math.abs(e), u(cell, i), v(cell, i),
                points.points().z()[i] - base);
        }
        if (sums.determinant() < LEAST_SPREAD || Math.hypot(sums.meanX(), sums.meanY()) > OFF_CENTRE) {
            return false;
        }
        plane[1] = sums.slopeX();
        plane[2] = sums.slopeY();
        plane[0] = base + sums.meanZ() - plane[1] * sums.meanX() - plane[2] * sums.meanY();
        return true;
    }

    /** Leaves the residuals in {@code residual}; returns their robust standard deviation. */
    private double deviation(int cell, int from, int to, double[] plane, double[] residual) {
        double[] away = new double[residual.length];
        for (int i = from; i < to; i++) {
            residual[i - from] = points.points().z()[i] - plane[0] - plane[1] * u(cell, i) - plane[2] * v(cell, i);
            away[i - from] = Math.abs(residual[i - from]);
        }
        return TrimmedPlane.TO_DEVIATION * Median.of(away, 0, away.length);
    }

    private double u(int cell, int i) {
        return (points.points().x()[i] - cells.x(cell)) * 2 / cells.cellX();
    }

    private double v(int cell, int i) {
        return (points.points().y()[i] - cells.y(cell)) * 2 / cells.cellY();
    }
}
