package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import outwind.judge.Judgement;
import outwind.report.drawing.Exaggeration;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Hatch;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;

/**
 * The board as one sights along it from the end that was measured from, over two straight sticks laid across face A,
 * one at either end. The far edge is on the left then. On a board without twist the sticks are in line.
 */
final class SightView {

    /** Above the heights, and below them: wood that stays, names of the edges, key and result (px). */
    private static final int HEADING = 58;
    private static final int ABOVE = 12;
    private static final int STAYS = 16;
    private static final int NAMES = 28;
    private static final int LINE = 30;

    private static final int STICK = 9;

    /** How far a stick reaches beyond the board, as a share of its width. */
    private static final double BEYOND = 0.08;

    private final Paper paper;
    private final Judgement judgement;
    private final Figures figures;
    private final double width;

    SightView(Paper paper, Judgement judgement, Figures figures) {
        this.paper = paper;
        this.judgement = judgement;
        this.figures = figures;
        this.width = judgement.board().width();
    }

    /** Everything but the heights, where its key stands below (px). */
    static int around() {
        return HEADING + ABOVE + STAYS + NAMES + 3 * LINE;
    }

    /** The same where its key stands beside (px). */
    static int aroundBeside() {
        return HEADING + ABOVE + STAYS + NAMES;
    }

    /** How much higher the far stick stands at the far edge than the near one does, from edge to edge (mm). */
    static double outOfLine(Judgement judgement) {
        double length = judgement.board().length();
        double width = judgement.board().width();
        return judgement.shape().topAt(length, width) - judgement.shape().topAt(length, 0)
            - judgement.shape().topAt(0, width) + judgement.shape().topAt(0, 0);
    }

    /** What the sticks show. */
    static String words(Judgement judgement, Figures figures) {
        double twist = outOfLine(judgement);
        String size = figures.number(Math.abs(twist));
        return size.equals(figures.number(0)) ? "The sticks are in line."
            : "Out of line by " + figures.length(Math.abs(twist)) + ".";
    }

    /**
     * Draws it.
     *
     * @param left   nothing is drawn further to the left (px)
     * @param top    top of the heading (px)
     * @param room   from left to right for the board (px)
     * @param keyLeft where the key begins; at {@code left} it stands below (px)
     * @return the frame of the board's end: mm from the far edge to the near one, and mm above the cut
     */
    Frame draw(int left, int top, int room, int keyLeft, Exaggeration heights) {
        paper.fromLeft("Sighted along the board", TextStyle.HEADING, Paper.INK, left, top + 16.0);
        paper.fromLeft("from the end you measured from", TextStyle.LABEL, Paper.SOFT_INK, left, top + 43.0);
        double length = judgement.board().length();
        double[] ends = {judgement.depthAt(0, 0), judgement.depthAt(0, width), judgement.depthAt(length, 0), judgement.depthAt(length, width)};
        double low = 0;
        double high = 0;
        for (double end : ends) {
            low = Math.min(low, end);
            high = Math.max(high, end);
        }
        int height = (int) Math.max(1, Math.round((high - low) * heights.pixels()));
        int margin = (int) (room * BEYOND) + 6;
        Frame frame = new Frame(left + margin, top + HEADING + ABOVE, room - 2 * margin, height, 0, width, low,
            low + height / heights.pixels());
        Hatch.paint(paper.pen(), new Rectangle2D.Double(frame.left(), frame.py(0), frame.width(),
            frame.bottom() - frame.py(0) + STAYS));
        paper.line(frame.left() - 10.0, frame.py(0), frame.right() + 10.0, frame.py(0), Paper.INK, 2.5f);
        stick(frame, ends[3], ends[2], false);
        stick(frame, ends[1], ends[0], true);
        int y = frame.bottom() + STAYS + NAMES / 2;
        paper.fromLeft("far edge", TextStyle.BODY, Paper.INK, frame.left(), y);
        paper.fromRight("near edge", TextStyle.BODY, Paper.INK, frame.right(), y);
        boolean isBelow = keyLeft == left;
        key(keyLeft, isBelow ? y + NAMES / 2 + LINE / 2 : frame.top() + LINE / 2);
        return frame;
    }

    /** A stick that lies on both edges, from its height at the far edge to that at the near one (mm). */
    private void stick(Frame frame, double far, double near, boolean isNear) {
        double beyond = BEYOND * frame.width();
        double rise = (frame.py(near) - frame.py(far)) / frame.width();
        double span = Math.hypot(frame.width() + 2 * beyond, rise * (frame.width() + 2 * beyond));
        AffineTransform turn = AffineTransform.getTranslateInstance(frame.left(), frame.py(far));
        turn.rotate(Math.atan(rise));
        double before = beyond * Math.hypot(1, rise);
        paint(turn.createTransformedShape(new Rectangle2D.Double(-before, -STICK, span, STICK)), isNear);
    }

    private void paint(Shape stick, boolean isNear) {
        paper.pen().setColor(isNear ? Paper.INK : Paper.WHITE);
        paper.pen().fill(stick);
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(new BasicStroke(2));
        paper.pen().draw(stick);
    }

    private void key(int left, int y) {
        paint(new Rectangle2D.Double(left, y - STICK / 2.0, 40, STICK), true);
        paper.fromLeft("stick at your end", TextStyle.BODY, Paper.INK, left + 52.0, y);
        paint(new Rectangle2D.Double(left, y + LINE - STICK / 2.0, 40, STICK), false);
        paper.fromLeft("stick at the other end", TextStyle.BODY, Paper.INK, left + 52.0, (double) y + LINE);
        paper.fromLeft(words(judgement, figures), TextStyle.STRONG, Paper.INK, left, y + 2.0 * LINE);
    }
}
