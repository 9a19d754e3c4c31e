package outwind.surface.field;

import java.util.ArrayList;
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
    private static final double NOTHING = 15;

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
        double[] logs = logWeights.stream().mapToDouble(Double::doubleValue).toArray();
        double heaviest = Double.NEGATIVE_INFINITY;
        for (double log : logs) {
            heaviest = Math.max(heaviest, log);
        }
        double all = 0;
        for (double log : logs) {
            all += Math.exp(log - heaviest);
        }
        double sound = heaviest + Math.log(all);
        return IntStream.range(0, observations.size()).mapToObj(i -> predicted(i, logs, sound)).toList();
    }

    /** @param sound logarithm of the weight of all settings together */
    private KrigedField.Predicted predicted(int i, double[] logs, double sound) {
        double[] without = new double[logs.length];
        double best = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < without.length; k++) {
            double residual = differences.get(k).residuals()[i];
            double variance = differences.get(k).variances()[i];
            without[k] = logs[k] + (variance < Double.POSITIVE_INFINITY
                ? (residual * residual / variance + Math.log(variance)) / 2 : 0);
            best = Math.max(best, without[k]);
        }
        double noise = observations.noiseVariance()[i];
        double sum = 0;
        double mean = 0;
        double square = 0;
        double slip = 0;
        double stray = 0;
        for (int k = 0; k < without.length; k++) {
            // What weighs nothing has no part of an infinite variance either.
            if (without[k] > best - NOTHING) {
                double weight = Math.exp(without[k] - best);
                double residual = differences.get(k).residuals()[i];
                double variance = differences.get(k).variances()[i];
                sum += weight;
                mean += weight * residual;
                square += weight * (residual * residual + variance);
                if (variance < Double.POSITIVE_INFINITY) {
                    slip += weight * Slips.slip(residual, variance);
                    stray += weight * Slips.stray(residual, variance, noise);
                }
            }
        }
        mean /= sum;
        double deviation = Math.sqrt(square / sum - mean * mean);
        boolean isPredicted = Double.isFinite(deviation);
        return new KrigedField.Predicted(observations.z()[i] - mean, deviation,
            isPredicted ? best + Math.log(slip) - sound : 0, isPredicted ? best + Math.log(stray) - sound : 0);
    }
}
