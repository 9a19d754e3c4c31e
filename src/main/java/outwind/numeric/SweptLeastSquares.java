package outwind.numeric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Least squares for millions of rows that are made as they are needed and never kept.
 *
 * <pre>
 *   G = XᵀX,   G·b = Xᵀy,   then one step of refinement:   G·d = Xᵀ(y − X·b),   b ← b + d
 * </pre>
 * Two sweeps over the rows, on all cores. Sums are taken over short blocks first and those added up with what rounding
 * loses, so that they are good to the last digits however many rows there are. Normal equations lose digits with the
 * square of the condition of X; this is for columns that are far from each other, as low powers of coordinates from −1
 * to 1 are (condition under 10), where two digits go and the refinement brings them back. {@link LeastSquares} is for
 * all others. Models that take only the first columns are fitted in the same sweeps.
 *
 * <p>Source: Å. Björck, Numerical Methods for Least Squares Problems, SIAM 1996, sections 2.2 and 6.6.5; sums: N. J.
 * Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., SIAM 2002, sections 4.2 and 4.3.
 */
public final class SweptLeastSquares {

    /** Rows summed before anything is added up with care. */
    private static final int BLOCK = 512;

    /** Stretches of rows shared out among the cores; a fixed number, so that every machine gets the same sums. */
    private static final int STRETCHES = 32;

    /** Makes the rows of X. */
    public interface Rows {

        /** Writes row {@code i} into an array of length p; called from several threads. */
        void row(int i, double[] into);
    }

    /**
     * Models one within the other.
     *
     * @param independent whether each column can be distinguished from those before it, length p
     * @param fits        for each count of columns that was asked for, of those among them that are independent;
     *                    residuals are not kept
     */
    public record Nested(boolean[] independent, List<LinearFit> fits) { }

    private final Rows rows;
    private final double[] y;
    private final int p;

    private SweptLeastSquares(Rows rows, double[] y, int p) {
        this.rows = rows;
        this.y = y;
        this.p = p;
    }

    /**
     * Fits models that hold the first columns of X.
     *
     * @param rows       X, n rows × p columns; the first column is 1 throughout, the others of like size
     * @param y          observations, length n; not modified
     * @param counts     how many columns each model holds, ascending, the last of them p
     * @param leastAngle as in {@link LeastSquares#independentColumns}
     * @throws IllegalArgumentException if there are fewer rows than columns
     */
    public static Nested fit(Rows rows, double[] y, int[] counts, double leastAngle) {
        int p = counts[counts.length - 1];
        if (y.length < p) {
            throw new IllegalArgumentException("least squares needs at least as many rows as columns, got " + y.length
                + " rows, " + p + " columns");
        }
        SweptLeastSquares all = new SweptLeastSquares(rows, y, p);
        double[] sums = all.swept(p * p + p, all::addNormal);
        double[][] normal = new double[p][];
        Arrays.setAll(normal, j -> Arrays.copyOfRange(sums, j * p, j * p + p));
        double[] right = Arrays.copyOfRange(sums, p * p, p * p + p);
        boolean[] independent = independent(normal, leastAngle);
        List<NormalEquations> models = new ArrayList<>();
        for (int count : counts) {
            models.add(new NormalEquations(normal, IntStream.range(0, count).filter(j -> independent[j]).toArray()));
        }
        return new Nested(independent, all.refined(models, right));
    }

    private List<LinearFit> refined(List<NormalEquations> models, double[] right) {
        double mean = right[0] / y.length;
        double[][] first = models.stream().map(model -> model.solve(right)).toArray(double[][]::new);
        // For each model Xᵀr and rᵀr, and once the sum of squares about the mean.
        int each = p + 1;
        double[] sums = swept(models.size() * each + 1, (row, i, into) -> {
            for (int m = 0; m < first.length; m++) {
                double r = y[i];
                for (int j = 0; j < p; j++) {
                    r -= first[m][j] * row[j];
                }
                for (int j = 0; j < p; j++) {
                    into[m * each + j] += row[j] * r;
                }
                into[m * each + p] += r * r;
            }
            into[into.length - 1] += (y[i] - mean) * (y[i] - mean);
        });
        List<LinearFit> fits = new ArrayList<>();
        for (int m = 0; m < first.length; m++) {
            double[] gradient = Arrays.copyOfRange(sums, m * each, m * each + p);
            double[] step = models.get(m).solve(gradient);
            double squares = sums[m * each + p];
            for (int j = 0; j < p; j++) {
                squares -= step[j] * gradient[j];
                first[m][j] += step[j];
            }
            fits.add(new LinearFit(models.get(m).kept(first[m]), models.get(m).inverse(), new double[0], y.length,
                Math.max(0, squares), sums[sums.length - 1]));
        }
        return fits;
    }

    private void addNormal(double[] row, int i, double[] into) {
        for (int j = 0, at = 0; j < p; j++) {
            for (int k = 0; k < p; k++, at++) {
                into[at] += row[j] * row[k];
            }
            into[p * p + j] += row[j] * y[i];
        }
    }

    /** Adds what one row brings to the sums. */
    private interface Term {
        void add(double[] row, int i, double[] into);
    }

    private double[] swept(int size, Term term) {
        int n = y.length;
        double[][] parts = IntStream.range(0, STRETCHES).parallel().mapToObj(s -> stretch(
            (int) ((long) s * n / STRETCHES), (int) ((long) (s + 1) * n / STRETCHES), size, term))
            .toArray(double[][]::new);
        double[] sum = new double[size];
        double[] lost = new double[size];
        for (double[] part : parts) {
            add(sum, lost, part);
        }
        Arrays.setAll(sum, j -> sum[j] + lost[j]);
        return sum;
    }

    private double[] stretch(int from, int to, int size, Term term) {
        double[] sum = new double[size];
        double[] lost = new double[size];
        double[] block = new double[size];
        double[] row = new double[p];
        for (int start = from; start < to; start += BLOCK) {
            Arrays.fill(block, 0);
            for (int i = start; i < Math.min(to, start + BLOCK); i++) {
                rows.row(i, row);
                term.add(row, i, block);
            }
            add(sum, lost, block);
        }
        Arrays.setAll(sum, j -> sum[j] + lost[j]);
        return sum;
    }

    /** Adds and keeps what rounding loses (Neumaier 1974). */
    private static void add(double[] sum, double[] lost, double[] more) {
        for (int j = 0; j < sum.length; j++) {
            double next = sum[j] + more[j];
            lost[j] += Math.abs(sum[j]) >= Math.abs(more[j]) ? (sum[j] - next) + more[j] : (more[j] - next) + sum[j];
            sum[j] = next;
        }
    }

    /** Columns whose distance from the span of the earlier ones is more than a share of the longest column. */
    private static boolean[] independent(double[][] normal, double leastAngle) {
        int p = normal.length;
        double longest = 0;
        for (int j = 0; j < p; j++) {
            longest = Math.max(longest, normal[j][j]);
        }
        boolean[] independent = new boolean[p];
        double[][] lower = new double[p][p];
        for (int j = 0; j < p; j++) {
            double left = normal[j][j];
            for (int k = 0; k < j; k++) {
                if (independent[k]) {
                    double sum = normal[j][k];
                    for (int l = 0; l < k; l++) {
                        sum -= lower[j][l] * lower[k][l];
                    }
                    lower[j][k] = sum / lower[k][k];
                    left -= lower[j][k] * lower[j][k];
                }
            }
            independent[j] = left > leastAngle * leastAngle * longest;
            lower[j][j] = independent[j] ? Math.sqrt(left) : 0;
        }
        return independent;
    }
}
