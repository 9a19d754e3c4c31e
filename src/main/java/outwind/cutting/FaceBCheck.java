package outwind.cutting;

import java.util.ArrayList;
import java.util.List;
import outwind.board.Board;
import outwind.surface.BoardShape;

/**
 * What face B should read once face A is cut and the board lies on it, turned over along its length.
 *
 * <pre>
 *   height above the bed at (x, W − y) on face B = plane of face A − underside at (x, y)
 *   tolerance = 2·√(touch-off² + deviation of the face there²)
 * </pre>
 * If it reads otherwise by more than the tolerance, the board has moved while it was cut, or a shim slipped.
 *
 * @param x         mm along the grain, on face B as it lies
 * @param y         mm across, from the edge that is near then
 * @param height    above the bed (mm)
 * @param tolerance mm either way
 */
public record FaceBCheck(double x, double y, double height, double tolerance) {

    /** In from the ends and edges, where a cutter is easily touched off (mm). */
    private static final double INSET = 20;

    /**
     * Six places: both ends and the middle, along both edges.
     *
     * @param noise standard deviation of a touch-off (mm)
     */
    public static List<FaceBCheck> of(Board board, BoardShape shape, CuttingPlan cuts, double noise) {
        double insetX = Math.min(INSET, board.length() / 10);
        double insetY = Math.min(INSET, board.width() / 10);
        List<FaceBCheck> checks = new ArrayList<>();
        for (double y : new double[] {insetY, board.width() - insetY}) {
            for (double x : new double[] {insetX, board.length() / 2, board.length() - insetX}) {
                double onA = board.width() - y;
                double height = cuts.faceA().plane().at(x, onA) - shape.undersideAt(x, onA);
                checks.add(new FaceBCheck(x, y, height, 2 * Math.hypot(noise, shape.topDeviationAt(x, onA))));
            }
        }
        return checks;
    }
}
