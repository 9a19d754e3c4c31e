package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
import outwind.flatten.PlaneName;
import outwind.flatten.Planes;
import outwind.flatten.ReferencePlane;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.judge.Doubt;
import outwind.judge.Judgement;
import outwind.judge.OffBed;
import outwind.judge.Planned;
import outwind.setup.BedContact;
import outwind.setup.FaceDown;
import outwind.setup.HoldingCase;
import outwind.setup.Push;
import outwind.setup.RestingPose;
import outwind.setup.Shim;
import outwind.setup.Stiffness;
import outwind.setup.Supports;
import outwind.shop.Shop;
import outwind.surface.TouchOffNoise;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.Warp;

/** What the answer is in words, the same in the text as on the chart. */
public final class Sentences {

    /** A touch-off that leaves more of the range's width than this is hardly worth the walk. */
    private static final double SETTLES_LITTLE = 0.8;

    /** A board thinner than this bends under its own shims (mm); shims lower than LOW can hardly be set: our choice. */
    private static final double THIN = 15;
    private static final double LOW = 0.35;

    /** Places at which it is looked how sure the face is; a board touched off by hand has fewer. */
    private static final int MOST_LOOKED_AT = 10_000;

    private final Judgement judgement;
    private final Figures figures;

    public Sentences(Judgement judgement, Figures figures) {
        this.judgement = judgement;
        this.figures = figures;
    }

    /** Wood and size of a board, and what was read on it. */
    public static String size(Board board, Figures figures) {
        // Caliper readings go before a thickness that is stated for the whole board.
        boolean isStated = board.thickness().isPresent() && board.calipers().isEmpty();
        int onB = board.readingsOf(Face.B).size();
        return board.species().map(wood -> wood + ", ").orElse("") + figures.place(board.length())
            + " x " + (isStated
                ? figures.place(board.width()) + " x " + figures.length(board.thickness().getAsDouble())
                : figures.placeLength(board.width()) + ", thickness by caliper") + ", " + measured(board)
            + " on face A" + (onB > 0 ? ", " + onB + " on face B" : "");
    }

    /** How many touch-offs or points were taken. */
    private static String measured(Board board) {
        return board.scan().isPresent() ? Figures.grouped(board.pointsOnFaceA()) + " scanned points"
            : Figures.count(board.pointsOnFaceA(), "touch-off", "touch-offs");
    }

    private boolean isScanned() {
        return judgement.board().scan().isPresent();
    }

    /** The verdict in one line; in two if it hangs on a touch-off that looks wrong. */
    public String verdict() {
        Optional<Verdict> otherwise = judgement.doubts().stream()
            .flatMap(doubt -> judgement.chanceOn(doubt.without()).stream().mapToObj(Verdict::of))
            .filter(verdict -> verdict != judgement.verdict()).findFirst();
        return bareVerdict() + otherwise.map(verdict -> " But a touch-off looks wrong; without it: "
            + verdict.word() + ".").orElse("");
    }

    private String bareVerdict() {
        OptionalDouble target = judgement.board().target();
        if (target.isEmpty()) {
            return median() <= 0 ? "It cannot be flattened." : "It should finish at about " + figures.length(median())
                + ".";
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
            return "The two cuts would meet before both faces are clean. Shorter or narrower blanks may still come out"
                + " of it.";
        }
        ThicknessRange asItLies = judgement.outlook().asItLies();
        String most = "The most that comes out of it is " + range(judgement.outlook().levelled());
        String lying = "As it lies, " + (asItLies.median() > 0 ? range(asItLies) : "nothing");
        if (judgement.lifts()) {
            return most + ", levelled with shims. " + lying + "." + chance(judgement.outlook().levelled());
        }
        if (figures.precise(median()).equals(figures.precise(asItLies.median()))) {
            return "The most that comes out of it is " + range(asItLies) + ", cut as it lies; no lifting "
                + (freer().isPresent() ? "by up to " + figures.small(judgement.limit().most()) + " " : "")
                + "would gain anything." + chance(asItLies);
        }
        boolean littleLess = median() - asItLies.median() < Planes.WORTH_LIFTING;
        return most + ", if it were levelled. " + lying + (judgement.verdict() == Verdict.YES ? ", which will do."
            : littleLess ? ", too little less to be worth lifting."
            : "; the touch-offs do not tell which way to lift it.") + chance(asItLies);
    }

    /** What comes out if it is lifted further than the limit; empty if that gains nothing, or the board is to lie. */
    private Optional<ReferencePlane> freer() {
        return judgement.planes().freer().filter(slab -> judgement.limit().most() > 0);
    }

    /** What the limit to lifting costs. */
    private Optional<String> limited() {
        return freer().map(slab -> "It is lifted no further than " + figures.small(judgement.limit().most())
            + ". Lifted by " + figures.small(judgement.limit().liftFor(slab.slab().faceA()))
            + " it would most likely give " + figures.precise(slab.thickness()) + "; --most-lift allows for that.");
    }

    private String range(ThicknessRange range) {
        return figures.precise(range.median()) + " (nine times in ten between " + figures.precise(range.low()) + " and "
            + figures.precise(range.high()) + ")";
    }

    private String chance(ThicknessRange range) {
        OptionalDouble chance = judgement.chanceOn(range);
        return chance.isEmpty() ? "" : " The chance of "
            + figures.setting(judgement.board().target().getAsDouble()) + " is " + Figures.chance(chance.getAsDouble())
            + ".";
    }

    /** What to do before any cut where the verdict is not yes, one thing a sentence or two; empty where it is. */
    public List<String> beforeCutting() {
        List<String> steps = new ArrayList<>();
        if (!judgement.doubts().isEmpty() && judgement.planned() == Planned.NONE) {
            steps.add("Read again what looks wrong, then judge the board again. The verdict depends on it.");
            return steps;
        }
        Verdict verdict = judgement.verdict();
        // Where a reading looks wrong, reading it again comes before any other advice.
        if (verdict != Verdict.NO && verdict != Verdict.DOUBTFUL || !judgement.doubts().isEmpty()) {
            return steps;
        }
        next().ifPresent(steps::add);
        steps.addAll(remedies());
        if (isEvenThicknessTaken()) {
            steps.add("Take three caliper readings or more along the edges. The thickness of "
                + figures.length(judgement.board().thickness().orElseThrow()) + " is taken as the same all over.");
        }
        switch (judgement.planned()) {
            case FACE_A -> steps.add("Or cut face\u00a0A just clean, as below, read face\u00a0B and run outwind finish."
                + " It judges the board as it then is.");
            case NONE -> steps.add("To see the plan all the same, add --anyway, or --stop-at with a thickness it makes.");
            case BOTH_FACES -> { }
        }
        return steps;
    }

    private List<String> remedies() {
        double target = judgement.board().target().getAsDouble();
        double safe = (judgement.lifts() ? judgement.outlook().levelled() : judgement.outlook().asItLies()).low();
        // The whole board in one length is no crosscut: it only shows what lifting it further would do.
        Optional<EqualLengths> rescue = judgement.rescue()
            .filter(found -> found.count() > 1 || found.length() < judgement.board().length() - Saw.USUAL_KERF);
        List<String> ways = new ArrayList<>();
        if (safe > 0) {
            ways.add("Settle for less: it should safely make " + figures.atMost(safe) + " (95\u00a0%).");
        }
        freer().filter(slab -> slab.thickness() >= target).ifPresent(slab -> ways.add("Lift it by "
            + figures.small(judgement.limit().liftFor(slab.slab().faceA())) + " instead of by no more than "
            + figures.small(judgement.limit().most()) + " (--most-lift). That most likely gives "
            + figures.precise(slab.thickness()) + "."));
        ways.add(rescue.map(found -> "Crosscut it first: " + crosscut(found) + " at " + figures.setting(target)
            + ". The least sure has a chance of " + Figures.chance(found.chance())
            + ". The command blanks lays out a cutting bill.").orElse("Find thicker wood: no crosscutting makes it."));
        return ways;
    }

    private String crosscut(EqualLengths rescue) {
        String length = figures.placeLength(rescue.length());
        return rescue.count() == 1 ? "a single length of " + length + ", levelled on its own, finishes"
            : Figures.count(rescue.count(), "length", "lengths") + " of " + length
                + ", each levelled on its own, finish";
    }

    /** Readings that look wrong, with what each does to the verdict. */
    public List<String> doubts() {
        List<String> sentences = new ArrayList<>();
        for (Doubt doubt : judgement.doubts()) {
            Reading reading = doubt.suspect().reading();
            StringBuilder sentence = new StringBuilder("LOOK AGAIN at line " + reading.line() + " of the file: "
                + figures.fineLength(reading.z()) + " at " + place(reading.x(), reading.y())
                + ", where the other touch-offs foretell " + figures.fineLength(doubt.suspect().expected())
                + ". That is " + Figures.decimals(Math.abs(doubt.suspect().standardised()), 0) + " times as far off as"
                + " touching off explains. Without it " + range(doubt.without()) + " would come out");
            judgement.chanceOn(doubt.without()).ifPresent(chance -> sentence.append(", and the answer would be ")
                .append(Verdict.of(chance).word()));
            boolean aloneOnItsLine = judgement.board().readings().stream()
                .filter(other -> other.line() == reading.line()).count() == 1;
            sentence.append(". Touch it off again, or leave it out with --leave-out ").append(aloneOnItsLine
                ? String.valueOf(reading.line()) : figures.typed(reading.x()) + "x" + figures.typed(reading.y()))
                .append('.');
            sentences.add(sentence.toString());
        }
        return sentences;
    }

    /** Where to touch off next, if a verdict hangs on it. */
    public Optional<String> next() {
        if (!judgement.isOpen() || judgement.next().isEmpty()) {
            return Optional.empty();
        }
        List<String> places = judgement.next().stream().map(next -> place(next.x(), next.y())).toList();
        double left = judgement.next().get(0).left();
        String first = "The touch-off that would tell most is at " + places.get(0) + ": it narrows the range to about "
            + Figures.percent(left) + " of its width";
        if (isScanned()) {
            return Optional.of("Part of the face was not scanned, and the answer hangs on it: scan it anew with all of"
                + " the face in view, round about " + String.join(" and ", places) + " above all.");
        }
        String hint = left > SETTLES_LITTLE ? " No single touch-off settles it." : "";
        return Optional.of((places.size() == 1 ? first + "." : first + "; after it, "
            + String.join(", then ", places.subList(1, places.size())) + ".") + hint);
    }

    /** What the readings alone would promise beside what the whole board bears. */
    public String flattery() {
        if (isScanned()) {
            return "The scan sees the face down to its cells, dips and knots as well. The skim of "
                + figures.small(judgement.request().skim()) + " off each face comes on top, below the lowest saw marks:"
                + " " + figures.precise(Math.max(0, median())) + " is what to expect.";
        }
        return "The touch-offs alone would promise " + figures.precise(Math.max(0, judgement.readings().promise()))
            + ". They do not see the corners, the edges and the wood between them; with the face carried there, and "
            + figures.small(judgement.request().skim()) + " skimmed off each face so that the saw marks go, "
            + figures.precise(Math.max(0, median())) + " is what to expect.";
    }

    /** How sure the face is, where it is least sure, and what one touch-off is taken to be worth. */
    public String sureness() {
        double most = 0;
        int where = 0;
        // How sure the face is changes slowly from place to place: of very many a part tells.
        int step = 1 + judgement.whole().size() / MOST_LOOKED_AT;
        for (int i = 0; i < judgement.whole().size(); i += step) {
            double deviation = judgement.shape().topDeviationAt(judgement.whole().x()[i], judgement.whole().y()[i]);
            // Of places that rounding alone tells apart the first is named.
            if (deviation > most * (1 + 1e-9)) {
                most = deviation;
                where = i;
            }
        }
        String least = "The face is least sure near " + place(judgement.whole().x()[where],
            judgement.whole().y()[where]) + ", where it may well be " + figures.small(2 * most)
            + " higher or lower than thought.";
        if (isScanned()) {
            return least + scatter(judgement.board().scan().get().cells());
        }
        TouchOffNoise noise = judgement.shape().noise();
        String source = switch (noise.source()) {
            case REPEATABILITY -> "from the repeatability you gave";
            case REPEATS -> "from the places touched more than once";
            case USUAL -> "as is usual on rough wood, for heights written as these are; touch one spot five times and"
                + " give the spread as repeatability to say otherwise";
        };
        return least + " One touch-off is taken to be good to " + figures.fineLength(2 * noise.deviation()) + " ("
            + source + ")." + evenThickness();
    }

    private boolean isEvenThicknessTaken() {
        Board board = judgement.board();
        return board.calipers().isEmpty() && board.underside() == Underside.ALIKE && board.readingsOf(Face.B).isEmpty()
            && board.thickness().isPresent();
    }

    /** What a stated thickness cannot show. */
    private String evenThickness() {
        Board board = judgement.board();
        return isEvenThicknessTaken() ? " The thickness of " + figures.length(board.thickness().orElseThrow()) + " is taken as exact,"
            + " and the same all over; three caliper readings would show a wedge." : "";
    }

    /** What the points of one cell scatter by, and how much of that is the scanner. */
    private String scatter(CellHeights cells) {
        double[] scatter = IntStream.range(0, cells.size()).filter(cells::isMeasured)
            .mapToDouble(k -> cells.scatter()[k]).sorted().toArray();
        String usual = " Within a cell the points scatter by " + figures.fineLength(2 * scatter[scatter.length / 2])
            + " either way";
        return usual + (cells.noise().isPresent() ? ", of which the scanner itself makes "
            + figures.fineLength(2 * cells.noise().getAsDouble()) + "; the rest is saw marks."
            : "; how much of that is the scanner and how much saw marks, they are too far apart to tell.");
    }

    /** What three columns of readings cannot tell apart. */
    public Optional<String> hiddenKink() {
        if (isScanned()) {
            CellHeights cells = judgement.board().scan().get().cells();
            return Optional.of("A dip or bump is surely seen, though perhaps not all of its depth, if it is "
                + figures.placeLength(
                CellHeights.SURELY_SEEN * Math.max(cells.cellX(), cells.cellY())) + " across; one"
                + " half as large again shows in full, a smaller one may be missed.");
        }
        int columns = judgement.board().columnsTouched();
        if (judgement.shape().isAveraged()) {
            return Optional.of("So many touch-offs are averaged in cells of an eighteenth of the length and a sixth"
                + " of the width. A dip or a bump smaller than that is not seen, and the range does not allow for it.");
        }
        return columns > 3 ? Optional.empty() : Optional.of("These touch-offs stand at "
            + Figures.count(columns, "place", "places") + " along the length. Fewer than four cannot tell a kink"
            + " or a sprung end from a bow, and the range does not allow for one: touch off between them if the board"
            + " may have one.");
    }

    private double median() {
        return judgement.outlook().levelled().median();
    }

    /** One sentence for each kind of warp, with what is real and what is lost in the noise. */
    public List<String> warp() {
        Warp warp = judgement.warp();
        List<String> sentences = new ArrayList<>();
        sentences.add(kind("Twist", warp.twist(), "the corner at the far end and far edge stands %s",
            "up off the plane of the other three", "below the plane of the other three"));
        sentences.add(kind("Bow", warp.bow(), "the ends stand %s", "above the middle", "below the middle"));
        sentences.add(kind("Cup", warp.cup(), "the edges stand %s", "above the middle", "below the middle"));
        return sentences;
    }

    private String kind(String name, Optional<Warp.Amount> amount, String how, String up, String down) {
        if (amount.isEmpty()) {
            return name + ": these touch-offs cannot show it" + whyUnseen(name) + ".";
        }
        double value = amount.get().value();
        String size = figures.fineLength(Math.abs(value));
        if (amount.get().standardError().isEmpty()) {
            return name + ": " + size + ", but there are too few touch-offs to say whether that is real.";
        }
        double known = amount.get().standardError().getAsDouble();
        String error = " (standard error " + figures.fineLength(known) + ")";
        if (amount.get().isReal()) {
            return name + ": real; " + String.format(how, size + " " + (value > 0 ? up : down)) + error + ".";
        }
        String signed = figures.signed(value) + "\u00a0" + figures.unit() + error;
        return Math.abs(value) > 2 * known
            ? name + ": likely about " + signed + ", but so few touch-offs cannot prove it."
            : name + ": lost in the noise, " + signed + ".";
    }

    private String whyUnseen(String name) {
        TrendFit curved = judgement.fits().curved();
        boolean slopeX = curved.coefficient(Term.X).isPresent();
        boolean slopeY = curved.coefficient(Term.Y).isPresent();
        return switch (name) {
            case "Twist" -> !slopeX || !slopeY ? ", they lie in one row" : ", it takes four places that are no line";
            case "Bow" -> slopeX ? ", it takes three places along the length" : ", they are all at one place along it";
            default -> slopeY ? ", it takes three places across the width" : ", they lie in one row";
        };
    }

    /** Why it is to be levelled, or why not; in one sentence, with what lifting would save. */
    public String choice() {
        double gain = judgement.planes().best().thickness()
            - judgement.planes().named(PlaneName.AS_IT_LIES).thickness();
        double chosen = judgement.cuts().faceA().depth() + judgement.cuts().faceB().depth();
        double other = judgement.otherCuts().faceA().depth() + judgement.otherCuts().faceB().depth();
        String saves = figures.length(Math.max(0, gain)) + " of thickness and "
            + figures.length(Math.max(0, judgement.lifts() ? other - chosen : chosen - other)) + " of depth";
        String limited = limited().map(words -> " " + words).orElse("");
        boolean makesIt = judgement.verdict() == Verdict.YES || judgement.verdict() == Verdict.DOUBTFUL;
        if (judgement.lifts()) {
            return shortfall() + (makesIt ? "Level it: as it lies it does not surely make it, and" : "Level it:")
                + " lifting saves " + saves + "." + limited;
        }
        String gains = figures.number(gain).equals(figures.number(0)) ? "lifting saves nothing."
            : "lifting would save no more than " + saves + ".";
        return shortfall() + (judgement.verdict() == Verdict.YES
            ? "Cut it as it lies: that makes the target, and " + gains : "Cut it as it lies: " + gains + limited);
    }

    /** Where the plan stops short of what was asked for, by how much. */
    private String shortfall() {
        OptionalDouble target = judgement.board().target();
        double reached = judgement.cuts().thickness();
        if (target.isEmpty() || judgement.request().stopAt().isPresent() || reached > target.getAsDouble() - 1e-6) {
            return "";
        }
        return "This plan stops at " + figures.setting(reached) + ", short of the "
            + figures.setting(target.getAsDouble()) + " asked for. ";
    }

    /** Where shims are known no better than they are thick. */
    public Optional<String> unsureShims() {
        boolean any = judgement.setup().shims().stream()
            .anyMatch(shim -> judgement.setup().errorOf(shim) > shim.height());
        return any ? Optional.of("Where the ± is as much as the shim, measure the gap with a feeler gauge.")
            : Optional.empty();
    }

    /** How to check the places where the bed itself is counted on; empty if there are none. */
    public Optional<String> contacts() {
        return judgement.setup().places().stream().allMatch(Shim::isNeeded) ? Optional.empty()
            : Optional.of("Where the table says " + figures.shim(0) + " the board should touch " + bed() + ". Check there with"
                + " a slip of paper; if it slides in, shim the place.");
    }

    /** What craftsmen do where low shims under a thin board are no help; empty for any other board. */
    public Optional<String> carrierInstead() {
        double highest = judgement.setup().shims().stream().mapToDouble(Shim::height).max().orElse(Double.MAX_VALUE);
        return judgement.whole().thinnest() > THIN || highest > LOW ? Optional.empty()
            : Optional.of("Shims this low are hard to set under a board this thin. You can fix it to a flat carrier board"
                + " instead: dabs of hot glue or double-sided tape at these places, without pressing it flat. A planing"
                + " sled does the same. Pull at every corner before the spindle starts.");
    }

    /** What shims gain on a board that lies steady without them; empty for any other board. */
    public Optional<String> justSetDown() {
        if (!judgement.faceDown().isSteady() || judgement.setup().shims().isEmpty()) {
            return Optional.empty();
        }
        double gives = judgement.movementJustSetDown();
        String gain = judgement.lifts() ? "Levelling it gains "
            + figures.small(judgement.outlook().levelled().median() - judgement.outlook().asItLies().median())
            + " of thickness." : "The shims keep it from bending under the cutter.";
        String moves = Double.isFinite(gives) ? " moves it by up to " + figures.fineLength(gives) : " tips it";
        return Optional.of("It lies steady by itself, so you can also just set it down as measured. Then a push of "
            + Figures.decimals(judgement.request().push().force(), 0) + "\u00a0N" + moves + ". " + gain);
    }

    /** Whether it rocks, and which face is better up, as far as the readings show it. */
    public String faceDown() {
        FaceDown down = judgement.faceDown();
        String lies = "With face A up it " + lying(down.asMeasured(), down.isSteady() ? "lies steady"
            : down.rocks() ? "rocks" : "may rock: press on each corner to find out. It") + ".";
        return lies + switch (down.better()) {
            case FACE_A_UP -> " That is the better way up.";
            case FACE_B_UP -> " It would lie better with face B up: it then " + lying(down.turned(),
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
        return "Shims alone cannot hold this board: a push of " + Figures.decimals(push.force(), 0) + "\u00a0N moves it"
            + " by more than " + figures.small(push.give()) + " near " + place(held.weakestX(), held.weakestY())
            + ". Lay it with face\u00a0A up on a stiff, flat carrier board. Fix it there with dabs of hot glue, or fill"
            + " the gaps and use double-sided tape, without pressing it flat." + (judgement.lifts()
            ? " Level it first: \"Gap under each corner\" says how high each corner stands." : "")
            + " Let the glue set, and pull at every corner before the spindle starts.";
    }

    /** How well the shims hold it, and how that was reckoned. */
    public String held() {
        Supports held = judgement.setup().held();
        Push push = judgement.request().push();
        String wood = Stiffness.of(judgement.board().species()).wood().map(name -> "for " + name)
            .orElseGet(() -> "for a soft wood, since " + judgement.board().species()
                .map(species -> species + " is not in the list").orElse("its species is not stated"));
        String spans = " By beam theory a span along the edge may be " + figures.placeLength(held.limit().along())
            + " and an end may overhang " + figures.placeLength(held.limit().overhang()) + ", " + wood + ".";
        String force = Figures.decimals(push.force(), 0) + "\u00a0N";
        return "With these shims a push of " + force + " anywhere moves it by at most " + figures.fineLength(held.movement())
            + ", most near " + place(held.weakestX(), held.weakestY()) + "." + (held.inside()
                ? " Slide a shim that is not at an edge in from the nearest side." : "") + spans;
    }

    /** How the work is held from beside while face A is cut. */
    public String holding() {
        Cut cut = judgement.cuts().faceA();
        return cut.leavesRoomForClamps() ? "Hold the work from the sides, below " + figures.atMost(cut.keepBelow())
            + " above " + bed() + ", which is " + figures.small(Cut.CLEAR) + " clear of the cutter." : clamps(cut);
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
        return time + "Both depths are counted from a highest spot. On average "
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
        ways.add("LARGER THAN THE BED: the board does not lie on a bed of " + bed + ".");
        if (off.tooWide()) {
            ways.add("It is too wide: rip it first, then measure and judge the strips.");
        }
        off.lengths().ifPresent(found -> ways.add("Crosscut it first: " + crosscut(found) + " at "
            + figures.setting(judgement.board().target().getAsDouble()) + "."));
        off.indexing().ifPresent(indexing -> ways.add("Or cut it in " + indexing.setups() + " set-ups: move it along and"
            + " let them overlap by " + figures.placeLength(indexing.overlap()) + ". Level it each time to the part that"
            + " is cut. Expect a step of about " + figures.small(indexing.stepA()) + " on face\u00a0A and "
            + figures.small(indexing.stepB()) + " on face\u00a0B."));
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
            warnings.add("WARNING: a shim of " + figures.length(tallest)
                + " stands in the cutter's way, which must be clear"
                + " from " + figures.atMost(keepBelow) + " up: do not cut it like this.");
        }
        judgement.request().shop().wedge().filter(wedge -> tallest > 0 && wedge.butt() >= keepBelow).ifPresent(wedge ->
            warnings.add("WARNING: the thick ends of your tapered shims, " + figures.length(wedge.butt())
                + ", stand in the cutter's way. Use lower ones, under " + figures.atMost(keepBelow)
                + ", or saw off what sticks out."));
        return warnings;
    }

    /** How the board lies if nobody holds it. */
    public String resting() {
        RestingPose pose = judgement.pose();
        if (pose.isFlat()) {
            return "Just set down, the board lies flat on the bed.";
        }
        List<String> places = new ArrayList<>();
        for (BedContact contact : pose.contacts()) {
            places.add(place(contact.x(), contact.y()) + " (" + Figures.percent(contact.load()) + " of the weight)");
        }
        String where = places.isEmpty() ? "" : " at " + String.join(", ", places);
        FaceDown down = judgement.faceDown();
        String how = "Just set down, the board " + (down.isSteady() ? "lies steady" : down.rocks() ? "rocks" : "may rock")
            + " (" + Figures.percent(down.rockingShare()) + " of the boards that the readings leave possible rock under"
            + " a finger's push of 5\u00a0N).";
        return how + " It touches the bed" + where + "." + (down.rocks() && pose.contacts().size() == 2
            ? " Set mid-rock, a free corner stands up to " + figures.length(pose.widest()) + " off the bed." : "");
    }

    /** A place on the board in words: along by across. */
    public String place(double x, double y) {
        return "x\u00a0" + figures.place(x) + " y\u00a0" + figures.place(y);
    }

    /** Where two things that were read tell the same, which of them is used. */
    public List<String> preferred() {
        Board board = judgement.board();
        List<String> sentences = new ArrayList<>();
        if (board.thickness().isPresent() && !board.calipers().isEmpty()) {
            sentences.add("The thickness is that of the " + Figures.count(board.calipers().size(), "caliper reading",
                "caliper readings") + ", not the " + figures.length(board.thickness().getAsDouble())
                + " stated for the whole board.");
        }
        if (!board.readingsOf(Face.BED).isEmpty()) {
            sentences.add("The bed was touched off: heights are told above it.");
        }
        return sentences;
    }

    /** What was read from the file but plays no part yet; empty if all of it did. */
    public List<String> notUsed() {
        Board board = judgement.board();
        List<String> unused = new ArrayList<>();
        if (!board.defects().isEmpty()) {
            unused.add("defect (the command blanks does use it)");
        }
        return unused;
    }
}
