package outwind.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import outwind.board.Board;
import outwind.setup.BedContact;
import outwind.stock.Judgement;

/**
 * The board as whoever sets it down sees it, to scale, far edge up: where each shim goes and how high it is, where the
 * board rests by itself, and where the cutter is touched off.
 */
final class SetupPlan {

    /** Left and right of the board, for the words that say which end and edge is which (px). */
    private static final int GUTTER = 164;

    private static final int KEY_LINE = 40;

    /** A board at least this wide on the sheet has room for marks and words (px). */
    private static final int LEAST_BOARD = 130;

    /** How far into the board a mark at its edge is moved, clear of the shims (px). */
    private static final int INSIDE = 10;

    /** What an arrow takes between its words and the board (px). */
    private static final int ARROW = 34;

    private static final String FACE_UP = "face A up";

    private static final Color WOOD = new Color(0xf3, 0xec, 0xe0);

    private final Paper paper;
    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final List<Support> inside;
    private final EdgeColumns far;
    private final EdgeColumns near;
    private final int left;
    private final int right;

    /**
     * @param left  nothing is drawn further to the left (px)
     * @param right nothing is drawn further to the right (px)
     */
    SetupPlan(Paper paper, Judgement judgement, Figures figures, List<Support> supports, int left, int right) {
        this.paper = paper;
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.left = left;
        this.right = right;
        this.inside = supports.stream().filter(support -> support.where() == Support.Where.INSIDE).toList();
        this.far = new EdgeColumns(paper, figures, supports, true, left, right);
        this.near = new EdgeColumns(paper, figures, supports, false, left, right);
    }

    /** Less than this from top to bottom is too little to see the board (px). */
    int leastHeight() {
        double toScale = boardWidth() * board.width() / board.length();
        return (int) Math.min(LEAST_BOARD, toScale) + far.depth() + near.depth() + KEY_LINE;
    }

    private int boardWidth() {
        return right - left - 2 * GUTTER;
    }

    /** Draws it between {@code top} and {@code bottom} (px). */
    void draw(int top, int bottom) {
        Frame frame = frame(top, bottom);
        Rectangle2D outline = new Rectangle2D.Double(frame.left(), frame.top(), frame.width(), frame.height());
        paper.pen().setColor(WOOD);
        paper.pen().fill(outline);
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(new BasicStroke(4));
        paper.pen().draw(outline);

        Labels labels = new Labels(new Rectangle2D.Double(left, top, right - left, bottom - top));
        frame.sides().forEach(labels::avoid);
        edges(frame, labels);
        far.draw(frame, labels);
        near.draw(frame, labels);
        inside(frame, labels);
        marks(frame, labels);
        key(frame, frame.bottom() + near.depth() + KEY_LINE / 2 + 4);
    }

    /** In the middle of the room. */
    private Frame frame(int top, int bottom) {
        int height = Math.max(1, bottom - top - far.depth() - near.depth() - KEY_LINE);
        Frame fitted = Frame.ofBoard(board, 0, 0, boardWidth(), height);
        return fitted.movedTo((left + right - fitted.width()) / 2,
            top + far.depth() + Math.max(0, height - fitted.height()) / 2);
    }

    private void edges(Frame frame, Labels labels) {
        int line = paper.height(Type.TEXT);
        double middle = (frame.top() + frame.bottom()) / 2.0;
        double out = Math.max(line / 2.0 + 1, frame.height() / 2.0 - line / 2.0);
        double x = frame.right() + ARROW + 6;
        edge("far edge", x, middle - out, frame.right(), frame.top(), labels);
        edge("near edge", x, middle + out, frame.right(), frame.bottom(), labels);
        List<String> words = List.of("end you", "measured", "from");
        double y = middle - line;
        for (String word : words) {
            paper.fromRight(word, Type.TEXT, Paper.INK, frame.left() - ARROW - 6.0, y);
            y += line;
        }
        arrow(frame.left() - ARROW, middle, frame.left() - 5.0, middle);
        labels.keepClear(new Rectangle2D.Double(frame.left() - GUTTER, middle - 1.5 * line, GUTTER, 3.0 * line));
    }

    private void edge(String words, double x, double y, double cornerX, double cornerY, Labels labels) {
        paper.fromLeft(words, Type.TEXT, Paper.INK, x, y);
        arrow(x - 6, y, cornerX + 5, cornerY);
        labels.keepClear(new Rectangle2D.Double(cornerX, y - 18, x - cornerX + paper.width(words, Type.TEXT), 36));
    }

    private void arrow(double x1, double y1, double x2, double y2) {
        paper.line(x1, y1, x2, y2, Paper.INK, 2.5f);
        double turn = Math.atan2(y2 - y1, x2 - x1);
        Path2D head = new Path2D.Double();
        head.moveTo(x2, y2);
        for (double side : new double[] {-0.4, 0.4}) {
            head.lineTo(x2 - 14 * Math.cos(turn + side), y2 - 14 * Math.sin(turn + side));
        }
        head.closePath();
        paper.pen().fill(head);
    }

    /** Supports away from the edges, each with its height, or that it touches, on the board beside it. */
    private void inside(Frame frame, Labels labels) {
        List<Rectangle2D> discs = inside.stream().map(support -> EdgeColumns.disc(paper, support,
            frame.px(support.shim().x()), frame.py(support.shim().y()))).toList();
        discs.forEach(labels::keepClear);
        for (int i = 0; i < discs.size(); i++) {
            labels.write(paper, EdgeColumns.type(inside.get(i)), discs.get(i), List.of(Labels.Side.RIGHT, Labels.Side.LEFT,
                Labels.Side.ABOVE, Labels.Side.BELOW), EdgeColumns.words(inside.get(i), figures));
        }
    }

    private void marks(Frame frame, Labels labels) {
        for (BedContact rest : judgement.pose().restsAt()) {
            Point2D place = inside(frame, rest.x(), rest.y());
            Mark.REST.paint(paper.pen(), place.getX(), place.getY());
            labels.keepClear(Mark.REST.around(place.getX(), place.getY()));
        }
        int spot = judgement.whole().highestOver(judgement.cuts().faceA().plane());
        Point2D place = inside(frame, judgement.whole().x()[spot], judgement.whole().y()[spot]);
        Rectangle2D high = Mark.HIGHEST.around(place.getX(), place.getY());
        Mark.HIGHEST.paint(paper.pen(), place.getX(), place.getY());
        labels.keepClear(high);
        labels.write(paper, Type.HEADING, high, Labels.Side.ALL, "highest: touch off here", "touch off here",
            "highest");
        faceUp(frame, labels);
    }

    /** In the middle of the board, or as near to it as the marks let it. */
    private void faceUp(Frame frame, Labels labels) {
        Rectangle2D words = paper.plateFor(FACE_UP, Type.HEADING);
        for (double along : new double[] {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.15, 0.85}) {
            Rectangle2D box = new Rectangle2D.Double(frame.left() + along * frame.width() - words.getWidth() / 2,
                frame.top() + (frame.height() - words.getHeight()) / 2, words.getWidth(), words.getHeight());
            boolean isOnBoard = box.getMinX() > frame.left() && box.getMaxX() < frame.right()
                && box.getHeight() < frame.height();
            if (isOnBoard && labels.isFree(box)) {
                paper.plate(FACE_UP, Type.HEADING, box);
                labels.keepClear(box);
                return;
            }
        }
    }

    private Point2D inside(Frame frame, double x, double y) {
        return new Point2D.Double(
            Math.min(frame.right() - INSIDE, Math.max(frame.left() + INSIDE, frame.px(x))),
            Math.min(frame.bottom() - INSIDE, Math.max(frame.top() + INSIDE, frame.py(y))));
    }

    private void key(Frame frame, int y) {
        SymbolKey key = new SymbolKey(paper);
        if (!judgement.pose().restsAt().isEmpty()) {
            key.add(Mark.REST::paint, "rests here without shims");
        }
        key.drawInARow(left, y);
        String words = "lengths in " + figures.unitInFull()
            + (frame.isToScale() ? "" : "; drawn wider than it is");
        paper.fromRight(words, Type.TEXT, Paper.INK, right, y);
    }
}
