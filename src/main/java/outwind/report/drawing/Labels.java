package outwind.report.drawing;

import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Finds room for labels beside the places they name, so that no label covers another, nor what must stay clear.
 *
 * <p>Each label tries all sides close to its place, then further and further away, where a leader line joins the two.
 * What was placed first stays where it is; all in pixels.
 */
public final class Labels {

    /** A direction from a place to its label; y runs down the sheet. */
    public enum Side {
        ABOVE(0, -1), BELOW(0, 1), RIGHT(1, 0), LEFT(-1, 0), ABOVE_RIGHT(1, -1), ABOVE_LEFT(-1, -1),
        BELOW_RIGHT(1, 1), BELOW_LEFT(-1, 1);

        public static final List<Side> ALL = List.of(values());

        private final int dx;
        private final int dy;

        Side(int dx, int dy) {
            this.dx = dx;
            this.dy = dy;
        }
    }

    /**
     * A label with its place.
     *
     * @param box    what it covers (px)
     * @param leader from the place to the label; empty where they lie side by side
     */
    public record Placed(Rectangle2D box, Optional<Line2D> leader) { }

    /** Distances from a mark to its label that are tried in turn (px). */
    private static final double[] REACH = {3, 12, 24, 40, 60, 85, 115, 150, 190};

    /** Beyond this distance a leader line is needed (px). */
    private static final double BESIDE = 13;

    /** A label nearer than this that covers something disliked is better than a clean one further away (px). */
    private static final double NEAR = 61;

    private final Rectangle2D paper;
    private final List<Rectangle2D> kept = new ArrayList<>();
    private final List<Rectangle2D> disliked = new ArrayList<>();
    private final List<Line2D> leaders = new ArrayList<>();

    /** @param paper no label reaches beyond it */
    public Labels(Rectangle2D paper) {
        this.paper = paper;
    }

    /** No label may cover this. */
    public void keepClear(Rectangle2D box) {
        kept.add(box);
    }

    /** Labels cover this only where there is no other room. */
    public void avoid(Rectangle2D box) {
        disliked.add(box);
    }

    /** True if nothing that must stay clear is covered by it. */
    public boolean isFree(Rectangle2D box) {
        return isFree(box, false);
    }

    /**
     * Finds room for a label and keeps it from then on.
     *
     * @param mark  the mark that it belongs to
     * @param size  a box of the label's size, wherever it lies
     * @param sides sides of the mark that may be used, best first
     * @return empty if there is no room within reach
     */
    public Optional<Placed> place(Rectangle2D mark, Rectangle2D size, List<Side> sides) {
        Optional<Placed> found = search(mark, size, sides, NEAR, true);
        if (found.isEmpty()) {
            found = search(mark, size, sides, Double.POSITIVE_INFINITY, false);
        }
        found.ifPresent(placed -> {
            kept.add(placed.box());
            placed.leader().ifPresent(leaders::add);
        });
        return found;
    }

    /**
     * Writes the first of these words that there is room for, on a white plate; none of them where there is no room
     * for any.
     */
    public void write(Paper sheet, TextStyle type, Rectangle2D mark, List<Side> sides, String... words) {
        for (String text : words) {
            Optional<Placed> placed = place(mark, sheet.plateFor(text, type), sides);
            if (placed.isPresent()) {
                placed.get().leader().ifPresent(line -> leader(sheet, line));
                sheet.plate(text, type, placed.get().box());
                return;
            }
        }
    }

    /** Writes words right beside a mark, or not at all. */
    public void writeClose(Paper sheet, TextStyle type, Rectangle2D mark, String words) {
        Rectangle2D plate = sheet.plateFor(words, type);
        search(mark, plate, Side.ALL, BESIDE, true).or(() -> search(mark, plate, Side.ALL, BESIDE, false))
            .ifPresent(placed -> {
                kept.add(placed.box());
                sheet.plate(words, type, placed.box());
            });
    }

    private static void leader(Paper sheet, Line2D line) {
        sheet.line(line.getX1(), line.getY1(), line.getX2(), line.getY2(), Paper.WHITE, 6);
        sheet.line(line.getX1(), line.getY1(), line.getX2(), line.getY2(), Paper.INK, 2);
    }

    private Optional<Placed> search(Rectangle2D mark, Rectangle2D size, List<Side> sides, double furthest,
                                    boolean choosy) {
        for (double reach : Arrays.stream(REACH).filter(reach -> reach < furthest).toArray()) {
            for (Side side : sides) {
                Rectangle2D box = beside(mark, size, side, reach);
                Optional<Line2D> leader = reach <= BESIDE ? Optional.empty() : Optional.of(join(mark, box));
                if (isFree(box, choosy) && leader.stream().allMatch(line -> crossesNoLabel(line, mark))) {
                    return Optional.of(new Placed(box, leader));
                }
            }
        }
        return Optional.empty();
    }

    private static Rectangle2D beside(Rectangle2D mark, Rectangle2D size, Side side, double reach) {
        double x = mark.getCenterX() + side.dx * (mark.getWidth() / 2 + reach + size.getWidth() / 2);
        double y = mark.getCenterY() + side.dy * (mark.getHeight() / 2 + reach + size.getHeight() / 2);
        return new Rectangle2D.Double(x - size.getWidth() / 2, y - size.getHeight() / 2, size.getWidth(),
            size.getHeight());
    }

    /** From the middle of the mark to the nearest place of the label. */
    private static Line2D join(Rectangle2D mark, Rectangle2D box) {
        Point2D from = new Point2D.Double(mark.getCenterX(), mark.getCenterY());
        Point2D to = new Point2D.Double(
            Math.max(box.getMinX(), Math.min(box.getMaxX(), from.getX())),
            Math.max(box.getMinY(), Math.min(box.getMaxY(), from.getY())));
        return new Line2D.Double(from, to);
    }

    private boolean isFree(Rectangle2D box, boolean choosy) {
        return paper.contains(box)
            && kept.stream().noneMatch(box::intersects)
            && leaders.stream().noneMatch(line -> line.intersects(box))
            && (!choosy || disliked.stream().noneMatch(box::intersects));
    }

    /** The mark itself may be among what is kept clear; its own leader begins in it. */
    private boolean crossesNoLabel(Line2D line, Rectangle2D mark) {
        return kept.stream().filter(box -> !box.intersects(mark)).noneMatch(line::intersects)
            && leaders.stream().noneMatch(line::intersectsLine);
    }

    /**
     * Moves labels of one column apart, each as little as the others let it; their order stays.
     *
     * @param wanted middles where they would best be (px), in rising order
     * @param gap    least distance from one middle to the next (px)
     * @return middles (px), length as {@code wanted}
     */
    public static double[] spread(double[] wanted, double gap) {
        // Runs of labels that touch share one shift: the mean of what each of them would like.
        List<double[]> runs = new ArrayList<>();
        for (int i = 0; i < wanted.length; i++) {
            runs.add(new double[] {wanted[i] - i * gap, 1});
            while (runs.size() > 1 && runs.get(runs.size() - 2)[0] > runs.get(runs.size() - 1)[0]) {
                double[] last = runs.remove(runs.size() - 1);
                double[] before = runs.remove(runs.size() - 1);
                double count = last[1] + before[1];
                runs.add(new double[] {(last[0] * last[1] + before[0] * before[1]) / count, count});
            }
        }
        double[] middles = new double[wanted.length];
        int i = 0;
        for (double[] run : runs) {
            for (int k = 0; k < run[1]; k++, i++) {
                middles[i] = run[0] + i * gap;
            }
        }
        return middles;
    }
}
