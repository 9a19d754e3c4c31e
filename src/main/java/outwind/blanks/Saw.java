package outwind.blanks;

import outwind.board.Board;
import outwind.shop.SawLimits;
import outwind.surface.Region;

/**
 * How a board is cut into blanks.
 *
 * @param kerf    wood that one cut turns to dust (mm), not below zero
 * @param endTrim cut away at each end first (mm), not below zero
 * @param raster  blanks may begin at every multiple of this (mm), and wherever blanks and kerfs add up; at least
 *                {@value #FINEST}
 * @param limits  what it can take, and how much larger than finished blanks are cut
 * @param recuts  whether offcuts are cut again
 */
public record Saw(double kerf, double endTrim, double raster, SawLimits limits, boolean recuts) {

    /** Kerf of a common circular saw blade (mm); common practice. */
    public static final double USUAL_KERF = 3.2;

    /** Closer than anybody marks out, and a raster that is still quickly searched (mm). */
    private static final double USUAL_RASTER = 5;

    private static final double FINEST = 0.5;

    /** Shorter lengths can hardly be held and planed safely (mm); common practice. */
    private static final double SHORTEST = 300;

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

    /** A saw that cuts no offcut again. */
    public Saw(double kerf, double endTrim, double raster, SawLimits limits) {
        this(kerf, endTrim, raster, limits, false);
    }

    /** The same that takes any piece. */
    public Saw(double kerf, double endTrim, double raster) {
        this(kerf, endTrim, raster, SawLimits.NONE);
    }

    /** The usual kerf and raster, and the trim that a board states along. */
    public static Saw usual(Board board) {
        return usual(board, SawLimits.NONE);
    }

    /** The same with what saw and machine of a shop can take. */
    public static Saw usual(Board board, SawLimits limits) {
        return new Saw(USUAL_KERF, board.trim().along(), USUAL_RASTER, limits);
    }

    /** Least length that is worth cutting for itself (mm): the limit, or where none is stated the usual one. */
    public double shortestLength() {
        return limits.shortest() > 0 ? limits.shortest() : SHORTEST;
    }

    /** A board once its near edge is straight: every cut starts from there. */
    public Region straightened(Board board) {
        return new Region(0, limits.firstEdge(), board.length(), board.width());
    }

    /**
     * What is left of a board when its near edge has been straightened and its ends and edges trimmed. Straightening is
     * part of the trim.
     *
     * @throws IllegalArgumentException if that is nothing
     */
    public Region usable(Board board) {
        Region usable = left(board);
        if (!(usable.x1() < usable.x2())) {
            throw new IllegalArgumentException("an end trim of " + endTrim + " mm at each end leaves nothing of a"
                + " board " + board.length() + " mm long");
        }
        if (!(usable.y1() < usable.y2())) {
            throw new IllegalArgumentException("straightening the first edge by " + limits.firstEdge() + " mm leaves"
                + " nothing of a board " + board.width() + " mm wide");
        }
        return usable;
    }

    /** Whether anything is left of a board then. */
    public boolean leavesWood(Board board) {
        return left(board).x1() < left(board).x2() && left(board).y1() < left(board).y2();
    }

    private Region left(Board board) {
        return new Region(endTrim, Math.max(limits.firstEdge(), board.trim().across()), board.length() - endTrim,
            board.width() - board.trim().across());
    }
}
