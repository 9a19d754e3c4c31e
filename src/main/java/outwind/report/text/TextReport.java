package outwind.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.cutting.Cut;
import outwind.cutting.CuttingPlan;
import outwind.cutting.FaceBCheck;
import outwind.cutting.Machining;
import outwind.cutting.Pass;
import outwind.flatten.ReadingsAlone;
import outwind.flatten.ReferencePlane;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.words.CutWords;
import outwind.report.words.Figures;
import outwind.report.words.Page;
import outwind.report.words.Sentences;
import outwind.report.words.Support;
import outwind.setup.BedContact;
import outwind.setup.Corner;
import outwind.setup.Setup;
import outwind.setup.Shim;
import outwind.shop.Cutter;
import outwind.surface.trend.NestedTest;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;

/** The report that is read at the machine: verdict, what to do, why, the numbers, cautions; 80 columns. */
public final class TextReport {

    /** Ways to make the cuts that are shown beside the quickest. */
    private static final int MOST_OTHER_WAYS = 4;

    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final Sentences sentences;
    private final Page page = new Page();

    private TextReport(Judgement judgement, Figures figures) {
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.sentences = new Sentences(judgement, figures);
    }

    /** Writes the report of a judged board. */
    public static String of(Judgement judgement, Figures figures) {
        TextReport report = new TextReport(judgement, figures);
        report.title();
        report.verdict();
        report.beforeCutting();
        report.whatToDo();
        report.why();
        report.numbers();
        report.cautions();
        return report.page.toString();
    }

    private void title() {
        page.line(board.name());
        page.paragraph(Sentences.size(board, figures));
        page.gap();
    }

    private void verdict() {
        page.paragraph(sentences.verdict());
        page.paragraph(sentences.thickness());
        for (String sentence : sentences.doubts()) {
            page.paragraph(sentence);
        }
        if (board.target().isEmpty()) {
            sentences.next().ifPresent(page::paragraph);
        }
        board.remarks().forEach(page::paragraph);
        sentences.offBed().forEach(page::paragraph);
    }

    private void beforeCutting() {
        List<String> steps = sentences.beforeCutting();
        if (!steps.isEmpty()) {
            page.heading("Before you cut");
            steps.forEach(step -> page.item("-", step));
        }
    }

    private void whatToDo() {
        if (judgement.planned() == Planned.NONE && judgement.cuts().leavesWood()) {
            return;
        }
        page.heading("What to do");
        if (!judgement.cuts().leavesWood()) {
            page.paragraph("There is nothing to cut to: whichever way it lies, the two cuts meet before both faces"
                + " are clean."
                + " Cut it into shorter or narrower blanks and judge those.");
            return;
        }
        page.paragraph("Places are in " + figures.unitInFull()
            + ": x from the end you measured from, y from the near edge."
            + " The far edge is at y\u00a0" + figures.place(board.width()) + ".");
        page.gap();
        if (!judgement.doubts().isEmpty()) {
            page.paragraph("Read again what looks wrong first. What follows takes it as it stands in the file.");
        }
        page.paragraph(sentences.choice());
        page.paragraph(sentences.faceDown());
        page.gap();
        int step = 1;
        if (!judgement.setup().held().holds()) {
            page.item(step++ + ".", sentences.carrier());
        } else if (shims().isEmpty()) {
            page.item(step++ + ".", "Lay the board on " + sentences.bed() + " with face A up. It needs no shims.");
        } else {
            page.item(step++ + ".", judgement.lifts()
                ? "Lay the board on " + sentences.bed() + " with face A up and level it with these shims, slid in from"
                    + " the edges:"
                : "Lay the board on " + sentences.bed() + " with face A up, as it lay when you "
                    + (isScanned() ? "scanned it" : "measured it") + ". Slide these shims in until they just"
                    + " touch; they keep it from rocking and from bending under the cutter:");
            shimTable();
            sentences.unsureShims().ifPresent(words -> page.item("  ", words));
            sentences.carrierInstead().ifPresent(words -> page.item("  ", words));
            sentences.justSetDown().ifPresent(words -> page.item("  ", words));
            page.item("  ", sentences.held());
        }
        page.item(step++ + ".", "Press on each corner. It must not move. " + sentences.holding()
            + " If it moves, shim it where it gives.");
        for (String advice : sentences.holdingAdvice()) {
            page.item("  ", advice);
        }
        for (String warning : sentences.warnings()) {
            page.item("  ", warning);
        }
        page.item(step++ + ".", sentences.cut(judgement.cuts().faceA()));
        if (judgement.planned() == Planned.FACE_A) {
            page.item(step + ".", "Mark the near edge, and turn the board over along its length on to its new flat face."
                + " Set zero on " + sentences.bed() + ", read all of face B and run outwind finish. It says whether "
                + figures.setting(board.target().getAsDouble()) + " can be had.");
            return;
        }
        page.item(step++ + ".", "Let the board rest: it may move once wood is off. Mark the near edge, and turn the"
            + " board over along its length on to its new flat face: the marked edge is now the far one. It needs no"
            + " shims. "
            + sentences.clamps(judgement.cuts().faceB()) + " Read face B at these places. Above " + sentences.bed() + " it should"
            + " read:");
        checkTable();
        page.item("  ", "Write down how far each reading is off. All high or low by the same amount is only your zero."
            + " Look for one that differs from the rest by more than its limit. If none does, nothing has moved. If one"
            + " does, the board has moved or a shim slipped: read all of face B and run outwind finish.");
        page.item(step + ".", sentences.cut(judgement.cuts().faceB()));
        page.item("  ", sentences.total());
    }

    private void shimTable() {
        List<String> header = new ArrayList<>(List.of("no.", "x (" + figures.unit() + ")", "edge", "shim ("
            + figures.unit()
            + ")", "± (90\u00a0%)"));
        judgement.request().shop().wedge().ifPresent(wedge -> header.add("slide wedge in"));
        List<List<String>> rows = new ArrayList<>();
        for (Support support : Support.round(judgement)) {
            Shim shim = support.shim();
            List<String> row = new ArrayList<>(List.of(support.label(), figures.place(shim.x()), edge(shim.y()),
                figures.shim(shim.height()), shim.isNeeded() ? figures.fine(judgement.setup().errorOf(shim)) : ""));
            judgement.request().shop().wedge().ifPresent(wedge -> row.add(slideIn(shim)));
            rows.add(row);
        }
        page.table("      ", header, rows);
        sentences.contacts().ifPresent(words -> page.item("  ", words));
    }

    private String slideIn(Shim shim) {
        return !shim.isNeeded() ? "" : judgement.slideIn(shim).stream().mapToObj(figures::place).findFirst()
            .orElse("too thin");
    }

    private void checkTable() {
        List<List<String>> rows = new ArrayList<>();
        for (FaceBCheck check : judgement.checks()) {
            rows.add(List.of(figures.place(check.x()), figures.place(check.y()), figures.fine(check.height()),
                figures.fine(check.tolerance())));
        }
        page.table("      ", List.of("x (" + figures.unit() + ")", "y", "height (" + figures.unit() + ")",
            "limit"),
            rows);
    }

    private List<Shim> shims() {
        return judgement.setup().shims();
    }

    private String edge(double y) {
        return y == 0 ? "near" : y == board.width() ? "far" : "y " + figures.place(y);
    }

    private void why() {
        page.heading("Why");
        page.paragraph(sentences.flattery());
        page.paragraph(sentences.sureness());
        sentences.hiddenKink().ifPresent(page::paragraph);
        for (String sentence : sentences.warp()) {
            page.paragraph(sentence);
        }
        page.paragraph(sentences.resting());
        sentences.preferred().forEach(page::paragraph);
        List<String> unused = sentences.notUsed();
        if (!unused.isEmpty()) {
            page.paragraph("Read from the file but not used yet: " + String.join(", ", unused) + ".");
        }
    }

    private boolean isScanned() {
        return board.scan().isPresent();
    }

    private void numbers() {
        page.heading("The numbers");
        readings();
        fits();
        planes();
        setups();
        if (judgement.planned() != Planned.NONE) {
            cuts();
        }
    }

    private void readings() {
        ReadingsAlone readings = judgement.readings();
        String what = isScanned() ? "point" : "touch-off";
        page.line("Highest " + what + " " + at(readings.highest()) + ", lowest " + at(readings.lowest()));
        page.line("Spread, highest minus lowest  " + figures.fineLength(readings.spread()));
        page.line("Minimum zone of the " + what + "s  "
            + figures.fineLength(readings.minimumZone().width()));
        page.gap();
    }

    private String at(Reading reading) {
        return figures.fineLength(reading.z()) + " at " + sentences.place(reading.x(), reading.y());
    }

    private void fits() {
        List<List<String>> rows = new ArrayList<>();
        for (TrendFit fit : judgement.fits().all()) {
            rows.add(List.of(fit.model().name().toLowerCase(Locale.ROOT),
                fit.terms().stream().map(Term::symbol).collect(Collectors.joining(" ")),
                fit.fit().residualStandardDeviation().stream().mapToObj(figures::fine).findFirst().orElse("none left"),
                Figures.decimals(fit.fit().rSquared(), 3),
                String.valueOf(fit.fit().degreesOfFreedom()),
                testOf(fit)));
        }
        page.paragraph("Shapes fitted to face A. Left over: standard deviation of what the shape misses. Noise: chance"
            + " that noise alone makes the last terms look as good.");
        page.table("  ", List.of("shape", "terms", "left over (" + figures.unit() + ")", "R²",
            isScanned() ? "spare points" : "spare readings", "noise"), rows);
        page.gap();
    }

    private String testOf(TrendFit fit) {
        Optional<NestedTest> test = switch (fit.model()) {
            case PLANE -> Optional.empty();
            case TWISTED -> judgement.fits().twist();
            case CURVED -> judgement.fits().curve();
        };
        return test.map(t -> Figures.probability(t.probability())).orElse("-");
    }

    private void planes() {
        List<List<String>> rows = new ArrayList<>();
        for (ReferencePlane plane : judgement.planes().all()) {
            rows.add(List.of(plane.name().words() + (plane == judgement.planes().chosen() ? " *" : ""),
                figures.tilt(plane.slab().faceA().slopeX()), figures.tilt(plane.slab().faceA().slopeY()),
                figures.number(plane.deepestCut()), figures.volume(plane.removed()),
                plane.thickness() > 0 ? figures.number(plane.thickness()) : "none"));
        }
        page.paragraph("Planes compared on the most likely face (* chosen; tilt in " + figures.tiltUnit()
            + ", lengths in " + figures.unitInFull() + "). Least off: what has to come off face A to clean it, in "
            + figures.volumeUnit() + "; the plan takes more where the board is thicker than the target.");
        page.table("  ", List.of("plane", "tilt along", "across", "deepest cut", "least off", "finishes at"), rows);
        page.gap();
    }

    private void setups() {
        page.line("Gap under each corner, with the board as it lies and levelled (" + figures.unit() + ")");
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < judgement.asItLies().corners().size(); i++) {
            Corner lying = judgement.asItLies().corners().get(i);
            Corner level = judgement.levelled().corners().get(i);
            rows.add(List.of("corner", figures.place(lying.x()), edge(lying.y()), figures.number(lying.gap()),
                figures.number(level.gap())));
        }
        page.table("  ", List.of("", "x", "edge", "as it lies", "levelled"), rows);
        page.gap();
        page.paragraph("The other way, " + (judgement.lifts() ? "as it lies" : "levelled") + ", it would stand on "
            + inWords(judgement.lifts() ? judgement.asItLies() : judgement.levelled()) + ".");
        page.gap();
        for (BedContact contact : judgement.pose().contacts()) {
            page.line("Rests by itself at " + sentences.place(contact.x(), contact.y()) + " with "
                + Figures.percent(contact.load()) + " of the weight");
        }
        page.gap();
    }

    private String inWords(Setup setup) {
        List<String> shims = setup.shims().stream()
            .map(shim -> figures.shim(shim.height()) + " at x\u00a0" + figures.place(shim.x()) + " " + edge(shim.y()))
            .toList();
        return shims.isEmpty() ? "no shims" : Figures.count(shims.size(), "shim", "shims") + " (" + figures.unit()
            + "): "
            + String.join(", ", shims);
    }

    private void cuts() {
        Optional<Machining> way = judgement.machining().stream().findFirst();
        List<String> header = new ArrayList<>(List.of("face", "depth"));
        way.ifPresent(known -> header.addAll(List.of("passes", "min")));
        header.addAll(List.of("mean depth", "wood off", "keep below", "new face"));
        List<List<String>> rows = new ArrayList<>();
        for (Cut cut : judgement.plannedCuts()) {
            List<String> row = new ArrayList<>(List.of(cut.face().name(), figures.number(cut.depth())));
            way.ifPresent(known -> row.addAll(List.of(String.valueOf(known.on(cut.face()).size()),
                Figures.decimals(known.minutes(cut.face()), 0))));
            row.addAll(List.of(figures.number(cut.meanDepth()), figures.volume(cut.removed()),
                cut.leavesRoomForClamps() ? figures.number(figures.roundedDown(cut.keepBelow())) : "none",
                figures.number(cut.aboveBed())));
            rows.add(row);
        }
        CuttingPlan plan = judgement.cuts();
        if (rows.size() > 1) {
            List<String> row = new ArrayList<>(List.of("both", ""));
            way.ifPresent(known -> row.addAll(List.of(String.valueOf(known.count()),
                Figures.decimals(known.minutes(), 0))));
            row.addAll(List.of(figures.number(plan.faceA().meanDepth() + plan.faceB().meanDepth()),
                figures.volume(plan.removed()), "", ""));
            rows.add(row);
        }
        page.paragraph("Cuts (lengths in " + figures.unitInFull() + ", all the wood that comes off in "
            + figures.volumeUnit() + "; depth is counted from the highest spot of the face, the other heights from the"
            + " bed)");
        page.table("  ", header, rows);
        way.ifPresent(this::machining);
    }

    private void machining(Machining way) {
        page.gap();
        for (Cutter cutter : Stream.concat(Stream.of(way.roughing()), way.finishing().stream()).toList()) {
            page.paragraph(cutter.name() + ": diameter " + figures.small(cutter.diameter()) + ", rows "
                + figures.small(cutter.rows()) + " apart, " + figures.placeLength(cutter.feed()) + " a minute, its centre "
                + figures.small(cutter.overrun()) + " past every edge.");
        }
        CutWords words = sentences.cutWords();
        for (Machining other : judgement.machining().subList(1, Math.min(1 + MOST_OTHER_WAYS,
            judgement.machining().size()))) {
            page.paragraph("Or " + words.way(other) + ".");
        }
        page.gap();
        page.paragraph("Layers:");
        for (Cut cut : judgement.plannedCuts()) {
            page.paragraph("face " + cut.face().name() + ": " + layers(way.on(cut.face()), words) + ".");
        }
    }

    /** Where each layer is cut, down to the first that is cut all over. */
    private String layers(List<Pass> passes, CutWords words) {
        List<String> layers = new ArrayList<>();
        for (Pass pass : passes) {
            boolean everywhere = pass.areas().isEmpty();
            layers.add(figures.small(pass.depth()) + " " + (everywhere ? "all over" : words.areas(pass)));
            if (everywhere) {
                return String.join("; ", layers) + (layers.size() < passes.size() ? ", and all below" : "");
            }
        }
        return String.join("; ", layers);
    }

    private void cautions() {
        page.heading("Take care");
        page.paragraph(CutWords.CAUTIONS);
    }
}
