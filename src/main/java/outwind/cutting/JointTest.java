package outwind.cutting;

import java.util.Arrays;

/**
 * Several figures held together against what they are by chance alone.
 *
 * <pre>
 *   M = maxᵢ |figureᵢ| / sᵢ,  sᵢ = root mean square of figure i over the draws
 *   p = (1 + draws with M at least as great) / (1 + draws)
 * </pre>
 * The greatest of several tests at 5 % each raises far more than 5 % of alarms; M of each draw has that built in
 * (Westfall and Young's max-T, with draws in place of permutations; from memory).
 */
final class JointTest {

    private final double[] scale;
    private final double[] greatest;

    /** @param byChance figures of each draw, one row a draw, all of one length */
    JointTest(double[][] byChance) {
        int n = byChance[0].length;
        scale = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = 0;
            for (double[] draw : byChance) {
                sum += draw[i] * draw[i];
            }
            scale[i] = Math.sqrt(sum / byChance.length);
        }
        greatest = Arrays.stream(byChance).mapToDouble(this::greatest).sorted().toArray();
    }

    private double greatest(double[] figures) {
        double most = 0;
        for (int i = 0; i < figures.length; i++) {
            // A figure that chance never moves, such as a residual of as many places as terms, tells nothing.
            most = scale[i] > 1e-9 ? Math.max(most, Math.abs(figures[i]) / scale[i]) : most;
        }
        return most;
    }

    /** How far each figure may be from zero so that all of them stay within at this level. */
    double[] bounds(double level) {
        double most = greatest[(int) Math.ceil((1 - level) * (greatest.length - 1))];
        return Arrays.stream(scale).map(s -> most * s).toArray();
    }

    /** Chance of figures as far from zero as these by chance alone, 0 to 1. */
    double probability(double[] figures) {
        double most = greatest(figures);
        long asGreat = Arrays.stream(greatest).filter(drawn -> drawn >= most).count();
        return (1.0 + asGreat) / (1 + greatest.length);
    }
}
