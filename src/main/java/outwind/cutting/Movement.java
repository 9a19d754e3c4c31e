package outwind.cutting;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Turned;
import outwind.surface.MeasuredShape;
import outwind.surface.trend.Fits;
import outwind.surface.trend.Warp;

/**
 * How a board has moved while face A was cut: stress that the sawn wood held in balance lets go.
 *
 * <pre>
 *   difference = height read on face B − height expected there, as twist, bow and cup of face B as it lies
 * </pre>
 * Height and tilt of the difference are left out: they are in how the readings were zeroed. Twist, bow, cup and the
 * residuals from a plane are tested together, against what they are on boards that have not moved; see
 * {@link JointTest}.
 *
 * @param change      twist, bow and cup of the difference
 * @param greatest    greatest difference from a plane at any reading (mm)
 * @param probability p-value: chance of so much on a board that has not moved, 0 to 1
 * @param readings    how many readings there are
 */
public record Movement(Warp change, double greatest, double probability, int readings) {

    /** Less than this matters to nobody, however surely it is there (mm). */
    private static final double NOTABLE = 0.2;

    /** Three readings lie on a plane whatever the board does. */
    private static final int FEWEST = 4;

    /** Boards that have not moved and yet are said to have. */
    private static final double FALSE_ALARMS = 0.015;

    /** More readings than this only make the same answer slower; of a scan's cells, every so many are taken. */
    private static final int ENOUGH = 60;

    /**
     * @param shape  the board as it was before
     * @param cuts   the cut that was made on face A
     * @param before the board as it was measured before
     * @param after  face B read as the face, with the board lying on its new face A, turned along unless it says
     *               otherwise
     * @param seed   of the possible boards
     */
    public static Movement between(MeasuredShape shape, CuttingPlan cuts, Board before, Board after, long seed) {
        // How it was turned to read face B before the cut says nothing of how it was turned after it.
        Turned turned = after.turned().orElse(Turned.ALONG);
        List<Reading> read = enough(after.readingsOf(Face.A));
        ExpectedHeights expected = ExpectedHeights.at(shape, cuts.faceA().plane(),
            read.stream().mapToDouble(reading -> turned.alongFaceA(reading.x(), before.length())).toArray(),
            read.stream().mapToDouble(reading -> turned.acrossFaceA(reading.y(), before.width())).toArray(),
            shape.noise().deviation(), seed);
        double[] differences = IntStream.range(0, read.size())
            .mapToDouble(i -> read.get(i).z() - expected.heights()[i]).toArray();
        JointTest test = new JointTest(Arrays.stream(expected.errors())
            .map(errors -> figures(withHeights(after, read, errors))).toArray(double[][]::new));
        Board difference = withHeights(after, read, differences);
        Fits fits = Fits.of(difference);
        return new Movement(Warp.of(difference, fits), Arrays.stream(residuals(difference, fits)).map(Math::abs).max()
            .orElse(0), test.probability(figures(difference)), read.size());
    }

    /** All readings, or where they are very many every so many of them. */
    static List<Reading> enough(List<Reading> all) {
        int step = 1 + (all.size() - 1) / ENOUGH;
        return IntStream.range(0, all.size()).filter(i -> i % step == 0).mapToObj(all::get).toList();
    }

    private static Board withHeights(Board board, List<Reading> readings, double[] heights) {
        return board.withReadings(IntStream.range(0, heights.length)
            .mapToObj(i -> readings.get(i).withHeight(heights[i])).toList());
    }

    /** Twist, bow and cup as far as the readings show them (mm), then the residuals from a plane (mm). */
    private static double[] figures(Board difference) {
        Fits fits = Fits.of(difference);
        Warp warp = Warp.of(difference, fits);
        return DoubleStream.concat(Stream.of(warp.twist(), warp.bow(), warp.cup()).flatMap(Optional::stream)
            .mapToDouble(Warp.Amount::value), Arrays.stream(residuals(difference, fits))).toArray();
    }

    private static double[] residuals(Board difference, Fits fits) {
        return difference.readings().stream()
            .mapToDouble(reading -> reading.z() - fits.plane().at(reading.x(), reading.y())).toArray();
    }

    /** True if there are too few readings to tell. */
    public boolean isUnknown() {
        return readings < FEWEST;
    }

    /** True if the readings differ from what was expected by more than chance explains, and by enough to matter. */
    public boolean isReal() {
        double most = Stream.of(change.twist(), change.bow(), change.cup()).flatMap(Optional::stream)
            .mapToDouble(amount -> Math.abs(amount.value())).max().orElse(0);
        return probability <= FALSE_ALARMS && Math.max(most, greatest) > NOTABLE;
    }
}
