package outwind.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import outwind.board.Board;
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
import outwind.setup.Corner;
import outwind.setup.Setup;
import outwind.setup.Shim;
import outwind.shop.ShimStack;
import outwind.shop.Cutter;
import outwind.surface.trend.NestedTest;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;

/** What the plan rests on, for whoever asks why: ranges, warp, set-up, cuts, fits and planes; 80 columns. */
public final class DetailsReport {

    /** Ways to make the cuts that are shown beside the quickest. */
    private static final int MOST_OTHER_WAYS = 4;

    /** Notes on readings that are shown; a file may hold thousands. */
    private static final int MOST_NOTES = 20;

    private final Judgement judgement;
    private final Board board;
    private final Figures figures;
    private final Sentences sentences;
    private final Page page = new Page();

    private DetailsReport(Judgement judgement, Figures figures) {
        this.judgement = judgement;
        this.board = judgement.board();
        this.figures = figures;
        this.sentences = new Sentences(judgement, figures);
    }

    /** Writes the details of a judged board. */
    public static String of(Judgement judgement, Figures figures) {
        DetailsReport report = new DetailsReport(judgement, figures);
        report.title();
        report.thickness();
        report.warp();
        report.settingDown();
        report.checks();
        report.cutting();
        report.numbers();
        return report.page.toString();
    }

    private void title() {
        page.line(board.name() + ": details");
        page.paragraph(Sentences.size(board, figures));
        board.remarks().forEach(page::paragraph);
        notes();
    }

    private void notes() {
        List<Reading> noted = board.readings().stream().filter(reading -> !reading.note().isBlank()).toList();
        noted.stream().limit(MOST_NOTES).forEach(reading -> page.paragraph("Note at " + sentences.place(reading.x(),
            reading.y()) + ": " + reading.note() + "."));
        if (noted.size() > MOST_NOTES) {
            page.paragraph("And " + (noted.size() - MOST_NOTES) + " more notes in the file.");
        }
    }

    private void thickness() {
        page.heading("Thickness");
        sentences.ranges().forEach(page::paragraph);
        page.paragraph(sentences.flattery());
        sentences.sawMarks().ifPresent(page::paragraph);
        page.paragraph(sentences.sureness());
        sentences.hiddenKink().ifPresent(page::paragraph);
        sentences.preferred().forEach(page::paragraph);
    }

    private void warp() {
        page.heading("Warp");
        sentences.warp().forEach(page::paragraph);
    }

    private void settingDown() {
        page.heading("Setting it down");
        page.paragraph("Places are in " + figures.unitInFull() + ": x from the end you measured from, y from the near"
            + " edge. The far edge is at y\u00a0" + figures.place(board.width()) + ".");
        page.paragraph(sentences.faceDown());
        page.paragraph(sentences.resting());
        if (!judgement.cuts().leavesWood()) {
            return;
        }
        page.paragraph(sentences.choice());
        if (judgement.setup().held().holds() && !judgement.setup().shims().isEmpty()) {
            page.gap();
            shimTable();
            page.gap();
            sentences.contacts().ifPresent(page::paragraph);
            sentences.unsureShims().ifPresent(page::paragraph);
            page.paragraph(sentences.held());
            sentences.carrierInstead().ifPresent(page::paragraph);
            sentences.justSetDown().ifPresent(page::paragraph);
        }
        page.gap();
        setups();
    }

    private void shimTable() {
        List<String> header = new ArrayList<>(List.of("no.", "x (" + figures.unit() + ")", "edge", "shim ("
            + figures.unit()
            + ")", "± (90\u00a0%)"));
        judgement.request().shop().wedge().ifPresent(wedge -> header.add("slide taper in"));
        List<Double> atHand = judgement.request().shop().shims();
        if (!atHand.isEmpty()) {
            header.add("made of");
        }
        List<List<String>> rows = new ArrayList<>();
        for (Support support : Support.round(judgement)) {
            Shim shim = support.shim();
            List<String> row = new ArrayList<>(List.of(support.label(), figures.place(shim.x()), edge(shim.y()),
                figures.shim(shim.height()), shim.isNeeded() ? figures.fine(judgement.setup().errorOf(shim)) : ""));
            judgement.request().shop().wedge().ifPresent(wedge -> row.add(slideIn(shim)));
            if (!atHand.isEmpty()) {
                row.add(shim.isNeeded() ? madeOf(shim, new ShimStack(atHand)) : "");
            }
            rows.add(row);
        }
        page.table("  ", header, rows);
    }

    private String madeOf(Shim shim, ShimStack atHand) {
        return atHand.madeUp(shim.height()).map(pieces -> pieces.stream().map(figures::shim)
            .collect(Collectors.joining(" + "))).orElse("none at hand");
    }

    private String slideIn(Shim shim) {
        return !shim.isNeeded() ? "" : judgement.slideIn(shim).stream().mapToObj(figures::place).findFirst()
            .orElse("too thin");
    }

    private void checks() {
        if (judgement.planned() != Planned.BOTH_FACES) {
            return;
        }
        page.heading("Checking face B");
        page.paragraph("Once face\u00a0A is cut and down, face\u00a0B should read these heights above "
            + sentences.bed() + ". A reading may differ from the rest by its limit (90\u00a0%).");
        List<List<String>> rows = new ArrayList<>();
        for (FaceBCheck check : judgement.checks()) {
            rows.add(List.of(figures.place(check.x()), figures.place(check.y()), figures.fine(check.height()),
                figures.fine(check.tolerance())));
        }
        page.table("  ", List.of("x (" + figures.unit() + ")", "y", "height (" + figures.unit() + ")", "limit"), rows);
    }

    private String edge(double y) {
        return y == 0 ? "near" : y == board.width() ? "far" : "y " + figures.place(y);
    }

    private boolean isScanned() {
        return board.scan().isPresent();
    }

private void numbers() {
        page.heading("Readings and fits");
        readings();
        fits();
        planes();
    }

    private void readings() {
        ReadingsAlone readings = judgement.readings();
        String what = isScanned() ? "point" : "reading";
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
                fit.fit().residualStandardDeviation().stream().mapToObj(figures::fine).findFirst().orElse("-"),
                Figures.decimals(fit.fit().rSquared(), 3),
                String.valueOf(fit.fit().degreesOfFreedom()),
                testOf(fit)));
        }
        page.paragraph("Fits to face\u00a0A: residual standard deviation (s), R² and degrees of freedom (df)."
            + " The p-value is of the terms that each fit adds.");
        page.table("  ", List.of("fit", "terms", "s (" + figures.unit() + ")", "R²", "df", "p-value"), rows);
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
        page.paragraph("Planes compared on the most likely face (* chosen). Tilt is in " + figures.tiltUnit() + ", lengths in "
            + figures.unitInFull() + ". Least off is what must come off face\u00a0A to clean it, in " + figures.volumeUnit()
            + ".");
        page.table("  ", List.of("plane", "tilt along", "across", "deepest cut", "least off", "finishes at"), rows);
        page.gap();
    }

    private void setups() {
        page.line("Gap under each corner, as measured and levelled (" + figures.unit() + ")");
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < judgement.asMeasured().corners().size(); i++) {
            Corner lying = judgement.asMeasured().corners().get(i);
            Corner level = judgement.levelled().corners().get(i);
            rows.add(List.of("corner", figures.place(lying.x()), edge(lying.y()), figures.number(lying.gap()),
                figures.number(level.gap())));
        }
        page.table("  ", List.of("", "x", "edge", "as measured", "levelled"), rows);
        page.gap();
        Setup other = judgement.lifts() ? judgement.asMeasured() : judgement.levelled();
        if (other.held().holds()) {
            page.paragraph((judgement.lifts() ? "As measured" : "Levelled") + " it would stand on " + inWords(other) + ".");
            page.gap();
        }
    }

    private String inWords(Setup setup) {
        List<String> shims = setup.shims().stream()
            .map(shim -> figures.shim(shim.height()) + " at x\u00a0" + figures.place(shim.x()) + " " + edge(shim.y()))
            .toList();
        return shims.isEmpty() ? "no shims" : Figures.count(shims.size(), "shim", "shims") + " (" + figures.unit()
            + "): "
            + String.join(", ", shims);
    }

    private void cutting() {
        if (judgement.planned() == Planned.NONE) {
            return;
        }
        page.heading("Cuts");
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
        page.paragraph("Lengths are in " + figures.unitInFull() + ", wood off in " + figures.volumeUnit() + ". Depth is below the highest"
            + " spot of the face. The other heights are above " + sentences.bed() + ".");
        page.table("  ", header, rows);
        way.ifPresent(this::machining);
        if (rows.size() > 1) {
            page.paragraph(sentences.total());
        }
    }

    private void machining(Machining way) {
        page.gap();
        for (Cutter cutter : Stream.concat(Stream.of(way.roughing()), way.finishing().stream()).toList()) {
            page.paragraph(cutter.name() + ": diameter " + figures.length(cutter.diameter())
                + ", step-over " + figures.length(cutter.rows()) + ", feed " + figures.feed(cutter.feed())
                + ". Its centre goes " + figures.length(cutter.overrun()) + " past every edge.");
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

}
