package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import outwind.blanks.Blank;
import outwind.blanks.CutOrder;
import outwind.blanks.SawCut;
import outwind.report.drawing.BoardOutline;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Paper;
import outwind.report.drawing.Pattern;
import outwind.report.drawing.SizeKey;
import outwind.report.drawing.SymbolKey;
import outwind.report.drawing.TextStyle;
import outwind.report.words.BlankSheet;
import outwind.report.words.Figures;
import outwind.surface.Region;

/** A board from above, to scale, far edge up, with its blanks and cuts. */
final class BlankView {

    /** Above and right of the board, where through cuts are numbered (px). */
    static final int STRIP = 40;

    /** Right of the board, for the names of strips (px). */
    private static final int NAMES = 110;

    /** Left side of the board on its sheet, and most room from there to the right (px). */
    static final int LEFT = Paper.MARGIN + DetailSheet.LEFT_GUTTER;
    static final int MOST_LENGTH = Paper.ROOM - DetailSheet.LEFT_GUTTER - STRIP - NAMES;

    /** A kerf thinner than this cannot be seen (px). */
    private static final double THINNEST = 2.5;

    /** From a label to the blank's outline (px). */
    private static final int PADDING = 4;

    private static final BasicStroke THIN = new BasicStroke(1.5f);

    /** What is left over. */
    private static final Color OFFCUT = new Color(0xd2, 0xcd, 0xc6);

    private final Paper paper;
    private final BlankSheet sheet;
    private final Figures figures;

    BlankView(Paper paper, BlankSheet sheet, Figures figures) {
        this.paper = paper;
        this.sheet = sheet;
        this.figures = figures;
    }

    /** Draws it; returns the y below it (px). */
    int draw(Frame frame) {
        fill(frame.box(Region.whole(sheet.board())), OFFCUT);
        List<Blank> blanks = sheet.layout().blanks();
        blanks.forEach(blank -> Pattern.of(blank.item()).paint(paper.pen(), frame.box(blank.region())));
        double edge = sheet.layout().board().y1();
        if (edge > 0) {
            paper.line(frame.left(), frame.py(edge), frame.right(), frame.py(edge), Paper.INK, (float) THINNEST);
        }
        List<SawCut> cuts = sheet.layout().cuts();
        for (int i = 0; i < cuts.size(); i++) {
            kerf(frame, cuts.get(i));
            if (cuts.get(i).section() == 0) {
                number(frame, cuts.get(i), i + 1);
            }
        }
        sheet.layout().recuts().forEach(again -> again.forEach(cut -> kerf(frame, cut)));
        sections(frame);
        blanks.forEach(blank -> outline(paper.pen(), frame.box(blank.region())));
        BoardOutline outline = new BoardOutline(paper, figures, sheet.board(), frame);
        outline.draw();
        for (int i = 0; i < blanks.size(); i++) {
            label(frame.box(blanks.get(i).region()), i + 1, blanks.get(i));
        }
        return outline.axes(frame.left() - BoardOutline.AXIS_GAP, BoardOutline.AXIS_GAP);
    }

    /** Each section by the name that the report has for it, beside or above the board, as far as there is room. */
    private void sections(Frame frame) {
        boolean crosscut = sheet.layout().order() == CutOrder.CROSSCUT_FIRST;
        double free = Double.NEGATIVE_INFINITY;
        List<List<Blank>> sections = sheet.layout().sections();
        for (int i = 0; i < sections.size(); i++) {
            Rectangle2D box = sections.get(i).stream().map(blank -> frame.box(blank.region()))
                .reduce(Rectangle2D::createUnion).orElseThrow();
            String name = "section " + (i + 1);
            double middle = crosscut ? box.getCenterX() : -box.getCenterY();
            double half = (crosscut ? paper.width(name, TextStyle.SMALL) : paper.height(TextStyle.SMALL)) / 2.0;
            double room = crosscut ? box.getWidth() / 2 - 16 : Double.MAX_VALUE;
            if (middle - half < free || half > room) {
                continue;
            }
            free = middle + half;
            if (crosscut) {
                paper.centred(name, TextStyle.SMALL, Paper.INK, middle, frame.top() - 20.0);
            } else {
                paper.fromLeft(name, TextStyle.SMALL, Paper.INK, frame.right() + 58.0, -middle);
            }
        }
    }

    private void fill(Rectangle2D box, Color colour) {
        paper.pen().setColor(colour);
        paper.pen().fill(box);
    }

    private static void outline(Graphics2D pen, Rectangle2D box) {
        pen.setColor(Paper.INK);
        pen.setStroke(THIN);
        pen.draw(box);
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
            paper.centred(String.valueOf(number), TextStyle.STRONG, Paper.INK, frame.px(middle), frame.top() - 27.0);
        } else {
            paper.line(frame.right(), frame.py(middle), frame.right() + 14.0, frame.py(middle), Paper.INK, 2);
            paper.fromLeft(String.valueOf(number), TextStyle.STRONG, Paper.INK, frame.right() + 20.0, frame.py(middle));
        }
    }

    /** Number, name and thickness, as much of it as the blank has room for; the list below has the rest. */
    private void label(Rectangle2D box, int number, Blank blank) {
        String name = number + " " + blank.name();
        String thickness = figures.length(blank.wanted());
        String letter = SizeKey.letter(blank.item());
        String lettered = (letter + " " + number).strip();
        for (List<String> lines : List.of(List.of(name, (letter + "  " + thickness).strip()),
            List.of(name + "  " + letter + "  " + thickness), List.of(lettered, thickness), List.of(lettered),
            List.of(letter, String.valueOf(number)), List.of(letter))) {
            for (TextStyle type : List.of(TextStyle.STRONG, TextStyle.SMALL_STRONG)) {
                int height = paper.height(type) * lines.size();
                boolean fits = height + 2 <= box.getHeight()
                    && lines.stream().allMatch(line -> paper.width(line, type) + 2 * PADDING <= box.getWidth());
                if (fits) {
                    int wide = lines.stream().mapToInt(line -> paper.width(line, type)).max().orElse(0) + PADDING;
                    fill(new Rectangle2D.Double(box.getCenterX() - wide / 2.0, box.getCenterY() - height / 2.0, wide,
                        height), Paper.WHITE);
                    for (int i = 0; i < lines.size(); i++) {
                        paper.centred(lines.get(i), type, Paper.INK, box.getCenterX(), box.getCenterY()
                            + (i - (lines.size() - 1) / 2.0) * paper.height(type));
                    }
                    return;
                }
            }
        }
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
            outline(pen, box);
        }, "left over");
        return key.draw(Paper.MARGIN, top, Paper.ROOM);
    }
}
