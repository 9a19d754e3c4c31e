package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.math.BigDecimal;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import outwind.flatten.Verdict;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.text.StackReport;
import outwind.report.words.Figures;
import outwind.report.words.RoundStep;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;

/**
 * A stack on one sheet: for each board, the best buys on top, the range of finished thickness against the target.
 * Verdicts differ by how dark the bar is and by what stands in its middle.
 */
public final class StackChart {

    private static final int NAMES = 720;

    /** What a name takes, and where sizes and costs end (px). */
    private static final int NAME = 220;
    private static final int SIZE_END = Paper.MARGIN + 430;
    private static final int COST_END = Paper.MARGIN + 570;
    private static final int HEAD = 206;
    private static final int FOOT = 110;

    /** Right of the bars, for half the last figure of the axis (px). */
    private static final int BESIDE = 30;

    private static final BasicStroke RANGE = new BasicStroke(9, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    private static final BasicStroke DASHES = new BasicStroke(3, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1,
        new float[] {10, 7}, 0);

    private final ShownBoards shown;
    private final List<PricedBoard> boards;
    private final Stack stack;
    private final Figures figures;
    private final Paper paper;

    private StackChart(Stack stack, Figures figures) {
        this.stack = stack;
        this.figures = figures;
        this.shown = ShownBoards.of(stack);
        this.boards = shown.boards();
        this.paper = new Paper(Paper.WIDTH, HEAD + shown.height() + FOOT);
    }

    /** Draws the chart as a PNG image. */
    public static byte[] png(Stack stack, Figures figures) {
        return new StackChart(stack, figures).draw();
    }

    /** The same, as it lies on the paper. */
    static Paper drawn(Stack stack, Figures figures) {
        StackChart chart = new StackChart(stack, figures);
        chart.draw();
        return chart.paper;
    }

    private byte[] draw() {
        int y = paper.paragraph("What the stack finishes at", TextStyle.NAME, Paper.MARGIN, 30, Paper.ROOM, 1);
        y = paper.paragraph(StackReport.expectation(stack), TextStyle.TEXT, Paper.MARGIN, y + 6, Paper.ROOM, 2);
        key(y + 26);
        Frame frame = frame();
        grid(frame);
        ranges(frame);
        names(frame);
        if (shown.rest() > 0) {
            paper.fromLeft(shown.note(), TextStyle.NOTE, Paper.SOFT_INK, Paper.MARGIN, frame.bottom() + 84);
        }
        return paper.png(frame.bottom() + FOOT);
    }

    private Frame frame() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (PricedBoard board : boards) {
            least = Math.min(least, Math.min(board.low(), board.target().orElse(board.low())));
            most = Math.max(most, Math.max(board.high(), board.target().orElse(board.high())));
        }
        double room = Math.max(1, 0.06 * (most - least));
        return new Frame(Paper.MARGIN + NAMES, HEAD, Paper.ROOM - NAMES - BESIDE, shown.height(), least - room, most
            + room,
            -boards.size(), 0);
    }

    private void grid(Frame frame) {
        double step = RoundStep.ofDepth(figures.units()).atLeast((frame.x2() - frame.x1()) / 8);
        for (double at = Math.ceil(frame.x1() / step) * step; at <= frame.x2(); at += step) {
            paper.line(frame.px(at), frame.top(), frame.px(at), frame.bottom(), Paper.FAINT, 2);
            paper.centred(figures.number(at), TextStyle.NOTE, Paper.INK, frame.px(at), frame.bottom() + 22);
        }
        paper.centred("finished thickness, " + figures.unit(), TextStyle.NOTE, Paper.SOFT_INK,
            (frame.left() + frame.right()) / 2.0, frame.bottom() + 52);
    }

    private void ranges(Frame frame) {
        XYChart chart = frame.chart();
        for (int i = 0; i < boards.size(); i++) {
            PricedBoard board = boards.get(i);
            double row = -i - 0.5;
            line(chart, "range " + i, new double[] {board.low(), board.high()}, new double[] {row, row},
                colour(board.verdict()), RANGE);
            int number = i;
            board.target().ifPresent(target -> line(chart, "target " + number, new double[] {target, target},
                new double[] {row - 0.42, row + 0.42}, Paper.INK, DASHES));
            XYSeries middle = chart.addSeries("middle " + i, new double[] {board.median()}, new double[] {row});
            middle.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
            middle.setMarker(middle(board.verdict()));
        }
        frame.paint(chart, paper.pen());
    }

    private static void line(XYChart chart, String name, double[] x, double[] y, Color colour, BasicStroke stroke) {
        XYSeries series = chart.addSeries(name, x, y);
        series.setLineColor(colour);
        series.setLineStyle(stroke);
        series.setMarker(SeriesMarkers.NONE);
    }

    private void names(Frame frame) {
        for (int i = 0; i < boards.size(); i++) {
            PricedBoard board = boards.get(i);
            double y = frame.py(-i - 0.5);
            String chance = board.chance().stream().mapToObj(Figures::chance).findFirst().orElse("");
            paper.fromRight(chance, TextStyle.BODY, Paper.INK, frame.left() - 16.0, y);
            String cost = board.cost().map(BigDecimal::toPlainString).orElse("");
            paper.fromRight(cost, TextStyle.BODY, Paper.INK, COST_END, y);
            paper.fromRight(figures.place(board.feet().length()) + " x " + figures.place(board.feet().width()) + " x "
                + figures.number(board.feet().thickness()), TextStyle.BODY, Paper.INK, SIZE_END, y);
            shown.name(paper, i, NAME, y);
        }
        double head = frame.top() - 16.0;
        paper.fromRight("chance", TextStyle.STRONG, Paper.INK, frame.left() - 16.0, head);
        if (shown.cost()) {
            String cost = stack.currency().isEmpty() ? "cost" : "cost, " + stack.currency();
            paper.fromRight(cost, TextStyle.STRONG, Paper.INK, COST_END, head);
        }
        paper.fromRight("size, " + figures.unit(), TextStyle.STRONG, Paper.INK, SIZE_END, head);
        paper.fromLeft("board", TextStyle.STRONG, Paper.INK, Paper.MARGIN, head);
    }

    private void key(int y) {
        double x = Paper.MARGIN;
        for (Verdict verdict : List.of(Verdict.YES, Verdict.DOUBTFUL, Verdict.NO)) {
            paper.line(x, y, x + 56, y, colour(verdict), RANGE);
            middle(verdict).paint(paper.pen(), x + 28, y, 0);
            paper.fromLeft(verdict.word(), TextStyle.LABEL, Paper.INK, x + 68, y);
            x += 120 + paper.width(verdict.word(), TextStyle.LABEL);
        }
        paper.line(x, y - 14, x, y + 14, Paper.INK, DASHES);
        paper.fromLeft("target; each bar is the 90\u00a0% range", TextStyle.LABEL, Paper.INK, x + 16, y);
    }

    /** Verdicts differ in lightness, and by what stands in the middle of the bar; depth alone has colours. */
    private static Color colour(Verdict verdict) {
        return switch (verdict) {
            case YES, NONE -> Paper.INK;
            case DOUBTFUL -> new Color(0x8a, 0x84, 0x7d);
            case NO -> Paper.PALE;
        };
    }

    private static Marker middle(Verdict verdict) {
        return new Marker() {
            @Override
            public void paint(Graphics2D pen, double x, double y, int size) {
                pen.setStroke(new BasicStroke(3));
                pen.setColor(verdict == Verdict.YES ? colour(verdict) : Color.WHITE);
                Ellipse2D disc = new Ellipse2D.Double(x - 9, y - 9, 18, 18);
                pen.fill(disc);
                pen.setColor(verdict == Verdict.YES ? Color.WHITE : Paper.INK);
                pen.draw(disc);
                if (verdict == Verdict.NO) {
                    pen.draw(new Line2D.Double(x - 5, y - 5, x + 5, y + 5));
                    pen.draw(new Line2D.Double(x - 5, y + 5, x + 5, y - 5));
                }
            }
        };
    }
}
