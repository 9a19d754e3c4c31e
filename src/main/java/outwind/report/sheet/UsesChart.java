package outwind.report.sheet;

import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import outwind.board.Units;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.report.words.RoundStep;
import outwind.report.words.UseSheet;
import outwind.stock.PricedBoard;
import outwind.stock.Uses;

/**
 * What each board of a stack is best used for: beside it a bar for each thickness, as long as what it is expected to bring
 * there, with its chance. The best use differs by how dark its bar is and how bold its chance.
 */
public final class UsesChart {

    private static final int HEAD = 256;
    private static final int FOOT = 150;

    /** What a name takes, where the columns beside it end, and where the bars begin (px). */
    private static final int NAME = 240;
    private static final int COST_END = Paper.MARGIN + 360;
    private static final int BEST_END = Paper.MARGIN + 480;
    private static final int VALUE_END = Paper.MARGIN + 610;
    private static final int BARS = Paper.MARGIN + 640;

    /** Room for a chance left of its bar, and for half a figure of the axis right of it (px). */
    private static final int CHANCE = 104;
    private static final int BESIDE = 34;

    private static final int BAR = 18;

    private static final int STEPS = 5;

    private final Uses uses;
    private final Figures figures;
    private final ShownBoards shown;
    private final Paper paper;
    private final double step;
    private final double end;

    private UsesChart(Uses uses, Figures figures) {
        this.uses = uses;
        this.figures = figures;
        this.shown = ShownBoards.of(uses.stack());
        this.paper = new Paper(Paper.WIDTH, bottom() + FOOT);
        double most = shown.boards().stream().flatMapToDouble(board -> uses.aims().stream().mapToDouble(aim -> value(board, aim)))
            .max().orElse(0);
        // Round numbers are the same of money and of wood.
        this.step = new RoundStep(Units.MILLIMETRES, 1e-6).atLeast(most / STEPS);
        this.end = Math.max(1, Math.ceil(most / step)) * step;
    }

    /** Draws the chart as a PNG image. */
    public static byte[] png(Uses uses, Figures figures) {
        return drawn(uses, figures).png(HEAD + ShownBoards.MOST * ShownBoards.ROW + FOOT);
    }

    /** The same, as it lies on the paper. */
    static Paper drawn(Uses uses, Figures figures) {
        UsesChart chart = new UsesChart(uses, figures);
        chart.draw();
        return chart.paper;
    }

    private void draw() {
        int y = paper.paragraph("What each board is best used for", TextStyle.NAME, Paper.MARGIN, 30, Paper.ROOM, 1);
        y = paper.paragraph(UseSheet.verdict(uses, figures), TextStyle.TEXT, Paper.MARGIN, y + 6, Paper.ROOM, 2);
        key(y + 24);
        heads();
        for (int column = 0; column < uses.aims().size(); column++) {
            grid(column);
        }
        for (int i = 0; i < shown.boards().size(); i++) {
            row(i);
        }
        paper.paragraph((UseSheet.explanation(uses, figures) + " " + shown.note()).strip(), TextStyle.NOTE, Paper.MARGIN, bottom() + 56, Paper.ROOM, 3);
    }

    private int bottom() {
        return HEAD + shown.height();
    }

    /** Money, or wood in the unit that it is traded in. */
    private double value(PricedBoard board, Uses.Aim aim) {
        return uses.inMoney() ? uses.money(board, aim) : uses.wood(board, aim) / figures.woodUnitCubicMillimetres();
    }

    private String unit() {
        return uses.inMoney() ? uses.stack().currency() : figures.woodUnit();
    }

    /** From the left end of a column's bars to that of the next (px). */
    private double pitch() {
        return (Paper.WIDTH - Paper.MARGIN - BARS) / (double) uses.aims().size();
    }

    private double px(int column, double value) {
        return BARS + column * pitch() + CHANCE + value / end * (pitch() - CHANCE - BESIDE);
    }

    private void key(int y) {
        double x = Paper.MARGIN;
        for (String word : List.of("best use", "another use")) {
            bar(x, x + 56, y, word.equals("best use"));
            paper.fromLeft(word, TextStyle.LABEL, Paper.INK, x + 68, y);
            x += 110 + paper.width(word, TextStyle.LABEL);
        }
        paper.fromLeft("bars: " + (uses.inMoney() ? "money" : "finished wood") + " to expect"
            + (unit().isEmpty() ? "" : ", " + unit()) + "; before each its chance", TextStyle.LABEL, Paper.INK, x, y);
    }

    private void heads() {
        double upper = HEAD - 46.0;
        double lower = HEAD - 18.0;
        paper.fromLeft("board", TextStyle.STRONG, Paper.INK, Paper.MARGIN, upper);
        if (shown.cost()) {
            paper.fromRight("cost", TextStyle.STRONG, Paper.INK, COST_END, upper);
            paper.fromRight(uses.stack().currency(), TextStyle.NOTE, Paper.INK, COST_END, lower);
        }
        paper.fromRight("best at", TextStyle.STRONG, Paper.INK, BEST_END, upper);
        paper.fromRight(figures.unit(), TextStyle.NOTE, Paper.INK, BEST_END, lower);
        paper.fromRight("brings", TextStyle.STRONG, Paper.INK, VALUE_END, upper);
        paper.fromRight(unit(), TextStyle.NOTE, Paper.INK, VALUE_END, lower);
        for (int column = 0; column < uses.aims().size(); column++) {
            Uses.Aim aim = uses.aims().get(column);
            double left = BARS + column * pitch();
            paper.fromLeft(figures.length(aim.thickness()), TextStyle.STRONG, Paper.INK, left + 10, upper);
            paper.fromLeft("best for " + uses.bestFor(aim), TextStyle.NOTE, Paper.INK, left + 10, lower);
        }
    }

    private void grid(int column) {
        for (int i = 0; i <= Math.round(end / step); i++) {
            double x = px(column, i * step);
            paper.line(x, HEAD, x, bottom(), Paper.FAINT, 2);
        }
        paper.centred("0", TextStyle.NOTE, Paper.INK, px(column, 0), bottom() + 22.0);
        paper.centred(Figures.decimals(end, RoundStep.decimals(step)), TextStyle.NOTE, Paper.INK, px(column, end), bottom() + 22.0);
    }

    private void row(int number) {
        PricedBoard board = shown.boards().get(number);
        double y = HEAD + (number + 0.5) * ShownBoards.ROW;
        Optional<Uses.Aim> best = uses.best(board);
        shown.name(paper, number, NAME, y);
        board.cost().map(BigDecimal::toPlainString).ifPresent(cost ->
            paper.fromRight(cost, TextStyle.BODY, Paper.INK, COST_END, y));
        paper.fromRight(best.map(aim -> figures.number(aim.thickness())).orElse("none"), TextStyle.STRONG, Paper.INK, BEST_END,
            y);
        best.ifPresent(aim -> paper.fromRight(Figures.decimals(value(board, aim), uses.inMoney() || figures.units()
            == Units.INCHES ? 2 : 4), TextStyle.BODY, Paper.INK, VALUE_END, y));
        for (int column = 0; column < uses.aims().size(); column++) {
            Uses.Aim aim = uses.aims().get(column);
            boolean isBest = best.equals(Optional.of(aim));
            bar(px(column, 0), px(column, value(board, aim)), y, isBest);
            paper.fromRight(Figures.chance(uses.chance(board, aim)), isBest ? TextStyle.STRONG : TextStyle.BODY, Paper.INK,
                px(column, 0) - 8, y);
        }
    }

    private void bar(double from, double to, double y, boolean isBest) {
        paper.pen().setColor(isBest ? Paper.INK : Paper.PALE);
        paper.pen().fill(new Rectangle2D.Double(from, y - BAR / 2.0, to - from, BAR));
    }
}
