package outwind.numeric;

import java.util.stream.IntStream;

/**
 * The least and the greatest of some values; neither is finite where a value is not.
 *
 * @param least NaN if a value is NaN or infinite
 * @param most  NaN if a value is NaN or infinite
 */
public record Range(double least, double most) {

    /** Values that one core looks through at a time; large enough to hide what sharing them out costs. */
    private static final int PORTION = 1 << 15;

    /** The range of these values, length n ≥ 1; both cores share a long array, and the answer is the same. */
    public static Range of(double[] values) {
        int portions = (values.length - 1) / PORTION + 1;
        if (portions == 1) {
            return of(values, 0, values.length);
        }
        return IntStream.range(0, portions).parallel()
            .mapToObj(k -> of(values, k * PORTION, Math.min(values.length, k * PORTION + PORTION)))
            .reduce(Range::and).orElseThrow();
    }

    /**
     * Four quarters are walked side by side, because memory is fetched ahead page by page and four pages come sooner
     * than one: over twice as fast where the array is larger than the cache. Comparing beats {@link Math#max}: a new
     * extreme is rare, and the processor soon knows it.
     */
    private static Range of(double[] values, int from, int to) {
        int quarter = (to - from + 3) / 4;
        int last = to - quarter;
        int second = Math.min(from + quarter, last) - from;
        int third = Math.min(from + 2 * quarter, last) - from;
        double least = values[from];
        double most = least;
        double zero = 0;
        double nothing = 0;
        for (int i = from; i < from + quarter; i++) {
            double a = values[i];
            double b = values[i + second];
            double c = values[i + third];
            double d = values[i + last - from];
            least = a < least ? a : least;
            least = b < least ? b : least;
            least = c < least ? c : least;
            least = d < least ? d : least;
            most = a > most ? a : most;
            most = b > most ? b : most;
            most = c > most ? c : most;
            most = d > most ? d : most;
            // NaN for NaN and for infinity, which a comparison would pass over.
            zero += a * 0 + b * 0;
            nothing += c * 0 + d * 0;
        }
        return new Range(least + (zero + nothing), most + (zero + nothing));
    }

    /** The range of both. */
    public Range and(Range other) {
        return new Range(Math.min(least, other.least), Math.max(most, other.most));
    }

    public double width() {
        return most - least;
    }

    public double middle() {
        return (least + most) / 2;
    }

    /** The greatest distance from zero. */
    public double size() {
        return Math.max(Math.abs(least), Math.abs(most));
    }

    public boolean isFinite() {
        return Double.isFinite(width());
    }
}
