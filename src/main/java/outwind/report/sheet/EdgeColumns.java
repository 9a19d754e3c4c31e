package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Labels;
import outwind.report.drawing.Mark;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.report.words.Support;

/**
 * The supports of one edge, written beside it: shim, numbered disc, height and place, from the board outwards.
 *
 * <p>The height stands to the right of its disc, or beyond it where the edge is crowded. Discs that would lie on each
 * other move apart, each with a line to its shim. Where there is no room for heights, discs alone are drawn, and where
 * there is none for discs, only the shims: the table then tells the rest.
 */
final class EdgeColumns {

    private static final int DISC = 40;

    /** A support that rests has a ring without a number (px). */
    private static final int RING = 20;

    /** From the edge to the nearer side of the disc (px). */
    private static final int OUT = 18;

    /** Beside an edge without supports (px). */
    private static final int NONE = 6;

    private static final int BESIDE = 7;
    private static final int APART = 18;
    private static final int HEIGHT_LINE = 38;
    private static final int PLACE_LINE = 28;

    /** From the edge outwards, heights beyond their discs (px). */
    private static final int DEEPEST = OUT + DISC + HEIGHT_LINE + PLACE_LINE;

    private static final BasicStroke RIM = new BasicStroke(3);

    private static final String RESTS = "touches";

    private final Paper paper;
    private final Figures figures;
    private final List<Support> supports;
    private final int left;
    private final int right;
    private final boolean isFar;
    private final int leftHalf;
    private final int rightHalf;
    private final boolean isStacked;
    private final boolean isSmall;
    private final boolean isBare;

    /**
     * @param supports all of the board
     * @param isFar    the edge that is drawn
     * @param left     nothing is drawn further to the left (px)
     * @param right    nothing is drawn further to the right (px)
     */
    EdgeColumns(Paper paper, Figures figures, List<Support> supports, boolean isFar, int left, int right) {
        this.paper = paper;
        this.figures = figures;
        Support.Where edge = isFar ? Support.Where.FAR : Support.Where.NEAR;
        this.supports = supports.stream().filter(support -> support.where() == edge)
            .sorted(Comparator.comparingDouble(support -> support.shim().x())).toList();
        this.isFar = isFar;
        this.left = left;
        this.right = right;
        int each = (right - left) / Math.max(1, this.supports.size()) - APART;
        int half = (Math.max(DISC, widestPlace(TextStyle.TEXT)) + 1) / 2;
        int beside = Math.max(widestPlace(TextStyle.TEXT) / 2, DISC / 2 + BESIDE + widestWords(false));
        this.isStacked = half + beside > each;
        this.isSmall = 2 * stacked(false) > each;
        this.isBare = 2 * stacked(true) > each;
        this.leftHalf = isBare ? DISC / 2 : isStacked ? stacked(isSmall) : half;
        this.rightHalf = isBare ? DISC / 2 : isStacked ? stacked(isSmall) : beside;
    }

    private int widestPlace(TextStyle type) {
        return supports.stream().mapToInt(support -> paper.width(place(support), type)).max().orElse(0);
    }

    private int widestWords(boolean small) {
        return supports.stream().mapToInt(support -> paper.width(words(support), type(support, small))).max().orElse(0);
    }

    /** Half of what a support takes along the edge where its height stands beyond its disc (px). */
    private int stacked(boolean small) {
        return (Math.max(DISC, Math.max(widestPlace(small ? TextStyle.SMALL : TextStyle.TEXT), widestWords(small))) + 1) / 2;
    }

    private String place(Support support) {
        return "x " + figures.place(support.shim().x());
    }

    private String words(Support support) {
        return words(support, figures);
    }

    /** What is written beside the disc or ring of a support. */
    static String words(Support support, Figures figures) {
        return support.isShimmed() ? support.height(figures) : RESTS;
    }

    static TextStyle type(Support support, boolean small) {
        return small ? support.isShimmed() ? TextStyle.STRONG : TextStyle.SMALL : support.isShimmed() ? TextStyle.HEIGHT : TextStyle.TEXT;
    }

    private double width() {
        return leftHalf + rightHalf + (double) APART;
    }

    /** False where only the table tells how high each shim is. */
    boolean hasHeights() {
        return supports.isEmpty() || hasRoom() && !isBare;
    }

    private boolean hasRoom() {
        return width() * supports.size() <= right - left;
    }

    /** How far from the edge it reaches (px). */
    int depth() {
        return supports.isEmpty() ? NONE : !hasRoom() ? OUT : isBare ? OUT + DISC : isStacked ? DEEPEST : DEEPEST - HEIGHT_LINE;
    }

    /** Draws the supports beside their edge of the board and keeps labels off them. */
    void draw(Frame board, Labels labels) {
        int edge = isFar ? board.top() : board.bottom();
        if (hasRoom()) {
            double[] middles = middles(board);
            for (int i = 0; i < supports.size(); i++) {
                column(supports.get(i), board.px(supports.get(i).shim().x()), middles[i], edge);
                labels.keepClear(box(middles[i], edge));
            }
        }
        for (Support support : supports) {
            if (support.isShimmed()) {
                double x = board.px(support.shim().x());
                paper.mark(Mark.SHIM, x, outward(edge, Mark.SHIM_OUT));
                labels.keepClear(Mark.SHIM.around(x, outward(edge, Mark.SHIM_OUT)));
            }
        }
    }

    /** Middles of the discs: at their supports, or as near as the others and the paper let them (px). */
    private double[] middles(Frame board) {
        int last = supports.size() - 1;
        List<Double> wanted = new ArrayList<>();
        for (int i = 0; i <= last; i++) {
            double least = left + leftHalf + i * width();
            double most = right - rightHalf - (last - i) * width();
            wanted.add(Math.min(most, Math.max(least, board.px(supports.get(i).shim().x()))));
        }
        return Labels.spread(wanted.stream().mapToDouble(Double::doubleValue).toArray(), width());
    }

    /** Joined to its shim by a line that ends at the disc, so that it crosses no words. */
    private void column(Support support, double shim, double x, int edge) {
        int size = support.isShimmed() ? DISC : RING;
        double middle = outward(edge, OUT + DISC / 2);
        paper.line(shim, edge, x, outward(edge, OUT + (DISC - size) / 2), Paper.INK, 2);
        disc(paper, support, x, middle);
        if (isBare) {
            return;
        }
        if (isStacked) {
            paper.centred(words(support), type(support, isSmall), Paper.INK, x, outward(edge, OUT + DISC + HEIGHT_LINE / 2));
        } else {
            paper.fromLeft(words(support), type(support, isSmall), Paper.INK, x + size / 2.0 + BESIDE, middle);
        }
        paper.centred(place(support), isSmall ? TextStyle.SMALL : TextStyle.TEXT, Paper.INK, x, outward(edge, depth() - PLACE_LINE / 2));
    }

    /** What {@link #disc} takes (px). */
    static Rectangle2D place(Support support, double x, double y) {
        int size = support.isShimmed() ? DISC : RING;
        return new Rectangle2D.Double(x - size / 2.0, y - size / 2.0, size, size);
    }

    /** A full disc with the number of a shim, or an empty ring. */
    static Rectangle2D disc(Paper paper, Support support, double x, double y) {
        int size = support.isShimmed() ? DISC : RING;
        Ellipse2D disc = new Ellipse2D.Double(x - size / 2.0, y - size / 2.0, size, size);
        paper.pen().setColor(support.isShimmed() ? Paper.INK : Paper.WHITE);
        paper.pen().fill(disc);
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(RIM);
        paper.pen().draw(disc);
        support.number().ifPresent(number -> paper.centred(String.valueOf(number), TextStyle.HEADING, Paper.WHITE, x, y));
        return disc.getBounds2D();
    }

    private Rectangle2D box(double x, int edge) {
        double y = Math.min(outward(edge, OUT), outward(edge, depth()));
        return new Rectangle2D.Double(x - leftHalf, y, leftHalf + rightHalf, depth() - OUT);
    }

    private double outward(int edge, int distance) {
        return isFar ? edge - distance : edge + distance;
    }
}
