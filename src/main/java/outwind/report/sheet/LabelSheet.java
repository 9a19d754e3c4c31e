package outwind.report.sheet;

import java.awt.BasicStroke;
import java.util.List;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Label;

/**
 * Labels to cut out and stick on boards and blanks: pages of three columns and eight rows, 80 by 22 mm each when printed to
 * size, with dashed lines to cut along.
 */
public final class LabelSheet {

    static final int COLUMNS = 3;
    static final int ROWS = 8;

    private static final int WIDE = Paper.ROOM / COLUMNS;
    private static final int HIGH = (Paper.HEIGHT - 2 * Paper.MARGIN) / ROWS;
    private static final int PADDING = 14;

    private static final BasicStroke CUT = new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10,
        new float[] {4, 8}, 0);

    private LabelSheet() { }

    /** How many pages so many labels take. */
    public static int pages(int labels) {
        return (labels + COLUMNS * ROWS - 1) / (COLUMNS * ROWS);
    }

    /** The labels of a page, from 0. */
    public static List<Label> onPage(List<Label> labels, int page) {
        return labels.subList(page * COLUMNS * ROWS, Math.min(labels.size(), (page + 1) * COLUMNS * ROWS));
    }

    /** One page as a PNG image. */
    public static byte[] png(List<Label> labels) {
        return drawn(labels).png(Paper.HEIGHT);
    }

    static Paper drawn(List<Label> labels) {
        Paper paper = new Paper(Paper.WIDTH, Paper.HEIGHT);
        for (int column = 0; column <= COLUMNS; column++) {
            int x = Paper.MARGIN + column * WIDE;
            paper.line(x, Paper.MARGIN, x, Paper.MARGIN + ROWS * HIGH, Paper.SOFT_INK, CUT);
        }
        for (int row = 0; row <= ROWS; row++) {
            int y = Paper.MARGIN + row * HIGH;
            paper.line(Paper.MARGIN, y, Paper.MARGIN + COLUMNS * WIDE, y, Paper.SOFT_INK, CUT);
        }
        for (int i = 0; i < labels.size(); i++) {
            Label label = labels.get(i);
            int left = Paper.MARGIN + i % COLUMNS * WIDE + PADDING;
            int y = Paper.MARGIN + i / COLUMNS * HIGH + PADDING / 2;
            y = paper.paragraph(label.name(), TextStyle.NAME, left, y, WIDE - 2 * PADDING, 1);
            y = paper.paragraph(label.size(), TextStyle.TEXT, left, y, WIDE - 2 * PADDING, 1);
            paper.paragraph(String.join("; ", label.notes()), TextStyle.NOTE, left, y, WIDE - 2 * PADDING, 2);
        }
        return paper;
    }
}
