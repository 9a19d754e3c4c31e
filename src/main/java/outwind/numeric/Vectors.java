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

    /** Takes factor · {@code of} away from {@code from}, which is changed. */
    public static void subtract(double factor, double[] of, double[] from) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= factor * of[i];
        }
    }
}
