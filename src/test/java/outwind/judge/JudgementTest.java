package outwind.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.cutting.Cut;
import outwind.cutting.Datum;
import outwind.flatten.PlaneName;
import outwind.flatten.ReferencePlane;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.JudgeOptions;
import outwind.numeric.plane.WidestGap;
import outwind.setup.Corner;
import outwind.setup.Setup;
import outwind.setup.Shim;
import outwind.shop.Wedge;
import outwind.surface.ImpossibleBoard;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

/** Boards of known shape, judged from readings to cuts; every skim is zero unless said. */
class JudgementTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    private static Judgement judge(Board board) {
        return Judgement.of(board, JudgeOptions.usual(board));
    }

    // Closed form: corners ±q off the mean plane need a zone 2q; of one thickness T, T − 2q comes out, as it lies and
    // levelled alike; the board rocks on two corners that carry half each.
    @Test
    void pureTwist() {
        Judgement judged = judge(SHAPE.read(5, 3, SHAPE.twist(2)));

        assertEquals(4, judged.readings().minimumZone().width(), 1e-9);
        assertEquals(26, judged.planes().best().thickness(), 1e-9);
        assertEquals(26, judged.planes().named(PlaneName.AS_MEASURED).thickness(), 1e-9);
        assertTrue(judged.pose().rocks());
        assertEquals(List.of(0.5, 0.5), judged.pose().contacts().stream()
            .map(c -> Math.rint(c.load() * 1e9) / 1e9).toList());
        assertEquals(4, judged.pose().widest(), 1e-9);
        assertEquals(0, judged.pose().bed().slopeX(), 1e-9);
        assertEquals(List.of(4.0, 0.0, 4.0, 0.0), gaps(judged.asMeasured(), 0));
    }

    /** Gaps over the lowest of the corners and of what the most likely board rests on; possible boards lie lower. */
    private static List<Double> gaps(Setup setup, double lowest) {
        double lift = setup.corners().stream().mapToDouble(Corner::gap).min().orElseThrow() - lowest;
        assertTrue(lift >= 0 && lift < 0.2, "possible boards stand off the bed by " + lift + " mm more");
        return setup.corners().stream().map(corner -> Math.rint((corner.gap() - lift) * 1e6) / 1e6).toList();
    }

    // Closed form: ends s above the middle; a symmetrical arc needs a zone of its rise.
    @Test
    void pureBowRestsOnItsBelly() {
        Judgement judged = judge(SHAPE.read(5, 3, SHAPE.bow(3)));

        assertEquals(27, judged.planes().best().thickness(), 1e-9);
        assertTrue(judged.pose().rocks());
        assertEquals(List.of(3.0, 3.0, 3.0, 3.0), gaps(judged.asMeasured(), 3));
    }

    @Test
    void bowTurnedOverLiesSteadyOnItsEnds() {
        Judgement judged = judge(SHAPE.read(5, 3, SHAPE.bow(-3)));

        assertEquals(27, judged.planes().best().thickness(), 1e-9);
        assertFalse(judged.pose().rocks());
        judged.pose().contacts().forEach(c -> assertTrue(c.x() < 1e-9 || c.x() > 900 - 1e-9, c.toString()));
    }

    @Test
    void pureCupLosesItsRise() {
        Judgement judged = judge(SHAPE.read(5, 3, SHAPE.cup(-1.5)));

        assertEquals(28.5, judged.planes().best().thickness(), 1e-9);
        assertFalse(judged.pose().rocks());
    }

    // Worked by hand: a board of one thickness, propped up 4.5 mm at one end while it was touched off. Cut as it lies
    // it loses the prop; let down flat it loses nothing.
    @Test
    void tiltedBoardIsWholeAgainWhenLetDown() {
        Judgement judged = judge(SHAPE.read(5, 3, (x, y) -> 0.005 * x));

        assertEquals(25.5, judged.planes().named(PlaneName.AS_MEASURED).thickness(), 1e-9);
        assertEquals(30, judged.planes().best().thickness(), 1e-9);
        assertEquals(0.005, judged.planes().best().slab().faceA().slopeX(), 1e-12);
        assertTrue(judged.lifts());
        assertTrue(judged.pose().isFlat());
        assertTrue(judged.levelled().shims().isEmpty());
    }

    // Worked by hand: a wedge from 28 to 32 mm lying on its flat underside, top sloping. A slab parallel to either
    // face has 28 mm; tilted halfway between them 28 mm at most as well: two planes meet the thin end. Four readings of
    // 0.1 mm outweigh the belief in small wedges but for a few thousandths.
    @Test
    void wedgeFinishesAtItsThinEnd() {
        List<CaliperReading> calipers = List.of(new CaliperReading(0, 0, 28, 2), new CaliperReading(900, 0, 32, 3),
            new CaliperReading(900, 180, 32, 4), new CaliperReading(0, 180, 28, 5));

        Judgement judged = judge(SHAPE.read(5, 3, (x, y) -> x / 225, calipers));

        assertEquals(28, judged.planes().best().thickness(), 0.005);
        assertEquals(28, judged.planes().named(PlaneName.AS_MEASURED).thickness(), 0.005);
    }

    // Identity: of one thickness T, slab = T − minimum zone of the sampled face, for any shape.
    @Test
    void oneThicknessYieldsItLessTheZone() {
        SplittableRandom random = new SplittableRandom(20260301);
        for (int trial = 0; trial < 20; trial++) {
            Judgement judged = judge(SHAPE.read(5, 3, noise(random)));
            SampledBoard whole = judged.whole();

            double zone = WidestGap.minimumZone(whole.x(), whole.y(), whole.top()).width();

            assertEquals(30 - zone, judged.planes().best().thickness(), 1e-9, "case " + trial);
        }
    }

    private static DoubleBinaryOperator noise(SplittableRandom random) {
        double twist = random.nextDouble(-3, 3);
        double bow = random.nextDouble(-2, 2);
        return (x, y) -> SHAPE.twist(twist).applyAsDouble(x, y) + SHAPE.bow(bow).applyAsDouble(x, y)
            + random.nextGaussian(0, 0.2);
    }

    @Test
    void noPlaneLeavesMoreThanTheThickestSlab() {
        SplittableRandom random = new SplittableRandom(20260302);
        for (int trial = 0; trial < 20; trial++) {
            Judgement judged = judge(SHAPE.read(5, 3, noise(random)));

            for (ReferencePlane plane : judged.planes().all()) {
                assertTrue(plane.thickness() <= judged.planes().best().thickness() + 1e-9,
                    plane.name() + " in case " + trial);
                assertTrue(judged.planes().named(PlaneName.LEAST_WOOD).removed() <= plane.removed() + 1e-3,
                    plane.name() + " takes less wood in case " + trial);
            }
        }
    }

    @Test
    void bothFacesLoseAlikeWhereTheSlackAllowsIt() {
        Judgement judged = judge(SHAPE.wanted(20).read(5, 3, SHAPE.bow(2)));

        assertEquals(20, judged.cuts().thickness(), 1e-12);
        assertEquals(judged.cuts().faceA().meanDepth(), judged.cuts().faceB().meanDepth(), 1e-9);
        assertEquals(30 - 20, judged.cuts().faceA().meanDepth() + judged.cuts().faceB().meanDepth(), 1e-9);
    }

    // By definition: of 0.9 mm to spare face B keeps what the readings leave open, or two thirds if that is less, and
    // face A at least half as much.
    @Test
    void slackIsKeptOnBothFacesAndMoreOnFaceB() {
        Judgement judged = judge(SHAPE.wanted(27.1).read(5, 3, SHAPE.bow(2)));
        double lessA = judged.planes().chosen().slab().faceA().height() - judged.cuts().faceA().plane().height();
        double lessB = judged.cuts().faceB().plane().height() - judged.planes().chosen().slab().faceB().height();

        assertEquals(0.9, lessA + lessB, 1e-9);
        ThicknessRange range = judged.lifts() ? judged.outlook().levelled() : judged.outlook().asMeasured();
        double kept = Math.min(0.6, range.high() - range.low());
        assertTrue(lessB >= kept - 1e-9 && lessA >= kept / 2 - 1e-9, "A " + lessA + ", B " + lessB);
    }

    // Worked by hand: a bow of 2 mm with its ends up, wanted at 28, all that it bears. From the ends down to the
    // middle is 2 mm; face B has its highest spot in the middle, 2 mm above its lowest places. Clamps stay 3 mm clear.
    @Test
    void cutsOfABowWithoutSlack() {
        Judgement judged = judge(SHAPE.wanted(28).read(5, 3, SHAPE.bow(2)));
        Cut a = judged.cuts().faceA();
        Cut b = judged.cuts().faceB();

        assertEquals(2, a.depth(), 1e-9);
        // The bed lies as low as the underside of half of the possible boards reaches.
        assertEquals(a.plane().height() - judged.setup().bed().height(), a.aboveBed(), 1e-9);
        assertEquals(30.05, a.aboveBed(), 0.05);
        assertEquals(a.aboveBed() - 3, a.keepBelow(), 1e-9);
        assertEquals(2, b.depth(), 1e-9);
        assertEquals(28, b.aboveBed(), 1e-9);
        assertEquals(List.of(), judged.machining());
    }

    // Worked by hand: whatever the highest spot of face B is thought to be, the last pass over the bed is the thickness.
    @Test
    void faceBIsCutToAHeightAboveTheBed() {
        Judgement judged = judge(SHAPE.wanted(24).read(5, 3, SHAPE.twist(1)));

        assertEquals(Datum.HIGHEST_SPOT, judged.cuts().faceA().datum());
        assertEquals(Datum.BED, judged.cuts().faceB().datum());
        assertEquals(24, judged.cuts().faceB().aboveBed(), 1e-12);
        assertEquals(24 - Cut.CLEAR, judged.cuts().faceB().keepBelow(), 1e-12);
    }

    // Worked by hand: where the bed was read at −5, a face whose lowest place was read at 24 is cut 29 above it at most.
    @Test
    void faceAIsCutToAHeightAboveTheBedThatWasRead() {
        Board read = SHAPE.read(5, 3, (x, y) -> 24 + SHAPE.bow(1).applyAsDouble(x, y));
        List<Reading> all = new ArrayList<>(read.readings());
        all.add(new Reading(0, 0, -5, Face.BED, "", 99));
        Judgement judged = judge(read.withReadings(all));
        Cut a = judged.cuts().faceA();

        assertEquals(Datum.BED, a.datum());
        assertEquals(judged.cuts().faceA().plane().height(), a.aboveBed(), 1e-12);
        assertTrue(a.aboveBed() <= 29 + 1e-9, "at most 29, got " + a.aboveBed());
    }

    // Common practice, no source: the depth of a cut parallel to the bed is highest minus lowest touch-off.
    @Test
    void cutParallelToTheBedIsAsDeepAsTheSpread() {
        Judgement judged = judge(SHAPE.read(5, 3, (x, y) -> SHAPE.twist(2.5).applyAsDouble(x, y) + 0.002 * x));

        assertEquals(judged.readings().spread(), judged.planes().named(PlaneName.AS_MEASURED).deepestCut(), 1e-9);
    }

    @Test
    void skimComesOffEachFace() {
        Judgement judged = judge(SHAPE.wanted(29.4).read(3, 3, (x, y) -> 0).withSkim(0.3));

        assertEquals(29.4, judged.planes().best().thickness(), 1e-9);
        assertEquals(0.3, judged.cuts().faceA().depth(), 1e-9);
        assertEquals(29.4, judged.readings().promise(), 1e-9);
    }

    @Test
    void verdictFollowsTheChance() {
        assertEquals(Verdict.NONE, judge(SHAPE.read(5, 3, SHAPE.bow(2))).verdict());
        assertEquals(Verdict.YES, judge(SHAPE.wanted(27).read(5, 3, SHAPE.bow(2))).verdict());
        assertEquals(Verdict.DOUBTFUL, judge(SHAPE.wanted(27.9).read(5, 3, SHAPE.bow(2))).verdict());
        assertEquals(Verdict.NO, judge(SHAPE.wanted(29).read(5, 3, SHAPE.bow(2))).verdict());
    }

    @Test
    void noLiftingIsAskedForWhereTheBoardMakesItAsMeasured() {
        DoubleBinaryOperator propped = (x, y) -> 0.005 * x;

        assertFalse(judge(SHAPE.wanted(25).read(5, 3, propped)).lifts());
        assertTrue(judge(SHAPE.wanted(28).read(5, 3, propped)).lifts());
    }

    // Worked by hand: ends cut away for a fifth of the length each leave three fifths of a bow: (3/5)² of its rise.
    @Test
    void trimNeedNotCleanUp() {
        Judgement judged = judge(SHAPE.trimmed(180, 0).read(11, 3, SHAPE.bow(2)));

        assertEquals(30 - 2 * 0.36, judged.planes().best().thickness(), 0.02);
    }

    @Test
    void aBoardTooThinForItsWarpHasNoSlab() {
        Judgement judged = judge(SHAPE.wanted(10).read(5, 3, SHAPE.twist(20)));

        assertTrue(judged.planes().best().thickness() < 0);
        assertEquals(Verdict.NO, judged.verdict());
        assertEquals(0, judged.cuts().thickness());
    }

    @Test
    void theSameBoardIsJudgedTheSameTwice() {
        Board board = SHAPE.read(5, 3, SHAPE.twist(1));

        assertEquals(judge(board).planes().best().thickness(), judge(board).planes().best().thickness());
    }

    // Identity: what comes off face A, what comes off face B and what is left make up the rough board.
    @Test
    void volumesAddUp() {
        SplittableRandom random = new SplittableRandom(20260303);
        for (int trial = 0; trial < 20; trial++) {
            Board board = SHAPE.wanted(random.nextDouble(20, 26)).trimmed(random.nextDouble(0, 40), 5)
                .read(5, 3, noise(random));
            Judgement judged = judge(board);
            SampledBoard whole = judged.whole();

            double rough = whole.integral(i -> whole.top()[i] - whole.underside()[i]);

            assertEquals(rough, judged.cuts().faceA().removed() + judged.cuts().faceB().removed()
                + judged.cuts().finished(), 1e-6 * rough, "case " + trial);
        }
    }

    @Test
    void cuttingStopsWhereItIsToldTo() {
        Board board = SHAPE.wanted(20).read(5, 3, SHAPE.bow(2));

        Judgement judged = Judgement.of(board, JudgeOptions.usual(board).stoppingAt(24));

        assertEquals(24, judged.cuts().thickness());
        assertEquals(Verdict.YES, judged.verdict());
    }

    // Worked by hand: an end that springs up lies on its flat part; levelling it tilts the board. Lifting by no more
    // than 1 mm leaves less than lifting freely, and more than not lifting.
    @Test
    void liftingStopsAtItsLimit() {
        Board board = SHAPE.read(9, 3, (x, y) -> 6 * Math.pow(Math.max(0, x / 450 - 1), 2));

        Judgement free = Judgement.of(board, JudgeOptions.usual(board));
        Judgement limited = Judgement.of(board, JudgeOptions.usual(board).liftingAtMost(1));
        Judgement none = Judgement.of(board, JudgeOptions.usual(board).liftingAtMost(0));

        assertTrue(free.planes().best().thickness() > limited.planes().best().thickness() + 0.2);
        assertTrue(limited.planes().best().thickness() > none.planes().best().thickness() + 0.2);
        assertEquals(1, limited.limit().liftFor(limited.planes().best().slab().faceA()), 1e-9);
    }

    // Once a board that made it as it lies was refused, because the verdict looked at the limited levelling alone.
    @Test
    void whatMakesItAsMeasuredIsNotRefusedForTheLimitToLifting() {
        Board board = SHAPE.wanted(26).read(9, 3, (x, y) -> 0.04 * Math.max(0, x - 450) - 0.02 * x);

        Judgement judged = Judgement.of(board, JudgeOptions.usual(board).liftingAtMost(0));

        assertTrue(judged.outlook().levelled().median() >= judged.outlook().asMeasured().median());
        assertTrue(judged.planes().best().thickness() >= judged.planes().named(PlaneName.AS_MEASURED).thickness());
    }

    // Once a lifting that decided the verdict was left out, because it gained under a tenth of a mm.
    @Test
    void liftingThatDecidesIsAskedForHoweverLittleItGains() {
        SplittableRandom random = new SplittableRandom(20260304);
        for (int trial = 0; trial < 20; trial++) {
            Board board = SHAPE.wanted(random.nextDouble(27, 29)).read(4, 3, noise(random));

            Judgement judged = judge(board);

            assertEquals(judged.verdict(), Verdict.of(judged.chanceOn(judged.lifts() ? judged.outlook().levelled()
                : judged.outlook().asMeasured()).orElseThrow()), "case " + trial);
        }
    }

    @Test
    void withoutATargetThePlanPromisesNoMoreThanIsToBeExpected() {
        Judgement judged = judge(SHAPE.read(3, 3, SHAPE.bow(1)));

        assertTrue(judged.cuts().thickness() <= judged.outlook().levelled().median() + 1e-9);
    }

    @Test
    void aFaceBelowItsUndersideIsRefusedInWords() {
        Board board = SHAPE.lyingFlat().read(3, 2, (x, y) -> 0.15 * (x - 450));

        ImpossibleBoard refused = assertThrows(ImpossibleBoard.class, () -> judge(board));

        assertTrue(refused.getMessage().startsWith("somewhere face A would lie below the underside"));
    }

    @Test
    void aSuspectOnTheLineOfTheOnlyCaliperIsLeftOutAlone() {
        List<CaliperReading> caliper = List.of(new CaliperReading(0, 0, 30, 9));
        Board board = SHAPE.wanted(25).read(5, 3, (x, y) -> x == 450 && y == 90 ? 4 : 0, caliper);

        assertEquals(1, judge(board).doubts().size());
        assertEquals(9, judge(board).doubts().get(0).suspect().reading().line());
    }

    // Worked by hand: a taper of 150 x 12 mm goes in by 12.5 mm for each mm of height, from the nearest edge or end.
    @Test
    void tapersAreSlidInFromTheNearestEdge() {
        Board board = SHAPE.read(5, 3, SHAPE.twist(2));
        Judgement judged = Judgement.of(board, JudgeOptions.usual(board).withWedges(new Wedge(150, 12)));

        assertEquals(25, slideIn(judged, 450, 0, 2), 1e-12);
        assertEquals(25, slideIn(judged, 450, 180, 2), 1e-12);
        assertEquals(25, slideIn(judged, 900, 90, 2), 1e-12);
        assertEquals(12.5 + 60, slideIn(judged, 450, 60, 1), 1e-12);
        assertEquals(12.5 + 30, slideIn(judged, 450, 150, 1), 1e-12);
        assertEquals(12.5 + 20, slideIn(judged, 880, 90, 1), 1e-12);
        assertTrue(judged.slideIn(new Shim(450, 0, 12.5, false)).isEmpty(), "higher than its butt");
    }

    private static double slideIn(Judgement judged, double x, double y, double height) {
        return judged.slideIn(new Shim(x, y, height, false)).orElseThrow();
    }

    // Worked by hand: a bow of 6 mm with its ends up leaves 24 mm, 2 to spare for 22. Face A has 2 mm in the mean above
    // its cut, face B 4: A would take all of it to make them alike, but for what is kept for face B. That is how much
    // less than now the board may turn out, and the width of its range.
    @Test
    void whatIsKeptForFaceBIsWhatTheReadingsLeaveOpen() {
        Judgement judged = judge(SHAPE.wanted(22).read(9, 5, SHAPE.bow(6)));
        ThicknessRange range = judged.lifts() ? judged.outlook().levelled() : judged.outlook().asMeasured();
        double slab = judged.planes().chosen().thickness();
        double open = Math.max(0, slab - range.low()) + range.high() - range.low();

        double lessB = judged.cuts().faceB().plane().height() - judged.planes().chosen().slab().faceB().height();

        assertTrue(open < (slab - 22) * 2 / 3 && open > 0.2, "open " + open + " of " + (slab - 22));
        assertEquals(open, lessB, 1e-9);
    }
}
