package outwind.numeric;

/**
 * The middle one of some numbers, found without sorting them all.
 *
 * <p>Source: C. A. R. Hoare, Communications of the ACM 4 (1961) 321–322 (FIND).
 */
public final class Median {

    private Median() { }

    /** The number that as many are below as above, of at least one; of an even count, the upper of the middle two. */
    public static double of(double[] numbers) {
        return of(numbers.clone(), 0, numbers.length);
    }

    /**
     * The same of some of them, in place.
     *
     * @param numbers reordered between {@code from} and {@code to}
     * @param from    first of them
     * @param to      one past the last, more than {@code from}
     */
    public static double of(double[] numbers, int from, int to) {
        int k = from + (to - from) / 2;
        int left = from;
        int right = to - 1;
        while (left < right) {
            double pivot = numbers[(left + right) >>> 1];
            int i = left;
            int j = right;
            while (i <= j) {
                while (numbers[i] < pivot) {
                    i++;
                }
                while (numbers[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double swapped = numbers[i];
                    numbers[i++] = numbers[j];
                    numbers[j--] = swapped;
                }
            }
            if (k <= j) {
                right = j;
            } else if (k >= i) {
                left = i;
            } else {
                break;
            }
        }
        return numbers[k];
    }
}
