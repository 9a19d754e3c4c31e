package outwind.report.sheet;

import java.util.List;
import java.util.Optional;
import outwind.cutting.Cut;
import outwind.cutting.Datum;
import outwind.cutting.FaceBCheck;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.report.words.Sentences;
import outwind.report.words.Support;

/**
 * What to do, step by step, down the right side of the sheet: set the board down, cut face A, turn it over and check,
 * cut face B; or what to do before any cut.
 */
final class StepColumn {

    private static final int GAP = 14;

    /** Between the frame round a number and what is in it (px). */
    private static final int PADDING = 12;

    private static final String NO_BOARD = "Whichever way it lies, the two cuts meet before both faces are clean. Cut"
        + " it into shorter or narrower blanks and judge those.";

    private final Paper paper;
    private final Judgement judgement;
    private final Figures figures;
    private final Sentences sentences;
    private final List<Support> supports;
    private final int left;
    private final int room;
    private final TextStyle type;
    private final boolean isTerse;
    private int y;

    /**
     * @param type    of plain words
     * @param isTerse true if what can be left out is
     */
    private StepColumn(Paper paper, Judgement judgement, Figures figures, int left, int top, int room, TextStyle type,
                       boolean isTerse) {
        this.paper = paper;
        this.judgement = judgement;
        this.figures = figures;
        this.sentences = new Sentences(judgement, figures);
        this.supports = Support.round(judgement);
        this.left = left;
        this.room = room;
        this.type = type;
        this.isTerse = isTerse;
        this.y = top;
    }

    /** Draws the steps in the largest type in which they end above {@code bottom} (px). */
    static void draw(Paper paper, Judgement judgement, Figures figures, int left, int top, int room, int bottom) {
        for (TextStyle type : List.of(TextStyle.TEXT, TextStyle.BODY, TextStyle.SMALL)) {
            if (new StepColumn(new Paper(1, 1), judgement, figures, left, top, room, type, false).end() <= bottom) {
                new StepColumn(paper, judgement, figures, left, top, room, type, false).end();
                return;
            }
        }
        new StepColumn(paper, judgement, figures, left, top, room, TextStyle.SMALL, true).end();
    }

    /** Draws all of it and tells where it ends (px). */
    private int end() {
        if (!judgement.cuts().leavesWood()) {
            heading("Do not cut this board");
            words(NO_BOARD);
        } else if (judgement.planned() == Planned.NONE) {
            beforeCutting();
        } else {
            setDown();
            cutFaceA();
            if (judgement.planned() == Planned.BOTH_FACES) {
                check();
                cutFaceB();
            } else {
                measureAgain();
            }
        }
        return y;
    }

    private void heading(String text) {
        y = paper.paragraph(text, TextStyle.HEADING, left, y, room, 2) + 2;
    }

    private void words(String text) {
        y = paper.paragraph(text, type, left, y, room, isTerse ? 6 : 12);
    }

    private void beforeCutting() {
        heading("Before you cut");
        for (String step : sentences.beforeCutting()) {
            words("\u2022 " + step);
            y += GAP / 2;
        }
    }

    private void setDown() {
        heading("1  Set it down, face A up");
        if (!judgement.setup().held().holds()) {
            words(sentences.carrier());
        } else if (supports.stream().noneMatch(Support::isShimmed)) {
            words("It needs no shims. Press on each corner: it must not move.");
        } else {
            boolean isInside = supports.stream()
                .anyMatch(support -> support.isShimmed() && support.where() == Support.Where.INSIDE);
            words((judgement.lifts() ? "Slide each shim in until the board stands on all of them."
                : "Leave it as you measured it. Slide each shim in until it just touches.")
                + (isInside ? " Those inside go in from the nearest side." : "")
                + (isTerse ? "" : " Press on each corner: it must not move."));
        }
        sentences.unsureShims().ifPresent(words -> words(Support.UNSURE + " " + words));
        if (!isTerse && supports.stream().anyMatch(support -> !support.isShimmed())) {
            words("Where it touches, check with a slip of paper.");
        }
        y += GAP;
    }

    private void cutFaceA() {
        Cut cut = judgement.cuts().faceA();
        heading("2  Cut face A");
        boolean isBed = cut.datum() == Datum.BED;
        String amount = isBed ? figures.setting(cut.aboveBed()) : figures.small(cut.depth());
        int middle = y + paper.height(TextStyle.HEIGHT) / 2;
        paper.fromLeft(amount, TextStyle.HEIGHT, Paper.INK, left, middle);
        int beside = left + paper.width(amount, TextStyle.HEIGHT) + GAP;
        String datum = isBed ? "above " + bed() : "below the highest spot";
        boolean fits = beside + paper.width(datum, type) <= left + room;
        if (fits) {
            paper.fromLeft(datum, type, Paper.INK, beside, middle + 3.0);
        }
        y += paper.height(TextStyle.HEIGHT) + 2;
        if (!fits) {
            words(datum);
        }
        if (cut.isEmpty()) {
            words("Nothing has to come off.");
        } else if (isBed) {
            words("About " + figures.small(cut.depth()) + " below its highest spot." + work(cut, " "));
        } else {
            words("That leaves face A about " + figures.length(cut.aboveBed()) + " above " + bed() + "."
                + work(cut, " "));
        }
        y += GAP / 2;
        keepBelow(cut);
        y += GAP;
    }

    private void keepBelow(Cut cut) {
        if (!cut.leavesRoomForClamps()) {
            words(sentences.clamps(cut));
            return;
        }
        int top = y;
        int inside = left + PADDING;
        String height = figures.atMost(cut.keepBelow());
        int bottom = paper.paragraph("KEEP CLAMPS AND SHIMS BELOW", TextStyle.STRONG, inside, y + PADDING / 2,
            room - 2 * PADDING, 2) - 8;
        int beside = inside + paper.width(height, TextStyle.GREATEST) + GAP;
        String where = "above " + bed();
        boolean fits = beside + paper.width(where, TextStyle.STRONG) <= left + room - PADDING;
        if (fits) {
            paper.fromLeft(where, TextStyle.STRONG, Paper.INK, beside, bottom + paper.height(TextStyle.GREATEST) / 2.0 + 8);
        }
        bottom = paper.paragraph(height, TextStyle.GREATEST, inside, bottom, room - 2 * PADDING, 1);
        if (!fits) {
            bottom = paper.paragraph(where, TextStyle.STRONG, inside, bottom - 6, room - 2 * PADDING, 1) + PADDING / 2;
        }
        y = bottom;
        paper.box(left, top, room, y - top, 4);
    }

    private String bed() {
        return judgement.request().shop().bedInWords();
    }

    /** Passes and time after some words; nothing where no cutter is stated. */
    private String work(Cut cut, String before) {
        return judgement.machining().stream().findFirst().map(way -> before
            + Figures.unbroken(Figures.count(way.on(cut.face()).size(), "pass", "passes")) + ", about "
            + Figures.unbroken(Figures.minutes(way.minutes(cut.face()))) + ".").orElse("");
    }

    private void check() {
        heading("3  Turn it over and check");
        words("Mark the near edge. Turn the board over along its length: the mark is now at the far edge. Face B"
            + " should read, above " + bed() + ", " + figures.unit() + ":");
        y += GAP / 2;
        grid();
        if (!isTerse) {
            words("All off alike is only your zero. If one place alone is off by more than its ±, the board has"
                + " moved. Then read all of face B and run outwind finish.");
            sentences.looseCheck().ifPresent(this::words);
        }
        y += GAP;
    }

    /** The places as they lie on face B, far edge up: height to read, and how far it may be off. */
    private void grid() {
        List<FaceBCheck> checks = judgement.checks();
        List<Double> rows = checks.stream().map(FaceBCheck::y).distinct().sorted((a, b) -> Double.compare(b, a))
            .toList();
        List<Double> columns = checks.stream().map(FaceBCheck::x).distinct().sorted().toList();
        int gutter = rows.stream().mapToInt(row -> paper.width("y " + figures.place(row), TextStyle.SMALL)).max().orElse(0)
            + 8;
        int cell = (room - gutter) / columns.size();
        int line = paper.height(TextStyle.STRONG) + paper.height(TextStyle.SMALL) + 6;
        int head = paper.height(TextStyle.SMALL) + 4;
        int right = left + gutter + cell * columns.size();
        for (int i = 0; i < columns.size(); i++) {
            paper.centred("x " + figures.place(columns.get(i)), TextStyle.SMALL, Paper.INK,
                left + gutter + (i + 0.5) * cell, y + head / 2.0);
        }
        int top = y + head;
        for (int j = 0; j < rows.size(); j++) {
            double middle = top + (j + 0.5) * line;
            paper.fromRight("y " + figures.place(rows.get(j)), TextStyle.SMALL, Paper.INK, left + gutter - 8.0, middle);
            for (int i = 0; i < columns.size(); i++) {
                double x = columns.get(i);
                double across = rows.get(j);
                Optional<FaceBCheck> check = checks.stream().filter(c -> c.x() == x && c.y() == across).findFirst();
                double centre = left + gutter + (i + 0.5) * cell;
                check.ifPresent(found -> {
                    paper.centred(figures.fine(found.height()), TextStyle.STRONG, Paper.INK, centre,
                        middle - paper.height(TextStyle.SMALL) / 2.0);
                    paper.centred("± " + figures.fine(found.tolerance()), TextStyle.SMALL, Paper.INK, centre,
                        middle + paper.height(TextStyle.STRONG) / 2.0);
                });
            }
        }
        for (int j = 0; j <= rows.size(); j++) {
            paper.line(left + gutter, top + j * line, right, top + j * line, Paper.INK, 1.5f);
        }
        for (int i = 0; i <= columns.size(); i++) {
            int x = left + gutter + i * cell;
            paper.line(x, top, x, top + rows.size() * line, Paper.INK, 1.5f);
        }
        y = top + rows.size() * line + 6;
    }

    private void cutFaceB() {
        Cut cut = judgement.cuts().faceB();
        heading("4  Cut face B");
        words(cut.isEmpty() ? "Nothing has to come off." : "Last pass at " + figures.setting(cut.aboveBed())
            + " above " + bed() + ", about " + figures.small(cut.depth()) + " below its highest spot."
            + work(cut, " "));
        words(cut.leavesRoomForClamps() ? "Keep clamps below " + figures.atMost(cut.keepBelow()) + "."
            : sentences.clamps(cut));
        y = paper.paragraph("Finished: " + figures.setting(judgement.cuts().thickness()) + " thick", TextStyle.HEADING, left,
            y + 4, room, 1);
    }

    private void measureAgain() {
        heading("3  Turn it over and measure again");
        words("Turn the board over along its length, on to face A. Set zero on " + bed() + ", read all of face B and run"
            + " outwind finish. It says whether it still makes " + figures.setting(judgement.board().target().getAsDouble())
            + ".");
        y += GAP;
        sentences.next().ifPresent(next -> {
            heading("Or find out first");
            words(next);
        });
    }
}
