package outwind.report.sheet;

import java.util.List;
import outwind.board.Board;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.drawing.Frame;
import outwind.report.drawing.HeightScale;
import outwind.report.drawing.Paper;
import outwind.report.drawing.Profile;
import outwind.report.drawing.SymbolKey;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.report.words.Sentences;
import outwind.report.words.Support;

/**
 * The second sheet of a board, a landscape page: what was read and where, two sections through the board as it stands on
 * the bed, and every shim with how sure its height is.
 *
 * <p>A board much longer than wide has the section along it under the plan, any other beside it.
 */
public final class DetailSheet {

    private static final int MARGIN = 26;
    private static final int ROOM = Paper.WIDTH - 2 * MARGIN;
    private static final int GAP = 24;

    /** Left of every view, for what is read off its axis, and right of it, for the names of its lines (px). */
    static final int LEFT_GUTTER = 124;
    static final int RIGHT_GUTTER = 150;

    /** A board this many times longer than wide fills the width of the sheet by itself. */
    private static final double LONG_BOARD = 3;

    /** Most room for the board from above, across the sheet and beside a section (px). */
    private static final int WIDE_PLAN = ROOM - LEFT_GUTTER - RIGHT_GUTTER;
    private static final int WIDE_PLAN_HEIGHT = 240;
    private static final int NARROW_PLAN = 560;
    private static final int NARROW_PLAN_HEIGHT = 400;

    /** What the heading above a narrow plan takes (px). */
    private static final int LEAST_BESIDE = 520;

    /** What the key takes from left to right (px). */
    private static final int LEAST_KEY = 300;

    /** What the crosswise section may take, without its gutters (px). */
    private static final int CROSSWISE = 290;

    private final Paper paper = new Paper(Paper.WIDTH, Paper.HEIGHT);
    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final Profile along;
    private final Profile across;

    private DetailSheet(Judgement judgement, Figures figures) {
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.along = Profile.lengthwise(judgement);
        this.across = Profile.crosswise(judgement);
    }

    /** Draws the details of a judged board as a PNG image. */
    public static byte[] png(Judgement judgement, Figures figures) {
        return drawn(judgement, figures).png(Paper.HEIGHT);
    }

    /** The same before it is made into an image. */
    public static Paper drawn(Judgement judgement, Figures figures) {
        DetailSheet sheet = new DetailSheet(judgement, figures);
        sheet.draw();
        return sheet.paper;
    }

    private void draw() {
        int y = paper.paragraph(board.name() + ": details", TextStyle.NAME, MARGIN, MARGIN - 8, ROOM, 1);
        y = paper.paragraph(Sentences.size(board, figures), TextStyle.LABEL, MARGIN, y, ROOM, 1) + GAP / 2;
        boolean isLong = board.length() >= LONG_BOARD * board.width();
        PlanView plan = new PlanView(paper, judgement, figures, Frame.ofBoard(board, MARGIN + LEFT_GUTTER,
            y + PlanView.ABOVE, isLong ? WIDE_PLAN : NARROW_PLAN, isLong ? WIDE_PLAN_HEIGHT : NARROW_PLAN_HEIGHT));
        int below = plan.draw();
        int left = isLong ? MARGIN + LEFT_GUTTER : Math.max(plan.frame().right() + RIGHT_GUTTER, MARGIN + LEAST_BESIDE) + LEFT_GUTTER;
        int room = isLong ? WIDE_PLAN : Paper.WIDTH - MARGIN - RIGHT_GUTTER - left;
        HeightScale heights = HeightScale.of(judgement, List.of(along, across), isLong ? plan.frame().scaleX()
            : Math.min(room / board.length(), plan.frame().scaleX()));
        SectionView lengthwise = SectionView.lengthwise(paper, judgement, figures, heights, along);
        int top = isLong ? below + GAP : y;
        int bottom = Math.max(below, lengthwise.draw(left, top, room, lengthwise.headingLines(room))) + GAP;
        lastRow(plan, heights, Math.min(bottom, Paper.HEIGHT - MARGIN - leastRow(heights)));
    }

    private int leastRow(HeightScale heights) {
        return heights.height() + 150;
    }

    /** The section across, the shims, and the key. */
    private void lastRow(PlanView plan, HeightScale heights, int top) {
        SectionView crosswise = SectionView.crosswise(paper, judgement, figures, heights, across);
        int left = MARGIN + LEFT_GUTTER;
        crosswise.draw(left, top, CROSSWISE, 2);
        int x = left + CROSSWISE + RIGHT_GUTTER;
        if (judgement.planned() != Planned.NONE) {
            x = tables(x, top) + GAP + 8;
        }
        SymbolKey key = new SymbolKey(paper);
        plan.explain(key);
        SectionView.explain(key, judgement);
        key.draw(x, top, Paper.WIDTH - MARGIN - x);
    }

    /** The shims of both edges beside each other, or below where they are wide; where they end on the right (px). */
    private int tables(int left, int top) {
        List<Support> supports = Support.round(judgement);
        ShimTable near = ShimTable.of(paper, judgement, figures, supports, false);
        ShimTable far = ShimTable.of(paper, judgement, figures, supports, true);
        int room = Paper.HEIGHT - MARGIN - top;
        int right = left + near.width() + GAP + 8 + far.width();
        if (right <= Paper.WIDTH - MARGIN - LEAST_KEY) {
            near.draw(left, top, room);
            far.draw(right - far.width(), top, room);
            return right;
        }
        int first = Math.min(near.height(), Math.max(room / 2, room - far.height() - GAP));
        near.draw(left, top, first);
        far.draw(left, top + first + GAP, room - first - GAP);
        return left + Math.max(near.width(), far.width());
    }
}
