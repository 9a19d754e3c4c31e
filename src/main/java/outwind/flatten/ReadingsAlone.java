package outwind.flatten;

import java.util.Comparator;
import java.util.List;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.PointCloud;
import outwind.board.Reading;
import outwind.board.Underside;
import outwind.numeric.plane.WidestGap;
import outwind.numeric.plane.Zone;
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
        if (board.scan().isPresent()) {
            return ofScan(board.scan().get().points(), promise(board, readings, shape, skim));
        }
        double[] x = readings.stream().mapToDouble(Reading::x).toArray();
        double[] y = readings.stream().mapToDouble(Reading::y).toArray();
        double[] z = readings.stream().mapToDouble(Reading::z).toArray();
        return new ReadingsAlone(
            readings.stream().max(Comparator.comparingDouble(Reading::z)).orElseThrow(),
            readings.stream().min(Comparator.comparingDouble(Reading::z)).orElseThrow(),
            WidestGap.minimumZone(x, y, z), promise(board, readings, shape, skim));
    }

    /** Spread and zone are those of all points; what they promise is that of the cells, without the points' noise. */
    private static ReadingsAlone ofScan(PointCloud points, double promise) {
        int highest = 0;
        int lowest = 0;
        for (int i = 1; i < points.size(); i++) {
            highest = points.z()[i] > points.z()[highest] ? i : highest;
            lowest = points.z()[i] < points.z()[lowest] ? i : lowest;
        }
        return new ReadingsAlone(reading(points, highest), reading(points, lowest),
            WidestGap.minimumZone(points.x(), points.y(), points.z()), promise);
    }

    private static Reading reading(PointCloud points, int i) {
        return new Reading(points.x()[i], points.y()[i], points.z()[i], Face.A, "", 0);
    }

    /**
     * The thickest slab between the readings and the underside opposite them. Where that lies one thickness T below
     * face A, it is taken from the readings too, not from the face smoothed through them: so that of one T it is
     * T − minimum zone − both skims exactly.
     */
    private static double promise(Board board, List<Reading> readings, BoardShape shape, double skim) {
        boolean alike = board.scan().isEmpty() && board.underside() == Underside.ALIKE
            && board.readingsOf(Face.B).isEmpty();
        return WidestGap.thickestSlab(readings.stream().mapToDouble(Reading::x).toArray(),
            readings.stream().mapToDouble(Reading::y).toArray(), readings.stream().mapToDouble(Reading::z).toArray(),
            readings.stream().mapToDouble(r -> shape.undersideAt(r.x(), r.y())
                + (alike ? r.z() - shape.topAt(r.x(), r.y()) : 0)).toArray()).width() - 2 * skim;
    }

    /** Highest minus lowest: the depth of a cut parallel to the bed that just reaches the lowest touch-off (mm). */
    public double spread() {
        return highest.z() - lowest.z();
    }
}
