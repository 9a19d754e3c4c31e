package outwind.surface;

import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.surface.field.Viewpoint;

/** How thick the board is everywhere (mm), as a caliper or a person's word tells it. */
interface Thickness {

    /** Standard deviation of the one figure that a person states for a whole board (mm); common practice. */
    double STATED = 0.2;

    /** Caliper readings first; then what is stated, everywhere or at a place that nobody wrote down. */
    static Thickness of(Board board, Viewpoint seen) {
        if (!board.calipers().isEmpty()) {
            return SawnThickness.through(board.calipers(), seen);
        }
        double stated = board.thickness().orElseThrow();
        return board.evenThickness() ? new EvenThickness(stated) : SawnThickness.stated(stated, board.unevenness(), seen);
    }

    /** Most likely thickness at a place. */
    double at(double x, double y);

    /** Thicknesses that the readings leave possible, count × m. */
    double[][] draws(double[] x, double[] y, int count, SplittableRandom random);
}
