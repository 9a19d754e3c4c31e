package outwind.surface;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import outwind.board.Board;
import outwind.board.Reading;

/**
 * How far one touch-off may be from the face as a cutter would meet it.
 *
 * <pre>
 *   variance = touch-off² + texture²
 *   touch-off: repeatability where it is given; else what points touched more than once scatter by, pooled with the
 *   usual one:  (ν₀·s₀² + Σ(z − mean of its point)²) / (ν₀ + Σ(touches − 1))
 * </pre>
 * The usual touch-off counts as a handful of repeats, so that one lucky pair does not make a machine perfect.
 *
 * @param deviation standard deviation of one touch-off, texture in it (mm)
 * @param source    where it comes from
 * @param repeats   degrees of freedom that repeated touch-offs gave; zero unless they were used
 */
public record TouchOffNoise(double deviation, Source source, int repeats) {

    /** What the noise was taken from. */
    public enum Source { REPEATABILITY, REPEATS, USUAL }

    /** Touching off by paper or feeler on wood (mm); common practice. */
    public static final double USUAL = 0.08;

    /** What a rough-sawn surface varies by from one saw mark to the next (mm); common practice. */
    public static final double TEXTURE = 0.05;

    /** How many repeats the usual value counts for. */
    private static final int USUAL_COUNTS_FOR = 4;

    /** Noise of the touch-offs on one face. */
    static TouchOffNoise of(Board board, List<Reading> readings) {
        if (board.repeatability().isPresent()) {
            return new TouchOffNoise(Math.hypot(board.repeatability().getAsDouble(), TEXTURE), Source.REPEATABILITY, 0);
        }
        Map<List<Double>, double[]> sums = new HashMap<>();
        for (Reading reading : readings) {
            double[] sum = sums.computeIfAbsent(List.of(reading.x(), reading.y()), place -> new double[3]);
            sum[0]++;
            sum[1] += reading.z();
            sum[2] += reading.z() * reading.z();
        }
        double squares = 0;
        int repeats = 0;
        for (double[] sum : sums.values()) {
            squares += Math.max(0, sum[2] - sum[1] * sum[1] / sum[0]);
            repeats += (int) sum[0] - 1;
        }
        double variance = (USUAL_COUNTS_FOR * USUAL * USUAL + squares) / (USUAL_COUNTS_FOR + repeats);
        return new TouchOffNoise(Math.hypot(Math.sqrt(variance), TEXTURE), repeats > 0 ? Source.REPEATS : Source.USUAL,
            repeats);
    }
}
