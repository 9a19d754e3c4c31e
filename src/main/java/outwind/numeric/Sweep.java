package outwind.numeric;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Products of columns and observations under K⁻¹, from which coefficients are eliminated one after another.
 *
 * <pre>
 *   to begin with    G = (B z)ᵀ K⁻¹ (B z),   E = (B z)ᵀ K⁻¹,   e = diag K⁻¹
 *   eliminating k    p = Gₖₖ + precision of k,   G ← G − Gₖᵀ Gₖ/p,   E ← E − Gₖᵀ Eₖ/p,   e ← e − Eₖ²/p
 *   log likelihood   −½ (log|K| + Σ log(p / precision) + G_zz),   for a free coefficient log p
 *   left out, i      its residual is E_zi/eᵢ, of variance 1/eᵢ
 * </pre>
 * Free coefficients make the likelihood the restricted one, up to a constant. Leaving an observation out for good is a
 * free coefficient of its own: its column is a unit vector, and what the others say is left.
 *
 * <p>Columns from {@code firstPair} on are alternatives, two and two: never is more than one pair in the model, so
 * products of different pairs are not kept. All products stand in one array, row after row: a copy costs little.
 *
 * <pre>
 *   row i before the pairs   G_ii G_i,i+1 … G_iz
 *   pair c                   G_cc G_c,c+1 G_cz G_c+1,c+1 G_c+1,z
 *   observations             G_zz
 * </pre>
 *
 * <p>Source: the sweep operator: J. H. Goodnight, The American Statistician 33 (1979) 149–158; leaving out: O. Dubrule,
 * Mathematical Geology 15 (1983) 687–699.
 */
public final class Sweep {

    /** Below this precision (mm⁻²) the trend leans on the observation alone, and nothing predicts it. */
    private static final double NOTHING = 1e-9;

    /** Products kept of one pair. */
    private static final int OF_PAIR = 5;

    private final double[] gram;
    private final double[][] each;
    private final double[] alone;
    private final int firstPair;
    private final int last;
    private double logDeterminant;

    /**
     * @param gram      as above; kept and changed, as are {@code each} and {@code alone}
     * @param each      E, a row for each column and one for the observations; without rows if it is not wanted
     * @param alone     e, or empty
     * @param firstPair how many columns come before the pairs
     * @param last      how many columns there are
     */
    Sweep(double[] gram, double[][] each, double[] alone, int firstPair, int last, double logDeterminant) {
        this.gram = gram;
        this.each = each;
        this.alone = alone;
        this.firstPair = firstPair;
        this.last = last;
        this.logDeterminant = logDeterminant;
    }

    /** How many products are kept of so many columns and the observations. */
    static int products(int firstPair, int last) {
        return row(firstPair, last) + OF_PAIR * (last - firstPair) / 2 + 1;
    }

    /** Where the row of a column before the pairs begins, at its product with itself. */
    private static int row(int column, int last) {
        return column * (last + 1) - column * (column - 1) / 2;
    }

    private int row(int column) {
        return row(column, last);
    }

    /** Where the products of a pair begin. */
    private int pair(int column) {
        return row(firstPair) + OF_PAIR * (column - firstPair) / 2;
    }

    private double ofObservations() {
        return gram[gram.length - 1];
    }

    /** A copy without the columns before one, which are eliminated already, and perhaps without the pairs. */
    public Sweep from(int column, boolean pairs) {
        double[] rest = pairs ? Arrays.copyOfRange(gram, row(column), gram.length) : withoutPairs(column);
        double[][] eachOfRest = new double[0][];
        if (each.length > 0) {
            eachOfRest = IntStream.rangeClosed(column, last).filter(j -> pairs || j < firstPair || j == last)
                .mapToObj(j -> each[j].clone()).toArray(double[][]::new);
        }
        return new Sweep(rest, eachOfRest, alone.clone(), firstPair - column, (pairs ? last : firstPair) - column,
            logDeterminant);
    }

    private double[] withoutPairs(int column) {
        double[] rest = new double[products(firstPair - column, firstPair - column)];
        int at = 0;
        for (int i = column; i < firstPair; i++) {
            System.arraycopy(gram, row(i), rest, at, firstPair - i);
            at += firstPair - i;
            rest[at++] = gram[row(i) + last - i];
        }
        rest[at] = ofObservations();
        return rest;
    }

    /**
     * Leaves an observation out for good; the likelihood is then that of the others.
     *
     * @param row of K⁻¹ that is the observation's, length n
     */
    void leaveOut(int observation, double[] row) {
        double pivot = row[observation];
        logDeterminant += Math.log(pivot);
        double[] its = new double[each.length];
        for (int i = 0; i < its.length; i++) {
            its[i] = each[i][observation];
        }
        subtract(its, 0, 0, pivot);
        for (int i = 0; i < its.length; i++) {
            Vectors.subtract(its[i] / pivot, row, each[i]);
        }
        for (int k = 0; k < row.length; k++) {
            alone[k] -= row[k] * row[k] / pivot;
        }
        // What is left at its own place is rounding.
        alone[observation] = 0;
    }

    /**
     * Takes vᵀ·v/pivot away from the products of some columns and those after them.
     *
     * @param of    holds v
     * @param start where in it the element of column 0 would be
     * @param first the first of those columns
     */
    private void subtract(double[] of, int start, int first, double pivot) {
        int at = first < firstPair ? row(first) : pair(first);
        for (int i = first; i < firstPair; i++) {
            double factor = of[start + i] / pivot;
            for (int j = i; j <= last; j++) {
                gram[at++] -= factor * of[start + j];
            }
        }
        double z = of[start + last];
        for (int i = Math.max(first, firstPair); i < last; i += 2) {
            double lift = of[start + i];
            double turn = of[start + i + 1];
            double factor = lift / pivot;
            gram[at] -= factor * lift;
            gram[at + 1] -= factor * turn;
            gram[at + 2] -= factor * z;
            factor = turn / pivot;
            gram[at + 3] -= factor * turn;
            gram[at + 4] -= factor * z;
            at += OF_PAIR;
        }
        gram[at] -= z / pivot * z;
    }

    /**
     * Eliminates the coefficient of a column before the pairs, in order.
     *
     * @param precision of the coefficient about zero; 0 for a free one
     */
    public void eliminate(int column, double precision) {
        int row = row(column);
        double pivot = gram[row] + precision;
        logDeterminant += Math.log(precision > 0 ? pivot / precision : pivot);
        subtract(gram, row - column, column + 1, pivot);
        for (int i = column + 1; i < each.length; i++) {
            Vectors.subtract(gram[row + i - column] / pivot, each[column], each[i]);
        }
        for (int k = 0; k < alone.length; k++) {
            alone[k] -= each[column][k] * each[column][k] / pivot;
        }
    }

    /** Logarithm of the likelihood with the columns eliminated so far, up to a constant. */
    public double logLikelihood() {
        return -(logDeterminant + ofObservations()) / 2;
    }

    /** The same with a pair of columns more, of which nothing is changed here. */
    public double logLikelihoodWith(int column, double precision, double precisionOfNext) {
        int at = pair(column);
        double pivot = gram[at] + precision;
        double onNext = gram[at + 1] / pivot;
        double next = gram[at + 3] - gram[at + 1] * onNext + precisionOfNext;
        double ofNext = gram[at + 4] - gram[at + 2] * onNext;
        return -(logDeterminant + Math.log(pivot / precision * (next / precisionOfNext)) + ofObservations()
            - gram[at + 2] * gram[at + 2] / pivot - ofNext * ofNext / next) / 2;
    }

    /** What each observation differs by from what all others predict. */
    public LeftOut leftOut() {
        return leftOut(each[each.length - 1], alone);
    }

    /** The same with a pair of columns more, of which nothing is changed here. */
    public LeftOut leftOutWith(int column, double precision, double precisionOfNext) {
        int at = pair(column);
        double pivot = gram[at] + precision;
        double onNext = gram[at + 1] / pivot;
        double next = gram[at + 3] - gram[at + 1] * onNext + precisionOfNext;
        double onZ = gram[at + 2] / pivot;
        double nextOnZ = (gram[at + 4] - gram[at + 1] * onZ) / next;
        double[] differs = new double[alone.length];
        double[] left = new double[alone.length];
        for (int k = 0; k < left.length; k++) {
            double ofNext = each[column + 1][k] - onNext * each[column][k];
            differs[k] = each[last][k] - onZ * each[column][k] - nextOnZ * ofNext;
            left[k] = alone[k] - each[column][k] * each[column][k] / pivot - ofNext * ofNext / next;
        }
        return leftOut(differs, left);
    }

    private static LeftOut leftOut(double[] differs, double[] alone) {
        double[] residuals = new double[alone.length];
        double[] variances = new double[alone.length];
        for (int k = 0; k < alone.length; k++) {
            variances[k] = alone[k] > NOTHING ? 1 / alone[k] : Double.POSITIVE_INFINITY;
            residuals[k] = alone[k] > NOTHING ? differs[k] / alone[k] : 0;
        }
        return new LeftOut(residuals, variances);
    }

    /**
     * Differences found by leaving out one observation at a time.
     *
     * @param residuals observed minus predicted, length n
     * @param variances of the residuals, noise included, length n; infinite where nothing predicts the observation
     */
    public record LeftOut(double[] residuals, double[] variances) { }
}
