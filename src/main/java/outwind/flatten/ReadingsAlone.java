package outwind.flatten;

import java.util.Comparator;
import java.util.List;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.numeric.WidestGap;
import outwind.numeric.Zone;
import outwind.surface.BoardShape;

/**
 * What the readings on face A say if nothing between and beyond them is thought of.
 *
 * @param highest     highest touch-off; the first of them where several are as high
 * @param lowest      lowest touch-off
 * @param minimumZone narrowest pair of parallel planes that holds the readings
 * @param promise     finished thickness if the board were nowhere worse than at the readings (mm)
 */
public record ReadingsAlone(Reading highest, Reading lowest, Zone minimumZone, double promise) {

    /**
     * @param board with at least one reading on face A
     * @param shape for the underside opposite the readings
     * @param skim  least depth to come off each face (mm)
     */
    public static ReadingsAlone of(Board board, BoardShape shape, double skim) {
        List<Reading> readings = board.readingsOf(Face.A);
        double[] x = readings.stream().mapToDouble(Reading::x).toArray();
        double[] y = readings.stream().mapToDouble(Reading::y).toArray();
        double[] z = readings.stream().mapToDouble(Reading::z).toArray();
        double[] underside = readings.stream().mapToDouble(r -> shape.undersideAt(r.x(), r.y())).toArray();
        return new ReadingsAlone(
            readings.stream().max(Comparator.comparingDouble(Reading::z)).orElseThrow(),
            readings.stream().min(Comparator.comparingDouble(Reading::z)).orElseThrow(),
            WidestGap.minimumZone(x, y, z),
            WidestGap.thickestSlab(x, y, z, underside).width() - 2 * skim);
    }

    /** Highest minus lowest: the depth of a cut parallel to the bed that just reaches the lowest touch-off (mm). */
    public double spread() {
        return highest.z() - lowest.z();
    }
}
