package outwind.stock;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Erf;
import outwind.flatten.ThicknessRange;

/**
 * What the measured boards of a pack say of the boards beside them.
 *
 * <pre>
 *   board j:   finished T_j = rough R_j − loss W_j         T_j known as its readings leave it
 *   the pack:  R ~ N(μ_R, τ_R²),  log W ~ N(μ_W, τ_W²)     all four learnt from the sample
 *   π₀ = P(R − W ≥ t) = ∫ φ(l)·Φ((μ_R − exp(μ_W + τ_W·l) − t) / τ_R) dl
 * </pre>
 * Drawn in turns (Gibbs): each T_j given the pack and its own readings, then the pack given all T_j. So a board that
 * was read badly is believed less, and errors of reading are not taken for spread of the pack.
 *
 * <p>Source: S. Geman, D. Geman, IEEE Trans. PAMI 6 (1984) 721–741 (drawing in turns; from memory).
 */
final class PackModel {

    /** Turns before draws are kept: the start is near, so few are needed. */
    private static final int BEFORE = 50;

    /** Spread expected before anything is measured, worth two boards: mm of rough thickness, and log loss. Our choice. */
    private static final double ROUGH_SIGMA = 0.4;
    private static final double LOSS_SIGMA = 0.5;

    /** Least loss (mm): less than any board loses, so that its logarithm exists. */
    private static final double LEAST_LOSS = 0.05;

    /** Steps of the integral over ±{@link #REACH} deviations. */
    private static final int STEPS = 20;
    private static final double REACH = 4;

    /** Beyond so many deviations a normal distribution is at its end. */
    private static final double END = 6;

    private final double target;
    private final double[] rough;
    private final List<ThicknessRange> finished;
    private final SplittableRandom random;
    private final double[] logLoss;
    private final double[] thickness;
    private final double[][] middles;

    /**
     * One possible pack.
     *
     * @param makes     whether each measured board makes the target
     * @param share     π₀
     * @param rough     thickness of one more board (mm)
     * @param loss      what that one loses until it is flat (mm)
     */
    record Draw(boolean[] makes, double share, double rough, double loss) { }

    PackModel(List<PricedBoard> measured, double target, SplittableRandom random) {
        this.target = target;
        this.random = random;
        this.rough = measured.stream().mapToDouble(board -> board.roughVolume() / board.feet().length()
            / board.feet().width()).toArray();
        this.finished = measured.stream().map(PricedBoard::finished).toList();
        this.thickness = measured.stream().mapToDouble(PricedBoard::median).toArray();
        this.logLoss = new double[rough.length];
        this.middles = new double[rough.length][];
        for (int j = 0; j < rough.length; j++) {
            logLoss[j] = logLoss(j, thickness[j]);
            double[] possible = finished.get(j).sorted();
            int board = j;
            middles[j] = IntStream.range(0, possible.length - 1).mapToDouble(c ->
                logLoss(board, (possible[c] + possible[c + 1]) / 2)).toArray();
        }
        for (int turn = 0; turn < BEFORE; turn++) {
            turn(LearntSpread.drawn(logLoss, LOSS_SIGMA, random));
        }
    }

    /** The next possible pack. */
    Draw next() {
        LearntSpread loss = LearntSpread.drawn(logLoss, LOSS_SIGMA, random);
        turn(loss);
        LearntSpread thick = LearntSpread.drawn(rough, ROUGH_SIGMA, random);
        boolean[] makes = new boolean[rough.length];
        for (int j = 0; j < makes.length; j++) {
            makes[j] = thickness[j] >= target;
        }
        return new Draw(makes, share(thick, loss), thick.next(random), Math.exp(loss.next(random)));
    }

    private double logLoss(int board, double finishedThickness) {
        return Math.log(Math.max(LEAST_LOSS, rough[board] - finishedThickness));
    }

    /** Draws every measured board's thickness again. */
    private void turn(LearntSpread loss) {
        for (int j = 0; j < rough.length; j++) {
            double[] possible = finished.get(j).sorted();
            int cells = possible.length - 1;
            double[] upTo = new double[cells + 1];
            for (int c = 0; c < cells; c++) {
                double log = middles[j][c];
                double z = (log - loss.mean()) / loss.sigma();
                // The density of the thickness: that of the logarithm, over the loss.
                upTo[c + 1] = upTo[c] + Math.exp(-z * z / 2 - log);
            }
            double at = random.nextDouble() * upTo[cells];
            int cell = 0;
            while (cell < cells - 1 && upTo[cell + 1] < at) {
                cell++;
            }
            // Where the pack rules out all that its readings leave possible, the readings are believed.
            boolean known = upTo[cells] > 0;
            cell = known || cells == 0 ? cell : random.nextInt(cells);
            thickness[j] = cells == 0 ? possible[0]
                : possible[cell] + random.nextDouble() * (possible[cell + 1] - possible[cell]);
            logLoss[j] = logLoss(j, thickness[j]);
        }
    }

    private double share(LearntSpread thick, LearntSpread loss) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i <= STEPS; i++) {
            double l = REACH * (2.0 * i / STEPS - 1);
            double weight = Math.exp(-l * l / 2);
            double beyond = (thick.mean() - Math.exp(loss.mean() + loss.sigma() * l) - target) / thick.sigma();
            weights += weight;
            sum += beyond > END ? weight : beyond < -END ? 0 : weight * 0.5 * Erf.erfc(-beyond / Math.sqrt(2));
        }
        return sum / weights;
    }
}
