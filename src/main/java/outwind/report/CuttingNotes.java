package outwind.report;

import outwind.cutting.Cut;
import outwind.cutting.Datum;
import outwind.stock.Judgement;
import outwind.stock.Planned;

/** How deep to cut each face, how long it takes, and the height that everything else stays below. */
final class CuttingNotes {

    private static final int GAP = 12;

    /** Words narrower than this do not read well beside a number (px). */
    private static final int LEAST_WORDS = 200;

    /** Between the frame round a number and what is in it (px). */
    private static final int PADDING = 14;

    private static final String FACE_A = "Face A: cut";
    private static final String NOTHING = "nothing to come off";
    

    private final Paper paper;
    private final Judgement judgement;
    private final Figures figures;

    CuttingNotes(Paper paper, Judgement judgement, Figures figures) {
        this.paper = paper;
        this.judgement = judgement;
        this.figures = figures;
    }

    /**
     * Draws them.
     *
     * @param room width (px)
     * @return the y below them (px)
     */
    int draw(int left, int top, int room) {
        Cut a = judgement.cuts().faceA();
        Cut b = judgement.cuts().faceB();
        int least = Math.max(LEAST_WORDS, paper.width(amount(a), Type.HEIGHT));
        boolean isWide = room >= boxWidth(a) + 2 * GAP + least;
        int y = (isWide ? besideEachOther(a, left, top, room) : oneBelowTheOther(a, left, top, room)) + GAP;
        if (judgement.planned() == Planned.FACE_A) {
            return paper.paragraph("Then turn it over on to face A, set zero on " + bed() + ", read all of face B and run"
                + " outwind finish.", Type.TEXT, left, y, room, 4);
        }
        String faceB = b.isEmpty() ? NOTHING : "last pass at " + figures.setting(b.aboveBed())
            + " " + aboveTheBed() + ", about " + figures.small(b.depth()) + " below its highest spot" + work(b, "; ");
        String beside = b.leavesRoomForClamps() ? "keep below " + figures.atMost(b.keepBelow()) : "no clamp beside it";
        y = paper.paragraph("Then turn it over on to face A. Face B: " + faceB + "; " + beside + ".", Type.TEXT,
            left, y, room, 4) + GAP;
        return paper.paragraph("Finished: " + figures.setting(judgement.cuts().thickness()) + " thick", Type.NAME, left,
            y, room, 2);
    }

    private String bed() {
        return judgement.request().shop().bedInWords();
    }

    private String aboveTheBed() {
        return "above " + bed();
    }

    private int oneBelowTheOther(Cut cut, int left, int top, int room) {
        int middle = top + paper.height(Type.HEIGHT) / 2;
        paper.fromLeft(FACE_A, Type.HEADING, Paper.INK, left, middle);
        paper.fromLeft(amount(cut), Type.HEIGHT, Paper.INK, left + paper.width(FACE_A, Type.HEADING)
            + GAP, middle);
        return keepBelow(cut, left, howItIsCut(cut, left, top + paper.height(Type.HEIGHT), room) + GAP, room);
    }

    private int besideEachOther(Cut cut, int left, int top, int room) {
        if (!cut.leavesRoomForClamps()) {
            return depth(cut, left, top, room);
        }
        int beside = left + boxWidth(cut) + 2 * GAP;
        return Math.max(keepBelow(cut, left, top, boxWidth(cut)), depth(cut, beside, top, left + room - beside));
    }

    private int boxWidth(Cut cut) {
        return Math.max(paper.width(figures.atMost(cut.keepBelow()), Type.GREATEST),
            paper.width(aboveTheBed(), Type.HEADING)) + 2 * PADDING;
    }

    private int depth(Cut cut, int left, int top, int room) {
        int y = paper.paragraph(FACE_A, Type.HEADING, left, top, room, 1);
        y = paper.paragraph(amount(cut), Type.HEIGHT, left, y - 4, room, 2);
        return howItIsCut(cut, left, y, room);
    }

    /** How deep face A is cut, or where the bed is known how high above it. */
    private String amount(Cut cut) {
        return cut.datum() == Datum.BED ? figures.setting(cut.aboveBed()) : figures.small(cut.depth());
    }

    private int howItIsCut(Cut cut, int left, int top, int room) {
        String how = cut.isEmpty() ? NOTHING : cut.datum() == Datum.BED
            ? aboveTheBed() + ": set the last pass there. About " + figures.small(cut.depth())
                + " below the highest spot" + work(cut, ", in ")
            : "deep from the highest spot" + work(cut, ", in ");
        return paper.paragraph(how + ".", Type.TEXT, left, top, room, 6);
    }

    /** Passes and time after some words; nothing where no cutter is stated. */
    private String work(Cut cut, String before) {
        return judgement.machining().stream().findFirst().map(way -> before
            + Figures.unbroken(Figures.count(way.on(cut.face()).size(), "pass", "passes")) + ", about "
            + Figures.unbroken(Figures.minutes(way.minutes(cut.face())))).orElse("");
    }

    private int keepBelow(Cut cut, int left, int top, int room) {
        if (!cut.leavesRoomForClamps()) {
            return top;
        }
        int inside = left + PADDING;
        String height = figures.atMost(cut.keepBelow());
        int y = paper.paragraph("KEEP BELOW", Type.HEADING, inside, top + PADDING / 2, room, 1) - 6;
        int beside = inside + paper.width(height, Type.GREATEST) + GAP;
        boolean fits = beside + paper.width(aboveTheBed(), Type.HEADING) <= left + room - PADDING;
        if (fits) {
            paper.fromLeft(aboveTheBed(), Type.HEADING, Paper.INK, beside, y + paper.height(Type.GREATEST) / 2.0 + 10);
        }
        y = paper.paragraph(height, Type.GREATEST, inside, y, room, 1);
        if (!fits) {
            y = paper.paragraph(aboveTheBed(), Type.HEADING, inside, y - 6, room, 1) + PADDING / 2;
        }
        paper.box(left, top, room, y - top, 4);
        return y;
    }
}
