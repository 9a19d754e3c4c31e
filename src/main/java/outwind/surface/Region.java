package outwind.surface;

import outwind.board.Board;
import outwind.board.Defect;

/**
 * A rectangle on the board, in mm.
 *
 * @param x1 nearer end
 * @param y1 nearer edge
 * @param x2 further end
 * @param y2 further edge
 */
public record Region(double x1, double y1, double x2, double y2) {

    /** Closer than this to each other, two sides lie on one line (mm); far less than any saw is set to. */
    private static final double ONE_LINE = 1e-6;

    /** The whole board. */
    public static Region whole(Board board) {
        return new Region(0, 0, board.length(), board.width());
    }

    /** What is left of the board when its trim has been cut away: the part that must clean up. */
    public static Region kept(Board board) {
        return new Region(board.trim().along(), board.trim().across(), board.length() - board.trim().along(),
            board.width() - board.trim().across());
    }

    /** Where a defect lies. */
    public static Region of(Defect defect) {
        return new Region(defect.x1(), defect.y1(), defect.x2(), defect.y2());
    }

    /** Area (mm²). */
    public double area() {
        return (x2 - x1) * (y2 - y1);
    }

    /** Whether the two share more than a line. */
    public boolean overlaps(Region other) {
        return x1 < other.x2 - ONE_LINE && x2 > other.x1 + ONE_LINE
            && y1 < other.y2 - ONE_LINE && y2 > other.y1 + ONE_LINE;
    }

    public boolean holds(double x, double y) {
        return x >= x1 && x <= x2 && y >= y1 && y <= y2;
    }
}
