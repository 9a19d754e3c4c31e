package outwind.setup;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import outwind.numeric.plate.Rigidity;

/**
 * A second opinion on a supported board, by another road: Ritz's method with cubic B-splines both ways. Their slopes
 * are continuous, so it comes out stiffer than the true plate where the elements come out softer; the weight is
 * integrated instead of lumped; supports and pushes lie anywhere.
 */
final class SplinePlate {

    private static final int ALONG = 30;
    private static final int ACROSS = 8;
    /** Springs at the four corners (N/mm) that let the board float and yet keep its matrix definite. */
    private static final double FLOATING = 1e-3;

    /** Gauss points and weights on −1 to 1, exact to the seventh degree. */
    private static final double[] GAUSS = {-0.8611363115940526, -0.3399810435848563, 0.3399810435848563,
        0.8611363115940526};
    private static final double[] SHARE = {0.3478548451374538, 0.6521451548625461, 0.6521451548625461,
        0.3478548451374538};

    private final double length;
    private final double width;
    private final LinearSolverDense<DMatrixRMaj> solver;
    private final DMatrixRMaj weight;

    /** @param load weight per area (N/mm²) */
    SplinePlate(double length, double width, Rigidity rigidity, double load) {
        this.length = length;
        this.width = width;
        int n = (ALONG + 3) * (ACROSS + 3);
        DMatrixRMaj k = new DMatrixRMaj(n, n);
        add(k, rigidity.dx(), 2, 2, 0, 0);
        add(k, rigidity.dy(), 0, 0, 2, 2);
        add(k, rigidity.d1(), 2, 0, 0, 2);
        add(k, rigidity.d1(), 0, 2, 2, 0);
        add(k, 4 * rigidity.dxy(), 1, 1, 1, 1);
        for (double[] corner : new double[][] {{0, 0}, {length, 0}, {0, width}, {length, width}}) {
            DMatrixRMaj at = column(List.of(corner));
            CommonOps_DDRM.multAddTransB(FLOATING, at, at, k);
        }
        solver = LinearSolverFactory_DDRM.symmPosDef(n);
        if (!solver.setA(k)) {
            throw new IllegalStateException("splines are not independent");
        }
        weight = new DMatrixRMaj(n, 1);
        double[] x = integrals(ALONG, length);
        double[] y = integrals(ACROSS, width);
        for (int i = 0; i < n; i++) {
            weight.set(i, 0, load * x[i / y.length] * y[i % y.length]);
        }
    }

    /**
     * How far each place moves when pushed, one after another (mm).
     *
     * @param supports (x, y) of each
     */
    double[] movements(List<double[]> supports, List<double[]> pushed, double force) {
        List<double[]> all = new ArrayList<>(supports);
        all.addAll(pushed);
        DMatrixRMaj basis = column(all);
        DMatrixRMaj answer = new DMatrixRMaj(basis.numRows, all.size());
        solver.solve(basis.copy(), answer);
        DMatrixRMaj f = new DMatrixRMaj(all.size(), all.size());
        CommonOps_DDRM.multTransA(basis, answer, f);
        DMatrixRMaj sag = new DMatrixRMaj(all.size(), 1);
        CommonOps_DDRM.multTransA(answer, weight, sag);
        int m = supports.size();
        double[] alone = heights(f, m, sag.getData());
        double[] movements = new double[pushed.size()];
        for (int p = 0; p < movements.length; p++) {
            double[] loaded = sag.getData().clone();
            for (int i = 0; i < loaded.length; i++) {
                loaded[i] += force * f.get(i, m + p);
            }
            movements[p] = alone[m + p] - heights(f, m, loaded)[m + p];
        }
        return movements;
    }

    /** Heights of all places over where the supports touch, for places that free of supports would sink so far. */
    private static double[] heights(DMatrixRMaj f, int m, double[] sink) {
        boolean[] bears = new boolean[m];
        Arrays.fill(bears, true);
        for (int step = 0; step < 2000; step++) {
            double[] reaction = reactions(f, bears, sink);
            double[] height = new double[sink.length];
            for (int i = 0; i < sink.length; i++) {
                height[i] = -sink[i];
                for (int s = 0; s < m; s++) {
                    height[i] += f.get(i, s) * reaction[s];
                }
            }
            // With nothing wrong, reactions and heights meet the Karush-Kuhn-Tucker conditions, whatever led there.
            int wrong = -1;
            double most = 1e-7;
            for (int s = 0; s < m; s++) {
                double by = bears[s] ? -reaction[s] : -height[s] * 1000;
                if (by > most) {
                    wrong = s;
                    most = by;
                    if (step > 100) {
                        break;
                    }
                }
            }
            if (wrong < 0) {
                return height;
            }
            bears[wrong] = !bears[wrong];
        }
        throw new IllegalStateException("supports do not settle");
    }

    private static double[] reactions(DMatrixRMaj f, boolean[] bears, double[] sink) {
        int[] on = IntStream.range(0, bears.length).filter(s -> bears[s]).toArray();
        double[] reaction = new double[bears.length];
        if (on.length == 0) {
            return reaction;
        }
        DMatrixRMaj system = new DMatrixRMaj(on.length, on.length);
        DMatrixRMaj right = new DMatrixRMaj(on.length, 1);
        for (int i = 0; i < on.length; i++) {
            right.set(i, 0, sink[on[i]]);
            for (int j = 0; j < on.length; j++) {
                system.set(i, j, f.get(on[i], on[j]));
            }
        }
        DMatrixRMaj solution = new DMatrixRMaj(on.length, 1);
        CommonOps_DDRM.solve(system, right, solution);
        for (int i = 0; i < on.length; i++) {
            reaction[on[i]] = solution.get(i, 0);
        }
        return reaction;
    }

    private DMatrixRMaj column(List<double[]> places) {
        int across = ACROSS + 3;
        DMatrixRMaj basis = new DMatrixRMaj((ALONG + 3) * across, places.size());
        for (int p = 0; p < places.size(); p++) {
            double[] x = splines(ALONG, length, places.get(p)[0], 0);
            double[] y = splines(ACROSS, width, places.get(p)[1], 0);
            for (int i = 0; i < basis.numRows; i++) {
                basis.set(i, p, x[i / across] * y[i % across]);
            }
        }
        return basis;
    }

    /** Adds factor·∫∫ of derivatives xi, yi of one basis function times xj, yj of another. */
    private void add(DMatrixRMaj k, double factor, int xi, int xj, int yi, int yj) {
        double[][] x = products(ALONG, length, xi, xj);
        double[][] y = products(ACROSS, width, yi, yj);
        int across = y.length;
        for (int i = 0; i < k.numRows; i++) {
            for (int j = 0; j < k.numRows; j++) {
                double along = x[i / across][j / across];
                if (along != 0) {
                    k.add(i, j, factor * along * y[i % across][j % across]);
                }
            }
        }
    }

    private static double[][] products(int intervals, double size, int di, int dj) {
        double[][] sum = new double[intervals + 3][intervals + 3];
        double h = size / intervals;
        for (int cell = 0; cell < intervals; cell++) {
            for (int g = 0; g < 4; g++) {
                double at = h * (cell + (1 + GAUSS[g]) / 2);
                double[] a = splines(intervals, size, at, di);
                double[] b = splines(intervals, size, at, dj);
                for (int i = cell; i < cell + 4; i++) {
                    for (int j = cell; j < cell + 4; j++) {
                        sum[i][j] += SHARE[g] * h / 2 * a[i] * b[j];
                    }
                }
            }
        }
        return sum;
    }

    private static double[] integrals(int intervals, double size) {
        double[] sum = new double[intervals + 3];
        double h = size / intervals;
        for (int cell = 0; cell < intervals; cell++) {
            for (int g = 0; g < 4; g++) {
                double[] a = splines(intervals, size, h * (cell + (1 + GAUSS[g]) / 2), 0);
                for (int i = cell; i < cell + 4; i++) {
                    sum[i] += SHARE[g] * h / 2 * a[i];
                }
            }
        }
        return sum;
    }

    /** Uniform cubic B-splines, or their first or second derivatives, at one place; at most four are not zero. */
    private static double[] splines(int intervals, double size, double at, int derivative) {
        double h = size / intervals;
        int cell = (int) Math.min(intervals - 1, Math.floor(at / h));
        double t = at / h - cell;
        double s = 1 - t;
        double[] values = new double[intervals + 3];
        double[] four = switch (derivative) {
            case 0 -> new double[] {s * s * s / 6, (3 * t * t * t - 6 * t * t + 4) / 6,
                (3 * s * s * s - 6 * s * s + 4) / 6, t * t * t / 6};
            case 1 -> new double[] {-s * s / 2 / h, (3 * t * t - 4 * t) / 2 / h, -(3 * s * s - 4 * s) / 2 / h,
                t * t / 2 / h};
            default -> new double[] {s / h / h, (3 * t - 2) / h / h, (3 * s - 2) / h / h, t / h / h};
        };
        System.arraycopy(four, 0, values, cell, 4);
        return values;
    }
}
