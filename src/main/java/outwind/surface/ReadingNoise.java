package outwind.surface;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Place;
import outwind.board.Reading;
import outwind.surface.field.Noises;
import outwind.surface.trend.FRatio;

/**
 * How far one touch-off may be from the face as a cutter would meet it.
 *
 * <pre>
 *   variance = touch-off² + texture² + step²/12
 *   touch-off: repeatability where it is given; else what points touched more than once scatter by, pooled with the
 *   usual one:  (ν₀·s₀² + Σ(z − mean of its point)²) / (ν₀ + Σ(touches − 1))
 * </pre>
 * A place whose heights scatter so much that chance would show it in one board of a hundred holds a slip, not noise: it
 * is left out of the sum, the worst first, each tested by F against the usual touch-off and the other places. The slip
 * itself is judged by {@link SuspectReading}.
 *
 * <p>The step is the coarsest that every height was written to, such as 1/64 in; rounding to it is evenly spread.
 * The usual touch-off counts as a handful of repeats, so that one lucky pair does not make a machine perfect.
 *
 * @param deviation standard deviation of one touch-off, texture in it (mm)
 * @param source    where it comes from
 * @param repeats   degrees of freedom that repeated touch-offs gave; zero unless they were used
 */
public record ReadingNoise(double deviation, Source source, int repeats) {

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

    /** Chance that a board without a slip is taken to have one. */
    private static final double SLIP = 0.01;

    /** What touching off is usually good for on a rough face, where none was read. */
    static ReadingNoise usual() {
        return new ReadingNoise(Math.hypot(USUAL, TEXTURE), Source.USUAL, 0);
    }

    /** Standard deviation of one touch-off (mm), as stated or usual; not from repeats, which may hold a drift of zero. */
    static double ofOne(Board board) {
        return Math.hypot(board.repeatability().orElse(USUAL), TEXTURE);
    }

    /** A spread from n repeats is itself off by 1/√(2n) of it: from fewer than three, by half and more. */
    private static final int FEWEST_REPEATS = 3;

    /** How far the noise may be from this: where it was neither stated nor shown by repeats, it may well be larger. */
    Noises factors() {
        return source == Source.REPEATABILITY || repeats >= FEWEST_REPEATS ? Noises.AS_STATED : Noises.UNSTATED;
    }

    /** The same so many times larger. */
    ReadingNoise times(double factor) {
        return new ReadingNoise(factor * deviation, source, repeats);
    }

    /** Noise of the touch-offs on one face. */
    static ReadingNoise of(Board board, List<Reading> readings) {
        double always = TEXTURE * TEXTURE + Math.pow(step(readings), 2) / 12;
        if (board.repeatability().isPresent()) {
            double given = board.repeatability().getAsDouble();
            return new ReadingNoise(Math.sqrt(given * given + always), Source.REPEATABILITY, 0);
        }
        Repeats repeats = Repeats.among(readings);
        return new ReadingNoise(Math.sqrt(repeats.variance() + always), repeats.count() > 0 ? Source.REPEATS
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
            List<Repeated> places = new ArrayList<>(readings.stream()
                .collect(Collectors.groupingBy(r -> new Place(r.x(), r.y()), LinkedHashMap::new, Collectors.toList()))
                .values().stream().map(Repeated::of).filter(place -> place.count() > 0).toList());
            for (Optional<Repeated> slip = slip(places); slip.isPresent(); slip = slip(places)) {
                places.remove(slip.get());
            }
            return pooled(places);
        }

        private static Repeats pooled(List<Repeated> places) {
            double squares = places.stream().mapToDouble(Repeated::squares).sum();
            int count = places.stream().mapToInt(Repeated::count).sum();
            return new Repeats((USUAL_COUNTS_FOR * USUAL * USUAL + squares) / (USUAL_COUNTS_FOR + count), count);
        }

        /** The place that goes least with the usual touch-off and the other places, if it holds a slip. */
        private static Optional<Repeated> slip(List<Repeated> places) {
            return places.stream().max(Comparator.comparingDouble(place -> place.squares() / place.count()))
                .filter(place -> {
                    Repeats others = pooled(places.stream().filter(other -> other != place).toList());
                    FRatio ratio = new FRatio(place.squares() / place.count() / others.variance, place.count(),
                        USUAL_COUNTS_FOR + others.count);
                    return ratio.chance() < SLIP / places.size();
                });
        }
    }

    /**
     * One place touched more than once.
     *
     * @param squares sum of the squares of its heights about their mean (mm²)
     * @param count   degrees of freedom: touches less one
     */
    private record Repeated(double squares, int count) {

        static Repeated of(List<Reading> touches) {
            double mean = touches.stream().mapToDouble(Reading::z).average().orElseThrow();
            return new Repeated(touches.stream().mapToDouble(r -> Math.pow(r.z() - mean, 2)).sum(),
                touches.size() - 1);
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
