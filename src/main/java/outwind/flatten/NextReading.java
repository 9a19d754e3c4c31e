package outwind.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.TouchGrid;
import outwind.numeric.Vectors;
import outwind.surface.Places;
import outwind.surface.SampledBoard;

/**
 * A place that is worth measuring next, because the finished thickness depends on what is found there.
 *
 * <pre>
 *   over the possible boards, with t the slab's thickness and m what would be measured at a place, a height of face A
 *   or a thickness by caliper:
 *   ρ² = cov(t, m)² / (var t · (var m + noise²)),   width left = width · √(1 − ρ²)
 * </pre>
 * The place with the greatest ρ² narrows the range most, and by the same token lowers the chance of a wrong verdict
 * most. For a second and third place, t and m are first rid of what the earlier ones will have explained.
 *
 * @param x    mm along the grain
 * @param y    mm across
 * @param tool what to measure with there
 * @param left share of the range's width that is expected to be left once this place, and those before it, are
 *             measured, 0 to 1
 */
public record NextReading(double x, double y, Tool tool, double left) {

    /** What a board is measured with. */
    public enum Tool {
        /** Touched off on face A. */
        CUTTER,
        /** Rough thickness, near an end or edge. */
        CALIPER
    }

    /** A cutter or a caliper is not set down nearer to an end or edge than this (mm). */
    private static final double REACH = 10;

    /** With so many possible boards a correlation is good to 0.05: enough to choose a place by. */
    private static final int ENOUGH_BOARDS = 400;

    /** A reading that narrows the range by less than this share is not worth the walk. */
    private static final double WORTHWHILE = 0.05;

    /** Some places on the board, by x and y (mm). */
    public interface Where {
        boolean at(double x, double y);
    }

    /**
     * What might be measured.
     *
     * @param off of each possible board, from their mean (mm)
     */
    private record Candidate(double x, double y, Tool tool, double noise, double[] off) { }

    /** The best places to touch off, wherever they lie. */
    public static List<NextReading> toTouch(Simulation outlook, double noise, int most) {
        return of(some(outlook), someSlabs(outlook), noise, most);
    }

    static List<NextReading> of(List<SampledBoard> boards, double[] slabs, double noise, int most) {
        return best(slabs, heights(boards, (x, y) -> false, noise), most);
    }

    /**
     * The best places for a cutter or a caliper, in order.
     *
     * @param board for where a caliper reaches
     * @param known where the face is known so well that touching it off would tell nothing
     * @param noise standard deviation of a touch-off (mm)
     * @param most  how many places at most
     */
    public static List<NextReading> of(Simulation outlook, Board board, Where known, double noise, int most) {
        List<Candidate> candidates = heights(some(outlook), known, noise);
        candidates.addAll(thicknesses(some(outlook), board));
        return best(someSlabs(outlook), candidates, most);
    }

    /** The best places for a caliper, in order; at most so many. */
    public static List<NextReading> byCaliper(Simulation outlook, Board board, int most) {
        return best(someSlabs(outlook), thicknesses(some(outlook), board), most);
    }

    private static List<SampledBoard> some(Simulation outlook) {
        return outlook.boards().subList(0, Math.min(ENOUGH_BOARDS, outlook.boards().size()));
    }

    private static double[] someSlabs(Simulation outlook) {
        return Arrays.copyOf(outlook.slabs(), some(outlook).size());
    }

    private static List<Candidate> heights(List<SampledBoard> boards, Where known, double noise) {
        return candidates(boards, (x, y) -> !known.at(x, y), Tool.CUTTER, noise,
            (sampled, place) -> sampled.top()[place]);
    }

    private static List<Candidate> thicknesses(List<SampledBoard> boards, Board board) {
        return candidates(boards, (x, y) -> Math.min(Math.min(x, board.length() - x),
            Math.min(y, board.width() - y)) <= TouchGrid.JAWS, Tool.CALIPER, CaliperReading.DEVIATION,
            (sampled, place) -> sampled.top()[place] - sampled.underside()[place]);
    }

    /** What is measured of a board at a place (mm). */
    private interface Quantity {
        double of(SampledBoard board, int place);
    }

    private static List<Candidate> candidates(List<SampledBoard> boards, Where wanted, Tool tool, double noise,
            Quantity quantity) {
        Places places = boards.get(0).places();
        List<Candidate> candidates = new ArrayList<>();
        for (int k = 0; k < places.size(); k++) {
            if (wanted.at(places.x()[k], places.y()[k])) {
                double[] measured = new double[boards.size()];
                for (int i = 0; i < measured.length; i++) {
                    measured[i] = quantity.of(boards.get(i), k);
                }
                candidates.add(new Candidate(inside(places.x()[k], places.x()), inside(places.y()[k], places.y()), tool,
                    noise, centred(measured)));
            }
        }
        return candidates;
    }

    private static List<NextReading> best(double[] slabs, List<Candidate> candidates, int most) {
        double[] thickness = centred(slabs);
        double before = Vectors.dot(thickness, thickness);
        // A reading has noise on it; which noise does not matter, so it is always the same.
        SplittableRandom random = new SplittableRandom(1);
        List<NextReading> next = new ArrayList<>();
        while (next.size() < most && !candidates.isEmpty()) {
            Candidate best = mostTelling(thickness, candidates);
            double explained = explained(thickness, best);
            if (before == 0 || 1 - Math.sqrt(1 - explained) < WORTHWHILE) {
                break;
            }
            double[] reading = best.off().clone();
            for (int i = 0; i < reading.length; i++) {
                reading[i] += random.nextGaussian(0, best.noise());
            }
            double variance = Vectors.dot(reading, reading);
            Vectors.subtract(Vectors.dot(thickness, reading) / variance, reading, thickness);
            for (Candidate candidate : candidates) {
                Vectors.subtract(Vectors.dot(candidate.off(), reading) / variance, reading, candidate.off());
            }
            next.add(new NextReading(best.x(), best.y(), best.tool(), Math.sqrt(Vectors.dot(thickness, thickness) / before)));
        }
        return next;
    }

    private static Candidate mostTelling(double[] thickness, List<Candidate> candidates) {
        Candidate best = candidates.get(0);
        for (Candidate candidate : candidates) {
            best = explained(thickness, candidate) > explained(thickness, best) ? candidate : best;
        }
        return best;
    }

    /** ρ², the share of the thickness's variance that a reading takes away. */
    private static double explained(double[] thickness, Candidate candidate) {
        double both = Vectors.dot(thickness, candidate.off());
        double variance = Vectors.dot(thickness, thickness) * (Vectors.dot(candidate.off(), candidate.off())
            + thickness.length * candidate.noise() * candidate.noise());
        return variance > 0 ? both * both / variance : 0;
    }

    private static double inside(double place, double[] all) {
        double first = all[0];
        double last = first;
        for (double other : all) {
            first = Math.min(first, other);
            last = Math.max(last, other);
        }
        double reach = Math.min(REACH, (last - first) / 4);
        return Math.max(first + reach, Math.min(last - reach, place));
    }

    private static double[] centred(double[] values) {
        double mean = 0;
        for (double value : values) {
            mean += value / values.length;
        }
        double[] centred = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            centred[i] = values[i] - mean;
        }
        return centred;
    }
}
