package outwind.report;

import java.util.List;
import org.knowm.xchart.XYChart;
import outwind.board.Board;
import outwind.cutting.Cut;
import outwind.stock.Judgement;
import outwind.stock.Planned;

/**
 * One sheet to hang at the machine: the verdict, the board from above with what comes off face A, and two sections
 * through it as it stands on the bed.
 *
 * <p>Boards much longer than wide are drawn one view above the other; the others in two columns, so that the sheet
 * stays near the shape of a landscape page. All that is drawn is laid out in pixels; the board stays in mm.
 */
public final class Chart {

    /** More than the tallest layout takes (px); what is left over is cut off. */
    private static final int TALLEST = 2400;

    /** Left of every view, for what is read off its axis (px). */
    static final int LEFT_GUTTER = 124;

    /** Right of every view, for the names of its lines (px). */
    static final int RIGHT_GUTTER = 150;

    /** A board this many times longer than wide fills the width of the sheet by itself. */
    private static final double LONG_BOARD = 2.6;

    /** Between views, and between columns (px). */
    private static final int GAP = 32;

    private static final int WIDE_PLAN = Paper.ROOM - LEFT_GUTTER - RIGHT_GUTTER;
    private static final int WIDE_PLAN_HEIGHT = 440;

    /** Length and width of a board that shares the sheet's width with its crosswise section (px). */
    private static final int COLUMNS = Paper.ROOM - 2 * (LEFT_GUTTER + RIGHT_GUTTER) - GAP;
    private static final int COLUMN_PLAN_HEIGHT = 520;

    /** What the crosswise section of a long board may take of the sheet's width, without its gutters (px). */
    private static final int CROSSWISE = 560;

    /** A section narrower than this cannot be read (px). */
    private static final int LEAST_SECTION = 340;

    private final Paper paper;
    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final Profile along;
    private final Profile across;

    private Chart(Paper paper, Judgement judgement, Figures figures) {
        this.paper = paper;
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.along = Profile.lengthwise(judgement);
        this.across = Profile.crosswise(judgement);
    }

    /**
     * Fetches fonts and pens, which takes longer than drawing does, so that it can be done beside other work. Nothing
     * depends on it.
     */
    public static void getReady() {
        Paper paper = new Paper(64, 64);
        paper.fromLeft("0", Type.TEXT, Paper.INK, 0, 32);
        Frame frame = new Frame(0, 0, 64, 64, 0, 1, 0, 1);
        XYChart chart = frame.chart();
        chart.addSeries("a line", new double[] {0, 1}, new double[] {0, 1});
        frame.paint(chart, paper.pen());
        paper.png(64);
    }

    /** Draws a judged board as a PNG image. */
    public static byte[] png(Judgement judgement, Figures figures) {
        Paper paper = new Paper(Paper.WIDTH, TALLEST);
        int bottom = new Chart(paper, judgement, figures).draw();
        return paper.png(bottom + Paper.MARGIN);
    }

    /** What is written on that chart. */
    static List<Paper.Words> words(Judgement judgement, Figures figures) {
        Paper paper = new Paper(Paper.WIDTH, TALLEST);
        new Chart(paper, judgement, figures).draw();
        return paper.written();
    }

    private int draw() {
        int top = header(Paper.MARGIN) + GAP;
        boolean isLong = board.length() >= LONG_BOARD * board.width();
        return isLong ? oneColumn(top) : twoColumns(top);
    }

    private int header(int top) {
        Sentences sentences = new Sentences(judgement, figures);
        int y = paper.paragraph(board.name(), Type.NAME, Paper.MARGIN, top, Paper.ROOM, 2);
        y = paper.paragraph(Sentences.size(board, figures), Type.LABEL, Paper.MARGIN, y, Paper.ROOM, 2);
        y = paper.paragraph(sentences.verdict(), Type.VERDICT, Paper.MARGIN, y + 14, Paper.ROOM, 2);
        return paper.paragraph(sentences.thickness(), Type.TEXT, Paper.MARGIN, y + 2, Paper.ROOM, 4);
    }

    /** Plan, lengthwise section under it along the same x, then the crosswise section beside the key. */
    private int oneColumn(int top) {
        int left = Paper.MARGIN + LEFT_GUTTER;
        PlanView plan = plan(left, top, WIDE_PLAN, WIDE_PLAN_HEIGHT);
        plan.scale().draw(paper, figures, plan.frame().right() - plan.scale().width(paper, figures), top + 4);
        int y = plan.draw() + GAP;

        HeightScale heights = HeightScale.of(judgement, List.of(along, across), plan.frame().scaleX());
        SectionView lengthwise = SectionView.lengthwise(paper, judgement, figures, heights, along);
        int room = Math.max(plan.frame().width(), LEAST_SECTION);
        y = lengthwise.draw(left, y, room, lengthwise.headingLines(room)) + GAP;

        SectionView crosswise = SectionView.crosswise(paper, judgement, figures, heights, across);
        int keyLeft = crosswise.right(left, CROSSWISE) + RIGHT_GUTTER + GAP;
        return Math.max(crosswise.draw(left, y, CROSSWISE, crosswise.headingLines(CROSSWISE)),
            key(plan, keyLeft, y, Paper.WIDTH - Paper.MARGIN - keyLeft));
    }

    /** Plan and lengthwise section under it, along the same x; the key and the crosswise section to their right. */
    private int twoColumns(int top) {
        int left = Paper.MARGIN + LEFT_GUTTER;
        int most = (int) (COLUMNS * board.length() / (board.length() + board.width()));
        PlanView plan = plan(left, top, most, COLUMN_PLAN_HEIGHT);
        int width = Math.max(plan.frame().width(), LEAST_SECTION);
        int column = left + width + RIGHT_GUTTER + GAP;
        plan.scale().draw(paper, figures, column + 8, top + 4);
        int keyBottom = key(plan, column, top + DepthScale.HEIGHT + GAP, Paper.WIDTH - Paper.MARGIN - column);
        int y = Math.max(plan.draw(), keyBottom) + GAP;

        HeightScale heights = HeightScale.of(judgement, List.of(along, across), plan.frame().scaleX());
        SectionView lengthwise = SectionView.lengthwise(paper, judgement, figures, heights, along);
        SectionView crosswise = SectionView.crosswise(paper, judgement, figures, heights, across);
        int crossLeft = column + LEFT_GUTTER;
        int crossRoom = Paper.WIDTH - Paper.MARGIN - RIGHT_GUTTER - crossLeft;
        // Both beds on one level.
        int lines = Math.max(lengthwise.headingLines(width), crosswise.headingLines(crossRoom));
        return Math.max(lengthwise.draw(left, y, width, lines), crosswise.draw(crossLeft, y, crossRoom, lines));
    }

    private PlanView plan(int left, int top, int width, int height) {
        return new PlanView(paper, judgement, figures,
            Frame.ofBoard(board, left, top + PlanView.ABOVE, width, height));
    }

    private int key(PlanView plan, int left, int top, int room) {
        SymbolKey key = new SymbolKey(paper);
        plan.explain(key);
        SectionView.explain(key, judgement);
        int bottom = key.draw(left, top, room);
        Cut cut = judgement.cuts().faceA();
        // Where nothing is cut there is nothing to clamp.
        return judgement.planned() == Planned.NONE || !cut.leavesRoomForClamps() ? bottom
            : paper.paragraph("While face A is cut, keep clamps and shims below " + figures.atMost(cut.keepBelow())
                + " above " + judgement.request().shop().bedInWords() + ".", Type.STRONG, left, bottom + 12, room, 3);
    }
}
