package outwind.surface;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.StatUtils;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.surface.field.Viewpoint;

/**
 * How much the thickness strays within boards of one stack, learnt from those that were read with calipers at several
 * places, for those of which one figure is stated.
 *
 * <pre>
 *   board i, n readings:   S = Σ(t − t̄)² − (n − 1)·σ²,   V = the same to expect of a usual sawn board, by draws,  d = n − 1
 *   multiple² = (ν + Σ d·S/V) / (ν + Σ d),   not below a fifth squared
 * </pre>
 * S/V is unbiased for the square of the multiple. ν degrees of freedom speak for the usual board: our choice. That is
 * the mean of a scaled inverse χ² posterior but for its 2 degrees of freedom.
 *
 * <p>Source: A. Gelman and others, Bayesian Data Analysis, 3rd edition, section 2.6 (from memory).
 *
 * @param multiple  of what a sawn board's thickness usually strays by
 * @param deviation pooled standard deviation of the caliper readings within a board (mm)
 * @param boards    that it was learnt from
 */
public record Unevenness(double multiple, double deviation, int boards) {

    private static final int FEWEST_BOARDS = 3;
    private static final int FEWEST_READINGS = 3;
    private static final int USUAL_DEGREES = 6;
    private static final double LEAST = 0.2;
    private static final int DRAWS = 2000;
    private static final long SEED = 1;

    /** Of some boards of one stack; empty if too few of them were read at three places or more. */
    public static Optional<Unevenness> of(List<Board> boards) {
        double ratios = USUAL_DEGREES;
        double squares = 0;
        int degrees = 0;
        int read = 0;
        // Boards of one size that were read at the same places have this in common.
        Map<List<Double>, Double> usual = new HashMap<>();
        for (Board board : boards) {
            int d = board.calipers().size() - 1;
            if (d + 1 < FEWEST_READINGS) {
                continue;
            }
            double own = squares(board.calipers().stream().mapToDouble(CaliperReading::thickness).toArray());
            ratios += d * (own - d * Math.pow(CaliperReading.DEVIATION, 2))
                / usual.computeIfAbsent(sizeAndPlaces(board), key -> usual(board));
            squares += own;
            degrees += d;
            read++;
        }
        return read < FEWEST_BOARDS ? Optional.empty() : Optional.of(new Unevenness(
            Math.sqrt(Math.max(LEAST * LEAST, ratios / (USUAL_DEGREES + degrees))), Math.sqrt(squares / degrees), read));
    }

    /** The board as its like show it, where one figure is all that is known of its thickness. */
    public Board appliedTo(Board board) {
        return board.calipers().isEmpty() && board.thickness().isPresent() && !board.evenThickness()
            ? board.strayingBy(multiple) : board;
    }

    private static List<Double> sizeAndPlaces(Board board) {
        return Stream.concat(Stream.of(board.length(), board.width()),
            board.calipers().stream().flatMap(caliper -> Stream.of(caliper.x(), caliper.y()))).toList();
    }

    /** Sum of squares about their mean to expect at the places where a board was read (mm²). */
    private static double usual(Board board) {
        double[] x = board.calipers().stream().mapToDouble(CaliperReading::x).toArray();
        double[] y = board.calipers().stream().mapToDouble(CaliperReading::y).toArray();
        double sum = 0;
        for (double[] draw : SawnThickness.stated(board.thickest().orElseThrow(), Board.SAWN, new Viewpoint(board.length(),
                board.width(), false, false)).draws(x, y, DRAWS, new SplittableRandom(SEED))) {
            sum += squares(draw);
        }
        return sum / DRAWS;
    }

    private static double squares(double[] values) {
        return StatUtils.variance(values) * (values.length - 1);
    }
}
