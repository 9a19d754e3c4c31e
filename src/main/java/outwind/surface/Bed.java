package outwind.surface;

import java.util.List;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.TrendModel;

/**
 * The bed as it was touched off beside the board: a plane by least squares, less where few readings show less (one
 * gives its height, two its tilt along the line between them).
 */
public final class Bed {

    private Bed() { }

    /**
     * The board with its face-A readings given as heights above the bed, so that a cut parallel to the bed has no slope.
     * A board without readings on the bed comes back as it is: its readings are taken to be square to the bed. So does
     * one that was scanned: its heights are measured from the bed already where the scan holds one.
     */
    public static Board measuredFrom(Board board) {
        List<Reading> onBed = board.readingsOf(Face.BED);
        if (onBed.isEmpty() || board.scan().isPresent()) {
            return board;
        }
        TrendFit bed = TrendFit.of(TrendModel.PLANE, onBed, board.length(), board.width());
        return board.withReadings(board.readings().stream()
            .map(r -> r.face() == Face.A ? r.withHeight(r.z() - bed.at(r.x(), r.y())) : r).toList());
    }

    /** Height of the bed under a place (mm), as the readings tell heights; 0 where it was not touched. */
    static double heightUnder(Board board, double x, double y) {
        List<Reading> onBed = board.readingsOf(Face.BED);
        return onBed.isEmpty() ? 0
            : TrendFit.of(TrendModel.PLANE, onBed, board.length(), board.width()).at(x, y);
    }
}
