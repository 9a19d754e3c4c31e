package outwind.numeric;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A field of variance 1 at observations and at other places, as sums of independent numbers of variance 1.
 *
 * <pre>
 *   at the observations  G·c,   elsewhere  P·c + H·d
 * </pre>
 * c is what observations may tell of, and d what the field still does between them; see {@link LowRankRoot}.
 */
public final class FieldRoot {

    private final int[] order;
    /** G, P and H column by column. */
    private final double[][] observed;
    private final double[][] known;
    private final double[][] free;
    /** The greatest variance left before each column of H. */
    private final double[] left;

    private FieldRoot(int[] order, double[][] observed, double[][] known, double[][] free, double[] left) {
        this.order = order;
        this.observed = observed;
        this.known = known;
        this.free = free;
        this.left = left;
    }

    /**
     * Finds the root.
     *
     * @param correlation of variance 1
     * @param x           observations, length n; likewise y
     * @param order       in which observations are gone through
     * @param atX         other places, length m; likewise atY
     * @param enough      variance that may be left out at any other place
     */
    static FieldRoot of(Covariance correlation, double[] x, double[] y, int[] order, double[] atX, double[] atY,
                        double enough) {
        int n = x.length;
        double[] allX = Arrays.copyOf(Arrays.stream(order).mapToDouble(i -> x[i]).toArray(), n + atX.length);
        double[] allY = Arrays.copyOf(Arrays.stream(order).mapToDouble(i -> y[i]).toArray(), n + atX.length);
        System.arraycopy(atX, 0, allX, n, atX.length);
        System.arraycopy(atY, 0, allY, n, atX.length);
        double[] variances = new double[allX.length];
        Arrays.fill(variances, 1);
        LowRankRoot root = LowRankRoot.of(variances, place -> {
            double[] column = new double[allX.length];
            for (int j = 0; j < column.length; j++) {
                column[j] = correlation.between(allX[j], allY[j], allX[place], allY[place]);
            }
            return column;
        }, n, enough);
        double[][] observed = new double[root.known()][n];
        for (int k = 0; k < observed.length; k++) {
            double[] ordered = root.column(k, 0, n);
            for (int i = 0; i < n; i++) {
                observed[k][order[i]] = ordered[i];
            }
        }
        double[][] elsewhere = IntStream.range(0, root.rank()).mapToObj(k -> root.column(k, n, allX.length))
            .toArray(double[][]::new);
        return new FieldRoot(order, observed, Arrays.copyOf(elsewhere, root.known()),
            Arrays.copyOfRange(elsewhere, root.known(), root.rank()),
            IntStream.range(root.known(), root.rank()).mapToDouble(root::left).toArray());
    }

    int[] order() {
        return order;
    }

    /** Length of c. */
    int known() {
        return known.length;
    }

    /** How long d must be so that no more than enough variance is left out anywhere. */
    int free(double enough) {
        int count = 0;
        while (count < left.length && left[count] > enough) {
            count++;
        }
        return count;
    }

    /** Adds G·c. */
    void addObserved(double[] c, double[] onto) {
        Vectors.add(c, observed, onto);
    }

    /** Adds factor · Gᵀ·v to c. */
    void addWeighed(double factor, double[] v, double[] c) {
        for (int k = 0; k < c.length; k++) {
            c[k] += factor * Vectors.dot(observed[k], v);
        }
    }

    /** Adds P·c + H·d. */
    void addElsewhere(double[] c, double[] d, double[] onto) {
        Vectors.add(c, known, onto);
        Vectors.add(d, free, onto);
    }
}
