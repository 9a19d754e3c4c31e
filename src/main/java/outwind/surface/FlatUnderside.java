package outwind.surface;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;

/**
 * An underside that lies flat on the bed.
 *
 * @param height    of the bed in the frame of the readings (mm)
 * @param deviation how sure that height is (mm): the error of the thickness it was computed from
 */
record FlatUnderside(double height, double deviation) implements UndersideShape {

    /**
     * Told by one stated thickness: nobody knows where on an uneven face A it was read, so it is as unsure as that is
     * uneven, unless it is said to be the same everywhere.
     */
    static FlatUnderside under(Board board) {
        double[] heights = board.readingsOf(Face.A).stream().mapToDouble(Reading::z).toArray();
        double mean = Arrays.stream(heights).average().orElseThrow();
        double variance = Arrays.stream(heights).map(z -> Math.pow(z - mean, 2)).average().orElseThrow();
        return new FlatUnderside(mean - board.thickness().orElseThrow(), board.evenThickness() ? 0
            : Math.sqrt(variance + Thickness.STATED * Thickness.STATED));
    }

    /** Told by caliper readings, at least one. */
    static FlatUnderside under(List<CaliperReading> calipers, TopFace top) {
        double height = calipers.stream().mapToDouble(c -> top.mean(c.x(), c.y()) - c.thickness()).average()
            .orElseThrow();
        double variance = calipers.stream()
            .mapToDouble(c -> Math.pow(top.deviation(c.x(), c.y()), 2) + Math.pow(CaliperReading.DEVIATION, 2)).sum();
        return new FlatUnderside(height, Math.sqrt(variance) / calipers.size());
    }

    @Override
    public double at(double x, double y, double top) {
        return height;
    }

    @Override
    public double[][] draws(double[] x, double[] y, double[][] tops, SplittableRandom random) {
        double[][] draws = new double[tops.length][x.length];
        for (double[] draw : draws) {
            Arrays.fill(draw, height + (deviation > 0 ? random.nextGaussian(0, deviation) : 0));
        }
        return draws;
    }
}
