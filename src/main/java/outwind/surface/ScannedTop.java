package outwind.surface;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.numeric.Median;
import outwind.surface.field.KrigedField;
import outwind.surface.field.Noises;
import outwind.surface.field.Observations;
import outwind.surface.field.Prior;
import outwind.surface.field.Viewpoint;
import outwind.surface.trend.TrendModel;

/**
 * Face A as a scan tells it: a smooth field for the large, cells for the small.
 *
 * <pre>
 *   height = field + what the cells differ from it ({@link LocalFilter}), bilinear between their middles
 * </pre>
 * The field is kriged through averages of the cells, as touch-offs are. Where no cell was measured the face is the
 * field alone, and as unsure as that. A possible face strays from the most likely one by the noise that is left of each
 * cell, and reaches below and above it by the saw marks within a cell: waves of standard deviation τ lie √2·τ under and
 * over their middle. Of the usual scatter s within a cell, τ² = s² − σ² is wood, where the noise σ of one point is
 * known. Where it is not, half of the possible faces take all of it for noise, the others any share of it.
 */
final class ScannedTop implements TopFace {

    /** Depth of a regular wave under its middle, in its standard deviations. */
    private static final double WAVE = Math.sqrt(2);

    /** The scatter of fewer points than this is not known. */
    private static final int FEWEST = 9;

    /**
     * Standard deviation of the twist, the bow and the cup that a scan may show or hide by itself (mm): what cells
     * round off at corners, and a little of what bends in a scanner. Our choice, held to the simulated boards; it does
     * not cover a scanner that is out of true.
     */
    private static final double BEND = 0.01;

    /** A smaller share of the scatter than this cannot be distinguished from the error of the two that are subtracted. */
    private static final double LOST = 0.1;

    /** Cells are not distinguished closer than this (mm). */
    private static final double RESOLUTION = 0.002;

    private final CellHeights cells;
    private final KrigedField field;
    /** The field at the middles of cells, and of one more ring of cells around the board. */
    private final double[] ringed;
    private final LocalFilter residual;
    /** What of the residual is wider than the board is thick (mm). */
    private final double[] wide;
    private final double[] none;
    /** Standard deviation of the face in each cell (mm). */
    private final double[] deviation;
    /** Variance within a cell that is, or may be, wood (mm²): one for the whole face, as its saw marks are. */
    private final double rough;
    private final boolean roughIsKnown;

    private ScannedTop(CellHeights cells, KrigedField field, double[] scatter, OptionalDouble noise, double thick) {
        this.cells = cells;
        this.field = field;
        this.none = new double[cells.size()];
        int all = cells.columns() + 2;
        this.ringed = IntStream.range(0, all * (cells.rows() + 2)).parallel().mapToDouble(k -> field.mean(
            (k % all - 0.5) * cells.cellX(), (k / all - 0.5) * cells.cellY())).toArray();
        double[] above = new double[cells.size()];
        double[] variance = new double[cells.size()];
        for (int k = 0; k < above.length; k++) {
            if (cells.isMeasured(k)) {
                above[k] = cells.height()[k] - ringed[ring(k)];
                variance[k] = scatter[k] * scatter[k] / cells.count()[k];
            }
        }
        this.residual = LocalFilter.of(cells, above, variance);
        this.wide = IntStream.range(0, cells.size()).parallel().mapToDouble(k -> middleAround(k, thick)).toArray();
        this.deviation = IntStream.range(0, cells.size()).parallel().mapToDouble(k -> cells.isMeasured(k)
            ? Math.sqrt(residual.variance()[k]) : field.deviation(cells.x(k), cells.y(k))).toArray();
        this.roughIsKnown = noise.isPresent();
        double usual = median(scatter);
        double wood = usual * usual - noise.orElse(0) * noise.orElse(0);
        this.rough = wood < LOST * usual * usual ? 0 : wood;
    }

    /** @param board for its size, its cells as readings, and what one point is good for, if that is stated */
    static ScannedTop of(Board board, CellHeights cells, Viewpoint seen) {
        double[] scatter = scatter(cells);
        double usual = median(IntStream.range(0, cells.size()).filter(cells::isMeasured)
            .mapToDouble(k -> scatter[k] / Math.sqrt(cells.count()[k])).toArray());
        List<Reading> readings = board.readingsOf(Face.A);
        KrigedField field = KrigedField.of(Observations.of(readings.stream().mapToDouble(Reading::x).toArray(),
            readings.stream().mapToDouble(Reading::y).toArray(), readings.stream().mapToDouble(Reading::z).toArray(),
            Math.max(RESOLUTION, usual), board.length(), board.width()), TrendModel.CURVED, Prior.FACE, Noises.AS_STATED,
            seen);
        return new ScannedTop(cells, field, scatter, board.repeatability().isPresent() ? board.repeatability()
            : cells.noise(), board.thickest().orElseThrow());
    }

    /**
     * Median of the cells within a reach (mm) of one, along and across: what is narrower than the reach is not in it.
     */
    private double middleAround(int cell, double reach) {
        int i = cell % cells.columns();
        int j = cell / cells.columns();
        int along = (int) Math.round(reach / cells.cellX());
        int across = (int) Math.round(reach / cells.cellY());
        int i1 = Math.max(0, i - along);
        int j1 = Math.max(0, j - across);
        return median(IntStream.rangeClosed(j1, Math.min(cells.rows() - 1, j + across)).flatMap(row ->
            IntStream.rangeClosed(i1, Math.min(cells.columns() - 1, i + along)).map(c -> row * cells.columns() + c))
            .filter(cells::isMeasured).mapToDouble(k -> residual.height()[k]).toArray());
    }

    /** Scatter within each cell; in cells of few points no less than in most others. */
    private static double[] scatter(CellHeights cells) {
        double usual = median(IntStream.range(0, cells.size()).filter(k -> cells.count()[k] >= FEWEST)
            .mapToDouble(k -> cells.scatter()[k]).toArray());
        return IntStream.range(0, cells.size()).mapToDouble(k -> !cells.isMeasured(k) ? usual
            : cells.count()[k] < FEWEST ? Math.max(usual, cells.scatter()[k]) : cells.scatter()[k]).toArray();
    }

    /** Zero where there is nothing to take it of. */
    private static double median(double[] values) {
        return values.length == 0 ? 0 : Median.of(values);
    }

    /** Number of a cell in the larger grid with a ring around. */
    private int ring(int cell) {
        return (cell / cells.columns() + 1) * (cells.columns() + 2) + cell % cells.columns() + 1;
    }

    @Override
    public double mean(double x, double y) {
        return between(x, y, residual.height());
    }

    @Override
    public double shared(double x, double y, double mean) {
        return between(x, y, wide);
    }

    /** The field and what is added to it in each cell, bilinear between their middles. */
    private double between(double x, double y, double[] added) {
        double along = x / cells.cellX() + 0.5;
        double across = y / cells.cellY() + 0.5;
        int i = (int) Math.max(0, Math.min(cells.columns(), Math.floor(along)));
        int j = (int) Math.max(0, Math.min(cells.rows(), Math.floor(across)));
        double u = along - i;
        double v = across - j;
        return (1 - v) * ((1 - u) * height(i, j, added) + u * height(i + 1, j, added))
            + v * ((1 - u) * height(i, j + 1, added) + u * height(i + 1, j + 1, added));
    }

    /** Height at the middle of a cell of the larger grid; what is added is carried on into the ring. */
    private double height(int i, int j, double[] added) {
        int column = Math.max(1, Math.min(cells.columns(), i)) - 1;
        int row = Math.max(1, Math.min(cells.rows(), j)) - 1;
        return ringed[j * (cells.columns() + 2) + i] + added[row * cells.columns() + column];
    }

    @Override
    public double deviation(double x, double y) {
        return deviation[cells.at(x, y)];
    }

    @Override
    public List<KrigedField.Predicted> leavingOut() {
        return List.of();
    }

    @Override
    public List<KrigedField.Predicted> leavingOutBeside(int reading) {
        return List.of();
    }

    /**
     * What of the cells around a place can touch a cut.
     *
     * @param u       along the board, from −1 to 1; likewise {@code v} across
     * @param field   the field there (mm)
     * @param lowest  number of the lowest cell against the field, −1 if none was measured
     * @param highest number of the highest in what both faces share
     */
    private record Around(double u, double v, double field, int lowest, int highest) { }

    private Around around(double x, double y, double reachX, double reachY) {
        int own = cells.at(x, y);
        int i1 = Math.max(0, Math.min(own % cells.columns(), (int) Math.ceil((x - reachX) / cells.cellX() - 0.5)));
        int i2 = Math.min(cells.columns() - 1, Math.max(own % cells.columns(),
            (int) Math.floor((x + reachX) / cells.cellX() - 0.5)));
        int j1 = Math.max(0, Math.min(own / cells.columns(), (int) Math.ceil((y - reachY) / cells.cellY() - 0.5)));
        int j2 = Math.min(cells.rows() - 1, Math.max(own / cells.columns(),
            (int) Math.floor((y + reachY) / cells.cellY() - 0.5)));
        int lowest = -1;
        int highest = -1;
        for (int j = j1; j <= j2; j++) {
            for (int i = i1; i <= i2; i++) {
                int k = j * cells.columns() + i;
                if (cells.isMeasured(k)) {
                    lowest = lowest < 0 || residual.height()[k] < residual.height()[lowest] ? k : lowest;
                    highest = highest < 0 || wide[k] > wide[highest] ? k : highest;
                }
            }
        }
        return new Around(2 * x / cells.length() - 1, 2 * y / cells.width() - 1, between(x, y, none), lowest, highest);
    }

    @Override
    public Drawn draws(Places places, double[][] anchors, int count, SplittableRandom random) {
        int n = places.size() + anchors[0].length;
        Around[] around = new Around[n];
        for (int k = 0; k < places.size(); k++) {
            around[k] = around(places.x()[k], places.y()[k], places.cellX() / 2, places.cellY() / 2);
        }
        for (int k = places.size(); k < n; k++) {
            around[k] = around(anchors[0][k - places.size()], anchors[1][k - places.size()], 0, 0);
        }
        double[][] lows = new double[count][n];
        double[][] highs = new double[count][n];
        for (int d = 0; d < count; d++) {
            // One share for the whole face: it is one scanner.
            double wave = WAVE * Math.sqrt(rough * (roughIsKnown ? 1 : Math.max(0, 2 * random.nextDouble() - 1)));
            double twist = random.nextGaussian(0, BEND);
            double bow = random.nextGaussian(0, BEND);
            double cup = random.nextGaussian(0, BEND);
            for (int k = 0; k < n; k++) {
                if (around[k].lowest() >= 0) {
                    double bent = twist * around[k].u() * around[k].v() + bow * around[k].u() * around[k].u()
                        + cup * around[k].v() * around[k].v();
                    lows[d][k] = around[k].field() + bent + residual.height()[around[k].lowest()]
                        + deviation[around[k].lowest()] * random.nextGaussian()
                        - wave;
                    highs[d][k] = around[k].field() + bent + wide[around[k].highest()]
                        + wave;
                }
            }
        }
        fillGaps(places, anchors, around, new Drawn(lows, highs), random);
        return new Drawn(lows, highs);
    }

    /** Draws the field where no cell was measured. */
    private void fillGaps(Places places, double[][] anchors, Around[] around, Drawn drawn, SplittableRandom random) {
        int[] gaps = IntStream.range(0, around.length).filter(k -> around[k].lowest() < 0).toArray();
        if (gaps.length == 0) {
            return;
        }
        double[] x = Arrays.stream(gaps).mapToDouble(k -> k < places.size() ? places.x()[k]
            : anchors[0][k - places.size()]).toArray();
        double[] y = Arrays.stream(gaps).mapToDouble(k -> k < places.size() ? places.y()[k]
            : anchors[1][k - places.size()]).toArray();
        double[][] heights = field.draws(x, y, drawn.lows().length, random);
        for (int d = 0; d < heights.length; d++) {
            for (int g = 0; g < gaps.length; g++) {
                drawn.lows()[d][gaps[g]] = heights[d][g];
                drawn.highs()[d][gaps[g]] = heights[d][g];
            }
        }
    }
}
