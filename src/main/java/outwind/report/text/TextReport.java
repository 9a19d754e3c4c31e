package outwind.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Defect;
import outwind.cutting.FaceBCheck;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.words.CutWords;
import outwind.report.words.Figures;
import outwind.report.words.Page;
import outwind.report.words.Sentences;
import outwind.report.words.Support;
import outwind.setup.FaceDown;
import outwind.setup.Shim;

/**
 * The report that is read at the machine: verdict and range, numbered steps, cautions. It fits on one page of 80
 * columns; {@link DetailsReport} says why.
 */
public final class TextReport {

    private static final String GRID = "      ";

    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final Sentences sentences;
    private final Page page = new Page();
    private int step = 1;

    private TextReport(Judgement judgement, Figures figures) {
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.sentences = new Sentences(judgement, figures);
    }

    /** Writes the report of a judged board. */
    public static String of(Judgement judgement, Figures figures) {
        return of(judgement, figures, Optional.empty());
    }

    /**
     * Writes the report of a judged board.
     *
     * @param details name of the file that holds the details
     */
    public static String of(Judgement judgement, Figures figures, String details) {
        return of(judgement, figures, Optional.of(details));
    }

    private static String of(Judgement judgement, Figures figures, Optional<String> details) {
        TextReport report = new TextReport(judgement, figures);
        report.title();
        report.verdict();
        report.beforeCutting();
        if (!judgement.request().later()) {
            report.whatToDo();
            report.cautions();
        }
        details.ifPresent(file -> report.page.line("Details: " + file));
        return report.page.toString();
    }

    /** What the terminal says of one of several boards: name and verdict, then the thickness. */
    public static List<String> summary(Judgement judgement, Figures figures) {
        Sentences sentences = new Sentences(judgement, figures);
        return List.of(Page.plain(judgement.board().name() + ": " + sentences.verdict()),
            Page.plain("  " + sentences.briefly()));
    }

    private void title() {
        page.line(board.name());
        page.paragraph(Sentences.size(board, figures));
        page.gap();
    }

    private void verdict() {
        page.paragraph(sentences.verdict());
        page.paragraph(sentences.thickness());
        sentences.shortfall().ifPresent(page::paragraph);
        sentences.doubts().forEach(page::paragraph);
        sentences.drift().ifPresent(page::paragraph);
        if (board.target().isEmpty()) {
            sentences.next().ifPresent(page::paragraph);
        }
        if (board.scan().isEmpty()) {
            board.remarks().forEach(page::paragraph);
        }
        if (!sentences.offBed().isEmpty()) {
            page.paragraph(String.join(" ", sentences.offBed()));
        }
        if (judgement.faceDown().better() == FaceDown.Better.FACE_B_UP) {
            page.paragraph("It would lie better with face\u00a0B up. If you turn it, measure it again.");
        }
    }

    private void beforeCutting() {
        List<String> steps = sentences.beforeCutting();
        if (!steps.isEmpty()) {
            page.heading("Before you cut");
            steps.forEach(one -> page.item("-", one));
        }
    }

    private void whatToDo() {
        if (!judgement.cuts().leavesWood()) {
            page.gap();
            page.paragraph("There is no cut to make: the two cuts meet before both faces are clean. Cut the board into"
                + " shorter or narrower blanks and judge those.");
            return;
        }
        if (judgement.planned() == Planned.NONE) {
            return;
        }
        page.gap();
        if (!judgement.doubts().isEmpty()) {
            page.paragraph((sentences.isLookedAtFirst() ? "First read again what looks wrong. " : "")
                + "The steps use the file as it is.");
        }
        setDown();
        hold();
        page.item(number(), sentences.cut(judgement.cuts().faceA()));
        if (judgement.planned() == Planned.FACE_A) {
            page.item(number(), "Mark the near edge. Turn the board over along its length, on to its new flat face. Set"
                + " zero on " + sentences.bed() + ". Read all of face\u00a0B and run outwind finish: it says whether it still makes "
                + figures.setting(board.target().getAsDouble()) + ".");
            return;
        }
        turnAndCheck();
        page.item(number(), sentences.cut(judgement.cuts().faceB()));
    }

    private String number() {
        return step++ + ".";
    }

    private void setDown() {
        if (!judgement.setup().held().holds()) {
            page.item(number(), sentences.carrier());
            return;
        }
        if (judgement.setup().shims().isEmpty()) {
            page.item(number(), "Lay the board on " + sentences.bed() + " with face A up. It needs no shims.");
            return;
        }
        page.item(number(), "Lay the board on " + sentences.bed() + " with face A up"
            + (judgement.lifts() ? ". Level it on these shims" : ", as it was "
                + (board.scan().isPresent() ? "scanned" : "measured") + ". Slide in these shims until they just touch")
            + " (" + figures.unitInFull() + "; x from the end you measured from):");
        shims();
        sentences.contacts().ifPresent(this::more);
        sentences.unsureShims().ifPresent(words -> more(Support.UNSURE + " " + words));
        if (sentences.carrierInstead().isPresent()) {
            more("Or glue it to a flat carrier board; see the details.");
        }
        if (sentences.justSetDown().isPresent()) {
            more("It lies steady without shims too; see the details.");
        }
    }

    private void shims() {
        BoardGrid grid = new BoardGrid(board, figures);
        for (Support support : Support.round(judgement)) {
            grid.put(support.shim().x(), support.shim().y(), support.height(figures));
        }
        grid.print(page, GRID);
        judgement.request().shop().wedge().ifPresent(taper -> {
            more("Slide the tapered shims in by (" + figures.unitInFull() + "):");
            BoardGrid slide = new BoardGrid(board, figures);
            judgement.setup().places().stream().filter(Shim::isNeeded).forEach(shim -> slide.put(shim.x(), shim.y(),
                judgement.slideIn(shim).stream().mapToObj(figures::place).findFirst().orElse("too thin")));
            slide.print(page, GRID);
        });
    }

    private void hold() {
        more("Press on each corner: it must not move. If it does, shim it there. " + sentences.holding());
        sentences.holdingAdvice().forEach(this::more);
        sentences.warnings().forEach(this::more);
    }

    private void turnAndCheck() {
        page.item(number(), "Let the board rest. Mark the near edge, then turn the board over along its length: that edge"
            + " is now the far one. Use no shims. " + sentences.clamps(judgement.cuts().faceB())
            + " Read face\u00a0B. It should read, in " + figures.unitInFull() + " above " + sentences.bed() + ":");
        BoardGrid grid = new BoardGrid(board, figures);
        double limit = 0;
        for (FaceBCheck check : judgement.checks()) {
            grid.put(check.x(), check.y(), figures.fine(check.height()));
            limit = Math.max(limit, check.tolerance());
        }
        grid.print(page, GRID);
        more("All off by one amount is only your zero. If one differs from the rest by over "
            + figures.fineLength(limit) + ", the board has moved. Then read all of face\u00a0B and run outwind finish.");
        sentences.looseCheck().ifPresent(this::more);
    }

    private void more(String words) {
        page.item("  ", words);
    }

    private void cautions() {
        page.gap();
        List<String> marked = new ArrayList<>();
        for (Defect defect : board.defects()) {
            marked.add("x\u00a0" + figures.place(defect.x1()) + " to " + figures.place(defect.x2()) + " y\u00a0"
                + figures.place(defect.y1()) + " to " + figures.place(defect.y2()));
        }
        if (!marked.isEmpty()) {
            page.paragraph("Watch the marked defects: " + String.join(", ", marked) + ".");
        }
        page.paragraph(CutWords.CAUTIONS);
    }
}
