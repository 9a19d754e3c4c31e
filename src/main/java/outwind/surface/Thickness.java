package outwind.surface;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.surface.trend.TrendModel;

/**
 * Thickness everywhere on the board (mm): kriged through caliper readings about a wedge, or one stated thickness taken
 * to be the same everywhere.
 */
final class Thickness {

    /** Standard deviation of a caliper reading on rough wood (mm); common practice. */
    static final double CALIPER = 0.1;

    private final Optional<KrigedField> field;
    private final double stated;

    private Thickness(Optional<KrigedField> field, double stated) {
        this.field = field;
        this.stated = stated;
    }

    static Thickness of(Board board) {
        List<CaliperReading> calipers = board.calipers();
        if (calipers.isEmpty()) {
            return new Thickness(Optional.empty(), board.thickness().orElseThrow());
        }
        return new Thickness(Optional.of(KrigedField.of(Observations.of(
            calipers.stream().mapToDouble(CaliperReading::x).toArray(),
            calipers.stream().mapToDouble(CaliperReading::y).toArray(),
            calipers.stream().mapToDouble(CaliperReading::thickness).toArray(), CALIPER,
            board.length(), board.width()),
            TrendModel.PLANE, Prior.THICKNESS, board.length(), board.width())), 0);
    }

    double at(double x, double y) {
        return field.isPresent() ? field.get().mean(x, y) : stated;
    }

    /** Thicknesses that the readings leave possible, count × m. */
    double[][] draws(double[] x, double[] y, int count, SplittableRandom random) {
        if (field.isPresent()) {
            return field.get().draws(x, y, count, random);
        }
        double[][] draws = new double[count][x.length];
        for (double[] draw : draws) {
            Arrays.fill(draw, stated);
        }
        return draws;
    }
}
