package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import outwind.judge.Judgement;
import outwind.report.drawing.DepthScale;
import outwind.report.drawing.Exaggeration;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Hatch;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;

/**
 * Both edges of the board from the side, one above the other: what stands above the cut, with what comes off at five
 * places. A twisted board rises to the right on one of them and to the left on the other.
 */
final class EdgeView {

    /** Above each edge its figures, below it the wood that stays, and between the two (px). */
    private static final int FIGURES = 28;
    private static final int STAYS = 20;
    private static final int BETWEEN = 12;

    /** Below both: places along the board, and what they are counted from (px). */
    private static final int AXIS = 58;

    private static final int HEADING = 38;

    private static final BasicStroke FACE = new BasicStroke(2.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);

    private final Paper paper;
    private final Figures figures;
    private final DepthScale scale;
    private final EdgeDepths far;
    private final EdgeDepths near;
    private final double length;

    EdgeView(Paper paper, Judgement judgement, Figures figures, DepthScale scale) {
        this.paper = paper;
        this.figures = figures;
        this.scale = scale;
        this.length = judgement.board().length();
        this.far = EdgeDepths.along(judgement, judgement.board().width());
        this.near = EdgeDepths.along(judgement, 0);
    }

    /** Everything but the heights themselves, for both edges (px). */
    static int around() {
        return HEADING + 2 * (FIGURES + STAYS) + BETWEEN + AXIS;
    }

    /** What lies below the lower frame (px). */
    static int belowLast() {
        return STAYS + AXIS;
    }

    private double most() {
        return Math.max(far.most(), near.most());
    }

    private double least() {
        return Math.min(far.least(), near.least());
    }

    /** How tall heights are drawn where each edge has so much room (px). */
    Exaggeration exaggeration(int room, int width) {
        return Exaggeration.fitting(most() - least(), room, width / length);
    }

    /**
     * Draws both.
     *
     * @param left   left end of the board (px)
     * @param top    top of the heading (px)
     * @param width  of the board (px)
     * @param gutter left of the board, for names (px)
     * @param right  nothing is drawn further to the right (px)
     * @return the frames of the far and the near edge: mm along the board, and mm above the cut
     */
    Frame[] draw(int left, int top, int width, int gutter, int right, Exaggeration heights) {
        String what = "Both edges from the side, above the cut";
        paper.fromLeft(what, TextStyle.HEADING, Paper.INK, left - gutter, top + HEADING / 2.0 - 2);
        double beside = left - gutter + paper.width(what, TextStyle.HEADING) + 18.0;
        if (beside + paper.width(heights.words(), TextStyle.LABEL) <= right) {
            paper.fromLeft(heights.words(), TextStyle.LABEL, Paper.INK, beside, top + HEADING / 2.0 - 1);
        }
        Frame upper = frame(left, top + HEADING + FIGURES, width, heights);
        Frame lower = frame(left, upper.bottom() + STAYS + BETWEEN + FIGURES, width, heights);
        edge(far, "far edge", upper);
        edge(near, "near edge", lower);
        axis(lower, lower.bottom() + STAYS);
        return new Frame[] {upper, lower};
    }

    private Frame frame(int left, int top, int width, Exaggeration heights) {
        int height = (int) Math.max(1, Math.round((most() - least()) * heights.pixels()));
        double range = height / heights.pixels();
        return new Frame(left, top, width, height, 0, length, least(), least() + range);
    }

    private void edge(EdgeDepths edge, String name, Frame frame) {
        Rectangle2D stays = new Rectangle2D.Double(frame.left(), frame.py(0), frame.width(),
            frame.bottom() - frame.py(0) + STAYS);
        Hatch.paint(paper.pen(), stays);
        wood(edge, frame);
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(FACE);
        paper.pen().draw(outline(edge, frame));
        paper.line(frame.left() - 10.0, frame.py(0), frame.right() + 10.0, frame.py(0), Paper.INK, 2.5f);
        paper.fromRight(name, TextStyle.BODY, Paper.INK, frame.left() - 16.0, frame.py(0) + 8);
        paper.fromLeft("cut", TextStyle.BODY, Paper.INK, frame.right() + 14.0, frame.py(0) + 8);
        for (int k = 0; k < EdgeDepths.STATIONS; k++) {
            double x = frame.px(edge.stationAt(k));
            double y = frame.py(edge.stationDepth(k));
            paper.line(x, y, x, frame.py(0), Paper.INK, 1.5f);
            paper.centred(depth(edge.stationDepth(k), figures), TextStyle.STRONG, Paper.INK, x,
                Math.min(y, frame.py(0)) - FIGURES / 2.0);
        }
    }

    /** What is written of a depth (mm): where the cutter meets air, none. */
    static String depth(double depth, Figures figures) {
        return figures.number(Math.max(0, depth));
    }

    /** Above the cut in the colours of the scale, below it white: the cutter meets air. */
    private void wood(EdgeDepths edge, Frame frame) {
        for (int i = 0; i < frame.width(); i++) {
            double place = (i + 0.5) / frame.width() * (edge.place().length - 1);
            int k = (int) Math.min(edge.place().length - 2, place);
            double depth = edge.depth()[k] + (place - k) * (edge.depth()[k + 1] - edge.depth()[k]);
            paper.pen().setColor(depth > 0 ? scale.colour(scale.band(depth)) : Paper.WHITE);
            double top = frame.py(Math.max(0, depth));
            paper.pen().fill(new Rectangle2D.Double(frame.left() + i, top, 1, frame.py(Math.min(0, depth)) - top));
        }
    }

    private static Path2D outline(EdgeDepths edge, Frame frame) {
        Path2D path = new Path2D.Double();
        path.moveTo(frame.left(), frame.bottom() + STAYS);
        for (int i = 0; i < edge.place().length; i++) {
            path.lineTo(frame.px(edge.place()[i]), frame.py(edge.depth()[i]));
        }
        path.lineTo(frame.right(), frame.bottom() + STAYS);
        return path;
    }

    private void axis(Frame frame, int top) {
        for (int k = 0; k < EdgeDepths.STATIONS; k++) {
            double x = frame.px(near.stationAt(k));
            paper.line(x, top, x, top + 7.0, Paper.INK, 1.5f);
            String place = (k == 0 ? "x " : "") + figures.place(near.stationAt(k));
            paper.centred(place, TextStyle.LABEL, Paper.INK, x, top + 20.0);
        }
        paper.fromLeft("x is counted from the end you measured from, " + figures.unit(), TextStyle.LABEL, Paper.SOFT_INK,
            frame.left(), top + 44.0);
    }
}
