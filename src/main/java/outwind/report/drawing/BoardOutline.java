package outwind.report.drawing;

import java.awt.BasicStroke;
import outwind.board.Board;
import outwind.board.Defect;
import outwind.report.words.Figures;
import outwind.surface.Region;

/** What every view of a board from above has: its defects, its outline, and the axes along two sides of it. */
public final class BoardOutline {

    /** From the board to the axis on its left (px). */
    public static final int AXIS_GAP = 14;

    private static final BasicStroke STROKE = new BasicStroke(2.5f);

    private final Paper paper;
    private final Figures figures;
    private final Board board;
    private final Frame frame;

    /** @param frame made by {@link Frame#ofBoard} for the same board */
    public BoardOutline(Paper paper, Figures figures, Board board, Frame frame) {
        this.paper = paper;
        this.figures = figures;
        this.board = board;
        this.frame = frame;
    }

    /** Draws defects and outline on what has been drawn of the wood. */
    public void draw() {
        for (Defect defect : board.defects()) {
            paper.defect(frame.box(Region.of(defect)));
        }
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(STROKE);
        paper.pen().draw(frame.box(Region.whole(board)));
    }

    /**
     * Draws the axes.
     *
     * @param wordsEnd where the words above the left axis end (px)
     * @param under    from the board to the axis below it (px)
     * @return the y below all of it (px)
     */
    public int axes(double wordsEnd, int under) {
        Axis axis = new Axis(paper, figures);
        axis.leftOf(frame, board.width(), frame.left() - AXIS_GAP);
        paper.fromRight("y across", TextStyle.NOTE, Paper.SOFT_INK, wordsEnd, frame.top() - 28.0);
        return axis.below(frame, board.length(), frame.bottom() + under, "x along the grain, " + figures.unit());
    }
}
