package outwind.report.drawing;

import java.awt.BasicStroke;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import outwind.blanks.Blank;
import outwind.report.words.BlankSheet;
import outwind.report.words.Figures;

/** Which letter and pattern stands for which size of blank, with how many there are of it. */
public final class SizeKey {

    private static final int COLUMNS = 3;
    private static final int LINE = 34;
    private static final int SAMPLE = 44;

    private static final BasicStroke THIN = new BasicStroke(1.5f);

    private final Paper paper;
    private final Map<Integer, List<Blank>> kinds = new TreeMap<>();

    /** @param blanks all that are drawn on the sheet */
    public SizeKey(Paper paper, List<Blank> blanks) {
        this.paper = paper;
        blanks.stream().filter(blank -> blank.item() >= 0)
            .forEach(blank -> kinds.computeIfAbsent(blank.item(), item -> new ArrayList<>()).add(blank));
    }

    /** A, B … Z, AA, AB … for the rows of a bill from 0; nothing for a length without a bill. */
    public static String letter(int item) {
        return item < 0 ? "" : item < 26 ? String.valueOf((char) ('A' + item))
            : letter(item / 26 - 1) + letter(item % 26);
    }

    /** Draws it in columns; returns the y below it (px). */
    public int draw(int left, int top, int room, Figures figures) {
        int column = room / COLUMNS;
        int rows = (kinds.size() + COLUMNS - 1) / COLUMNS;
        int i = 0;
        for (Map.Entry<Integer, List<Blank>> kind : kinds.entrySet()) {
            int x = left + i / rows * column;
            int y = top + i % rows * LINE + LINE / 2;
            Rectangle2D box = new Rectangle2D.Double(x, y - 12.0, SAMPLE, 24);
            Pattern.of(kind.getKey()).paint(paper.pen(), box);
            paper.pen().setColor(Paper.INK);
            paper.pen().setStroke(THIN);
            paper.pen().draw(box);
            paper.fromLeft(letter(kind.getKey()), TextStyle.STRONG, Paper.INK, x + SAMPLE + 12.0, y);
            Blank blank = kind.getValue().get(0);
            paper.paragraph(kind.getValue().size() + " x " + blank.name() + ", " + BlankSheet.sides(blank, figures) + " x "
                + figures.length(blank.wanted()), TextStyle.BODY, x + SAMPLE + 46, y - paper.height(TextStyle.BODY) / 2 - 1,
                column - SAMPLE - 60, 1);
            i++;
        }
        return top + rows * LINE;
    }
}
