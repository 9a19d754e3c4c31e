package outwind.surface.trend;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import outwind.board.Board;

/**
 * Twist, bow and cup of the whole board, from the curved fit.
 *
 * <pre>
 *   twist = c_xy·L·W     lift of the fourth corner off the plane through the other three
 *   bow   = c_xx·L²/4    ends above the middle
 *   cup   = c_yy·W²/4    edges above the middle
 * </pre>
 *
 * @param twist empty if the readings cannot show it; likewise the others
 */
public record Warp(Optional<Amount> twist, Optional<Amount> bow, Optional<Amount> cup) {

    /**
     * One kind of warp.
     *
     * @param value         how much (mm), signed
     * @param standardError of the value (mm); empty where the readings leave nothing to judge their own noise by and
     *                      no repeatability was given
     * @param probability   chance of a value so far from zero from noise alone, 0 to 1; empty with the standard error
     */
    public record Amount(double value, OptionalDouble standardError, OptionalDouble probability) {

        /** Common bound for calling an effect real. */
        private static final double SIGNIFICANT = 0.05;

        /** Less than any touch-off resolves (mm); keeps the rounding of an exact fit from passing for warp. */
        static final double RESOLUTION = 1e-6;

        /** True if noise alone would show so much in fewer than 1 of 20 boards. */
        public boolean isReal() {
            return Math.abs(value) > RESOLUTION && probability.isPresent() && probability.getAsDouble() < SIGNIFICANT;
        }
    }

    public static Warp of(Board board, Fits fits) {
        double length = board.length();
        double width = board.width();
        return new Warp(
            amount(board, fits.curved(), Term.XY, length * width),
            amount(board, fits.curved(), Term.XX, length * length / 4),
            amount(board, fits.curved(), Term.YY, width * width / 4));
    }

    private static Optional<Amount> amount(Board board, TrendFit fit, Term term, double factor) {
        int j = fit.terms().indexOf(term);
        if (j < 0) {
            return Optional.empty();
        }
        double value = fit.fit().coefficients()[j] * factor;
        if (fit.fit().degreesOfFreedom() > 0) {
            double error = fit.fit().standardErrors().orElseThrow()[j] * factor;
            var distribution = new TDistribution(null, fit.fit().degreesOfFreedom());
            return Optional.of(judged(value, error, -Math.abs(value) / error, distribution::cumulativeProbability));
        }
        if (board.repeatability().isPresent() && board.repeatability().getAsDouble() > 0) {
            double error = fit.fit().standardErrors(board.repeatability().getAsDouble())[j] * factor;
            var distribution = new NormalDistribution(null, 0, 1);
            return Optional.of(judged(value, error, -Math.abs(value) / error, distribution::cumulativeProbability));
        }
        return Optional.of(new Amount(value, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    private static Amount judged(double value, double error, double ratio,
                                 DoubleUnaryOperator cumulative) {
        // An exact fit has no error to measure by: whatever it shows is there, and what it does not is not.
        double probability = error > 0 ? 2 * cumulative.applyAsDouble(ratio) : value == 0 ? 1 : 0;
        return new Amount(value, OptionalDouble.of(error), OptionalDouble.of(probability));
    }
}
