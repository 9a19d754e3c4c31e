package outwind.numeric;

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
 * products of different pairs are not kept.
 *
 * <p>Source: the sweep operator: J. H. Goodnight, The American Statistician 33 (1979) 149–158; leaving out: O. Dubrule,
 * Mathematical Geology 15 (1983) 687–699.
 */
public final class Sweep {

    /** Below this precision (mm⁻²) the trend leans on the observation alone, and nothing predicts it. */
    private static final double NOTHING = 1e-9;

    private final double[][] gram;
    private final double[][] each;
    private final double[] alone;
    private final int firstPair;
    private double logDeterminant;

    /** @param gram upper triangle; kept and changed, as are {@code each} and {@code alone} */
    Sweep(double[][] gram, double[][] each, double[] alone, int firstPair, double logDeterminant) {
        this.gram = gram;
        this.each = each;
        this.alone = alone;
        this.firstPair = firstPair;
        this.logDeterminant = logDeterminant;
    }

    /** The end of those columns after {@code i} whose products with it are kept; the last column always is. */
    static int kept(int i, int firstPair, int last) {
        return i < firstPair || i == last ? last : i + ((i - firstPair) % 2 == 0 ? 2 : 1);
    }

    /** A copy without the columns before one, which are eliminated already, and perhaps without the pairs. */
    public Sweep from(int column, boolean pairs) {
        int last = gram.length - 1;
        int c = (pairs ? last : firstPair) - column + 1;
        double[][] rest = new double[c][c];
        double[][] eachOfRest = new double[each.length == 0 ? 0 : c][];
        for (int i = 0; i < c; i++) {
            int was = i < c - 1 ? i + column : last;
            System.arraycopy(gram[was], was, rest[i], i, Math.min(kept(was, firstPair, last) - was, c - i));
            rest[i][c - 1] = gram[was][last];
            if (eachOfRest.length > 0) {
                eachOfRest[i] = each[was].clone();
            }
        }
        return new Sweep(rest, eachOfRest, alone.clone(), firstPair - column, logDeterminant);
    }

    /**
     * Leaves an observation out for good; the likelihood is then that of the others.
     *
     * @param row of K⁻¹ that is the observation's, length n
     */
    void leaveOut(int observation, double[] row) {
        double pivot = row[observation];
        logDeterminant += Math.log(pivot);
        double[] its = new double[gram.length];
        for (int i = 0; i < its.length; i++) {
            its[i] = each[i][observation];
        }
        for (int i = 0; i < its.length; i++) {
            subtract(its[i] / pivot, its, i);
            for (int k = 0; k < row.length; k++) {
                each[i][k] -= its[i] / pivot * row[k];
            }
        }
        for (int k = 0; k < row.length; k++) {
            alone[k] -= row[k] * row[k] / pivot;
        }
        // What is left at its own place is rounding.
        alone[observation] = 0;
    }

    private void subtract(double factor, double[] of, int row) {
        int last = gram.length - 1;
        int end = kept(row, firstPair, last);
        for (int j = row; j < end; j++) {
            gram[row][j] -= factor * of[j];
        }
        gram[row][last] -= factor * of[last];
    }

    /**
     * Eliminates a column's coefficient; columns before the pairs are eliminated in order.
     *
     * @param precision of the coefficient about zero; 0 for a free one
     */
    public void eliminate(int column, double precision) {
        double pivot = gram[column][column] + precision;
        logDeterminant += Math.log(precision > 0 ? pivot / precision : pivot);
        double[] row = gram[column];
        for (int i = column + 1; i < gram.length; i++) {
            double factor = row[i] / pivot;
            subtract(factor, row, i);
            for (int k = 0; k < alone.length; k++) {
                each[i][k] -= factor * each[column][k];
            }
        }
        for (int k = 0; k < alone.length; k++) {
            alone[k] -= each[column][k] * each[column][k] / pivot;
        }
    }

    /** Logarithm of the likelihood with the columns eliminated so far, up to a constant. */
    public double logLikelihood() {
        return -(logDeterminant + gram[gram.length - 1][gram.length - 1]) / 2;
    }

    /** The same with two neighbouring columns more, of which nothing is changed here. */
    public double logLikelihoodWith(int column, double precision, double precisionOfNext) {
        int z = gram.length - 1;
        double pivot = gram[column][column] + precision;
        double next = gram[column + 1][column + 1] - gram[column][column + 1] * gram[column][column + 1] / pivot
            + precisionOfNext;
        double ofNext = gram[column + 1][z] - gram[column][column + 1] * gram[column][z] / pivot;
        return -(logDeterminant + Math.log(pivot / precision * (next / precisionOfNext)) + gram[z][z]
            - gram[column][z] * gram[column][z] / pivot - ofNext * ofNext / next) / 2;
    }

    /** What each observation differs by from what all others predict. */
    public LeftOut leftOut() {
        return leftOut(each[each.length - 1], alone);
    }

    /** The same with two neighbouring columns more, of which nothing is changed here. */
    public LeftOut leftOutWith(int column, double precision, double precisionOfNext) {
        int z = gram.length - 1;
        double pivot = gram[column][column] + precision;
        double onNext = gram[column][column + 1] / pivot;
        double next = gram[column + 1][column + 1] - gram[column][column + 1] * onNext + precisionOfNext;
        double onZ = gram[column][z] / pivot;
        double nextOnZ = (gram[column + 1][z] - gram[column][column + 1] * onZ) / next;
        double[] differs = new double[alone.length];
        double[] left = new double[alone.length];
        for (int k = 0; k < left.length; k++) {
            double ofNext = each[column + 1][k] - onNext * each[column][k];
            differs[k] = each[z][k] - onZ * each[column][k] - nextOnZ * ofNext;
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
