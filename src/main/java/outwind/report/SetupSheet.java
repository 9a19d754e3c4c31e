package outwind.report;

import java.util.ArrayList;
import java.util.List;
import outwind.board.Board;
import outwind.flatten.Verdict;
import outwind.stock.Judgement;
import outwind.stock.Planned;

/**
 * The sheet that hangs at the bed and is read from a step away: how to set the board down for its first cut, how deep
 * to go, and what to keep clear of.
 *
 * <p>A long board lies above its shims and cuts, any other beside them. Laid out from the bottom up, in pixels: what
 * must be read takes what it needs, the board what is left.
 */
public final class SetupSheet {

    /** Of the sheet (px); more where the board would else have no room under many warnings. */
    static final int HEIGHT = 1130;

    private static final int MARGIN = 40;
    private static final int ROOM = Paper.WIDTH - 2 * MARGIN;
    private static final int GAP = 20;

    /** Between what stands side by side (px). */
    private static final int APART = 40;

    /** A board this many times longer than wide is drawn larger across the whole sheet than beside its shims. */
    private static final double LONG_BOARD = 3;

    /** Width of the shims and cuts beside a board (px). */
    private static final int COLUMN = 540;

    /** Least width of what is said of the cuts (px). */
    private static final int LEAST_NOTES = 420;

    /** So many shims of an edge are listed however little room there is. */
    private static final int SURE_SHIMS = 7;

    /** More than this is not said of the cuts in one line (px). */
    private static final int MOST_NOTES = 640;

    private static final int BOX_PADDING = 12;

    private static final String CAUTIONS = "Wear eye, ear and dust protection. The work must be held before the spindle"
        + " starts, with nothing within reach of the cutter. The machine maker's manual, local rules and trained"
        + " practice come first.";

    private static final String NO_BOARD = "Whichever way it lies, the two cuts meet before both faces are clean. Cut"
        + " it into shorter or narrower blanks and judge those.";

    private final Paper paper;
    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final List<Support> supports;
    private final ShimTable near;
    private final ShimTable far;

    /** Of this sheet (px). */
    private final int height;

    private SetupSheet(Paper paper, int height, Judgement judgement, Figures figures) {
        this.paper = paper;
        this.height = height;
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.supports = Support.round(judgement);
        this.near = ShimTable.of(paper, judgement, figures, supports, false);
        this.far = ShimTable.of(paper, judgement, figures, supports, true);
    }

    /** Draws how to set a judged board down as a PNG image. */
    public static byte[] png(Judgement judgement, Figures figures) {
        int height = HEIGHT + missing(judgement, figures);
        return drawn(judgement, figures, height).png(height);
    }

    /** What is written on that sheet. */
    static List<Paper.Words> words(Judgement judgement, Figures figures) {
        return drawn(judgement, figures, HEIGHT + missing(judgement, figures)).written();
    }

    /** How much taller than usual the sheet must be (px). */
    private static int missing(Judgement judgement, Figures figures) {
        return new SetupSheet(new Paper(1, 1), HEIGHT, judgement, figures).draw();
    }

    private static Paper drawn(Judgement judgement, Figures figures, int height) {
        Paper paper = new Paper(Paper.WIDTH, height);
        new SetupSheet(paper, height, judgement, figures).draw();
        return paper;
    }

    /** Draws the sheet and tells how much taller it should have been (px). */
    private int draw() {
        int top = header() + GAP;
        int bottom = warnings(cautions() - GAP) - GAP;
        if (judgement.planned() == Planned.NONE) {
            return beforeCutting(top, bottom);
        }
        return board.length() >= LONG_BOARD * board.width() ? boardAbove(top, bottom) : boardBeside(top, bottom);
    }

    private int header() {
        int y = paper.paragraph(board.name(), Type.NAME, MARGIN, MARGIN - 8, ROOM, 1);
        boolean isCut = judgement.cuts().leavesWood();
        String what = !isCut ? "Do not cut this board" : switch (judgement.planned()) {
            case NONE -> "Before you cut";
            case FACE_A -> "Face A only, just clean; then measure again";
            case BOTH_FACES -> judgement.doubts().isEmpty() ? "Face A first: set it down, cut it flat"
                : "Read again before you cut: a reading looks wrong";
        };
        y = paper.paragraph(what, Type.VERDICT, MARGIN, y, ROOM, 1);
        return paper.paragraph(isCut ? judgement.planned() == Planned.NONE ? sentences().verdict() : setup() : NO_BOARD,
            Type.HEADING, MARGIN, y, ROOM, 4);
    }

    /** What to do instead of cutting, one thing below the other; how much taller the sheet should have been (px). */
    private int beforeCutting(int top, int bottom) {
        int y = top;
        for (String step : sentences().beforeCutting()) {
            y = paper.paragraph("\u2022 " + step, Type.HEADING, MARGIN, y, ROOM, 4) + GAP;
        }
        return Math.max(0, y - bottom);
    }

    private Sentences sentences() {
        return new Sentences(judgement, figures);
    }

    private String setup() {
        if (!judgement.setup().held().holds()) {
            return "ON A CARRIER: " + sentences().carrier();
        }
        boolean isShimmed = supports.stream().anyMatch(Support::isShimmed);
        String inside = supports.stream()
            .anyMatch(support -> support.isShimmed() && support.where() == Support.Where.INSIDE)
            ? " Those inside go in from the nearest side." : "";
        String unshimmed = ": it needs no shims.";
        if (judgement.lifts()) {
            return isShimmed ? "LEVELLED: slide each shim in until the board bears on all of them." + inside
                : "LEVELLED" + unshimmed;
        }
        return isShimmed ? "AS MEASURED: slide each shim in until it just touches; lift nothing." + inside
            : "AS MEASURED" + unshimmed;
    }

    /** Along the lower edge; where they begin (px). */
    private int cautions() {
        int lines = Paper.heightOf(CAUTIONS, Type.TEXT, ROOM, 2);
        int top = height - MARGIN + 8 - lines;
        paper.paragraph(CAUTIONS, Type.TEXT, MARGIN, top, ROOM, 2);
        return top;
    }

    /** In a frame that ends at {@code bottom}; where it begins (px), or {@code bottom} if there are none. */
    private int warnings(int bottom) {
        List<String> lines = warningLines();
        if (lines.isEmpty()) {
            return bottom;
        }
        int room = ROOM - 2 * BOX_PADDING;
        int text = lines.stream().mapToInt(line -> Paper.heightOf(line, Type.STRONG, room, 2)).sum();
        int top = bottom - text - 2 * BOX_PADDING;
        paper.box(MARGIN, top, ROOM, bottom - top, 5);
        int y = top + BOX_PADDING;
        for (String line : lines) {
            y = paper.paragraph(line, Type.STRONG, MARGIN + BOX_PADDING, y, room, 2);
        }
        return top;
    }

    private List<String> warningLines() {
        Sentences sentences = sentences();
        List<String> lines = new ArrayList<>();
        if (judgement.planned() != Planned.NONE && judgement.verdict() != Verdict.YES
            && judgement.verdict() != Verdict.NONE) {
            lines.add(sentences.verdict());
        }
        List<String> places = judgement.doubts().stream().map(doubt -> doubt.suspect().reading())
            .map(reading -> sentences.place(reading.x(), reading.y())).toList();
        if (!places.isEmpty()) {
            lines.add("LOOK AGAIN before you cut: the reading at " + String.join(", at ", places) + " looks wrong.");
        }
        if (judgement.planned() != Planned.NONE) {
            lines.addAll(sentences.warnings());
        }
        return lines;
    }

    private int boardAbove(int top, int bottom) {
        SetupPlan plan = plan(MARGIN, Paper.WIDTH - MARGIN);
        int notesLeft = MARGIN + near.width() + APART + far.width() + APART;
        int notesRoom = Math.min(MOST_NOTES, Math.max(LEAST_NOTES, Paper.WIDTH - MARGIN - notesLeft));
        int left = Paper.WIDTH - MARGIN - notesRoom;
        int room = Math.max(ShimTable.height(SURE_SHIMS), bottom - GAP - plan.leastHeight() - top);
        int shims = Math.min(Math.max(near.height(), far.height()), room);
        int below = Math.max(notesHeight(notesRoom), shims);
        int y = bottom - below;
        near.draw(MARGIN, y, below);
        far.draw(MARGIN + near.width() + APART, y, below);
        notes(paper).draw(left, y, notesRoom);
        plan.draw(top, y - GAP);
        return Math.max(0, top + plan.leastHeight() - (y - GAP));
    }

    private int boardBeside(int top, int bottom) {
        int left = Paper.WIDTH - MARGIN - COLUMN;
        int y = bottom - notesHeight(COLUMN);
        notes(paper).draw(left, y, COLUMN);
        int room = (y - top - GAP) / 2;
        int first = Math.min(near.height(), Math.max(room, y - top - 2 * GAP - far.height()));
        near.draw(left, top, first);
        far.draw(left, top + first + GAP, y - top - first - 2 * GAP);
        SetupPlan plan = plan(MARGIN, left - APART);
        plan.draw(top, bottom);
        int tables = Math.min(near.height(), ShimTable.height(SURE_SHIMS))
            + Math.min(far.height(), ShimTable.height(SURE_SHIMS)) + 2 * GAP;
        return Math.max(0, Math.max(top + plan.leastHeight() - bottom, top + tables - y));
    }

    private SetupPlan plan(int left, int right) {
        return new SetupPlan(paper, judgement, figures, supports, left, right);
    }

    private int notesHeight(int room) {
        return notes(new Paper(1, 1)).draw(0, 0, room);
    }

    private CuttingNotes notes(Paper on) {
        return new CuttingNotes(on, judgement, figures);
    }
}
