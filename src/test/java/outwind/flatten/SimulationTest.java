package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.numeric.plane.Plane;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

class SimulationTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    private static LiftLimit free(Board board) {
        return new LiftLimit(new Plane(0, 0, 0), Double.POSITIVE_INFINITY, board.length(), board.width());
    }

    private static Simulation simulate(Board board) {
        return Simulation.of(MeasuredShape.of(board), Region.whole(board), 0, free(board), 1);
    }

    @Test
    void levelledIsNeverThinnerThanAsMeasured() {
        Simulation simulation = simulate(SHAPE.read(5, 3, SHAPE.twist(2)));

        assertTrue(simulation.asMeasured().median() <= simulation.levelled().median());
        assertTrue(simulation.asMeasured().low() <= simulation.levelled().low());
    }

    // The noise-free slab of a bow of 2 mm is 28; the range lies about it and is not wider than the noise explains.
    @Test
    void theRangeHoldsTheThicknessOfAKnownBoard() {
        ThicknessRange range = simulate(SHAPE.read(5, 3, SHAPE.bow(2))).levelled();

        assertTrue(range.low() < 28 && 28 < range.high() + 0.1, range.low() + " to " + range.high());
        assertTrue(range.high() - range.low() < 0.6);
    }

    // Identity: each skim comes off the thickness of every possible board, however it is cut.
    @Test
    void skimComesOffBothFacesOfEveryPossibleBoard() {
        Board board = SHAPE.read(5, 3, SHAPE.twist(2));
        Simulation skimmed = Simulation.of(MeasuredShape.of(board), Region.whole(board), 0.3, free(board), 1);
        Simulation bare = simulate(board);

        for (int i = 0; i < Simulation.DRAWS; i++) {
            assertEquals(bare.slabs()[i] - 0.6, skimmed.slabs()[i], 1e-9);
        }
        assertEquals(bare.asMeasured().median() - 0.6, skimmed.asMeasured().median(), 1e-9);
        assertEquals(bare.levelled().median() - 0.6, skimmed.levelled().median(), 1e-9);
    }

    // Worked by hand: touched off at a slope of 0.005, 30 mm of thickness come out levelled; as it lies 4.5 mm are lost
    // over 900 mm. What may not be lifted is cut as it lies.
    @Test
    void boardsThatMayNotBeLiftedComeOutAsTheyLie() {
        Board board = SHAPE.read(9, 5, (x, y) -> 0.005 * x);
        LiftLimit none = new LiftLimit(new Plane(0, 0, 0), 0, board.length(), board.width());

        Simulation held = Simulation.of(MeasuredShape.of(board), Region.whole(board), 0, none, 1);

        assertArrayEquals(held.asMeasured().sorted(), held.levelled().sorted(), 1e-9);
        assertEquals(25.5, held.asMeasured().median(), 0.3);
        assertEquals(30, simulate(board).levelled().median(), 0.3);
    }

    @Test
    void moreReadingsNarrowTheRange() {
        ThicknessRange few = simulate(SHAPE.read(3, 3, SHAPE.bow(2))).levelled();
        ThicknessRange many = simulate(SHAPE.read(9, 5, SHAPE.bow(2))).levelled();

        assertTrue(many.high() - many.low() < few.high() - few.low());
    }

    @Test
    void theSameSeedGivesTheSameAnswer() {
        Board board = SHAPE.read(5, 3, SHAPE.bow(2));

        assertArrayEquals(simulate(board).slabs(), simulate(board).slabs());
    }

    // Worked by hand on the numbers 0 to 10.
    @Test
    void quantilesAndChancesAreCounted() {
        ThicknessRange range = ThicknessRange.of(IntStream.rangeClosed(0, 10).mapToDouble(i -> 10 - i).toArray());

        assertEquals(5, range.median());
        assertEquals(0.5, range.low(), 1e-12);
        assertEquals(9.5, range.high(), 1e-12);
        assertEquals(0, range.quantile(0));
        assertEquals(10, range.quantile(1));
        assertEquals(8 / 11.0, range.chanceOf(3), 1e-12);
        assertEquals(1, range.chanceOf(-1));
        assertEquals(0, range.chanceOf(11));
    }

    // Worked by hand: the slab depends on the height at one place and nothing else, so a reading there with noise as
    // large as its spread takes away half the variance, and √½ of the width is left.
    @Test
    void thePlaceThatTheThicknessHangsOnIsNext() {
        Places places = Places.grid(new Region(0, 0, 900, 180), 3, 3);
        SplittableRandom random = new SplittableRandom(20260601);
        List<SampledBoard> boards = IntStream.range(0, 20_000)
            .mapToObj(i -> new SampledBoard(places, random.doubles(9).map(d -> random.nextGaussian()).toArray(),
                new double[9])).toList();
        double[] slabs = boards.stream().mapToDouble(board -> 30 - board.top()[5]).toArray();

        List<NextReading> next = NextReading.of(boards, slabs, 1, 1);

        assertEquals(1, next.size());
        assertEquals(890, next.get(0).x());
        assertEquals(90, next.get(0).y());
        assertEquals(Math.sqrt(0.5), next.get(0).left(), 0.02);
    }

    // Worked by hand: t = 2·a + b of two independent heights of variance one has variance 5; without noise, reading a
    // leaves 1 of it, reading b then nothing. Ends and edges are not touched off nearer than 10 mm, or a quarter of a
    // narrow board.
    @Test
    void furtherPlacesCountWhatEarlierOnesWillHaveTold() {
        Places places = Places.grid(new Region(100, 50, 1000, 70), 3, 3);
        SplittableRandom random = new SplittableRandom(20260602);
        List<SampledBoard> boards = IntStream.range(0, 20_000)
            .mapToObj(i -> new SampledBoard(places, random.doubles(9).map(d -> random.nextGaussian()).toArray(),
                new double[9])).toList();
        double[] slabs = boards.stream().mapToDouble(board -> 30 - 2 * board.top()[0] - board.top()[8]).toArray();

        List<NextReading> next = NextReading.of(boards, slabs, 0, 3);

        assertEquals(2, next.size());
        assertEquals(110, next.get(0).x());
        assertEquals(55, next.get(0).y());
        assertEquals(Math.sqrt(0.2), next.get(0).left(), 0.01);
        assertEquals(990, next.get(1).x());
        assertEquals(65, next.get(1).y());
        assertEquals(0, next.get(1).left(), 1e-6);
    }

    @Test
    void ofPlacesThatTellAlikeTheFirstIsNext() {
        Places places = Places.grid(new Region(0, 0, 900, 180), 3, 3);
        List<SampledBoard> boards = IntStream.range(0, 2).mapToObj(i -> {
            double[] top = new double[9];
            top[3] = i;
            top[5] = i;
            return new SampledBoard(places, top, new double[9]);
        }).toList();

        NextReading next = NextReading.of(boards, new double[] {30, 31}, 0, 1).get(0);

        assertEquals(10, next.x());
        assertEquals(90, next.y());
    }

    // Worked by hand: noise of nine times the variance leaves √0.9 = 0.949 of the width, worth a walk; twelve times
    // leaves √(12/13) = 0.961, which is not.
    @Test
    void aReadingThatNarrowsByLessThanATwentiethIsNotAskedFor() {
        Places places = Places.grid(new Region(0, 0, 900, 180), 3, 3);
        SplittableRandom random = new SplittableRandom(20260603);
        List<SampledBoard> boards = IntStream.range(0, 20_000).mapToObj(i -> {
            double[] top = new double[9];
            top[4] = random.nextGaussian();
            return new SampledBoard(places, top, new double[9]);
        }).toList();
        double[] slabs = boards.stream().mapToDouble(board -> board.top()[4]).toArray();

        assertEquals(1, NextReading.of(boards, slabs, 3, 1).size());
        assertEquals(0, NextReading.of(boards, slabs, Math.sqrt(12), 1).size());
    }

    // By the model: the slab is the thickness at one place, so that is read if jaws reach it: at a side, not 45 mm in.
    @Test
    void aCaliperReachesEveryEndAndEdgeAndNothingFurtherIn() {
        Places places = Places.grid(new Region(0, 0, 900, 180), 5, 5);
        for (int k = 0; k < places.size(); k++) {
            double x = places.x()[k];
            double y = places.y()[k];
            double[] thick = new double[places.size()];
            thick[k] = 1;
            double[] flat = new double[places.size()];
            List<SampledBoard> boards = List.of(new SampledBoard(places, flat, flat),
                new SampledBoard(places, thick, flat));
            ThicknessRange range = ThicknessRange.of(new double[] {0, 1});

            List<NextReading> next = NextReading.byCaliper(new Simulation(range, range, boards, new double[] {0, 1}),
                ShapeOf.board().read(2, 2, (along, across) -> 0), 1);

            boolean inReach = x == 0 || x == 900 || y == 0 || y == 180;
            assertEquals(inReach ? 1 : 0, next.size(), x + " " + y);
            if (inReach) {
                assertEquals(Math.max(10, Math.min(890, x)), next.get(0).x(), 1e-9);
                assertEquals(Math.max(10, Math.min(170, y)), next.get(0).y(), 1e-9);
            }
        }
    }

    @Test
    void nothingIsNextWhereNothingIsOpen() {
        Places places = Places.grid(new Region(0, 0, 900, 180), 3, 3);
        List<SampledBoard> boards = List.of(new SampledBoard(places, new double[9], new double[9]),
            new SampledBoard(places, new double[9], new double[9]));

        assertEquals(List.of(), NextReading.of(boards, new double[] {30, 30}, 0.1, 3));
    }

    @Test
    void verdictIsYesFromNineteenInTwenty() {
        assertEquals(Verdict.YES, Verdict.of(0.95));
        assertEquals(Verdict.DOUBTFUL, Verdict.of(0.94));
        assertEquals(Verdict.DOUBTFUL, Verdict.of(0.06));
        assertEquals(Verdict.NO, Verdict.of(0.05));
        assertEquals(List.of("yes", "doubtful", "no", "none"), Stream.of(Verdict.values()).map(Verdict::word).toList());
    }

    @Test
    void theSameSeedGivesTheSameFiguresAndAnotherDoesNot() {
        Board board = SHAPE.read(5, 3, SHAPE.twist(2));
        Simulation one = simulate(board);
        Simulation other = Simulation.of(MeasuredShape.of(board), Region.whole(board), 0, free(board), 2);

        assertEquals(one, simulate(board));
        assertEquals(one.hashCode(), simulate(board).hashCode());
        assertNotEquals(one, other);
        assertNotEquals(one.hashCode(), other.hashCode());
        assertNotEquals(one, new Simulation(other.asMeasured(), one.levelled(), one.boards(), one.slabs()));
        assertNotEquals(one, new Simulation(one.asMeasured(), other.levelled(), one.boards(), one.slabs()));
        assertNotEquals(one, new Simulation(one.asMeasured(), one.levelled(), other.boards(), one.slabs()));
        assertNotEquals(one, new Simulation(one.asMeasured(), one.levelled(), one.boards(), other.slabs()));
        assertEquals(17 * 7, one.boards().get(0).size());
    }
}
