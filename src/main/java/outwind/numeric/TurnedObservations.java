package outwind.numeric;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * Observations of a trend, a random field of one correlation, and noise, turned so that every size of the field and of
 * the noise makes their covariance diagonal.
 *
 * <pre>
 *   z = B·β + r + ε,   cov r = s²·R,   cov ε = f²·V with V diagonal
 *   V^−½ R V^−½ = Q·D·Qᵀ,   T = Qᵀ V^−½   ⇒   K⁻¹ = (s²·R + f²·V)⁻¹ = Tᵀ (s²·D + f²·I)⁻¹ T
 * </pre>
 * So one decomposition serves all s and f, and products under K⁻¹ are sums over the turned columns T·B and T·z. The
 * coefficients β are free, or normal about zero; a free one has precision 0.
 *
 * <p>Source: the decomposition: C. Lippert et al., Nature Methods 8 (2011) 833–835, for one variance ratio at a time;
 * coefficients that are normal or free: C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning,
 * MIT Press 2006, section 2.7.
 */
public final class TurnedObservations {

    private final Covariance correlation;
    private final double[] x;
    private final double[] y;
    /** Standard deviations of the noise where f is 1. */
    private final double[] deviations;
    private final double[] eigenvalues;
    /** T, a row for each eigenvalue, and the same with a row for each observation. */
    private final double[][] turn;
    private final double[][] turnOf;
    /** T·B column by column, and T·z after them. */
    private final double[][] turned;

    private TurnedObservations(Covariance correlation, double[] x, double[] y, double[] deviations, double[] eigenvalues,
                               double[][] turn, double[][] turned) {
        this.correlation = correlation;
        this.x = x;
        this.y = y;
        this.deviations = deviations;
        this.eigenvalues = eigenvalues;
        this.turn = turn;
        this.turnOf = new double[x.length][turn.length];
        for (int k = 0; k < turn.length; k++) {
            for (int i = 0; i < x.length; i++) {
                turnOf[i][k] = turn[k][i];
            }
        }
        this.turned = turned;
    }

    /**
     * Turns observations.
     *
     * @param correlation R, of variance 1
     * @param x           places, length n; kept, must not change
     * @param y           places, length n; kept
     * @param columns     B, c columns of length n
     * @param z           observations, length n
     * @param noise       diagonal of V, length n, above zero
     */
    public static TurnedObservations of(Covariance correlation, double[] x, double[] y, double[][] columns, double[] z,
                                        double[] noise) {
        int n = x.length;
        double[] deviations = new double[n];
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            deviations[i] = Math.sqrt(noise[i]);
            scale[i] = 1 / deviations[i];
        }
        DMatrixRMaj scaled = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double value = scale[i] * scale[j] * correlation.between(x[i], y[i], x[j], y[j]);
                scaled.set(i, j, value);
                scaled.set(j, i, value);
            }
        }
        EigenDecomposition_F64<DMatrixRMaj> decomposition = DecompositionFactory_DDRM.eig(n, true, true);
        if (!decomposition.decompose(scaled)) {
            throw new IllegalArgumentException("a correlation that cannot be decomposed");
        }
        double[] eigenvalues = new double[n];
        double[][] turn = new double[n][];
        for (int k = 0; k < n; k++) {
            // Rounding leaves the least of them a little below zero.
            eigenvalues[k] = Math.max(0, decomposition.getEigenvalue(k).getReal());
            turn[k] = decomposition.getEigenVector(k).data.clone();
            for (int i = 0; i < n; i++) {
                turn[k][i] *= scale[i];
            }
        }
        double[][] turned = new double[columns.length + 1][];
        for (int j = 0; j <= columns.length; j++) {
            turned[j] = times(turn, j < columns.length ? columns[j] : z);
        }
        return new TurnedObservations(correlation, x, y, deviations, eigenvalues, turn, turned);
    }

    private static double[] times(double[][] rows, double[] vector) {
        double[] product = new double[rows.length];
        for (int k = 0; k < rows.length; k++) {
            product[k] = Vectors.dot(rows[k], vector);
        }
        return product;
    }

    /** Precisions of the turned observations: 1 / (s²·d + f²), length n. */
    private double[] precisions(double variance, double noise) {
        double[] precisions = new double[eigenvalues.length];
        for (int k = 0; k < precisions.length; k++) {
            precisions[k] = 1 / (variance * eigenvalues[k] + noise);
        }
        return precisions;
    }

    /**
     * Products of all columns and z under K⁻¹, from which columns can be eliminated one after another.
     *
     * @param variance  s²
     * @param noise     f²
     * @param firstPair the first of the columns that are pairs; see {@link Sweep}
     * @param leftOut   true if what each observation is off by is wanted too; see {@link Sweep#leftOut}
     */
    public Sweep sweep(double variance, double noise, int firstPair, boolean leftOut) {
        double[] precisions = precisions(variance, noise);
        int n = precisions.length;
        int last = turned.length - 1;
        double[] gram = new double[Sweep.products(firstPair, last)];
        int at = 0;
        double[] weighted = new double[n];
        double[][] each = new double[leftOut ? last + 1 : 0][];
        for (int i = 0; i <= last; i++) {
            for (int k = 0; k < n; k++) {
                weighted[k] = turned[i][k] * precisions[k];
            }
            // Of pairs, the second column has its own product alone, the first that with the second as well.
            int end = i < firstPair ? last : i + 2 - (i - firstPair) % 2;
            for (int j = i; j < Math.min(end, last); j++) {
                gram[at++] = Vectors.dot(weighted, turned[j]);
            }
            gram[at++] = Vectors.dot(weighted, turned[last]);
            if (leftOut) {
                each[i] = untimes(weighted);
            }
        }
        double[] alone = new double[leftOut ? n : 0];
        double logDeterminant = 0;
        for (int k = 0; k < n; k++) {
            logDeterminant -= Math.log(precisions[k]);
            for (int i = 0; i < alone.length; i++) {
                alone[i] += turn[k][i] * turn[k][i] * precisions[k];
            }
        }
        return new Sweep(gram, each, alone, firstPair, last, logDeterminant);
    }

    /** The same with one observation left out for good. */
    public Sweep sweepWithout(int observation, double variance, double noise, int firstPair) {
        Sweep sweep = sweep(variance, noise, firstPair, true);
        double[] ofIts = precisions(variance, noise);
        for (int k = 0; k < ofIts.length; k++) {
            ofIts[k] *= turn[k][observation];
        }
        sweep.leaveOut(observation, untimes(ofIts));
        return sweep;
    }

    /** Tᵀ·a. */
    private double[] untimes(double[] a) {
        double[] product = new double[x.length];
        Vectors.add(a, turn, product);
        return product;
    }

    /**
     * The field with some of its columns, given the observations.
     *
     * @param variance   s²
     * @param noise      f²
     * @param columns    those that it holds, of B
     * @param precisions of their coefficients; 0 for one that is free
     * @throws IllegalArgumentException if the observations cannot see a free coefficient
     */
    public Conditioned conditioned(double variance, double noise, int[] columns, double[] precisions) {
        return new Conditioned(variance, noise, columns, precisions);
    }

    /**
     * A root of the correlation of the observations and other places together, for {@link Conditioned#draw}.
     *
     * @param order in which observations are gone through, a permutation of 0 to n − 1
     * @param atX   other places, length m
     * @param atY   other places, length m
     * @param enough variance that may be left out at any place, of a field of variance 1
     */
    public FieldRoot root(int[] order, double[] atX, double[] atY, double enough) {
        return FieldRoot.of(correlation, x, y, order, atX, atY, enough);
    }

    /**
     * T·R between the observations and other places, for {@link Conditioned#at}.
     *
     * @return n rows of length m
     */
    public double[][] across(double[] atX, double[] atY) {
        int n = x.length;
        int m = atX.length;
        double[][] between = new double[n][m];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < m; j++) {
                between[i][j] = correlation.between(x[i], y[i], atX[j], atY[j]);
            }
        }
        double[][] across = new double[n][m];
        for (int k = 0; k < n; k++) {
            for (int i = 0; i < n; i++) {
                double factor = turn[k][i];
                for (int j = 0; j < m; j++) {
                    across[k][j] += factor * between[i][j];
                }
            }
        }
        return across;
    }

    /** Correlations of a place with each observation, length n. */
    public double[] correlations(double atX, double atY) {
        double[] correlations = new double[x.length];
        for (int i = 0; i < correlations.length; i++) {
            correlations[i] = correlation.between(x[i], y[i], atX, atY);
        }
        return correlations;
    }

    /** The field under one covariance, given the observations. */
    public final class Conditioned {

        private final double variance;
        private final double noise;
        private final double[] weights;
        private final int[] columns;
        private final double[] precisions;
        /** Columns of T·B that it holds, and the same under K⁻¹. */
        private final double[][] held;
        private final double[][] weighted;
        /** L of A = BᵀK⁻¹B + precisions = L·Lᵀ, row by row. */
        private final double[][] lower;
        private final double[] coefficients;
        private final double[] residual;

        private Conditioned(double variance, double noise, int[] columns, double[] precisions) {
            this.variance = variance;
            this.noise = noise;
            this.weights = precisions(variance, noise);
            this.columns = columns;
            this.precisions = precisions;
            int n = weights.length;
            int q = columns.length;
            this.lower = new double[q][q];
            this.coefficients = new double[q];
            this.held = held(turned);
            this.weighted = new double[q][n];
            for (int i = 0; i < q; i++) {
                for (int k = 0; k < n; k++) {
                    weighted[i][k] = held[i][k] * weights[k];
                }
                for (int j = 0; j <= i; j++) {
                    lower[i][j] = Vectors.dot(weighted[i], held[j]);
                }
                lower[i][i] += precisions[i];
            }
            factor(lower);
            this.residual = turned[turned.length - 1].clone();
            explain(residual, coefficients);
        }

        /**
         * What the field makes of turned observations.
         *
         * @param left  T·z, length n; K⁻¹ times what the coefficients leave of it, turned, after that
         * @param onto  the coefficients' means are added to these
         */
        private void explain(double[] left, double[] onto) {
            int q = columns.length;
            double[] means = times(weighted, left);
            solveLower(lower, means);
            for (int i = q - 1; i >= 0; i--) {
                means[i] /= lower[i][i];
                for (int j = 0; j < i; j++) {
                    means[j] -= lower[i][j] * means[i];
                }
            }
            for (int i = 0; i < q; i++) {
                onto[i] += means[i];
            }
            Vectors.subtract(means, held, left);
            for (int k = 0; k < left.length; k++) {
                left[k] *= weights[k];
            }
        }

        /** Those of all columns that it holds. */
        private double[][] held(double[][] all) {
            return Arrays.stream(columns).mapToObj(column -> all[column]).toArray(double[][]::new);
        }

        private static void factor(double[][] a) {
            for (int i = 0; i < a.length; i++) {
                for (int j = 0; j <= i; j++) {
                    double sum = a[i][j];
                    for (int k = 0; k < j; k++) {
                        sum -= a[i][k] * a[j][k];
                    }
                    if (i == j) {
                        if (!(sum > 0)) {
                            throw new IllegalArgumentException("a free coefficient that the observations cannot see");
                        }
                        a[i][i] = Math.sqrt(sum);
                    } else {
                        a[i][j] = sum / a[j][j];
                    }
                }
            }
        }

        private static void solveLower(double[][] lower, double[] b) {
            for (int i = 0; i < b.length; i++) {
                for (int j = 0; j < i; j++) {
                    b[i] -= lower[i][j] * b[j];
                }
                b[i] /= lower[i][i];
            }
        }

        /** Means of the coefficients, one for each column held. */
        public double[] coefficients() {
            return coefficients.clone();
        }

        /** What each observation weighs in the mean of the field: to be multiplied by {@link #correlations}; length n. */
        public double[] weights() {
            double[] each = untimes(residual);
            for (int i = 0; i < each.length; i++) {
                each[i] *= variance;
            }
            return each;
        }

        /**
         * A field that the observations leave possible, noise not in it.
         *
         * <pre>
         *   z̃ = B·β̃ + s·G·c + ε̃,   β̃, c, ε̃ drawn from the prior (a free β̃ may be anything: 0)
         *   field = B₀·(β̃ + b) + s·P·(c + s·Gᵀ·v) + s·H·d,   b and v as z − z̃ would have them
         * </pre>
         * A draw from the prior is off from what its own readings would say of it as the true field is off from what its
         * readings say. So that much is added to these.
         *
         * <p>Source: A. G. Journel and C. J. Huijbregts, Mining Geostatistics, Academic Press 1978, section VII.A.3.
         *
         * @param root      as {@link TurnedObservations#root} has it for m places
         * @param columnsAt all columns of B there, each of length m
         * @param negligible variance that may be left out at any place
         * @return length m
         */
        public double[] draw(FieldRoot root, double[][] columnsAt, double negligible, SplittableRandom random) {
            double spread = Math.sqrt(variance);
            double[] known = spreads(root.known(), spread, random);
            double[] free = spreads(root.free(negligible / variance), spread, random);
            double[] sizes = new double[columns.length];
            for (int i = 0; i < sizes.length; i++) {
                sizes[i] = precisions[i] > 0 ? random.nextGaussian() / Math.sqrt(precisions[i]) : 0;
            }
            double[] read = new double[x.length];
            root.addObserved(known, read);
            for (int i : root.order()) {
                read[i] += Math.sqrt(noise) * deviations[i] * random.nextGaussian();
            }
            double[] left = turned[turned.length - 1].clone();
            Vectors.subtract(read, turnOf, left);
            Vectors.subtract(sizes, held, left);
            explain(left, sizes);
            root.addWeighed(variance, untimes(left), known);
            double[] drawn = new double[columnsAt.length == 0 ? 0 : columnsAt[0].length];
            root.addElsewhere(known, free, drawn);
            Vectors.add(sizes, held(columnsAt), drawn);
            return drawn;
        }

        private static double[] spreads(int count, double spread, SplittableRandom random) {
            double[] drawn = new double[count];
            for (int k = 0; k < count; k++) {
                drawn[k] = spread * random.nextGaussian();
            }
            return drawn;
        }

        /**
         * The field at m places, noise not in it.
         *
         * <pre>
         *   variance = s² − u·u + q·q
         *   u = K^−½·C₀ column by column,   q = (B₀ − C₀ᵀ K⁻¹ B)ᵀ whitened by the factor of A
         * </pre>
         *
         * <p>Source: N. Cressie, Statistics for Spatial Data, Wiley 1993, section 3.4.
         *
         * @param across    as {@link TurnedObservations#across} has it for these places
         * @param columnsAt all columns of B there, each of length m
         */
        public KrigedPlaces at(double[][] across, double[][] columnsAt) {
            int m = across[0].length;
            double[] means = new double[m];
            double[] variances = new double[m];
            Arrays.fill(variances, variance);
            double[][] unsure = new double[columns.length][];
            for (int i = 0; i < unsure.length; i++) {
                unsure[i] = columnsAt[columns[i]].clone();
                Vectors.subtract(-coefficients[i], unsure[i], means);
            }
            for (int k = 0; k < weights.length; k++) {
                Vectors.subtract(-variance * residual[k], across[k], means);
                addSquares(-variance * variance * weights[k], across[k], variances);
                for (int i = 0; i < unsure.length; i++) {
                    Vectors.subtract(variance * weights[k] * turned[columns[i]][k], across[k], unsure[i]);
                }
            }
            for (int i = 0; i < unsure.length; i++) {
                for (int l = 0; l < i; l++) {
                    Vectors.subtract(lower[i][l] / lower[l][l], unsure[l], unsure[i]);
                }
                addSquares(1 / (lower[i][i] * lower[i][i]), unsure[i], variances);
            }
            return new KrigedPlaces(means, variances);
        }

        private static void addSquares(double factor, double[] of, double[] onto) {
            for (int j = 0; j < onto.length; j++) {
                onto[j] += factor * of[j] * of[j];
            }
        }
    }
}
