package outwind.report.words;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import outwind.blanks.EqualLengths;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Underside;
import outwind.cutting.Cut;
import outwind.cutting.CuttingPlan;
import outwind.cutting.FaceBCheck;
import outwind.flatten.NextReading;
import outwind.flatten.PlaneName;
import outwind.flatten.Planes;
import outwind.flatten.ReferencePlane;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.judge.Doubt;
import outwind.judge.Judgement;
import outwind.judge.OffBed;
import outwind.judge.Planned;
import outwind.setup.FaceDown;
import outwind.setup.HoldingCase;
import outwind.setup.Push;
import outwind.setup.RestingPose;
import outwind.setup.Shim;
import outwind.setup.Stiffness;
import outwind.setup.Supports;
import outwind.shop.Shop;
import outwind.surface.ReadingNoise;
import outwind.surface.ZeroDrift;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.Warp;

/** What the answer is in words, the same in the text as on the chart. */
public final class Sentences {

    /** A reading that leaves more of the range's width than this settles little. */
    private static final double SETTLES_LITTLE = 0.8;

    /** A board thinner than this bends under its own shims (mm); shims lower than LOW can hardly be set: our choice. */
    private static final double THIN = 15;
    private static final double LOW = 0.35;

    /** How far a corner of face B is off the mean of the six places where a board has twisted by 1 mm (mm). */
    private static final double OF_TWIST = 0.75;

    /** With a wider limit a twist of 1 mm, read with an error of 0.08 mm, is missed more than once in ten (mm). */
    private static final double LOOSE = OF_TWIST - 1.28 * 0.08;

    /** Most places at which the face's uncertainty is evaluated; a board measured by hand has fewer. */
    private static final int MOST_LOOKED_AT = 10_000;

    private final Judgement judgement;
    private final Figures figures;
    /** True for who types commands, and is told which option does it. */
    private final boolean hasOptions;

    public Sentences(Judgement judgement, Figures figures) {
        this(judgement, figures, true);
    }

    private Sentences(Judgement judgement, Figures figures, boolean hasOptions) {
        this.judgement = judgement;
        this.figures = figures;
        this.hasOptions = hasOptions;
    }

    /** For a page that has no options, but a box for the thickness wanted. */
    public static Sentences onAPage(Judgement judgement, Figures figures) {
        return new Sentences(judgement, figures, false);
    }

    /** Wood and size of a board, and what was read on it. */
    public static String size(Board board, Figures figures) {
        // Caliper readings take precedence over one thickness stated for the whole board.
        boolean isStated = board.thickness().isPresent() && board.calipers().isEmpty();
        int onB = board.readingsOf(Face.B).size();
        String wood = board.kind().words();
        return (wood.isEmpty() ? "" : wood + ", ") + figures.place(board.length())
            + " x " + (isStated
                ? figures.place(board.width()) + " x " + figures.length(board.thickness().getAsDouble())
                : figures.placeLength(board.width()) + ", thickness by caliper") + ", " + measured(board)
            + " on face A" + (onB > 0 ? ", " + onB + " on face B" : "");
    }

    /** How many readings or points were taken. */
    private static String measured(Board board) {
        return board.scan().isPresent() ? Figures.grouped(board.pointsOnFaceA()) + " scanned points"
            : Figures.count(board.pointsOnFaceA(), "reading", "readings");
    }

    private boolean isScanned() {
        return judgement.board().scan().isPresent();
    }

    /** The verdict in one line; with the other one if it depends on a reading that looks wrong. */
    public String verdict() {
        Optional<Verdict> otherwise = judgement.doubts().stream().filter(judgement::decides)
            .flatMap(doubt -> judgement.chanceOn(doubt.without()).stream().mapToObj(Verdict::of)).findFirst();
        return bareVerdict() + otherwise.map(verdict -> " But one reading looks wrong; without it: "
            + verdict.word() + ".").orElse("");
    }

    private String bareVerdict() {
        OptionalDouble target = judgement.board().target();
        if (target.isEmpty()) {
            return median() <= 0 ? "It cannot be flattened." : "It should finish at about "
                + figures.length(chosen().median()) + ".";
        }
        String wanted = figures.setting(target.getAsDouble());
        return switch (judgement.verdict()) {
            case YES -> "YES: it finishes at " + wanted + ".";
            case DOUBTFUL -> "DOUBTFUL: it may or may not finish at " + wanted + ".";
            case NO -> "NO: it does not finish at " + wanted + ".";
            case NONE -> throw new IllegalStateException("a target was given, yet no verdict");
        };
    }

    /** The thickness behind the verdict. */
    public String thickness() {
        if (median() <= 0) {
            return "The two cuts would meet before both faces are clean. Try shorter or narrower blanks.";
        }
        ThicknessRange measured = judgement.outlook().asMeasured();
        ThicknessRange levelled = judgement.outlook().levelled();
        if (judgement.lifts()) {
            return "Levelled on shims it gives " + range(levelled) + ". " + (measured.median() > 0
                ? "As measured it gives " + figures.precise(measured.median()) + "." : "As measured it gives nothing.")
                + chance(levelled);
        }
        String gives = measured.median() > 0 ? "As measured it gives " + range(measured) + "."
            : "As measured it gives nothing.";
        String better = figures.precise(levelled.median());
        if (better.equals(figures.precise(measured.median()))) {
            return gives + " Levelling would gain nothing." + chance(measured);
        }
        boolean littleLess = levelled.median() - measured.median() < Planes.WORTH_LIFTING;
        return gives + " Levelling would give " + better + (judgement.verdict() == Verdict.YES ? "; you don't need it."
            : littleLess ? "; that is not worth the work." : ", but the readings don't show which way to tilt it.")
            + chance(measured);
    }

    /** The thickness in a line, for one board of several. */
    public String briefly() {
        if (median() <= 0) {
            return "The two cuts would meet before both faces are clean.";
        }
        ThicknessRange chosen = chosen();
        List<String> lines = judgement.doubts().stream().map(doubt -> String.valueOf(doubt.suspect().reading().line()))
            .toList();
        return (judgement.lifts() ? "Levelled: " : "As measured: ") + (chosen.median() > 0 ? range(chosen) : "nothing")
            + "." + chance(chosen) + (lines.isEmpty() ? "" : (isLookedAtFirst() ? " LOOK AGAIN at line " : " Note line ")
            + String.join(", ", lines) + ".");
    }

    /** What comes out as measured and levelled, each with its range. */
    public List<String> ranges() {
        ThicknessRange measured = judgement.outlook().asMeasured();
        List<String> ranges = new ArrayList<>();
        if (median() <= 0) {
            ranges.add("Nothing is left between the two cuts.");
            return ranges;
        }
        ranges.add("As measured: " + (measured.median() > 0 ? range(measured) : "nothing") + "."
            + (measured.median() > 0 ? chance(measured) : ""));
        ranges.add("Levelled: " + range(judgement.outlook().levelled()) + "." + chance(judgement.outlook().levelled()));
        return ranges;
    }

    private ThicknessRange chosen() {
        return judgement.lifts() ? judgement.outlook().levelled() : judgement.outlook().asMeasured();
    }

    /** What comes out if it is lifted further than the limit; empty if that gains nothing, or the board is to lie. */
    private Optional<ReferencePlane> freer() {
        return judgement.planes().freer().filter(slab -> judgement.limit().most() > 0);
    }

    /** What the limit to lifting costs. */
    private Optional<String> limited() {
        return freer().map(slab -> "No corner is lifted by more than " + figures.length(judgement.limit().most())
            + ". A lift of " + figures.length(judgement.limit().liftFor(slab.slab().faceA()))
            + " would most likely give " + figures.precise(slab.thickness()) + " (--max-lift).");
    }

    private String range(ThicknessRange range) {
        return figures.precise(range.median()) + " (" + figures.preciseNumber(Math.max(0, range.low())) + " to "
            + figures.precise(range.high()) + ", 90\u00a0%)";
    }

    private String chance(ThicknessRange range) {
        OptionalDouble chance = judgement.chanceOn(range);
        return chance.isEmpty() ? " State a target for a yes or no." : " The chance of "
            + figures.setting(judgement.board().target().getAsDouble()) + " is " + Figures.chance(chance.getAsDouble())
            + ".";
    }

    /** What to do before any cut where the verdict is not yes, one thing a sentence or two; empty where it is. */
    public List<String> beforeCutting() {
        if (judgement.request().later()) {
            return List.of("No steps are given, since the board will change first. For steps on today's wood, run judge"
                + " without --moisture.");
        }
        List<String> steps = new ArrayList<>();
        if (isLookedAtFirst() && judgement.planned() == Planned.NONE) {
            steps.add("Measure again what looks wrong, then judge again. The verdict depends on it.");
            return steps;
        }
        Verdict verdict = judgement.verdict();
        // Where a reading looks wrong, reading it again comes before any other advice.
        if (verdict != Verdict.NO && verdict != Verdict.DOUBTFUL || isLookedAtFirst()) {
            return steps;
        }
        boolean wantsCalipers = isOneThicknessStated() && !judgement.board().evenThickness();
        if (wantsCalipers) {
            steps.add(calipers());
        }
        // Where those come first anyway, one step says it.
        next().filter(words -> !wantsCalipers || judgement.next().get(0).tool() != NextReading.Tool.CALIPER)
            .ifPresent(steps::add);
        steps.addAll(remedies());
        switch (judgement.planned()) {
            case FACE_A -> steps.add("Or cut face\u00a0A just clean, as below. Then read face\u00a0B and run outwind"
                + " finish.");
            case NONE -> steps.add(hasOptions
                ? "To see a plan all the same, add --anyway, or --stop-at with a thickness it makes."
                : "To see a plan all the same, set a smaller thickness under See.");
            case BOTH_FACES -> { }
        }
        return steps;
    }

    private List<String> remedies() {
        double target = judgement.board().target().getAsDouble();
        double safe = chosen().low();
        // The whole board in one length is no crosscut: it only shows what lifting it further would do.
        Optional<EqualLengths> rescue = judgement.rescue()
            .filter(found -> found.count() > 1 || found.length() < judgement.board().length() - Saw.USUAL_KERF);
        List<String> ways = new ArrayList<>();
        if (safe > 0) {
            ways.add("Settle for less. It should safely make " + figures.atMost(safe) + " (95\u00a0%).");
        }
        freer().filter(slab -> slab.thickness() >= target).ifPresent(slab -> ways.add("Lift it by up to "
            + figures.length(judgement.limit().liftFor(slab.slab().faceA())) + (hasOptions ? " (--max-lift)" : "")
            + ". That most likely gives "
            + figures.precise(slab.thickness()) + "."));
        ways.add(rescue.map(found -> "Crosscut it first: " + crosscut(found) + " at " + figures.setting(target)
            + ". Even the least certain length has a chance of " + Figures.chance(found.chance())
            + ".").orElse("Find thicker wood. Crosscutting does not help."));
        return ways;
    }

    private String crosscut(EqualLengths rescue) {
        String length = figures.placeLength(rescue.length());
        return rescue.count() == 1 ? "a single length of " + length + ", levelled on its own, finishes"
            : Figures.count(rescue.count(), "length", "lengths") + " of " + length
                + ", each levelled on its own, finish";
    }

    /** Without a target nobody can say that a reading does not matter. */
    private boolean comesFirst(Doubt doubt) {
        return judgement.board().target().isEmpty() || judgement.decides(doubt);
    }

    /** True if reading again what looks wrong comes before all else. */
    public boolean isLookedAtFirst() {
        return judgement.doubts().stream().anyMatch(this::comesFirst);
    }

    /** Readings that look wrong, with what each does to the verdict. */
    public List<String> doubts() {
        return judgement.doubts().stream().map(this::doubt).toList();
    }

    private String doubt(Doubt doubt) {
        Reading reading = doubt.suspect().reading();
        String answer = judgement.chanceOn(doubt.without()).stream().mapToObj(chance ->
            (judgement.decides(doubt) ? ", and the answer is " : ", and the answer stays ") + Verdict.of(chance).word())
            .findFirst().orElse("");
        boolean aloneOnItsLine = judgement.board().readings().stream()
            .filter(other -> other.line() == reading.line()).count() == 1;
        return (comesFirst(doubt) ? "LOOK AGAIN at line " : "Note line ")
            + reading.line() + " of the file: " + figures.fineLength(reading.z()) + " at "
            + place(reading.x(), reading.y()) + (reading.note().isBlank() ? "" : " (" + reading.note() + ")")
            + ". The other readings point to " + figures.fineLength(doubt.suspect().expected())
            + ". Without it the board gives " + range(doubt.without()) + answer
            + ". Measure it again, or leave it out with --ignore " + (aloneOnItsLine
            ? String.valueOf(reading.line()) : figures.typed(reading.x()) + "x" + figures.typed(reading.y())) + ".";
    }

    /** That zero has drifted, where places that were read again show it. */
    public Optional<String> drift() {
        return ZeroDrift.of(judgement.board()).map(drift -> "LOOK AGAIN at zero: places read again later come out "
            + figures.fineLength(Math.abs(drift.total())) + (drift.total() > 0 ? " higher" : " lower")
            + " from first row to last. Zero has drifted, or the board has moved: measure again.");
    }

    /** Where to measure next, if the verdict depends on it. */
    public Optional<String> next() {
        if (judgement.worthReading().isEmpty()) {
            return Optional.empty();
        }
        List<NextReading> best = judgement.worthReading();
        List<String> places = best.stream().map(next -> place(next.x(), next.y())).toList();
        double left = judgement.next().get(0).left();
        if (isScanned()) {
            return Optional.of("Part of the face was not scanned, and the verdict depends on it. Scan all of the face"
                + " again, above all near " + String.join(" and ", places) + ".");
        }
        boolean byCaliper = best.get(0).tool() == NextReading.Tool.CALIPER;
        List<String> after = best.stream().skip(1).map(next -> (next.tool() == best.get(0).tool() ? "" : byCaliper
            ? "face\u00a0A at " : "the caliper at ") + place(next.x(), next.y())).toList();
        return Optional.of((byCaliper ? "Take a caliper reading next at " : "Measure next at ") + places.get(0)
            + ". That should make the range about " + Figures.percent(1 - left) + " narrower."
            + (after.isEmpty() ? "" : " After it: " + String.join(", then ", after) + ".")
            + (left > SETTLES_LITTLE ? " No single reading settles it." : ""));
    }

    /** What the readings alone would promise beside what the whole board bears. */
    public String flattery() {
        String skim = figures.small(judgement.request().skim());
        String expected = figures.precise(Math.max(0, median()));
        if (isScanned()) {
            return "The scan shows the face cell by cell, with dips and knots. A skim of " + skim + " comes off each face,"
                + " below the lowest saw marks. That leaves " + expected + " at best.";
        }
        return "The readings alone would promise " + figures.precise(Math.max(0, judgement.readings().promise()))
            + ". They miss the corners, the edges and the wood between them. With those, and a skim of " + skim
            + " off each face, expect " + expected + " at best.";
    }

    /** What a skim less than the usual one may leave of a sawn face; a scan's cells hold the marks themselves. */
    public Optional<String> sawMarks() {
        if (!judgement.request().mayLeaveSawMarks() || isScanned() || judgement.board().evenThickness()) {
            return Optional.empty();
        }
        return Optional.of("Saw marks deeper than the skim of " + figures.small(judgement.request().skim())
            + " stay on, and the range does not allow for them. Look for the deepest: the skim should be at least that.");
    }

    /** How sure the face is, where it is least sure, and what one touch-off is taken to be worth. */
    public String sureness() {
        // How sure the face is changes slowly from place to place: of very many a part tells.
        int step = 1 + judgement.whole().size() / MOST_LOOKED_AT;
        int[] some = IntStream.iterate(0, i -> i < judgement.whole().size(), i -> i + step).toArray();
        double[] x = Arrays.stream(some).mapToDouble(i -> judgement.whole().x()[i]).toArray();
        double[] y = Arrays.stream(some).mapToDouble(i -> judgement.whole().y()[i]).toArray();
        double[] deviations = judgement.shape().topDeviationsAt(x, y);
        double most = 0;
        int where = 0;
        for (int k = 0; k < deviations.length; k++) {
            // Of places that rounding alone tells apart the first is named.
            if (deviations[k] > most * (1 + 1e-9)) {
                most = deviations[k];
                where = k;
            }
        }
        String least = "The face is known least well near " + place(x[where], y[where]) + ": ±" + figures.small(2 * most) + " (95\u00a0%).";
        if (isScanned()) {
            return least + scatter(judgement.board().scan().get().cells());
        }
        ReadingNoise noise = judgement.shape().noise();
        String source = switch (noise.source()) {
            case REPEATABILITY -> "the repeatability in the file";
            case REPEATS -> "from the places measured more than once";
            case USUAL -> "usual on rough wood";
        };
        return least + " One reading is good to ±" + figures.fineLength(2 * noise.deviation()) + " (95\u00a0%; "
            + source + ")." + (noise.source() == ReadingNoise.Source.USUAL
            ? " To do better, measure one place five times and state the repeatability." : "") + evenThickness();
    }

    /** What a few caliper readings would do for a board of one stated thickness. */
    private String calipers() {
        List<NextReading> best = judgement.byCaliper();
        if (best.isEmpty()) {
            return "Caliper readings would narrow it little.";
        }
        ThicknessRange range = chosen();
        double left = best.get(best.size() - 1).left();
        return "Take " + Figures.count(best.size(), "caliper reading", "caliper readings") + ", near "
            + best.stream().map(next -> place(next.x(), next.y())).collect(Collectors.joining(", ")) + ". That should"
            + " narrow " + figures.preciseNumber(range.low()) + " to " + figures.precise(range.high()) + " to about " + figures.preciseNumber(range.median() - left * (range.median() - range.low()))
            + " to " + figures.precise(range.median() + left * (range.high() - range.median())) + ".";
    }

    private boolean isOneThicknessStated() {
        Board board = judgement.board();
        return board.calipers().isEmpty() && board.underside() == Underside.ALIKE && board.readingsOf(Face.B).isEmpty()
            && board.thickness().isPresent();
    }

    /** What a stated thickness cannot show. */
    private String evenThickness() {
        Board board = judgement.board();
        if (!isOneThicknessStated()) {
            return "";
        }
        String stated = figures.length(board.thickness().orElseThrow());
        return board.evenThickness() ? " The thickness is taken as " + stated + " everywhere, as stated."
            : " The thickness of " + stated + " is taken as one caliper reading at an unknown place. The range"
                + " allows for a wedge, as sawn boards have. " + calipers();
    }

    /** What the points of one cell scatter by, and how much of that is the scanner. */
    private String scatter(CellHeights cells) {
        double[] scatter = IntStream.range(0, cells.size()).filter(cells::isMeasured)
            .mapToDouble(k -> cells.scatter()[k]).sorted().toArray();
        String usual = " Within a cell the points scatter by ±" + figures.fineLength(2 * scatter[scatter.length / 2])
            + " (95\u00a0%).";
        return usual + (cells.noise().isPresent() ? " The scanner makes ±"
            + figures.fineLength(2 * cells.noise().getAsDouble()) + " of that; the rest is saw marks."
            : " The points are too far apart to say how much of that is saw marks.");
    }

    /** What three columns of readings cannot tell apart. */
    public Optional<String> hiddenKink() {
        if (isScanned()) {
            CellHeights cells = judgement.board().scan().get().cells();
            return Optional.of("A dip or bump " + figures.placeLength(CellHeights.SURELY_SEEN
                * Math.max(cells.cellX(), cells.cellY())) + " across is seen, though perhaps not to its full depth. A"
                + " smaller one may be missed.");
        }
        int columns = judgement.board().columnsTouched();
        if (judgement.shape().isAveraged()) {
            return Optional.of("There are so many readings that they are averaged in cells, 18 along the length and 6"
                + " across. The range does not allow for smaller dips and bumps.");
        }
        return columns > 3 ? Optional.empty() : Optional.of("These readings stand at "
            + Figures.count(columns, "place", "places") + " along the length. Fewer than four cannot tell a kink from a"
            + " bow. If there may be a kink, measure between them.");
    }

    private double median() {
        return judgement.outlook().levelled().median();
    }

    /** One sentence for each kind of warp, with its 95 % limits (two standard errors). */
    public List<String> warp() {
        Warp warp = judgement.warp();
        List<String> sentences = new ArrayList<>();
        sentences.add(kind("Twist", warp.twist(), "the far corner at the far edge stands %s",
            "above the plane of the other three", "below the plane of the other three"));
        sentences.add(kind("Bow", warp.bow(), "the ends stand %s", "above the middle", "below the middle"));
        sentences.add(kind("Cup", warp.cup(), "the edges stand %s", "above the middle", "below the middle"));
        return sentences;
    }

    private String kind(String name, Optional<Warp.Amount> amount, String how, String up, String down) {
        if (amount.isEmpty()) {
            return name + ": these readings cannot show it" + whyUnseen(name) + ".";
        }
        double value = amount.get().value();
        String size = figures.fineLength(Math.abs(value));
        if (amount.get().standardError().isEmpty()) {
            return name + ": " + size + ", but there are too few readings to be sure.";
        }
        double known = amount.get().standardError().getAsDouble();
        String error = " ± " + figures.fineLength(2 * known);
        if (amount.get().isReal()) {
            return name + ": " + String.format(how, figures.fine(Math.abs(value)) + error + " " + (value > 0 ? up : down)) + ".";
        }
        String signed = figures.signed(value) + error;
        return Math.abs(value) > 2 * known
            ? name + ": likely " + signed + ", but so few readings cannot prove it."
            : name + ": too small to measure here (" + signed + ").";
    }

    private String whyUnseen(String name) {
        TrendFit curved = judgement.fits().curved();
        boolean slopeX = curved.coefficient(Term.X).isPresent();
        boolean slopeY = curved.coefficient(Term.Y).isPresent();
        return switch (name) {
            case "Twist" -> !slopeX || !slopeY ? ": they lie in one row" : ": it takes four places that do not lie in a line";
            case "Bow" -> slopeX ? ": it takes three places along the length" : ": they are all at one place along it";
            default -> slopeY ? ": it takes three places across the width" : ": they lie in one row";
        };
    }

    /** Why it is to be levelled, or why not; in one sentence, with what lifting would save. */
    public String choice() {
        double gain = judgement.planes().best().thickness()
            - judgement.planes().named(PlaneName.AS_MEASURED).thickness();
        double chosen = judgement.cuts().faceA().depth() + judgement.cuts().faceB().depth();
        double other = judgement.otherCuts().faceA().depth() + judgement.otherCuts().faceB().depth();
        String saves = figures.length(Math.max(0, gain)) + " of thickness and "
            + figures.length(Math.max(0, judgement.lifts() ? other - chosen : chosen - other)) + " of depth";
        String limited = limited().map(words -> " " + words).orElse("");
        if (judgement.lifts()) {
            return "It is levelled: that saves " + saves + "." + limited;
        }
        String gains = figures.number(gain).equals(figures.number(0)) ? "Levelling would save nothing."
            : "Levelling would save no more than " + saves + ".";
        return "It is cut as measured. " + gains + limited;
    }

    /** Where the plan stops short of what was asked for, by how much. */
    public Optional<String> shortfall() {
        OptionalDouble target = judgement.board().target();
        double reached = judgement.cuts().thickness();
        if (target.isEmpty() || judgement.planned() == Planned.NONE || judgement.request().stopAt().isPresent()
            || reached > target.getAsDouble() - 1e-6) {
            return Optional.empty();
        }
        return Optional.of("This plan stops at " + figures.setting(reached) + ", short of the target of "
            + figures.setting(target.getAsDouble()) + ".");
    }

    /** Where shims are known no better than they are thick. */
    public Optional<String> unsureShims() {
        return judgement.setup().shims().stream().anyMatch(judgement.setup()::isUnsure) ? Optional.of("The ± is as much as the shim: measure the gap with a feeler gauge.")
            : Optional.empty();
    }

    /** Where the check of face B would miss a twist that matters; empty where it sees one. */
    public Optional<String> looseCheck() {
        double limit = judgement.checks().stream().mapToDouble(FaceBCheck::tolerance).max().orElse(0);
        return limit <= LOOSE ? Optional.empty() : Optional.of("That limit is wide: a twist of "
            + figures.small(limit / OF_TWIST) + " may pass. Caliper readings at the four corners, taken before you cut,"
            + " would narrow it.");
    }

    /** How to check the places where the bed itself is counted on; empty if there are none. */
    public Optional<String> contacts() {
        return judgement.setup().places().stream().allMatch(Shim::isNeeded) ? Optional.empty()
            : Optional.of(figures.shim(0) + ": the board touches " + bed() + " there. If a slip of paper goes in, shim it.");
    }

    /** What craftsmen do where low shims under a thin board are no help; empty for any other board. */
    public Optional<String> carrierInstead() {
        double highest = judgement.setup().shims().stream().mapToDouble(Shim::height).max().orElse(Double.MAX_VALUE);
        return judgement.whole().thinnest() > THIN || highest > LOW ? Optional.empty()
            : Optional.of("Shims this low are hard to set under so thin a board. You can fix it to a flat carrier board"
                + " instead. Use dabs of hot glue or double-sided tape at these places, and do not press it flat. Pull at"
                + " every corner before you start the spindle.");
    }

    /** What shims gain on a board that lies steady without them; empty for any other board. */
    public Optional<String> justSetDown() {
        if (!judgement.faceDown().isSteady() || judgement.setup().shims().isEmpty()) {
            return Optional.empty();
        }
        double gives = judgement.movementJustSetDown();
        String gain = judgement.lifts() ? "Levelling gains "
            + figures.small(judgement.outlook().levelled().median() - judgement.outlook().asMeasured().median())
            + " of thickness." : "The shims keep it from bending under the cutter.";
        String moves = Double.isFinite(gives) ? " moves it by up to " + figures.fineLength(gives) : " tips it";
        return Optional.of("It lies steady by itself, so you can also set it down without shims. Then a push of "
            + figures.force(judgement.request().push().force()) + moves + ". " + gain);
    }

    /** Whether it rocks, and which face is better up, as far as the readings show it. */
    public String faceDown() {
        FaceDown down = judgement.faceDown();
        String lies = "With face A up it " + lying(down.asMeasured(), down.isSteady() ? "lies steady"
            : down.rocks() ? "rocks" : "may rock: press on each corner to find out. It") + ".";
        return lies + switch (down.better()) {
            case FACE_A_UP -> " That is the better way up.";
            case FACE_B_UP -> " With face B up it " + lying(down.turned(),
                down.turned().rocks() ? "rocks" : "lies steady") + ". If you turn it, "
                + (isScanned() ? "scan" : "measure") + " it again.";
            case UNKNOWN -> "";
        };
    }

    private String lying(RestingPose pose, String how) {
        return pose.isFlat() ? "lies flat" : how + (how.endsWith("It") ? " stands" : " and stands") + " up to "
            + figures.length(pose.widest()) + " off the bed";
    }

    /** What craftsmen do with a board that shims cannot hold; common practice. */
    public String carrier() {
        Supports held = judgement.setup().held();
        Push push = judgement.request().push();
        return "Shims alone cannot hold this board: a push of " + figures.force(push.force()) + " moves it by more than "
            + figures.small(push.give()) + " near " + place(held.weakestX(), held.weakestY())
            + ". Lay it with face\u00a0A up on a stiff, flat carrier board. Fix it with dabs of hot glue, or fill the gaps"
            + " and use double-sided tape. Do not press it flat." + (judgement.lifts()
            ? " Level it first: the details list the gap under each corner." : "")
            + " Let the glue set. Pull at every corner before you start the spindle.";
    }

    /** How well the shims hold it, and how that is known. */
    public String held() {
        Supports held = judgement.setup().held();
        Push push = judgement.request().push();
        String wood = Stiffness.of(judgement.board().species()).wood().map(name -> "for " + name)
            .orElseGet(() -> judgement.board().species()
                .map(species -> species + " is not in the list, so a soft wood is assumed")
                .orElse("for a soft wood, since no species is stated"));
        String spans = " By beam theory a span may be " + figures.placeLength(held.limit().along())
            + " and an overhang " + figures.placeLength(held.limit().overhang()) + " (" + wood + ").";
        String force = figures.force(push.force());
        return "On these shims a push of " + force + " moves it by at most " + figures.fineLength(held.movement())
            + ", near " + place(held.weakestX(), held.weakestY()) + "." + (held.inside()
                ? " Slide a shim that is not at an edge in from the nearest side." : "") + spans;
    }

    /** How the work is held from beside while face A is cut. */
    public String holding() {
        Cut cut = judgement.cuts().faceA();
        return cut.leavesRoomForClamps() ? "Clamp it from the sides. Keep clamps below " + figures.atMost(cut.keepBelow())
            + " above " + bed() + "." : clamps(cut);
    }

    /** How one face is cut; see {@link CutWords}. */
    public String cut(Cut cut) {
        int highest = judgement.whole().highestOver(judgement.cuts().faceA().plane());
        return cutWords().cut(cut, cut.face() == Face.A ? Optional.of(place(judgement.whole().x()[highest],
            judgement.whole().y()[highest])) : Optional.empty());
    }

    /** How high clamps may stand. */
    public String clamps(Cut cut) {
        return cutWords().clamps(cut);
    }

    /** What the board lies on while it is cut. */
    public String bed() {
        return judgement.request().shop().bedInWords();
    }

    /** How cuts are made in words. */
    public CutWords cutWords() {
        return new CutWords(judgement.request().shop(), judgement.machining(), figures);
    }

    /** What both cuts come to, and why the two depths are more than the board loses. */
    public String total() {
        CuttingPlan cuts = judgement.cuts();
        String time = judgement.machining().stream().findFirst().map(way -> "In all: "
            + Figures.count(way.count(), "pass", "passes") + ", about " + Figures.minutes(way.minutes()) + " at the"
            + " machine. ").orElse("");
        return time + "On average "
            + figures.small(cuts.faceA().meanDepth()) + " comes off face\u00a0A and "
            + figures.small(cuts.faceB().meanDepth()) + " off face\u00a0B.";
    }

    /** The higher of the shop's clamps and stops (mm), as far as they are known. */
    private OptionalDouble highestHolder() {
        Shop shop = judgement.request().shop();
        return DoubleStream.concat(shop.clamps().stream(), shop.stops().stream()).max();
    }

    /** How to hold this board, by what makes it awkward. */
    public List<String> holdingAdvice() {
        return judgement.holdingCases().stream().map(this::advice).toList();
    }

    private String advice(HoldingCase awkward) {
        return switch (awkward) {
            case LONG_AND_THIN -> "Long and thin: hold it at both ends and in the middle, and take light passes.";
            case CUPPED -> "Cupped: do not press it flat, or it springs back when you let go. Hold it from the sides.";
            case THIN -> "Thin when done: clamps bow it. Tape or glue face\u00a0A to a flat carrier board for face\u00a0B.";
            case SMALL -> "Small: clamps find little to hold. Glue it to a larger carrier board, and keep hands away.";
            case BURNS -> "A wide cutter burns " + judgement.board().species().orElse("this wood")
                + " at high speed. Lower the speed and keep the cutter moving.";
        };
    }

    /** What can be done with a board larger than the bed; empty if it lies on it. */
    public List<String> offBed() {
        return judgement.offBed().map(this::offBed).orElse(List.of());
    }

    private List<String> offBed(OffBed off) {
        String bed = figures.place(off.bed().length()) + " x " + figures.placeLength(off.bed().width());
        List<String> ways = new ArrayList<>();
        ways.add("LARGER THAN THE BED of " + bed + "." + (off.tooWide()
            ? " Rip it first, then measure and judge the strips." : ""));
        off.lengths().ifPresent(found -> ways.add("Crosscut it first: " + crosscut(found) + " at "
            + figures.setting(judgement.board().target().getAsDouble()) + "."));
        off.indexing().ifPresent(indexing -> ways.add("Or cut it in " + indexing.setups() + " set-ups that overlap by " + figures.placeLength(indexing.overlap())
            + ". Level it each time to the part already cut. Expect a step of "
            + figures.small(Math.max(indexing.stepA(), indexing.stepB())) + "."));
        return ways;
    }

    /** What the cutter would meet. */
    public List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        double keepBelow = judgement.cuts().faceA().keepBelow();
        highestHolder().ifPresent(clamp -> {
            for (Cut cut : List.of(judgement.cuts().faceA(), judgement.cuts().faceB())) {
                if (clamp >= cut.keepBelow()) {
                    warnings.add("WARNING: the cutter would meet your clamps or stops of " + figures.length(clamp)
                        + " on face " + cut.face().name() + ". " + clamps(cut));
                }
            }
        });
        double tallest = judgement.setup().shims().stream().mapToDouble(Shim::height).max().orElse(0);
        if (tallest >= keepBelow) {
            warnings.add("WARNING: a shim of " + figures.length(tallest) + " stands in the cutter's way. Keep everything below "
                + figures.atMost(keepBelow) + "; do not cut it like this.");
        }
        judgement.request().shop().wedge().filter(wedge -> tallest > 0 && wedge.butt() >= keepBelow).ifPresent(wedge ->
            warnings.add("WARNING: the cutter would meet the thick ends of your tapered shims (" + figures.length(wedge.butt())
                + "). Use ones under " + figures.atMost(keepBelow) + ", or saw off what sticks out."));
        return warnings;
    }

    /** How the board lies if nobody holds it. */
    public String resting() {
        RestingPose pose = judgement.pose();
        if (pose.isFlat()) {
            return "Just set down, the board lies flat on the bed.";
        }
        List<String> places = pose.contacts().stream().map(contact -> place(contact.x(), contact.y()) + " ("
            + Figures.percent(contact.load()) + " of the weight)").toList();
        FaceDown down = judgement.faceDown();
        return "Just set down, it " + (down.isSteady() ? "lies steady" : down.rocks() ? "rocks" : "may rock")
            + (places.isEmpty() ? "" : " and touches the bed at " + String.join(", ", places)) + ". "
            + "The chance that it rocks under a push of " + figures.force(5) + " is "
            + Figures.percent(down.rockingShare()) + "." + (down.rocks() && pose.contacts().size() == 2
            ? " Set mid-rock, a free corner stands up to " + figures.length(pose.widest()) + " off the bed." : "");
    }

    /** A place on the board in words: along by across. */
    public String place(double x, double y) {
        return "x\u00a0" + figures.place(x) + " y\u00a0" + figures.place(y);
    }

    /** Where the file states one thing twice, which is used. */
    public List<String> preferred() {
        Board board = judgement.board();
        List<String> sentences = new ArrayList<>();
        if (board.thickness().isPresent() && !board.calipers().isEmpty()) {
            sentences.add("The thickness is that of the " + Figures.count(board.calipers().size(), "caliper reading",
                "caliper readings") + ", not the " + figures.length(board.thickness().getAsDouble())
                + " stated for the whole board.");
        }
        if (!board.readingsOf(Face.BED).isEmpty()) {
            sentences.add("The bed was measured too: heights are above it.");
        }
        return sentences;
    }
}
