package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import outwind.board.Board;
import outwind.board.Defect;
import outwind.board.Trim;
import outwind.cutting.Datum;
import outwind.flatten.NextReading;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.drawing.DepthScale;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Hatch;
import outwind.report.drawing.Labels;
import outwind.report.drawing.Mark;
import outwind.report.drawing.Paper;
import outwind.report.drawing.SymbolKey;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.report.words.Support;
import outwind.surface.Region;

/**
 * The board as whoever sets it down sees it, to scale, far edge up: in bands of colour what comes off face A, in figures
 * the same at the corners and in the middle, and beside the edges each shim with its height.
 */
final class DepthPlan {

    /** A board at least this wide on the sheet has room for figures (px). */
    static final int LEAST_BOARD = 54;
    private static final int LEAST_LENGTH = 170;

    /** How far into the board a mark or figure at its edge is moved (px). */
    private static final int INSIDE = 12;

    private static final int KEY_LINE = 34;

    private static final BasicStroke OUTLINE = new BasicStroke(3);

    private final Paper paper;
    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final List<Support> supports;
    private final EdgeColumns far;
    private final EdgeColumns near;
    private final int left;
    private final int right;

    /**
     * @param left  nothing is drawn further to the left (px)
     * @param right nothing is drawn further to the right (px)
     */
    DepthPlan(Paper paper, Judgement judgement, Figures figures, int left, int right) {
        this.paper = paper;
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.left = left;
        this.right = right;
        // Where nothing is cut, nothing is set down.
        this.supports = judgement.planned() == Planned.NONE ? List.of() : Support.round(judgement);
        this.far = new EdgeColumns(paper, figures, supports, true, left, right);
        this.near = new EdgeColumns(paper, figures, supports, false, left, right);
    }

    /** All that stands above and below the board (px). */
    int around() {
        return far.depth() + near.depth() + KEY_LINE;
    }

    /** The board, its shims and key below {@code top} (px), at a scale (px per mm). */
    Frame frame(int top, int gutter, double pixels) {
        return new Frame(left + gutter, top + far.depth(),
            (int) Math.max(LEAST_LENGTH, Math.round(board.length() * pixels)),
            (int) Math.max(LEAST_BOARD, Math.round(board.width() * pixels)), 0, board.length(), 0, board.width());
    }

    /** The y below the board, its shims and its key (px). */
    int below(Frame frame) {
        return frame.bottom() + near.depth() + KEY_LINE;
    }

    DepthMap map(Frame frame) {
        return DepthMap.of(judgement, frame.width(), frame.height());
    }

    void draw(Frame frame, DepthMap map, DepthScale scale) {
        double[] depths = map.depth().enlarged(frame.width(), frame.height());
        paper.pen().drawImage(DepthMap.painted(depths, frame.width(), frame.height(), scale), frame.left(),
            frame.top(), null);
        for (Defect defect : board.defects()) {
            paper.defect(frame.box(Region.of(defect)));
        }
        trim(frame);
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(OUTLINE);
        paper.pen().draw(new Rectangle2D.Double(frame.left(), frame.top(), frame.width(), frame.height()));

        Labels labels = new Labels(new Rectangle2D.Double(left, frame.top() - far.depth(), right - left,
            frame.height() + far.depth() + near.depth()));
        frame.sides().forEach(labels::avoid);
        names(frame, labels);
        far.draw(frame, labels);
        near.draw(frame, labels);
        List<Rectangle2D> suspects = judgement.doubts().stream().map(doubt -> doubt.suspect().reading())
            .map(reading -> marked(frame, labels, Mark.SUSPECT, reading.x(), reading.y())).toList();
        inside(frame, labels);
        corners(frame, labels);
        marks(frame, labels, suspects);
        contours(frame, labels, depths, scale);
        key(map, frame.bottom() + near.depth() + KEY_LINE / 2 + 2);
    }

    private void trim(Frame frame) {
        if (!board.trim().equals(Trim.NONE)) {
            paper.trim(frame.box(Region.kept(board)));
        }
    }

    private void names(Frame frame, Labels labels) {
        int half = paper.height(TextStyle.BODY) / 2;
        double x = frame.left() - 14.0;
        name("far edge", x, frame.top() + half, labels);
        name("near edge", x, frame.bottom() - half, labels);
    }

    private void name(String words, double x, double y, Labels labels) {
        paper.fromRight(words, TextStyle.BODY, Paper.INK, x, y);
        labels.keepClear(new Rectangle2D.Double(x - paper.width(words, TextStyle.BODY), y - 14, paper.width(words, TextStyle.BODY)
            + 14, 28));
    }

    /** What comes off at the four corners and in the middle. */
    private void corners(Frame frame, Labels labels) {
        double middleX = frame.left() + frame.width() / 2.0;
        double middleY = frame.top() + frame.height() / 2.0;
        figure(frame, labels, 0, board.width(), middleX, middleY);
        figure(frame, labels, board.length(), board.width(), middleX, middleY);
        figure(frame, labels, 0, 0, middleX, middleY);
        figure(frame, labels, board.length(), 0, middleX, middleY);
        figure(frame, labels, board.length() / 2, board.width() / 2, middleX, middleY);
    }

    private void figure(Frame frame, Labels labels, double x, double y, double middleX, double middleY) {
        double depth = judgement.depthAt(x, y);
        String text = EdgeView.depth(depth, figures);
        Rectangle2D plate = paper.plateFor(text, TextStyle.STRONG);
        double halfWidth = plate.getWidth() / 2 + 4;
        double halfHeight = plate.getHeight() / 2 + 2;
        double inwards = Math.signum(Math.rint(middleX - frame.px(x)));
        double py = frame.py(y) + Math.signum(Math.rint(middleY - frame.py(y))) * halfHeight;
        for (int step = 0; step < 20; step++) {
            double px = frame.px(x) + inwards * halfWidth + (inwards == 0 ? 1 : inwards) * 4 * step;
            Rectangle2D box = new Rectangle2D.Double(px - plate.getWidth() / 2, py - plate.getHeight() / 2,
                plate.getWidth(), plate.getHeight());
            if (labels.isFree(box)) {
                paper.plate(text, TextStyle.STRONG, box);
                labels.keepClear(box);
                return;
            }
        }
    }

    /** Supports away from the edges, each with its height, or that it touches, on the board beside it. */
    private void inside(Frame frame, Labels labels) {
        List<Support> inside = supports.stream().filter(support -> support.where() == Support.Where.INSIDE).toList();
        List<Rectangle2D> discs = new ArrayList<>();
        List<Support> drawn = new ArrayList<>();
        for (Support support : inside) {
            Rectangle2D disc = EdgeColumns.place(support, frame.px(support.shim().x()), frame.py(support.shim().y()));
            if (labels.isFree(disc)) {
                EdgeColumns.disc(paper, support, disc.getCenterX(), disc.getCenterY());
                labels.keepClear(disc);
                discs.add(disc);
                drawn.add(support);
            } else {
                paper.mark(Mark.SHIM, disc.getCenterX(), disc.getCenterY());
                labels.keepClear(Mark.SHIM.around(disc.getCenterX(), disc.getCenterY()));
            }
        }
        for (int i = 0; i < discs.size(); i++) {
            labels.write(paper, EdgeColumns.type(drawn.get(i), drawn.size() > 4), discs.get(i),
                List.of(Labels.Side.RIGHT, Labels.Side.LEFT, Labels.Side.ABOVE, Labels.Side.BELOW),
                EdgeColumns.words(drawn.get(i), figures));
        }
    }

    /** True if the cutter is zeroed on the highest spot, which then must be found. */
    private boolean hasHighest() {
        return judgement.planned() != Planned.NONE && judgement.cuts().faceA().datum() != Datum.BED;
    }

    private void marks(Frame frame, Labels labels, List<Rectangle2D> suspects) {
        List<Rectangle2D> places = judgement.worthReading().stream()
            .map(next -> marked(frame, labels, Mark.NEXT, next.x(), next.y())).toList();
        if (hasHighest()) {
            int spot = judgement.whole().highestOver(judgement.cuts().faceA().plane());
            Rectangle2D high = marked(frame, labels, Mark.HIGHEST, judgement.whole().x()[spot],
                judgement.whole().y()[spot]);
            labels.write(paper, TextStyle.STRONG, high, Labels.Side.ALL, "set zero here", "zero");
        }
        for (Rectangle2D suspect : suspects) {
            labels.write(paper, TextStyle.STRONG, suspect, Labels.Side.ALL, "read again");
        }
        for (int i = 0; i < places.size(); i++) {
            boolean byCaliper = judgement.worthReading().get(i).tool() == NextReading.Tool.CALIPER;
            labels.write(paper, TextStyle.STRONG, places.get(i), Labels.Side.ALL,
                (byCaliper ? "caliper " : "read ") + (i + 1), "" + (i + 1));
        }
    }

    /** At its place, or moved inwards where it would stand over the edge or over a figure. */
    private Rectangle2D marked(Frame frame, Labels labels, Mark mark, double x, double y) {
        double inX = Math.min(frame.right() - INSIDE, Math.max(frame.left() + INSIDE, frame.px(x)));
        double inY = Math.min(frame.bottom() - INSIDE, Math.max(frame.top() + INSIDE, frame.py(y)));
        int towards = inX > frame.left() + frame.width() / 2.0 ? -1 : 1;
        Point2D place = new Point2D.Double(inX, inY);
        for (int step = 1; step < frame.width() / 3 && !labels.isFree(mark.around(place.getX(), place.getY())); step++) {
            int along = (step + 1) / 2 * (step % 2 == 1 ? towards : -towards) * 3;
            place = new Point2D.Double(Math.min(frame.right() - INSIDE, Math.max(frame.left() + INSIDE, inX + along)),
                inY);
        }
        Rectangle2D box = mark.around(place.getX(), place.getY());
        paper.mark(mark, place.getX(), place.getY());
        labels.keepClear(box);
        return box;
    }

    /** The depth on each border between two bands, somewhere along it where there is room. */
    private void contours(Frame frame, Labels labels, double[] depths, DepthScale scale) {
        for (int i = 1; i < scale.bands(); i++) {
            double level = scale.levels().get(i);
            String text = DepthScale.text(level, figures);
            Rectangle2D size = new Rectangle2D.Double(0, 0, paper.width(text, TextStyle.SMALL) + 4.0,
                paper.height(TextStyle.SMALL) - 3.0);
            Rectangle2D best = roomOn(frame, labels, depths, level, size);
            if (best != null) {
                labels.keepClear(best);
                boolean isDark = scale.colour(i).getGreen() < 150;
                paper.centred(text, TextStyle.SMALL, isDark ? Paper.WHITE : Paper.INK, best.getCenterX(),
                    best.getCenterY());
            }
        }
    }

    /** A box beside the border, on the deeper band, nearest to the middle of the board's length; null if none is free. */
    private Rectangle2D roomOn(Frame frame, Labels labels, double[] depths, double level, Rectangle2D size) {
        int width = frame.width();
        int height = frame.height();
        int halfX = (int) Math.ceil(size.getWidth() / 2) + 1;
        int halfY = (int) Math.ceil(size.getHeight() / 2) + 1;
        Rectangle2D best = null;
        double nearest = Double.POSITIVE_INFINITY;
        for (int j = halfY + 2; j < height - halfY - 2; j += 3) {
            for (int i = halfX + 2; i < width - halfX - 2; i += 4) {
                double away = Math.abs(i - width / 2.0) + Math.abs(j - height / 2.0);
                if (away >= nearest || !isOnDeeperSide(depths, width, i, j, halfX, halfY, level)) {
                    continue;
                }
                Rectangle2D box = new Rectangle2D.Double(frame.left() + i - size.getWidth() / 2,
                    frame.top() + j - size.getHeight() / 2, size.getWidth(), size.getHeight());
                if (labels.isFree(box)) {
                    best = box;
                    nearest = away;
                }
            }
        }
        return best;
    }

    /** True if the box lies in deeper wood with one of its sides at the border. */
    private static boolean isOnDeeperSide(double[] depths, int width, int i, int j, int halfX, int halfY,
                                          double level) {
        double left = depths[j * width + i - halfX];
        double right = depths[j * width + i + halfX];
        double above = depths[(j - halfY) * width + i];
        double below = depths[(j + halfY) * width + i];
        boolean isDeeper = Math.min(Math.min(left, right), Math.min(above, below)) >= level;
        return isDeeper && (depths[j * width + i - halfX - 2] < level || depths[j * width + i + halfX + 2] < level
            || depths[(j - halfY - 2) * width + i] < level || depths[(j + halfY + 2) * width + i] < level);
    }

    private void key(DepthMap map, int y) {
        SymbolKey key = new SymbolKey(paper);
        if (hasHighest()) {
            key.add(Mark.HIGHEST::paint, "highest spot");
        }
        if (!supports.isEmpty()) {
            key.add(Mark.SHIM::paint, far.hasHeights() && near.hasHeights() ? "shim, its height in " + figures.unitInFull()
                : "shim; heights are on the sheet with the details");
        }
        if (!judgement.worthReading().isEmpty()) {
            key.add(Mark.NEXT::paint, "measure here next");
        }
        if (!judgement.doubts().isEmpty()) {
            key.add(Mark.SUSPECT::paint, "looks wrong");
        }
        if (map.hasAir()) {
            key.add((pen, x, y1) -> Hatch.paint(pen, new Rectangle2D.Double(x - 20, y1 - 9, 40, 18)), "below the cut");
        }
        if (!board.trim().equals(Trim.NONE)) {
            key.add(Paper::dashed, "trim");
        }
        if (!board.defects().isEmpty()) {
            key.add((pen, x, y1) -> Paper.crossed(pen, new Rectangle2D.Double(x - 18, y1 - 9, 36, 18)), "defect");
        }
        key.drawInARow(left, y, right - left);
    }
}
