package outwind.stock;

import java.util.random.RandomGenerator;

/**
 * Boards that nobody has measured, drawn one after the other.
 *
 * <pre>
 *   the next is like none before with chance α/(α + i), and then makes it with chance π₀;
 *   else it is like one of the i before it, each as likely
 * </pre>
 * So of N − n boards beside n measured, k of which make it, the number that make it is beta-binomial with
 * A = α·π₀ + k and B = α·(1 − π₀) + n − k. Small α goes by the count alone, large α by the shape that was learnt.
 *
 * <p>Sources: D. Blackwell, J. B. MacQueen, Annals of Statistics 1 (1973) 353–355 (urns); T. S. Ferguson, the same,
 * 209–230 (the distribution that they draw from). Authors and years from memory.
 *
 * @param weight α: how many boards the learnt shape counts for
 * @param share  π₀, 0 to 1
 */
record Urn(double weight, double share) {

    /**
     * Fills in the boards beside the measured ones.
     *
     * @param makes whether each makes it; the first {@code measured} are known
     * @param like  the measured board whose size each has; the first {@code measured} are themselves
     */
    void fill(boolean[] makes, int[] like, int measured, RandomGenerator random) {
        for (int i = measured; i < makes.length; i++) {
            double at = random.nextDouble() * (weight + i);
            if (at < weight) {
                makes[i] = random.nextDouble() < share;
                like[i] = random.nextInt(measured);
            } else {
                int same = Math.min(i - 1, (int) (at - weight));
                makes[i] = makes[same];
                like[i] = like[same];
            }
        }
    }
}
