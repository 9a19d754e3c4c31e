package outwind.surface;

import outwind.board.Board;

/**
 * A rectangle on the board, in mm.
 *
 * @param x1 nearer end
 * @param y1 nearer edge
 * @param x2 further end
 * @param y2 further edge
 */
public record Region(double x1, double y1, double x2, double y2) {

    /** The whole board. */
    public static Region whole(Board board) {
        return new Region(0, 0, board.length(), board.width());
    }

    /** What is left of the board when its trim has been cut away: the part that must clean up. */
    public static Region kept(Board board) {
        return new Region(board.trim().along(), board.trim().across(), board.length() - board.trim().along(),
            board.width() - board.trim().across());
    }

    public boolean holds(double x, double y) {
        return x >= x1 && x <= x2 && y >= y1 && y <= y2;
    }
}
