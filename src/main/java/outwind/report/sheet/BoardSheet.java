package outwind.report.sheet;

import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import outwind.board.Board;
import outwind.flatten.Verdict;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.drawing.DepthScale;
import outwind.report.drawing.Exaggeration;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Hatch;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.CutWords;
import outwind.report.words.Figures;
import outwind.report.words.Sentences;

/**
 * The one sheet that hangs at the machine, a landscape page: the verdict; the board from above, both its edges in
 * profile and the view along it, all showing what comes off face A; what to do, step by step; cautions.
 */
public final class BoardSheet {

    private static final int MARGIN = 26;
    private static final int ROOM = Paper.WIDTH - 2 * MARGIN;
    private static final int GAP = 16;

    /** Width of the steps, and what lies between them and the drawings (px). */
    private static final int STEPS = 500;
    private static final int APART = 36;

    /** The drawings (px). */
    private static final int DRAWINGS = ROOM - STEPS - APART;

    /** Left of the boards, for the names of their edges, and right of them (px). */
    private static final int GUTTER = 112;
    private static final int BESIDE = 44;

    /** Width of the view along a board that is drawn beside the plan, and below it (px). */
    private static final int SIGHT_BESIDE = 330;
    private static final int SIGHT_BELOW = 520;

    /** Heights are drawn no taller than this (px), and no lower if it can be helped. */
    private static final int MOST_HEIGHT = 110;
    private static final int LEAST_HEIGHT = 46;

    private static final int HEADING = 64;

    private static final int BOX_PADDING = 8;

    private static final Color STRIP = Paper.INK;

    /**
     * A sheet with where its drawings lie.
     *
     * @param plan  mm along the board and across it
     * @param far   mm along the far edge and above the cut
     * @param near  the same of the near edge
     * @param sight mm from the far edge to the near one and above the cut
     * @param scale of the colours
     */
    public record Drawn(Paper paper, Frame plan, Frame far, Frame near, Frame sight, DepthScale scale) { }

    private final Paper paper = new Paper(Paper.WIDTH, Paper.HEIGHT);
    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final Sentences sentences;

    private BoardSheet(Judgement judgement, Figures figures) {
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.sentences = new Sentences(judgement, figures);
    }

    /**
     * Fetches fonts and pens, which takes longer than drawing does, so that it can be done beside other work. Nothing
     * depends on it.
     */
    public static void getReady() {
        Paper paper = new Paper(64, 64);
        for (TextStyle type : TextStyle.values()) {
            paper.fromLeft("0", type, Paper.INK, 0, 32);
        }
        Hatch.paint(paper.pen(), new Rectangle2D.Double(0, 0, 9, 9));
        paper.png(64);
    }

    /** Draws a judged board as a PNG image. */
    public static byte[] png(Judgement judgement, Figures figures) {
        return drawn(judgement, figures).paper().png(Paper.HEIGHT);
    }

    /** The same before it is made into an image. */
    public static Drawn drawn(Judgement judgement, Figures figures) {
        return new BoardSheet(judgement, figures).draw();
    }

    private Drawn draw() {
        int top = header() + GAP;
        int bottom = warnings(cautions() - GAP / 2) - GAP / 2;
        StepColumn.draw(paper, judgement, figures, Paper.WIDTH - MARGIN - STEPS, top, STEPS, bottom);
        int line = Paper.WIDTH - MARGIN - STEPS - APART / 2;
        paper.line(line, top, line, bottom, Paper.FAINT, 2);
        return drawings(top, bottom);
    }

    private int header() {
        String size = Sentences.size(board, figures);
        int sizeWidth = paper.width(size, TextStyle.LABEL);
        int nameRoom = Math.max(ROOM / 3, ROOM - sizeWidth - 2 * GAP);
        int y = paper.paragraph(board.name(), TextStyle.NAME, MARGIN, MARGIN - 8, nameRoom, 1);
        int sizeRoom = Math.min(sizeWidth, ROOM - nameRoom - 2 * GAP);
        paper.paragraph(size, TextStyle.LABEL, Paper.WIDTH - MARGIN - Math.max(1, sizeRoom), MARGIN - 2,
            Math.max(1, sizeRoom), 1);
        y = strip(y + 4) + 6;
        return paper.paragraph(sentences.thickness(), TextStyle.BODY, MARGIN, y, ROOM, 3);
    }

    /** The verdict in white on a full strip, smaller where it is long. */
    private int strip(int top) {
        String verdict = sentences.verdict();
        TextStyle type = List.of(TextStyle.VERDICT, TextStyle.HEIGHT, TextStyle.HEADING).stream()
            .filter(size -> paper.width(verdict, size) <= ROOM - 2 * GAP).findFirst().orElse(TextStyle.STRONG);
        int lines = type == TextStyle.STRONG ? 2 : 1;
        int height = Math.max(64, lines * (paper.height(type) + 2) + 8);
        paper.pen().setColor(STRIP);
        paper.pen().fillRect(MARGIN, top, ROOM, height);
        if (lines == 1) {
            paper.fromLeft(verdict, type, Paper.WHITE, MARGIN + GAP, top + height / 2.0);
        } else {
            paper.paragraph(verdict, type, Paper.WHITE, MARGIN + GAP, top + 4, ROOM - 2 * GAP, lines);
        }
        return top + height;
    }

    /** Along the lower edge; where they begin (px). */
    private int cautions() {
        int lines = Paper.heightOf(CutWords.CAUTIONS, TextStyle.SMALL, ROOM, 2);
        int top = Paper.HEIGHT - MARGIN + 6 - lines;
        paper.paragraph(CutWords.CAUTIONS, TextStyle.SMALL, MARGIN, top, ROOM, 2);
        return top;
    }

    /** In a frame that ends at {@code bottom}; where it begins (px), or {@code bottom} if there are none. */
    private int warnings(int bottom) {
        List<String> lines = warningLines();
        if (lines.isEmpty()) {
            return bottom;
        }
        TextStyle type = lines.size() > 3 ? TextStyle.SMALL_STRONG : TextStyle.STRONG;
        int room = ROOM - 2 * BOX_PADDING;
        int text = lines.stream().mapToInt(line -> Paper.heightOf(line, type, room, 2)).sum();
        int top = bottom - text - 2 * BOX_PADDING;
        paper.box(MARGIN + 2, top, ROOM - 4, bottom - top, 4);
        int y = top + BOX_PADDING;
        for (String line : lines) {
            y = paper.paragraph(line, type, MARGIN + BOX_PADDING, y, room, 2);
        }
        return top;
    }

    private List<String> warningLines() {
        List<String> lines = new ArrayList<>();
        List<String> places = judgement.doubts().stream().map(doubt -> doubt.suspect().reading())
            .map(reading -> sentences.place(reading.x(), reading.y())).toList();
        if (!places.isEmpty()) {
            String looks = "the reading at " + String.join(", at ", places) + " looks wrong.";
            lines.add(sentences.isLookedAtFirst() ? "LOOK AGAIN before you cut: " + looks
                : "Note: " + looks + " The answer is the same without it.");
        }
        sentences.drift().ifPresent(lines::add);
        if (judgement.planned() != Planned.NONE) {
            lines.addAll(sentences.warnings());
            if (judgement.verdict() == Verdict.NO) {
                lines.add("This plan does not reach the target.");
            }
        }
        sentences.offBed().stream().findFirst().ifPresent(lines::add);
        return lines;
    }

    /** The view along the board stands beside the plan or below, whichever leaves the plan more room. */
    private Drawn drawings(int top, int bottom) {
        DepthPlan whole = plan(MARGIN + DRAWINGS);
        DepthPlan narrow = plan(MARGIN + DRAWINGS - SIGHT_BESIDE - GAP);
        int room = bottom - top - HEADING - EdgeView.around() - GAP;
        double below = scale(DRAWINGS - GUTTER - BESIDE,
            room - whole.around() - SightView.aroundBeside() - GAP - 3 * LEAST_HEIGHT);
        double beside = scale(DRAWINGS - SIGHT_BESIDE - GAP - GUTTER - BESIDE,
            room - narrow.around() - 2 * LEAST_HEIGHT);
        return below >= beside ? sightBelow(whole, top, bottom, below) : sightBeside(narrow, top, bottom, beside);
    }

    private DepthPlan plan(int right) {
        return new DepthPlan(paper, judgement, figures, MARGIN, right);
    }

    private double scale(int width, int height) {
        return Math.min(width / board.length(), Math.max(1, height) / board.width());
    }

    private Drawn sightBelow(DepthPlan plan, int top, int bottom, double pixels) {
        Frame frame = plan.frame(top + HEADING, GUTTER, pixels);
        DepthScale scale = drawPlan(plan, frame, top, MARGIN + DRAWINGS);
        int y = plan.below(frame) + GAP / 2;
        EdgeView edges = new EdgeView(paper, judgement, figures, scale);
        int width = Math.max(frame.width(), Math.min(DRAWINGS - GUTTER - BESIDE, 500));
        int room = (bottom - y - EdgeView.around() - SightView.aroundBeside() - GAP / 2) / 3;
        Exaggeration heights = edges.exaggeration(Math.max(8, Math.min(MOST_HEIGHT, room)), width);
        Frame[] both = edges.draw(MARGIN + GUTTER, y, width, GUTTER, MARGIN + DRAWINGS, heights);
        int sightTop = both[1].bottom() + EdgeView.belowLast() + GAP / 2;
        Frame sight = new SightView(paper, judgement, figures).draw(MARGIN, sightTop, SIGHT_BELOW,
            MARGIN + SIGHT_BELOW + APART, heights);
        return new Drawn(paper, frame, both[0], both[1], sight, scale);
    }

    private Drawn sightBeside(DepthPlan plan, int top, int bottom, double pixels) {
        Frame frame = plan.frame(top + HEADING, GUTTER, pixels);
        DepthScale scale = drawPlan(plan, frame, top, MARGIN + DRAWINGS);
        int y = plan.below(frame) + GAP / 2;
        EdgeView edges = new EdgeView(paper, judgement, figures, scale);
        int width = DRAWINGS - GUTTER - BESIDE;
        int room = (bottom - y - EdgeView.around()) / 2;
        int beside = plan.below(frame) - top - HEADING - SightView.around();
        Exaggeration heights = edges.exaggeration(Math.max(8, Math.min(MOST_HEIGHT, Math.min(room, beside))), width);
        Frame sight = new SightView(paper, judgement, figures).draw(MARGIN + DRAWINGS - SIGHT_BESIDE, top + HEADING,
            SIGHT_BESIDE, MARGIN + DRAWINGS - SIGHT_BESIDE, heights);
        Frame[] both = edges.draw(MARGIN + GUTTER, y, width, GUTTER, MARGIN + DRAWINGS, heights);
        return new Drawn(paper, frame, both[0], both[1], sight, scale);
    }

    private DepthScale drawPlan(DepthPlan plan, Frame frame, int top, int right) {
        DepthMap map = plan.map(frame);
        DepthScale scale = DepthScale.covering(map.depth().least(), map.depth().most(), figures.units());
        String what = judgement.planned() == Planned.NONE ? "What would come off face A" : "What comes off face A";
        paper.fromLeft(what, TextStyle.HEADING, Paper.INK, MARGIN, top + 14.0);
        String how = "from above" + (frame.isToScale() ? "" : ", not to scale");
        paper.fromLeft(how, TextStyle.LABEL, Paper.SOFT_INK, MARGIN, top + 42.0);
        int left = right - scale.width(paper, figures) - 4;
        paper.fromRight(figures.unit() + " down to the cut", TextStyle.LABEL, Paper.INK, left - 16.0,
            top + 12.0);
        scale.draw(paper, figures, left, top);
        plan.draw(frame, map, scale);
        return scale;
    }
}
