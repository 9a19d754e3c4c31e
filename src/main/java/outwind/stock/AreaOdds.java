package outwind.stock;

import java.util.Arrays;

/**
 * How sure some boards are to give an area together: P(Σ a_j·X_j ≥ A), each board for itself.
 *
 * <p>The distribution of the sum is carried on board by board, every different sum for itself, and sums that are enough
 * counted together. Only where there are more than {@link #MOST} different sums, neighbours closer than A/{@link #MOST}
 * are counted as the lower of them: the chance is then a little too low, never too high.
 */
final class AreaOdds {

    private static final int MOST = 4096;

    /** Sums closer than this share of A are one. */
    private static final double SAME = 1e-9;

    private final double[] part;
    private final double[] chance;

    /**
     * @param areas  of each board (mm²)
     * @param chance of each
     * @param wanted area (mm²), above zero
     */
    AreaOdds(double[] areas, double[] chance, double wanted) {
        this.part = Arrays.stream(areas).map(area -> area / wanted).toArray();
        this.chance = chance.clone();
    }

    /** Chance that some of the boards are enough, 0 to 1. */
    double of(boolean[] some) {
        double[] sums = {0};
        double[] odds = {1};
        double enough = 0;
        for (int j = 0; j < some.length; j++) {
            if (!some[j] || chance[j] <= 0) {
                continue;
            }
            double[] nextSums = new double[2 * sums.length];
            double[] nextOdds = new double[2 * sums.length];
            double apart = sums.length > MOST / 2 ? 1.0 / MOST : SAME;
            int count = 0;
            int fails = 0;
            for (int makes = 0; fails < sums.length || makes < sums.length;) {
                boolean failing = makes == sums.length || fails < sums.length && sums[fails] <= sums[makes] + part[j];
                double sum = failing ? sums[fails] : sums[makes] + part[j];
                double odd = failing ? odds[fails] * (1 - chance[j]) : odds[makes] * chance[j];
                fails += failing ? 1 : 0;
                makes += failing ? 0 : 1;
                if (sum >= 1 - SAME) {
                    enough += odd;
                } else if (count > 0 && sum - nextSums[count - 1] < apart) {
                    nextOdds[count - 1] += odd;
                } else if (odd > 0) {
                    nextSums[count] = sum;
                    nextOdds[count++] = odd;
                }
            }
            sums = Arrays.copyOf(nextSums, count);
            odds = Arrays.copyOf(nextOdds, count);
        }
        return Math.min(1, enough);
    }
}
