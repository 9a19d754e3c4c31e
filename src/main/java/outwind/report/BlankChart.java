package outwind.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import outwind.board.Defect;
import outwind.stock.Blank;
import outwind.stock.BlankPlan;
import outwind.stock.CutOrder;
import outwind.stock.LengthsPlan;
import outwind.stock.SawCut;
import outwind.surface.Region;

/** One sheet to hang at the saw: what comes out, and the board from above, to scale, with its blanks and cuts. */
public final class BlankChart {

    private static final int TALLEST = 2400;
    private static final int MARGIN = 44;
    private static final int GAP = 26;

    /** Above and right of the board, where through cuts are numbered (px). */
    private static final int STRIP = 40;

    private static final int MOST_HEIGHT = 760;

    /** A kerf thinner than this cannot be seen (px). */
    private static final double THINNEST = 2.5;

    /** From a label to the blank's outline (px). */
    private static final int PADDING = 6;

    /** Between the columns of the list, and from one row to the next (px). */
    private static final int ROW = 30;

    private static final BasicStroke OUTLINE = new BasicStroke(2.5f);
    private static final BasicStroke THIN = new BasicStroke(1.5f);

    /** Offcuts, and the kinds of blanks in turn: pale, so that ink is read on them. */
    private static final Color OFFCUT = new Color(0xef, 0xec, 0xe7);
    private static final Color[] KINDS = {new Color(0xd9, 0xb7, 0x8c), new Color(0xb5, 0xc7, 0xb0),
        new Color(0xe6, 0xd6, 0xa2), new Color(0xb4, 0xc4, 0xd6), new Color(0xdf, 0xb8, 0xac), new Color(0xc9, 0xbf,
            0xd3)};

    private final Paper paper;
    private final BlankSheet sheet;
    private final Figures figures;

    private BlankChart(BlankSheet sheet, Figures figures) {
        this(sheet, figures, new Paper(Chart.WIDTH, TALLEST));
    }

    /** A board on a sheet that holds others as well. */
    BlankChart(BlankSheet sheet, Figures figures, Paper paper) {
        this.paper = paper;
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
        int room = Chart.WIDTH - 2 * MARGIN;
        int y = paper.paragraph(sheet.board().name(), Type.NAME, MARGIN, MARGIN, room, 2);
        y = paper.paragraph(sheet.size(), Type.LABEL, MARGIN, y, room, 2);
        y = paper.paragraph(sheet.headline(), Type.VERDICT, MARGIN, y + 14, room, 2);
        for (String detail : sheet.details()) {
            y = paper.paragraph(detail, Type.TEXT, MARGIN, y + 2, room, 3);
        }
        int left = MARGIN + Chart.LEFT_GUTTER;
        Frame frame = PlanView.frame(sheet.board(), left, y + GAP + STRIP, Chart.WIDTH - MARGIN - STRIP - 20 - left,
            MOST_HEIGHT);
        y = board(frame) + GAP;
        y = key(y) + GAP;
        return paper.png(list(y, room) + MARGIN);
    }

    /** Draws the board with its blanks and cuts; returns the y below it (px). */
    int board(Frame frame) {
        fill(frame.box(Region.whole(sheet.board())), OFFCUT);
        List<Blank> blanks = sheet.layout().blanks();
        blanks.forEach(blank -> fill(frame.box(blank.region()), kind(blank)));
        List<SawCut> cuts = sheet.layout().cuts();
        for (int i = 0; i < cuts.size(); i++) {
            kerf(frame, cuts.get(i));
            if (cuts.get(i).section() == 0) {
                number(frame, cuts.get(i), i + 1);
            }
        }
        blanks.forEach(blank -> outline(frame.box(blank.region()), THIN));
        sheet.board().defects().forEach(defect -> defect(frame, defect));
        outline(frame.box(Region.whole(sheet.board())), OUTLINE);
        for (int i = 0; i < blanks.size(); i++) {
            label(frame.box(blanks.get(i).region()), i + 1, blanks.get(i));
        }
        Axis axis = new Axis(paper, figures);
        axis.leftOf(frame, sheet.board().width(), frame.left() - 14);
        paper.fromRight("y across", Type.NOTE, Paper.SOFT_INK, frame.left() - 14.0, frame.top() - 28.0);
        return axis.below(frame, sheet.board().length(), frame.bottom() + 14, "x along the grain, " + figures.unit());
    }

    private static Color kind(Blank blank) {
        return KINDS[Math.max(0, blank.item()) % KINDS.length];
    }

    private void fill(Rectangle2D box, Color colour) {
        paper.pen().setColor(colour);
        paper.pen().fill(box);
    }

    private void outline(Rectangle2D box, BasicStroke stroke) {
        paper.pen().setColor(Paper.INK);
        paper.pen().setStroke(stroke);
        paper.pen().draw(box);
    }

    private void kerf(Frame frame, SawCut cut) {
        Region within = cut.within();
        Rectangle2D box = frame.box(cut.crosscut()
            ? new Region(cut.from(), within.y1(), cut.to(), within.y2())
            : new Region(within.x1(), cut.from(), within.x2(), cut.to()));
        double width = Math.max(cut.crosscut() ? THINNEST : 0, box.getWidth());
        double height = Math.max(cut.crosscut() ? 0 : THINNEST, box.getHeight());
        fill(new Rectangle2D.Double(box.getCenterX() - width / 2, box.getCenterY() - height / 2, width, height),
            Paper.INK);
    }

    /** The cut's number in the report, outside the board. */
    private void number(Frame frame, SawCut cut, int number) {
        double middle = (cut.from() + cut.to()) / 2;
        if (cut.crosscut()) {
            paper.line(frame.px(middle), frame.top() - 14.0, frame.px(middle), frame.top(), Paper.INK, 2);
            paper.centred(String.valueOf(number), Type.STRONG, Paper.INK, frame.px(middle), frame.top() - 27.0);
        } else {
            paper.line(frame.right(), frame.py(middle), frame.right() + 14.0, frame.py(middle), Paper.INK, 2);
            paper.fromLeft(String.valueOf(number), Type.STRONG, Paper.INK, frame.right() + 20.0, frame.py(middle));
        }
    }

    private void defect(Frame frame, Defect defect) {
        Rectangle2D box = frame.box(new Region(defect.x1(), defect.y1(), defect.x2(), defect.y2()));
        paper.defect(box);
    }

    /** Number, name and thickness, as much of it as the blank has room for; the list below has the rest. */
    private void label(Rectangle2D box, int number, Blank blank) {
        String name = number + " " + blank.name();
        String thickness = figures.length(blank.wanted()).replace('\u00a0', ' ');
        for (List<String> lines : List.of(List.of(name, thickness), List.of(name + ", " + thickness),
            List.of(String.valueOf(number), thickness), List.of(number + ": " + thickness),
            List.of(String.valueOf(number)))) {
            for (Type type : lines.size() > 1 || lines.get(0).length() > 3
                ? List.of(Type.STRONG, Type.NOTE) : List.of(Type.NOTE)) {
                int height = paper.height(type) * lines.size();
                boolean fits = height + 2 <= box.getHeight()
                    && lines.stream().allMatch(line -> paper.width(line, type) + 2 * PADDING <= box.getWidth());
                if (fits) {
                    for (int i = 0; i < lines.size(); i++) {
                        paper.centred(lines.get(i), type, Paper.INK, box.getCenterX(), box.getCenterY()
                            + (i - (lines.size() - 1) / 2.0) * paper.height(type));
                    }
                    return;
                }
            }
        }
    }

    private int key(int top) {
        boolean crosscuts = sheet.layout().order() == CutOrder.CROSSCUT_FIRST;
        return key(paper, !sheet.layout().cuts().isEmpty(), crosscuts ? "above" : "beside",
            !sheet.board().defects().isEmpty(), top);
    }

    /**
     * What the symbols mean.
     *
     * @param beside where the cuts right through are numbered
     * @return the y below it (px)
     */
    static int key(Paper paper, boolean cuts, String beside, boolean defects, int top) {
        SymbolKey key = new SymbolKey(paper);
        if (cuts) {
            key.add((pen, x, y) -> {
                pen.setColor(Paper.INK);
                pen.fill(new Rectangle2D.Double(x - 18, y - 2, 36, 4));
            }, "saw kerf; the numbers " + beside + " the board are those of the cuts right through it");
        }
        if (defects) {
            key.add((pen, x, y) -> Paper.crossed(pen, new Rectangle2D.Double(x - 12, y - 9, 24, 18)),
                "defect, cut around");
        }
        key.add((pen, x, y) -> {
            Rectangle2D box = new Rectangle2D.Double(x - 16, y - 9, 32, 18);
            pen.setColor(OFFCUT);
            pen.fill(box);
            pen.setColor(Paper.INK);
            pen.setStroke(THIN);
            pen.draw(box);
        }, "left over");
        return key.draw(MARGIN, top, Chart.WIDTH - 2 * MARGIN);
    }

    /** Every blank by its number, in columns. */
    private int list(int top, int room) {
        List<String> entries = new ArrayList<>();
        for (Blank blank : sheet.layout().blanks()) {
            entries.add((entries.size() + 1) + "  " + blank.name() + (blank.turned() ? " (turned)" : "") + "  "
                + BlankSheet.sides(blank, figures) + " x "
                + figures.length(blank.wanted()) + "  (makes " + figures.number(blank.range().median()) + ", "
                + Figures.chance(blank.chance()) + ")");
        }
        int columns = entries.size() > 4 ? 2 : 1;
        int perColumn = (entries.size() + columns - 1) / columns;
        int width = room / columns - GAP;
        int most = (TALLEST - MARGIN - top) / ROW;
        for (int i = 0; i < entries.size(); i++) {
            if (i % perColumn < most) {
                paper.paragraph(entries.get(i), Type.LABEL, MARGIN + i / perColumn * (room / columns),
                    top + i % perColumn * ROW, width, 1);
            }
        }
        int y = top + Math.min(perColumn, most) * ROW;
        for (String sentence : sheet.missing()) {
            if (y + ROW < TALLEST - MARGIN) {
                y = paper.paragraph("Not cut: " + sentence, Type.LABEL, MARGIN, y + 4, room, 2);
            }
        }
        return y;
    }
}
