package outwind.blanks;

import outwind.board.Board;
import outwind.surface.Region;

/**
 * How a board is cut into blanks.
 *
 * @param kerf    wood that one cut turns to dust (mm), not below zero
 * @param endTrim cut away at each end first (mm), not below zero
 * @param raster  blanks may begin at every multiple of this (mm), and wherever blanks and kerfs add up; at least
 *                {@value #FINEST}
 */
public record Saw(double kerf, double endTrim, double raster) {

    /** Kerf of a common circular saw blade (mm); common practice. */
    public static final double USUAL_KERF = 3.2;

    /** Closer than anybody marks out, and a raster that is still quickly searched (mm). */
    private static final double USUAL_RASTER = 5;

    private static final double FINEST = 0.5;

    public Saw {
        if (!(kerf >= 0 && kerf <= 100)) {
            throw new IllegalArgumentException("the kerf must be from 0 to 100 mm, got " + kerf + " mm");
        }
        if (!(endTrim >= 0)) {
            throw new IllegalArgumentException("the end trim must not be below zero, got " + endTrim + " mm");
        }
        if (!(raster >= FINEST && raster <= 1000)) {
            throw new IllegalArgumentException("the raster must be from " + FINEST + " to 1000 mm, got " + raster
                + " mm");
        }
    }

    /** The usual kerf and raster, and the trim that a board states along. */
    public static Saw usual(Board board) {
        return new Saw(USUAL_KERF, board.trim().along(), USUAL_RASTER);
    }

    /**
     * What is left of a board when its ends and edges have been trimmed.
     *
     * @throws IllegalArgumentException if that is nothing
     */
    public Region usable(Board board) {
        Region usable = new Region(endTrim, board.trim().across(), board.length() - endTrim,
            board.width() - board.trim().across());
        if (!(usable.x1() < usable.x2())) {
            throw new IllegalArgumentException("an end trim of " + endTrim + " mm at each end leaves nothing of a"
                + " board " + board.length() + " mm long");
        }
        return usable;
    }
}
