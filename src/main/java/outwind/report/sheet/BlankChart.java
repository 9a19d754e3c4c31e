package outwind.report.sheet;

import java.util.ArrayList;
import java.util.List;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.CutOrder;
import outwind.blanks.Layout;
import outwind.blanks.LengthsPlan;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Paper;
import outwind.report.drawing.SizeKey;
import outwind.report.drawing.TextStyle;
import outwind.report.words.BlankSheet;
import outwind.report.words.Figures;

/** One sheet to hang at the saw: what comes out, and the board from above, to scale, with its blanks and cuts. */
public final class BlankChart {

    /** More than all above the list takes (px); what is left over at the bottom is cut off. */
    private static final int ABOVE_LIST = 2000;

    private static final int GAP = 26;

    private static final int MOST_HEIGHT = 760;

    /** From one row of the list to the next, and more than a sentence below it takes (px). */
    private static final int ROW = 30;
    private static final int SENTENCE = 3 * ROW;

    /** More blanks than this are not read off a sheet; the report has them all. */
    static final int MOST_LISTED = 200;

    private final Paper paper;
    private final BlankSheet sheet;
    private final Figures figures;

    private BlankChart(BlankSheet sheet, Figures figures) {
        this.paper = new Paper(Paper.WIDTH, height(sheet));
        this.sheet = sheet;
        this.figures = figures;
    }

    /** Draws a cutting bill against a board as a PNG image. */
    public static byte[] png(BlankPlan plan, Figures figures) {
        return png(BlankSheet.of(plan, figures), figures);
    }

    /** Draws crosscuts alone as a PNG image. */
    public static byte[] png(LengthsPlan plan, Figures figures) {
        return png(BlankSheet.of(plan, figures), figures);
    }

    static byte[] png(BlankSheet sheet, Figures figures) {
        return new BlankChart(sheet, figures).drawn();
    }

    /** What is written on it. */
    static List<Paper.Words> words(BlankSheet sheet, Figures figures) {
        BlankChart chart = new BlankChart(sheet, figures);
        chart.drawn();
        return chart.paper.written();
    }

    private byte[] drawn() {
        int y = paper.paragraph(sheet.board().name(), TextStyle.NAME, Paper.MARGIN, Paper.MARGIN, Paper.ROOM, 2);
        y = paper.paragraph(sheet.size(), TextStyle.LABEL, Paper.MARGIN, y, Paper.ROOM, 2);
        y = paper.paragraph(sheet.headline(), TextStyle.VERDICT, Paper.MARGIN, y + 14, Paper.ROOM, 2);
        for (String detail : sheet.details()) {
            y = paper.paragraph(detail, TextStyle.TEXT, Paper.MARGIN, y + 2, Paper.ROOM, 3);
        }
        Frame frame = Frame.ofBoard(sheet.board(), BlankView.LEFT, y + GAP + BlankView.STRIP, BlankView.MOST_LENGTH,
            MOST_HEIGHT);
        y = new BlankView(paper, sheet, figures).draw(frame) + GAP;
        y = new SizeKey(paper, sheet.layout().blanks()).draw(Paper.MARGIN, y, Paper.ROOM, figures) + GAP / 2;
        y = key(y) + GAP;
        return paper.png(list(y) + Paper.MARGIN);
    }

    private int key(int top) {
        boolean crosscuts = sheet.layout().order() == CutOrder.CROSSCUT_FIRST;
        return BlankView.key(paper, !sheet.layout().cuts().isEmpty(), crosscuts ? "above" : "beside",
            !sheet.board().defects().isEmpty(), top);
    }

    /** Every blank by its number, in columns, and what is not cut; returns the y below it (px). */
    private int list(int top) {
        List<String> entries = entries(sheet.layout(), figures);
        int columns = columns(entries.size());
        int rows = rows(entries.size());
        int column = Paper.ROOM / columns;
        for (int i = 0; i < entries.size(); i++) {
            paper.paragraph(entries.get(i), TextStyle.LABEL, Paper.MARGIN + i / rows * column, top + i % rows * ROW,
                column - GAP, 1);
        }
        int y = top + rows * ROW;
        int more = sheet.layout().blanks().size() - entries.size();
        if (more > 0) {
            y = paper.paragraph("and " + more + " more: see the report", TextStyle.LABEL, Paper.MARGIN, y, Paper.ROOM, 1);
        }
        for (String sentence : sheet.missing()) {
            y = paper.paragraph("Not cut: " + sentence, TextStyle.LABEL, Paper.MARGIN, y + 4, Paper.ROOM, 2);
        }
        return y;
    }

    /** What the list says of each blank, {@link #MOST_LISTED} at the most. */
    static List<String> entries(Layout layout, Figures figures) {
        List<String> entries = new ArrayList<>();
        for (Blank blank : layout.blanks().subList(0, Math.min(MOST_LISTED, layout.blanks().size()))) {
            entries.add((entries.size() + 1) + "  " + blank.name() + (blank.turned() ? " (turned)" : "") + "  "
                + BlankSheet.sides(blank, figures) + " x "
                + figures.length(blank.wanted()) + "  (makes " + figures.number(blank.range().median()) + ", "
                + Figures.chance(blank.chance()) + ")");
        }
        return entries;
    }

    private static int columns(int entries) {
        return entries > 4 ? 2 : 1;
    }

    private static int rows(int entries) {
        return (entries + columns(entries) - 1) / columns(entries);
    }

    /** Enough for all that is drawn (px). */
    private static int height(BlankSheet sheet) {
        int listed = Math.min(MOST_LISTED, sheet.layout().blanks().size());
        return ABOVE_LIST + ROW * (rows(listed) + 1) + SENTENCE * sheet.missing().size() + Paper.MARGIN;
    }
}
