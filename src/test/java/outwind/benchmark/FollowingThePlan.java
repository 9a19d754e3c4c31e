package outwind.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import java.util.function.Predicate;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.cutting.Cut;
import outwind.cutting.Datum;
import outwind.cutting.FaceBCheck;
import outwind.flatten.Verdict;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.judge.SecondCut;
import outwind.numeric.plane.Plane;
import outwind.setup.Setup;
import outwind.setup.Shim;

/**
 * A simulated person who does what the plan says, word for word, on boards whose two faces are known.
 *
 * <p>The person sets zero on the bed to 0.02 mm, and on a highest spot, which is looked for within a hand's breadth of
 * the place named, to 0.03 mm (standard deviations; our choice). Figures are taken as they are printed: to 0.1 mm.
 */
public final class FollowingThePlan {

    private static final double ZERO_ON_BED = 0.02;
    private static final double ZERO_ON_WOOD = 0.03;
    private static final double HAND = 100;
    private static final double WITHIN = 0.1;

    private FollowingThePlan() { }

    /** What came of one board. */
    private record Outcome(boolean followed, boolean right, boolean alarm, boolean turned, boolean moved,
                           boolean twistSeen) { }

    public static void main(String[] args) {
        int boards = args.length > 0 && args[0].matches("\\d+") ? Integer.parseInt(args[0]) : 100;
        System.out.println("| family | gap within the shim's ±, as measured | levelled | 1 mm to spare: planned | right | stated 95 %: planned | right | check alarms |"
            + " verdict turned | said to have moved | twist of 1 mm seen |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        for (TrueBoard.Family family : TrueBoard.Family.named(args)) {
            int[] lying = new int[2];
            int[] levelled = new int[2];
            List<Outcome> spare = new ArrayList<>();
            List<Outcome> close = new ArrayList<>();
            for (int i = 0; i < boards; i++) {
                SplittableRandom random = new SplittableRandom(7_919L * i + family.ordinal());
                TrueBoard truth = TrueBoard.of(family, random);
                Board read = truth.read(OptionalDouble.empty(), random);
                Judgement open = judge(read);
                count(truth, open.asMeasured(), new Plane(0, 0, 0), lying);
                count(truth, open.levelled(), open.planes().best().slab().faceA(), levelled);
                double makes = truth.makes(open.lifts() ? open.cuts().faceA().plane() : new Plane(0, 0, 0));
                spare.add(follow(truth, read.withTarget(tenths(makes - 1)), random));
                close.add(follow(truth, read.withTarget(tenths(open.outlook().levelled().low())), random));
            }
            System.out.printf(Locale.ROOT, "| %s | %.0f %% | %.0f %% | %s | %s | %s | %s | %s | %s | %s | %s |%n",
                family.name().toLowerCase(Locale.ROOT).replace('_', ' '), 100.0 * lying[1] / lying[0],
                100.0 * levelled[1] / levelled[0], share(spare, Outcome::followed, o -> true),
                share(spare, Outcome::right, Outcome::followed), share(close, Outcome::followed, o -> true),
                share(close, Outcome::right, Outcome::followed), share(spare, Outcome::alarm, Outcome::followed),
                share(spare, Outcome::turned, Outcome::followed), share(spare, Outcome::moved, Outcome::followed),
                share(spare, Outcome::twistSeen, Outcome::followed));
        }
    }

    private static String share(List<Outcome> outcomes, Predicate<Outcome> what,
                                Predicate<Outcome> among) {
        long all = outcomes.stream().filter(among).count();
        return all == 0 ? "-" : String.format(Locale.ROOT, "%.0f %%",
            100.0 * outcomes.stream().filter(among).filter(what).count() / all);
    }

    /** Counts the shims of a way of holding the board, and those whose true gap lies within the stated range. */
    private static void count(TrueBoard truth, Setup setup, Plane slopes, int[] counts) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int k = 0; k < TrueBoard.ALONG * TrueBoard.ACROSS; k++) {
            lowest = Math.min(lowest, truth.underside().applyAsDouble(truth.x(k), truth.y(k))
                - slopes.at(truth.x(k), truth.y(k)));
        }
        for (Shim shim : setup.shims()) {
            double gap = truth.underside().applyAsDouble(shim.x(), shim.y()) - slopes.at(shim.x(), shim.y()) - lowest;
            counts[0]++;
            counts[1] += Math.abs(gap - shim.height()) <= setup.errorOf(shim) ? 1 : 0;
        }
    }

    private static Judgement judge(Board board) {
        return Judgement.of(board, JudgeOptions.usual(board));
    }

    private static Outcome follow(TrueBoard truth, Board read, SplittableRandom random) {
        Judgement judged = judge(read);
        if (judged.planned() != Planned.BOTH_FACES) {
            return new Outcome(false, false, false, false, false, false);
        }
        Plane faceA = cutFaceA(truth, judged, random);
        Plane faceB = faceA.raisedBy(-tenths(judged.cuts().faceB().aboveBed()) - random.nextGaussian(0, ZERO_ON_BED));
        boolean clean = true;
        for (int k = 0; k < TrueBoard.ALONG * TrueBoard.ACROSS; k++) {
            clean &= truth.top().applyAsDouble(truth.x(k), truth.y(k)) >= faceA.at(truth.x(k), truth.y(k))
                && truth.underside().applyAsDouble(truth.x(k), truth.y(k)) <= faceB.at(truth.x(k), truth.y(k));
        }
        boolean exact = Math.abs(faceA.height() - faceB.height() - read.target().getAsDouble()) <= WITHIN;
        DoubleBinaryOperator heightOfB = (x, y) -> faceA.at(x, truth.width() - y)
            - truth.underside().applyAsDouble(x, truth.width() - y);
        DoubleBinaryOperator twisted = (x, y) -> heightOfB.applyAsDouble(x, y) + x / truth.length() * y / truth.width();
        SecondCut second = SecondCut.of(judged, readB(truth, heightOfB, random));
        return new Outcome(true, clean && exact, isAlarmed(judged, heightOfB, random),
            judged.verdict() == Verdict.YES && second.verdict() != Verdict.YES, second.movement().isReal(),
            isAlarmed(judged, twisted, random));
    }

    private static Plane cutFaceA(TrueBoard truth, Judgement judged, SplittableRandom random) {
        Cut cut = judged.cuts().faceA();
        if (cut.datum() != Datum.HIGHEST_SPOT) {
            throw new IllegalStateException("the bed was not read");
        }
        int named = judged.whole().highestOver(cut.plane());
        double atX = judged.whole().x()[named];
        double atY = judged.whole().y()[named];
        double highest = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < TrueBoard.ALONG * TrueBoard.ACROSS; k++) {
            if (Math.hypot(truth.x(k) - atX, truth.y(k) - atY) <= HAND) {
                highest = Math.max(highest, truth.top().applyAsDouble(truth.x(k), truth.y(k))
                    - cut.plane().at(truth.x(k), truth.y(k)));
            }
        }
        return cut.plane().raisedBy(highest + random.nextGaussian(0, ZERO_ON_WOOD) - tenths(cut.depth()));
    }

    private static boolean isAlarmed(Judgement judged, DoubleBinaryOperator height, SplittableRandom random) {
        List<FaceBCheck> checks = judged.checks();
        double[] off = checks.stream().mapToDouble(check -> TrueBoard.hundredths(height.applyAsDouble(check.x(), check.y())
            + random.nextGaussian(0, TrueBoard.NOISE)) - TrueBoard.hundredths(check.height())).toArray();
        double mean = Arrays.stream(off).average().orElseThrow();
        boolean alarm = false;
        for (int i = 0; i < off.length; i++) {
            alarm |= Math.abs(off[i] - mean) > TrueBoard.hundredths(checks.get(i).tolerance());
        }
        return alarm;
    }

    private static Board readB(TrueBoard truth, DoubleBinaryOperator height, SplittableRandom random) {
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < 15; k++) {
            double x = 15 + (truth.length() - 30) * (k % 5) / 4;
            double y = 15 + (truth.width() - 30) * (k / 5) / 2;
            readings.add(new Reading(x, y, TrueBoard.hundredths(height.applyAsDouble(x, y) + random.nextGaussian(0, TrueBoard.NOISE)), Face.A,
                "", k + 2));
        }
        return truth.board(readings, List.of(), OptionalDouble.empty());
    }


    private static double tenths(double mm) {
        return Math.rint(mm * 10) / 10;
    }
}
