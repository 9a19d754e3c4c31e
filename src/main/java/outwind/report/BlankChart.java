package outwind.report;

import java.util.ArrayList;
import java.util.List;
import outwind.stock.Blank;
import outwind.stock.BlankPlan;
import outwind.stock.CutOrder;
import outwind.stock.LengthsPlan;

/** One sheet to hang at the saw: what comes out, and the board from above, to scale, with its blanks and cuts. */
public final class BlankChart {

    private static final int TALLEST = 2400;
    private static final int GAP = 26;

    private static final int MOST_HEIGHT = 760;

    /** Between the columns of the list, and from one row to the next (px). */
    private static final int ROW = 30;

    private final Paper paper;
    private final BlankSheet sheet;
    private final Figures figures;

    private BlankChart(BlankSheet sheet, Figures figures) {
        this.paper = new Paper(Paper.WIDTH, TALLEST);
        this.sheet = sheet;
        this.figures = figures;
    }

    /** Draws a cutting bill against a board as a PNG image. */
    public static byte[] png(BlankPlan plan, Figures figures) {
        return new BlankChart(BlankSheet.of(plan, figures), figures).drawn();
    }

    /** Draws crosscuts alone as a PNG image. */
    public static byte[] png(LengthsPlan plan, Figures figures) {
        return new BlankChart(BlankSheet.of(plan, figures), figures).drawn();
    }

    private byte[] drawn() {
        int y = paper.paragraph(sheet.board().name(), Type.NAME, Paper.MARGIN, Paper.MARGIN, Paper.ROOM, 2);
        y = paper.paragraph(sheet.size(), Type.LABEL, Paper.MARGIN, y, Paper.ROOM, 2);
        y = paper.paragraph(sheet.headline(), Type.VERDICT, Paper.MARGIN, y + 14, Paper.ROOM, 2);
        for (String detail : sheet.details()) {
            y = paper.paragraph(detail, Type.TEXT, Paper.MARGIN, y + 2, Paper.ROOM, 3);
        }
        Frame frame = Frame.ofBoard(sheet.board(), BlankView.LEFT, y + GAP + BlankView.STRIP, BlankView.MOST_LENGTH,
            MOST_HEIGHT);
        y = new BlankView(paper, sheet, figures).draw(frame) + GAP;
        y = key(y) + GAP;
        return paper.png(list(y) + Paper.MARGIN);
    }

    private int key(int top) {
        boolean crosscuts = sheet.layout().order() == CutOrder.CROSSCUT_FIRST;
        return BlankView.key(paper, !sheet.layout().cuts().isEmpty(), crosscuts ? "above" : "beside",
            !sheet.board().defects().isEmpty(), top);
    }

    /** Every blank by its number, in columns. */
    private int list(int top) {
        List<String> entries = new ArrayList<>();
        for (Blank blank : sheet.layout().blanks()) {
            entries.add((entries.size() + 1) + "  " + blank.name() + (blank.turned() ? " (turned)" : "") + "  "
                + BlankSheet.sides(blank, figures) + " x "
                + figures.length(blank.wanted()) + "  (makes " + figures.number(blank.range().median()) + ", "
                + Figures.chance(blank.chance()) + ")");
        }
        int columns = entries.size() > 4 ? 2 : 1;
        int perColumn = (entries.size() + columns - 1) / columns;
        int width = Paper.ROOM / columns - GAP;
        int most = (TALLEST - Paper.MARGIN - top) / ROW;
        for (int i = 0; i < entries.size(); i++) {
            if (i % perColumn < most) {
                paper.paragraph(entries.get(i), Type.LABEL, Paper.MARGIN + i / perColumn * (Paper.ROOM / columns),
                    top + i % perColumn * ROW, width, 1);
            }
        }
        int y = top + Math.min(perColumn, most) * ROW;
        for (String sentence : sheet.missing()) {
            if (y + ROW < TALLEST - Paper.MARGIN) {
                y = paper.paragraph("Not cut: " + sentence, Type.LABEL, Paper.MARGIN, y + 4, Paper.ROOM, 2);
            }
        }
        return y;
    }
}
