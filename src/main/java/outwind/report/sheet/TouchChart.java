package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.report.words.TouchSheet;
import outwind.surface.Region;

/**
 * The sheet to print and write on in the shop: the board from above with its spots numbered in the order to touch them,
 * and a box for every height.
 */
public final class TouchChart {

    /** More than the tallest layout takes (px); what is left over is cut off. */
    private static final int TALLEST = 4200;

    private static final int MARGIN = 40;
    private static final int ROOM = Paper.WIDTH - 2 * MARGIN;
    private static final int GAP = 24;

    /** Left of the board, for the places across, and right of it (px). */
    private static final int LEFT_GUTTER = 120;
    private static final int RIGHT_GUTTER = 60;
    private static final int MOST_LENGTH = ROOM - LEFT_GUTTER - RIGHT_GUTTER;
    private static final int MOST_HEIGHT = 520;

    /** Radius of a numbered spot, and the least distance between two (px). */
    public static final int SPOT = 20;

    /** Of the ring round a spot where a caliper measures as well (px). */
    private static final int RING = 26;
    private static final int APART = 50;

    /** Beyond the board's sides, clear of spots that stand right at them (px). */
    private static final int CLEAR = RING + 8;

    /** Columns of the list, with two boxes and with one; height of one of its lines, and of the box on it (px). */
    private static final int WIDE_COLUMNS = 3;
    private static final int LIST_COLUMNS = 4;
    private static final int LIST_LINE = 58;
    private static final int BOX_HEIGHT = 46;
    private static final int BOX_WIDTH = 108;

    /** Within a column of the list: where x and y end and the box begins (px). */
    private static final int X_END = 140;
    private static final int Y_END = 230;
    private static final int BOX = 244;
    private static final int SECOND_BOX = 362;

    private static final String CAUTIONS = "Touch off with the spindle still and locked against starting. The machine"
        + " maker's manual, local rules and trained practice come first.";

    private final Paper paper = new Paper(Paper.WIDTH, TALLEST);
    private final TouchSheet sheet;
    private final List<Place> calipers;
    private final TouchGrid grid;
    private final List<TouchGrid.Spot> tour;
    private final Figures figures;

    private TouchChart(TouchSheet sheet, Figures figures) {
        this.sheet = sheet;
        this.calipers = sheet.calipers();
        this.grid = sheet.grid();
        this.tour = sheet.tour();
        this.figures = figures;
    }

    /** Draws the sheet as a PNG image. */
    public static byte[] png(TouchSheet sheet, Figures figures) {
        TouchChart chart = new TouchChart(sheet, figures);
        return chart.paper.png(chart.draw());
    }

    /** The same, as it lies on the paper. */
    static Paper drawn(TouchSheet sheet, Figures figures) {
        TouchChart chart = new TouchChart(sheet, figures);
        chart.draw();
        return chart.paper;
    }

    private int draw() {
        int y = paper.paragraph(sheet.board().name(), TextStyle.NAME, MARGIN, MARGIN - 8, ROOM, 1);
        y = paper.paragraph("Touch off in this order", TextStyle.VERDICT, MARGIN, y, ROOM, 1);
        y = paper.paragraph(sheet.size(figures) + ". " + sheet.headline(), TextStyle.TEXT, MARGIN, y, ROOM, 2);
        for (String warning : sheet.warnings()) {
            y = paper.paragraph(warning, TextStyle.STRONG, MARGIN, y, ROOM, 2);
        }
        y = board(y + GAP) + GAP;
        y = list(y) + GAP;
        y = paper.paragraph("x from the end you measure from, y from the near edge, in " + figures.unitInFull()
            + ". Height of the cutter: higher is more; where zero is does not matter. If the first spot reads otherwise"
            + " at the end, the board or zero has moved.", TextStyle.TEXT, MARGIN, y, ROOM, 4);
        Optional<String> advice = sheet.caliperAdvice("that have a second ring and a second box");
        if (advice.isPresent()) {
            y = paper.paragraph(advice.get(), TextStyle.STRONG, MARGIN, y + 6, ROOM, 2);
        }
        y = paper.paragraph(CAUTIONS, TextStyle.TEXT, MARGIN, y + 6, ROOM, 2);
        return y + MARGIN - 8;
    }

    /** To scale where the spots are far enough apart for that; returns the y below it (px). */
    private int board(int top) {
        Frame frame = frame(grid, top + 40);
        Graphics2D pen = paper.pen();
        Rectangle2D outline = frame.box(new Region(0, 0, grid.length(), grid.width()));
        pen.setColor(Paper.INK);
        pen.setStroke(new BasicStroke(3));
        pen.draw(outline);
        path(frame);
        places(frame);
        for (int i = 0; i < tour.size(); i++) {
            spot(frame, tour.get(i), i + 1);
        }
        paper.fromLeft("far edge", TextStyle.NOTE, Paper.SOFT_INK, frame.left(), frame.top() - CLEAR);
        String scale = frame.isToScale() ? "" : "; not to scale";
        int under = frame.bottom() + CLEAR + 32;
        paper.fromLeft("near edge; the end you measure from is on the left" + scale, TextStyle.NOTE, Paper.SOFT_INK,
            frame.left(), under);
        return under + paper.height(TextStyle.NOTE) / 2;
    }

    /** Where the board lies, its upper side at {@code top} (px). */
    public static Frame frame(TouchGrid grid, int top) {
        double pixels = Math.min(MOST_LENGTH / grid.length(), MOST_HEIGHT / grid.width());
        return new Frame(MARGIN + LEFT_GUTTER, top, side(grid.length(), grid.inset(), grid.columns(), pixels),
            side(grid.width(), grid.inset(), grid.rows(), pixels), 0, grid.length(), 0, grid.width());
    }

    /** Length of a side of the board (px): to scale, or what keeps its spots apart. */
    private static int side(double extent, double inset, int count, double pixels) {
        double least = APART * extent / ((extent - 2 * inset) / (count - 1));
        return (int) Math.round(Math.max(extent * pixels, least));
    }

    private void path(Frame frame) {
        Path2D path = new Path2D.Double();
        path.moveTo(frame.px(tour.get(0).x()), frame.py(tour.get(0).y()));
        tour.forEach(spot -> path.lineTo(frame.px(spot.x()), frame.py(spot.y())));
        path.closePath();
        paper.pen().setColor(Paper.SOFT_INK);
        paper.pen().setStroke(new BasicStroke(2));
        paper.pen().draw(path);
    }

    private void spot(Frame frame, TouchGrid.Spot spot, int number) {
        double x = frame.px(spot.x());
        double y = frame.py(spot.y());
        Ellipse2D circle = new Ellipse2D.Double(x - SPOT, y - SPOT, 2 * SPOT, 2 * SPOT);
        Graphics2D pen = paper.pen();
        pen.setColor(number == 1 ? Paper.INK : Paper.WHITE);
        pen.fill(circle);
        pen.setColor(Paper.INK);
        pen.setStroke(new BasicStroke(2.5f));
        pen.draw(circle);
        if (calipers.contains(spot.place())) {
            pen.draw(new Ellipse2D.Double(x - RING, y - RING, 2 * RING, 2 * RING));
        }
        paper.centred(String.valueOf(number), TextStyle.STRONG, number == 1 ? Paper.WHITE : Paper.INK, x, y);
    }

    /** Where the columns and rows stand, below and left of the board. */
    private void places(Frame frame) {
        double free = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < grid.columns(); i++) {
            double x = grid.spot(i, 0).x();
            String text = figures.place(x);
            double half = paper.width(text, TextStyle.NOTE) / 2.0;
            if (frame.px(x) - half > free) {
                paper.line(frame.px(x), frame.bottom(), frame.px(x), frame.bottom() + 9, Paper.INK, 2);
                paper.centred(text, TextStyle.NOTE, Paper.INK, frame.px(x), frame.bottom() + CLEAR);
                free = frame.px(x) + half + 10;
            }
        }
        for (int j = 0; j < grid.rows(); j++) {
            double y = frame.py(grid.spot(0, j).y());
            paper.line(frame.left() - 9, y, frame.left(), y, Paper.INK, 2);
            paper.fromRight(figures.place(grid.spot(0, j).y()), TextStyle.NOTE, Paper.INK, frame.left() - CLEAR, y);
        }
        paper.fromRight("y", TextStyle.NOTE, Paper.SOFT_INK, frame.left() - CLEAR, frame.top() - CLEAR);
        paper.fromRight("x", TextStyle.NOTE, Paper.SOFT_INK, frame.left() - CLEAR, frame.bottom() + CLEAR);
    }

    /** The boxes to write in, down one column and on down the next; returns the y below them (px). */
    private int list(int top) {
        int count = tour.size() + 1;
        boolean isWide = !calipers.isEmpty();
        int most = isWide ? WIDE_COLUMNS : LIST_COLUMNS;
        int lines = (count + most - 1) / most;
        int columns = (count + lines - 1) / lines;
        int step = ROOM / most;
        for (int c = 0; c < columns; c++) {
            int left = MARGIN + c * step;
            paper.fromRight("x", TextStyle.NOTE, Paper.SOFT_INK, left + X_END, top + 12.0);
            paper.fromRight("y", TextStyle.NOTE, Paper.SOFT_INK, left + Y_END, top + 12.0);
            paper.centred("height", TextStyle.NOTE, Paper.SOFT_INK, left + BOX + BOX_WIDTH / 2.0, top + 12.0);
            if (isWide) {
                paper.centred("thickness", TextStyle.NOTE, Paper.SOFT_INK, left + SECOND_BOX + BOX_WIDTH / 2.0, top + 12.0);
            }
        }
        for (int i = 0; i < count; i++) {
            TouchGrid.Spot spot = tour.get(i % tour.size());
            int left = MARGIN + i / lines * step;
            int middle = top + 28 + i % lines * LIST_LINE + LIST_LINE / 2;
            if (i < tour.size()) {
                paper.fromLeft(String.valueOf(i + 1), TextStyle.STRONG, Paper.INK, left, middle);
            } else {
                paper.fromLeft("1", TextStyle.STRONG, Paper.INK, left, middle - 11.0);
                paper.fromLeft("again", TextStyle.NOTE, Paper.INK, left, middle + 11.0);
            }
            paper.fromRight(figures.place(spot.x()), TextStyle.TEXT, Paper.INK, left + X_END, middle);
            paper.fromRight(figures.place(spot.y()), TextStyle.TEXT, Paper.INK, left + Y_END, middle);
            paper.box(left + BOX, middle - BOX_HEIGHT / 2, BOX_WIDTH, BOX_HEIGHT, 2);
            if (i < tour.size() && calipers.contains(spot.place())) {
                paper.box(left + SECOND_BOX, middle - BOX_HEIGHT / 2, BOX_WIDTH, BOX_HEIGHT, 2);
            }
        }
        return top + 28 + lines * LIST_LINE;
    }
}
