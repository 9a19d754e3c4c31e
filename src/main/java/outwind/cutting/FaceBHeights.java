package outwind.cutting;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Turned;
import outwind.numeric.EnsembleUpdate;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;

/**
 * Face B of a board that lies on its new face A and has not moved, as known from both measurements: from face A before
 * it was cut, and from face B after.
 *
 * <p>Possible boards from the first measurement are moved on to the readings of the second ({@link EnsembleUpdate}). How
 * deep and how square face A was cut is not known to the first measurement, so each gets a height and tilts of its own.
 */
public final class FaceBHeights {

    /** How far face A may have been cut off its plan, in height and at each end and edge (mm): our choice, wide. */
    private static final double OFF_PLAN = 1;
    private static final double OFF_SQUARE = 0.1;

    private FaceBHeights() { }

    /**
     * @param shape  the board before face A was cut
     * @param cuts   what was planned on it
     * @param after  face B read above the bed; turned along unless it says otherwise
     * @param places on face B as it lies, m of them
     * @param seed   of the possible boards
     * @return heights above the bed of each possible board (mm), one row of m each
     */
    public static double[][] draws(MeasuredShape shape, CuttingPlan cuts, Board after, Places places, long seed) {
        Turned turned = after.turned().orElse(Turned.ALONG);
        List<Reading> read = Movement.enough(after.readingsOf(Face.A));
        double[] x = DoubleStream.concat(read.stream().mapToDouble(Reading::x), DoubleStream.of(places.x())).toArray();
        double[] y = DoubleStream.concat(read.stream().mapToDouble(Reading::y), DoubleStream.of(places.y())).toArray();
        ExpectedHeights expected = ExpectedHeights.at(shape, cuts.faceA().plane(),
            DoubleStream.of(x).map(along -> turned.alongFaceA(along, after.length())).toArray(),
            DoubleStream.of(y).map(across -> turned.acrossFaceA(across, after.width())).toArray(), 0, seed);
        int n = read.size();
        int draws = expected.errors().length;
        double[][] atReadings = new double[draws][n];
        double[][] atPlaces = new double[draws][places.size()];
        SplittableRandom random = new SplittableRandom(seed);
        for (int d = 0; d < draws; d++) {
            double height = OFF_PLAN * random.nextGaussian();
            double alongTilt = OFF_SQUARE * random.nextGaussian();
            double acrossTilt = OFF_SQUARE * random.nextGaussian();
            for (int i = 0; i < x.length; i++) {
                double drawn = expected.heights()[i] + expected.errors()[d][i] + height
                    + alongTilt * (2 * shape.seen().seenX(x[i]) / after.length() - 1)
                    + acrossTilt * (2 * shape.seen().seenY(y[i]) / after.width() - 1);
                if (i < n) {
                    atReadings[d][i] = drawn;
                } else {
                    atPlaces[d][i - n] = drawn;
                }
            }
        }
        return EnsembleUpdate.of(atPlaces, atReadings, read.stream().mapToDouble(Reading::z).toArray(),
            shape.noise().deviation(), ~seed);
    }
}
