package outwind.surface;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;

/**
 * How far one touch-off may be from the face as a cutter would meet it.
 *
 * <pre>
 *   variance = touch-off² + texture² + step²/12
 *   touch-off: repeatability where it is given; else what points touched more than once scatter by, pooled with the
 *   usual one:  (ν₀·s₀² + Σ(z − mean of its point)²) / (ν₀ + Σ(touches − 1))
 * </pre>
 * The step is the coarsest that every height was written to, such as 1/64 in; rounding to it is evenly spread.
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

    /** Steps that people write heights to (mm): of a mm, and of an inch; the coarsest first. */
    private static final double[] STEPS = {25.4 / 16, 1, 25.4 / 32, 0.5, 25.4 / 64, 0.25, 25.4 / 100, 25.4 / 128,
        25.4 / 200, 0.1, 0.05,
        25.4 / 1000, 0.02, 0.01};

    /** Fewer different heights than this may fall on a coarse step by chance. */
    private static final int FEWEST_HEIGHTS = 5;

    /** How many repeats the usual value counts for. */
    private static final int USUAL_COUNTS_FOR = 4;

    /** What touching off is usually good for on a rough face, where none was read. */
    static TouchOffNoise usual() {
        return new TouchOffNoise(Math.hypot(USUAL, TEXTURE), Source.USUAL, 0);
    }

    /** A spread from n repeats is itself off by 1/√(2n) of it: from fewer than three, by half and more. */
    private static final int FEWEST_REPEATS = 3;

    /** Noise of the touch-offs on one face. */
    static TouchOffNoise of(Board board, List<Reading> readings) {
        double always = TEXTURE * TEXTURE + Math.pow(step(readings), 2) / 12;
        if (board.repeatability().isPresent()) {
            double given = board.repeatability().getAsDouble();
            return new TouchOffNoise(Math.sqrt(given * given + always), Source.REPEATABILITY, 0);
        }
        Repeats repeats = Repeats.among(readings);
        return new TouchOffNoise(Math.sqrt(repeats.variance() + always), repeats.count() > 0 ? Source.REPEATS
            : Source.USUAL, repeats.count());
    }

    /**
     * How far one touch-off strays, without the texture of the wood (mm), as repeated touch-offs on face A show it;
     * empty where there are too few of them. Stated as the board's repeatability, it leaves the noise as it is.
     */
    public static OptionalDouble repeatability(Board board) {
        Repeats repeats = Repeats.among(board.readingsOf(Face.A));
        return repeats.count() < FEWEST_REPEATS ? OptionalDouble.empty()
            : OptionalDouble.of(Math.sqrt(repeats.variance()));
    }

    /**
     * What points touched more than once show.
     *
     * @param variance pooled with the usual one (mm²)
     * @param count    degrees of freedom
     */
    private record Repeats(double variance, int count) {

        static Repeats among(List<Reading> readings) {
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
            return new Repeats((USUAL_COUNTS_FOR * USUAL * USUAL + squares) / (USUAL_COUNTS_FOR + repeats), repeats);
        }
    }

    private static double step(List<Reading> readings) {
        double[] heights = readings.stream().mapToDouble(Reading::z).distinct().toArray();
        if (heights.length < FEWEST_HEIGHTS) {
            return 0;
        }
        return Arrays.stream(STEPS)
            // A millionth of a mm is the rounding of a fraction of an inch, far below any step.
            .filter(step -> Arrays.stream(heights).allMatch(z -> Math.abs(z - Math.rint(z / step) * step) < 1e-6))
            .findFirst().orElse(0);
    }
}
