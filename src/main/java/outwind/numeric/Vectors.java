package outwind.numeric;

/** Sums over vectors of one length, written out so that the compiler turns them into a few wide instructions. */
public final class Vectors {

    private Vectors() { }

    /** Σ a·b. */
    public static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /**
     * Adds Σ factorₖ · columnₖ, column after column; four at a time, because reading and writing cost more than
     * multiplying.
     *
     * @param factors length k
     * @param columns at least k
     * @param onto    is changed
     */
    public static void add(double[] factors, double[][] columns, double[] onto) {
        int k = 0;
        for (; k + 4 <= factors.length; k += 4) {
            addFour(factors[k], columns[k], factors[k + 1], columns[k + 1], factors[k + 2], columns[k + 2],
                factors[k + 3], columns[k + 3], onto);
        }
        for (; k < factors.length; k++) {
            subtract(-factors[k], columns[k], onto);
        }
    }

    private static void addFour(double f0, double[] c0, double f1, double[] c1, double f2, double[] c2, double f3,
                                double[] c3, double[] onto) {
        for (int i = 0; i < onto.length; i++) {
            onto[i] = onto[i] + f0 * c0[i] + f1 * c1[i] + f2 * c2[i] + f3 * c3[i];
        }
    }

    /** Takes Σ factorₖ · columnₖ away from {@code from}, which is changed. */
    public static void subtract(double[] factors, double[][] columns, double[] from) {
        double[] negative = new double[factors.length];
        for (int k = 0; k < negative.length; k++) {
            negative[k] = -factors[k];
        }
        add(negative, columns, from);
    }

    /** Takes factor · {@code of} away from {@code from}, which is changed. */
    public static void subtract(double factor, double[] of, double[] from) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= factor * of[i];
        }
    }
}
