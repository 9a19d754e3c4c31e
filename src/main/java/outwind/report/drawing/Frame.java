package outwind.report.drawing;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.XYStyler;
import outwind.board.Board;
import outwind.surface.Region;

/**
 * A rectangle of the sheet and the lengths that it shows: one to the right, one up.
 *
 * @param left   its left side (px)
 * @param top    its upper side (px)
 * @param width  px, positive
 * @param height px, positive
 * @param x1     length at its left side (mm)
 * @param x2     length at its right side (mm), more than {@code x1}
 * @param y1     length at its lower side (mm)
 * @param y2     length at its upper side (mm), more than {@code y1}
 */
public record Frame(int left, int top, int width, int height, double x1, double x2, double y1, double y2) {

    private static final Color NOTHING = new Color(0, 0, 0, 0);

    /** What a line along a side covers (px). */
    private static final int SIDE = 4;

    /** A board narrower than this cannot be read (px). */
    private static final int LEAST_BOARD = 40;

    /**
     * The largest frame that shows a board to scale.
     *
     * @param left   left side of the board (px)
     * @param top    far edge of the board (px)
     * @param width  most room (px)
     * @param height most room (px)
     * @return to scale, unless the board is so slender that it would be a mere line
     */
    public static Frame ofBoard(Board board, int left, int top, int width, int height) {
        return ofBoard(board, left, top, Math.min(width / board.length(), height / board.width()), LEAST_BOARD);
    }

    /**
     * A frame that shows a board to the scale of others on the same sheet.
     *
     * @param pixels px per mm
     * @param least  a side of the board is no less than this (px)
     */
    public static Frame ofBoard(Board board, int left, int top, double pixels, int least) {
        int along = (int) Math.max(least, Math.round(board.length() * pixels));
        int across = (int) Math.max(least, Math.round(board.width() * pixels));
        return new Frame(left, top, along, across, 0, board.length(), 0, board.width());
    }

    public int right() {
        return left + width;
    }

    public int bottom() {
        return top + height;
    }

    /** Pixels per mm to the right. */
    public double scaleX() {
        return width / (x2 - x1);
    }

    /** Pixels per mm upwards. */
    public double scaleY() {
        return height / (y2 - y1);
    }

    /** Where a length lies on the sheet (px from the left). */
    public double px(double x) {
        return left + (x - x1) * scaleX();
    }

    /** Where a length lies on the sheet (px from the top). */
    public double py(double y) {
        return bottom() - (y - y1) * scaleY();
    }

    /** The rectangle between two corners (mm) on the sheet (px). */
    public Rectangle2D box(Region region) {
        return new Rectangle2D.Double(px(region.x1()), py(region.y2()), px(region.x2()) - px(region.x1()),
            py(region.y1()) - py(region.y2()));
    }

    /** True if a mm is as long upwards as to the right. */
    public boolean isToScale() {
        // Sides are whole pixels: half a pixel at most is lost on either.
        double lost = 0.5 / width + 0.5 / height;
        return Math.abs(scaleX() / scaleY() - 1) <= 1.1 * lost;
    }

    /** The lines along its four sides (px). */
    public List<Rectangle2D> sides() {
        double half = SIDE / 2.0;
        return List.of(
            new Rectangle2D.Double(left - half, top, SIDE, height),
            new Rectangle2D.Double(right() - half, top, SIDE, height),
            new Rectangle2D.Double(left, top - half, width, SIDE),
            new Rectangle2D.Double(left, bottom() - half, width, SIDE));
    }

    /** More paper on every side, at the same scale. */
    public Frame widenedBy(int pixels) {
        double dx = pixels / scaleX();
        double dy = pixels / scaleY();
        return new Frame(left - pixels, top - pixels, width + 2 * pixels, height + 2 * pixels, x1 - dx, x2 + dx,
            y1 - dy, y2 + dy);
    }

    /** A bare chart whose plot fills this frame; axes, titles and names are drawn on the sheet around it. */
    public XYChart chart() {
        XYChart chart = new XYChart(width, height);
        XYStyler styler = chart.getStyler();
        styler.setChartBackgroundColor(NOTHING);
        styler.setPlotBackgroundColor(NOTHING);
        styler.setChartPadding(0);
        styler.setPlotMargin(0);
        styler.setPlotContentSize(1);
        styler.setPlotBorderVisible(false);
        styler.setPlotGridLinesVisible(false);
        styler.setChartTitleVisible(false);
        styler.setLegendVisible(false);
        styler.setAxisTitlesVisible(false);
        styler.setAxisTicksVisible(false);
        styler.setXAxisMin(x1);
        styler.setXAxisMax(x2);
        styler.setYAxisMin(y1);
        styler.setYAxisMax(y2);
        return chart;
    }

    /** Paints a chart made by {@link #chart()} at its place. */
    public void paint(XYChart chart, Graphics2D sheet) {
        Graphics2D pen = (Graphics2D) sheet.create();
        pen.translate(left, top);
        chart.paint(pen, width, height);
        pen.dispose();
    }
}
