package outwind.surface;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.surface.field.KrigedField;
import outwind.surface.field.Noises;
import outwind.surface.field.Observations;
import outwind.surface.field.Prior;
import outwind.surface.field.Viewpoint;
import outwind.surface.trend.Term;

/**
 * The thickness of a sawn board: a wedge along and across, faces bent unlike each other, and the slow wander of the saw.
 *
 * <pre>
 *   T(x, y) = c + a·u + b·v + p·P₂(u) + q·u·v + r·P₂(v) + w(x, y),   u, v from −1 to 1,   c unknown
 *   a to r of a size that is unknown, and w, as {@link Prior#THICKNESS} has them
 *   one figure t read at an unknown place P of the outline:   T(x, y) = t + ε + g(x, y) − g(P),   g = T − c
 * </pre>
 * Where c may be anything, one reading tells nothing of g, so that the last line is exact and needs no likelihood.
 */
final class SawnThickness implements Thickness {

    /** Places round the board where somebody may have put the caliper. */
    private static final int OUTLINE = 12;

    /** Any reading of the centre serves to hold the field there (mm); the less noise, the less it matters. */
    private static final double HELD = 0.01;

    private final KrigedField field;
    /** The one figure stated; empty where calipers were read at known places. */
    private final OptionalDouble stated;
    private final Viewpoint seen;

    private SawnThickness(KrigedField field, OptionalDouble stated, Viewpoint seen) {
        this.field = field;
        this.stated = stated;
        this.seen = seen;
    }

    /** Learnt from caliper readings, at least one. */
    static SawnThickness through(List<CaliperReading> calipers, Viewpoint seen) {
        return new SawnThickness(field(Observations.of(
            calipers.stream().mapToDouble(CaliperReading::x).toArray(),
            calipers.stream().mapToDouble(CaliperReading::y).toArray(),
            calipers.stream().mapToDouble(CaliperReading::thickness).toArray(), CaliperReading.DEVIATION, seen.length(),
            seen.width()), Board.SAWN, seen), OptionalDouble.empty(), seen);
    }

    /**
     * As one figure for the whole board leaves it.
     *
     * @param unevenness how much the thickness strays, as a multiple of sawn boards' usual
     */
    static SawnThickness stated(double thickness, double unevenness, Viewpoint seen) {
        return new SawnThickness(field(Observations.alike(new double[] {seen.length() / 2},
            new double[] {seen.width() / 2}, new double[] {thickness}, HELD), unevenness, seen), OptionalDouble.of(thickness), seen);
    }

    private static KrigedField field(Observations observations, double unevenness, Viewpoint seen) {
        return KrigedField.of(observations, List.of(Term.CONSTANT), Prior.thickness(unevenness), Noises.AS_STATED, seen);
    }

    @Override
    public double at(double x, double y) {
        return stated.isPresent() ? stated.getAsDouble() : field.mean(x, y);
    }

    @Override
    public double[][] draws(double[] x, double[] y, int count, SplittableRandom random) {
        return stated.isPresent() ? throughUnknownPlace(x, y, count, random) : field.draws(x, y, count, random);
    }

    private double[][] throughUnknownPlace(double[] x, double[] y, int count, SplittableRandom random) {
        int m = x.length;
        double[][] draws = field.draws(and(x, outline(true)), and(y, outline(false)), count, random);
        double[][] moved = new double[count][];
        for (int d = 0; d < count; d++) {
            moved[d] = Arrays.copyOf(draws[d], m);
            double lift = stated.getAsDouble() + random.nextGaussian(0, STATED)
                - draws[d][m + random.nextInt(OUTLINE)];
            for (int i = 0; i < m; i++) {
                moved[d][i] += lift;
            }
        }
        return moved;
    }

    private static double[] and(double[] places, double[] others) {
        return DoubleStream.concat(DoubleStream.of(places), DoubleStream.of(others)).toArray();
    }

    /** Places spread evenly round the outline from the corner that comes first (mm): their x, or their y. */
    private double[] outline(boolean along) {
        double length = seen.length();
        double width = seen.width();
        double[] places = new double[OUTLINE];
        for (int k = 0; k < OUTLINE; k++) {
            double way = (k + 0.5) / OUTLINE * 2 * (length + width);
            double back = way - length - width;
            boolean isThere = way < length + width;
            double on = isThere ? way : back;
            double x = Math.min(on, length);
            double y = Math.max(0, on - length);
            places[k] = along ? seen.seenX(isThere ? x : length - x) : seen.seenY(isThere ? y : width - y);
        }
        return places;
    }
}
