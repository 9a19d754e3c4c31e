package outwind.surface.field;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import outwind.numeric.Sweep;

/**
 * What each observation should have been by all the others: a mixture of settings.
 *
 * <pre>
 *   without i   log weight of a setting + (r²/v + log v) / 2,   r and v: what the setting has i differ by
 * </pre>
 * That is its likelihood of the others: that of all, divided by the density with which it predicts the one. So a
 * misreading cannot hide behind the roughness that it makes the whole field seem to have.
 */
final class LeavingOut {

    /** Settings so much lighter than the heaviest, as a logarithm, weigh nothing. */
    private static final double NOTHING = 20;

    private final Observations observations;
    private final List<Sweep.LeftOut> differences = new ArrayList<>();
    private final List<Double> logWeights = new ArrayList<>();

    LeavingOut(Observations observations) {
        this.observations = observations;
    }

    /** @param logWeight logarithm of the setting's weight by all observations, up to a constant */
    void add(double logWeight, Sweep.LeftOut difference) {
        logWeights.add(logWeight);
        differences.add(difference);
    }

    /** One for each observation. Nothing predicts one that was left out for good: its deviation is infinite. */
    List<KrigedField.Predicted> predicted() {
        int n = observations.size();
        double[] best = new double[n];
        Arrays.fill(best, Double.NEGATIVE_INFINITY);
        double heaviest = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < logWeights.size(); k++) {
            heaviest = Math.max(heaviest, logWeights.get(k));
            for (int i = 0; i < n; i++) {
                best[i] = Math.max(best[i], exponent(k, i));
            }
        }
        double all = 0;
        Sums[] sums = new Sums[n];
        Arrays.setAll(sums, i -> new Sums(observations.noiseVariance()[i]));
        for (int k = 0; k < logWeights.size(); k++) {
            all += Math.exp(logWeights.get(k) - heaviest);
            for (int i = 0; i < n; i++) {
                double exponent = exponent(k, i) - best[i];
                // What weighs nothing has no part of an infinite variance either.
                if (exponent > -NOTHING) {
                    sums[i].add(Math.exp(exponent), differences.get(k).residuals()[i], differences.get(k).variances()[i]);
                }
            }
        }
        double sound = heaviest + Math.log(all);
        return IntStream.range(0, n).mapToObj(i -> sums[i].predicted(observations.z()[i], best[i] - sound)).toList();
    }

    /** Logarithm of the weight without i but for √v, of which the mixture's sums take care. */
    private double exponent(int k, int i) {
        double residual = differences.get(k).residuals()[i];
        return logWeights.get(k) + residual * residual / differences.get(k).variances()[i] / 2;
    }

    /** The mixture for one observation. */
    private static final class Sums {

        private final double noise;
        private double weight;
        private double mean;
        private double square;
        private double slip;
        private double stray;

        Sums(double noise) {
            this.noise = noise;
        }

        void add(double share, double residual, double variance) {
            if (variance == Double.POSITIVE_INFINITY) {
                weight += share;
                square = variance;
                return;
            }
            double more = share * Math.sqrt(variance);
            weight += more;
            mean += more * residual;
            square += more * (residual * residual + variance);
            slip += more * Slips.slip(residual, variance);
            stray += more * Slips.stray(residual, variance, noise);
        }

        /** @param log logarithm of what all weights are multiplied by, over the weight of all settings together */
        KrigedField.Predicted predicted(double z, double log) {
            double residual = mean / weight;
            double deviation = Math.sqrt(square / weight - residual * residual);
            boolean isPredicted = Double.isFinite(deviation);
            return new KrigedField.Predicted(z - residual, deviation, isPredicted ? log + Math.log(slip) : 0,
                isPredicted ? log + Math.log(stray) : 0);
        }
    }
}
