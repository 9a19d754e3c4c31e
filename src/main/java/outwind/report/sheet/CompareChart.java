package outwind.report.sheet;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.List;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.CompareSheet;
import outwind.report.words.Figures;
import outwind.report.words.RoundStep;
import outwind.stock.Offered;

/** Stacks side by side: what a finished area costs in each, or what share is finished, with its 90 % range. */
public final class CompareChart {

    /** From one stack to the next, above all of them, and below (px). */
    private static final int ROW = 92;
    private static final int HEAD = 210;
    private static final int FOOT = 90;

    /** Room left of the bars for names, and right for half the last figure (px). */
    private static final int NAMES = 380;
    private static final int BESIDE = 60;

    private static final int TICKS = 6;

    private static final BasicStroke RING = new BasicStroke(3);

    private final CompareSheet sheet;
    private final Paper paper;
    private double step;
    private double from;
    private double to;

    private CompareChart(CompareSheet sheet) {
        this.sheet = sheet;
        this.paper = new Paper(Paper.WIDTH, HEAD + sheet.offered().size() * ROW + FOOT);
    }

    /** Draws the chart as a PNG image. */
    public static byte[] png(CompareSheet sheet) {
        return drawn(sheet).png(Paper.HEIGHT * 100);
    }

    /** The same, as it lies on the paper. */
    static Paper drawn(CompareSheet sheet) {
        CompareChart chart = new CompareChart(sheet);
        chart.draw();
        return chart.paper;
    }

    private void draw() {
        int y = paper.paragraph("Stacks side by side", TextStyle.NAME, Paper.MARGIN, 30, Paper.ROOM, 1);
        paper.paragraph(sheet.verdict(), TextStyle.TEXT, Paper.MARGIN, y + 6, Paper.ROOM, 3);
        List<double[]> spans = new ArrayList<>();
        sheet.offered().forEach(one -> spans.add(span(one)));
        double least = spans.stream().mapToDouble(span -> span[0]).min().orElse(0);
        double most = spans.stream().mapToDouble(span -> span[2]).max().orElse(1);
        double room = Math.max(0.06 * (most - least), 0.02 * Math.max(1e-9, most));
        step = step(most - least + 2 * room);
        from = Math.floor(Math.max(0, least - room) / step) * step;
        to = Math.ceil((most + room) / step) * step;
        grid();
        for (int i = 0; i < spans.size(); i++) {
            row(i, spans.get(i));
        }
    }

    /** Low, expected and high: cost of a finished m² or ft², or percent of the face. */
    private double[] span(Offered one) {
        double sure = one.area(CompareSheet.SURE);
        double hoped = one.area(CompareSheet.HOPED);
        if (!sheet.inMoney()) {
            return new double[] {100 * one.yield(sure), 100 * one.yield(one.area()), 100 * one.yield(hoped)};
        }
        double unit = sheet.figures().areaUnitSquareMillimetres();
        double expected = one.cost(one.area()).orElseThrow() * unit;
        // A stack that may give nothing costs without limit; its bar ends at three times what is expected.
        return new double[] {one.cost(hoped).map(cost -> cost * unit).orElse(expected), expected,
            one.cost(sure).map(cost -> Math.min(3 * expected, cost * unit)).orElse(3 * expected)};
    }

    /** From one line of the grid to the next: 1, 2 or 5 times a power of ten. */
    private static double step(double range) {
        double power = Math.pow(10, Math.floor(Math.log10(range / 2)));
        return range / power > 2 * TICKS ? 5 * power : range / power > TICKS ? 2 * power : power;
    }

    private double px(double value) {
        double left = Paper.MARGIN + NAMES;
        return left + (value - from) / (to - from) * (Paper.WIDTH - Paper.MARGIN - BESIDE - left);
    }

    private void grid() {
        int bottom = HEAD + sheet.offered().size() * ROW;
        int digits = RoundStep.decimals(step);
        for (double at = from; at <= to + step / 2; at += step) {
            paper.line(px(at), HEAD, px(at), bottom, Paper.FAINT, 2);
            paper.centred(Figures.decimals(at, digits), TextStyle.NOTE, Paper.INK, px(at), bottom + 22.0);
        }
        String unit = sheet.figures().areaUnit();
        paper.centred(sheet.inMoney() ? "cost of a finished " + unit + (sheet.currency().isEmpty() ? "" : ", " + sheet.currency())
            : "share of the face that is finished, %", TextStyle.NOTE, Paper.SOFT_INK, (px(from) + px(to)) / 2, bottom + 54.0);
        paper.fromLeft("dot: to expect; bar: the 90\u00a0% range", TextStyle.LABEL, Paper.INK, Paper.MARGIN, HEAD - 24.0);
    }

    private void row(int number, double[] span) {
        List<String> said = sheet.rows().get(number);
        double y = HEAD + (number + 0.5) * ROW;
        paper.line(px(span[0]) - 1, y, px(span[2]) + 1, y, Paper.INK, 10);
        paper.pen().setColor(Paper.WHITE);
        paper.pen().fillOval((int) px(span[1]) - 11, (int) y - 11, 22, 22);
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(RING);
        paper.pen().drawOval((int) px(span[1]) - 11, (int) y - 11, 22, 22);
        paper.paragraph(said.get(0), TextStyle.STRONG, Paper.MARGIN, (int) y - 30, NAMES - 30, 1);
        paper.paragraph(said.get(2) + " of " + said.get(1) + " make it, yield " + said.get(3), TextStyle.NOTE, Paper.MARGIN,
            (int) y + 2, NAMES - 30, 1);
    }
}
