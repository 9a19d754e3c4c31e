package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.TouchGrid;

class MeasuredShapeTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    private static Board with(Board board, List<Reading> readings, OptionalDouble repeatability) {
        return new Board(board.name(), board.units(), board.length(), board.width(), board.thickness(),
            board.species(), repeatability, board.price(), board.target(), board.skim(), board.trim(),
            board.underside(), board.turned(), board.defects(), readings, board.calipers(), board.remarks(), Optional.empty(),
            board.thickness().isPresent());
    }

    private static Board noisy(SplittableRandom random, int columns, int rows) {
        return SHAPE.read(columns, rows, (x, y) -> SHAPE.twist(2).applyAsDouble(x, y)
            + SHAPE.bow(1).applyAsDouble(x, y) + random.nextGaussian(0, 0.08));
    }

    @Test
    void aMisreadTouchOffIsFoundBeforeAnyOther() {
        SplittableRandom random = new SplittableRandom(20260501);
        int others = 0;
        for (int trial = 0; trial < 30; trial++) {
            Board board = noisy(random, 5, 3);
            List<Reading> readings = new ArrayList<>(board.readings());
            int wrong = random.nextInt(readings.size());
            Reading right = readings.get(wrong);
            readings.set(wrong, new Reading(right.x(), right.y(), right.z() + 3, Face.A, "", right.line()));

            List<SuspectReading> suspects = MeasuredShape.of(with(board, readings, OptionalDouble.empty()))
                .suspects(3);

            assertEquals(right.line(), suspects.get(0).reading().line(), "case " + trial);
            assertEquals(right.z(), suspects.get(0).expected(), 1, "case " + trial);
            others += suspects.size() - 1;
        }
        // One further alarm in twenty boards is meant; Binomial(30, 0.05) passes 5 once in a thousand runs.
        assertTrue(others <= 5, others + " others in 30 boards");
    }

    // At most one in twenty is meant; Binomial(400, 0.05) passes 33 once in a thousand runs. But a bound that never
    // raises an alarm is too wide: 19 of 600 such boards did, for two other seeds alike, and Binomial(400, 0.03) falls
    // short of 3 once in two thousand runs.
    @Test
    void noiseAloneMakesFewBoardsSuspectButSome() {
        SplittableRandom random = new SplittableRandom(20260502);
        TouchGrid grid = new TouchGrid(1180, 212, 5, 3, 15);
        int alarms = 0;
        for (int trial = 0; trial < 200; trial++) {
            Board board = ImaginedBoard.of(1180, 212, (trial + 0.5) / 200, random).touchedOff(grid.tour(), random);
            alarms += MeasuredShape.of(board).suspect().isPresent() ? 1 : 0;
        }
        assertTrue(alarms >= 1 && alarms <= 17, alarms + " of 200 boards");
    }

    @Test
    void theFaceIsSurerAtATouchOffThanAwayFromIt() {
        MeasuredShape shape = MeasuredShape.of(SHAPE.read(5, 3, SHAPE.bow(1)));

        assertTrue(shape.topDeviationAt(450, 90) < shape.topDeviationAt(900, 180));
        assertTrue(shape.topDeviationAt(450, 90) < ReadingNoise.USUAL);
    }

    @Test
    void fourCornersLeaveTheMiddleOpen() {
        MeasuredShape shape = MeasuredShape.of(SHAPE.read(2, 2, SHAPE.twist(1)));

        assertTrue(shape.topDeviationAt(450, 90) > 0.8, "deviation " + shape.topDeviationAt(450, 90));
    }

    @Test
    void theSameSeedGivesTheSameBoards() {
        MeasuredShape shape = MeasuredShape.of(SHAPE.read(5, 3, SHAPE.bow(1)));
        Places places = Places.grid(new Region(0, 0, 900, 180), 5, 3);

        assertEquals(shape.draws(places, 3, 7).get(2).top()[4], shape.draws(places, 3, 7).get(2).top()[4]);
        assertTrue(shape.draws(places, 3, 7).get(2).top()[4] != shape.draws(places, 3, 8).get(2).top()[4]);
    }

    // The draws are the field: their mean and spread at each place are those it states.
    @Test
    void drawsHaveTheMeanAndSpreadOfTheField() {
        SplittableRandom random = new SplittableRandom(20260503);
        MeasuredShape shape = MeasuredShape.of(noisy(random, 4, 3));
        Places places = Places.grid(new Region(0, 0, 900, 180), 4, 3);
        int count = 4000;
        List<SampledBoard> draws = shape.draws(places, count, 1);

        for (int k = 0; k < places.size(); k++) {
            int place = k;
            double mean = draws.stream().mapToDouble(b -> b.top()[place]).average().orElseThrow();
            double variance = draws.stream().mapToDouble(b -> Math.pow(b.top()[place] - mean, 2)).sum() / (count - 1);
            double deviation = shape.topDeviationAt(places.x()[k], places.y()[k]);
            // Standard error of a mean of 4000 is 1.6 % of the deviation; the settings' shares are rounded.
            assertEquals(shape.topAt(places.x()[k], places.y()[k]), mean, 0.08 * deviation);
            assertEquals(deviation, Math.sqrt(variance), 0.08 * deviation);
        }
    }

    // Worked by hand: repeats 0.1 and 0.3 scatter by 0.02 about their mean with one degree of freedom; pooled with
    // four of the usual 0.08: (4·0.0064 + 0.02) / 5 = 0.00912; texture 0.05² comes on top.
    @Test
    void repeatsArePooledWithTheUsualNoise() {
        Board board = SHAPE.read(3, 3, (x, y) -> 0);
        List<Reading> readings = new ArrayList<>(board.readings());
        readings.add(new Reading(100, 50, 0.1, Face.A, "", 20));
        readings.add(new Reading(100, 50, 0.3, Face.A, "", 21));

        ReadingNoise noise = ReadingNoise.of(board, readings);

        assertEquals(Math.sqrt(0.00912 + 0.0025), noise.deviation(), 1e-12);
        assertEquals(ReadingNoise.Source.REPEATS, noise.source());
        assertEquals(1, noise.repeats());
    }

    // Worked by hand: touches 3 and 31 scatter by 392, which F(1, 4) hardly ever reaches over the usual 0.0064. The
    // other places keep their say: (4·0.0064 + 0.02) / 5 again.
    @Test
    void aSlipAtAPlaceTouchedTwiceIsNoNoise() {
        Board board = SHAPE.read(3, 3, (x, y) -> 0);
        List<Reading> readings = new ArrayList<>(board.readings());
        readings.add(new Reading(100, 50, 3, Face.A, "", 20));
        readings.add(new Reading(100, 50, 31.004, Face.A, "", 21));

        ReadingNoise alone = ReadingNoise.of(board, readings);
        readings.add(new Reading(200, 50, 0.1, Face.A, "", 22));
        readings.add(new Reading(200, 50, 0.3, Face.A, "", 23));
        ReadingNoise pooled = ReadingNoise.of(board, readings);

        assertEquals(ReadingNoise.usual(), alone);
        assertEquals(Math.sqrt(0.00912 + 0.0025), pooled.deviation(), 1e-12);
        assertEquals(1, pooled.repeats());
    }

    // A machine that strays by 0.6 mm everywhere has no slip: its places agree in how much they scatter.
    @Test
    void aCoarseMachineIsBelieved() {
        Board board = SHAPE.read(3, 3, (x, y) -> 0);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            double stray = i % 3 == 0 ? 0.9 : i % 3 == 1 ? 0.5 : 0.3;
            readings.add(board.readings().get(i).withHeight(stray));
            readings.add(board.readings().get(i).withHeight(-stray));
        }

        ReadingNoise noise = ReadingNoise.of(board, readings);

        assertEquals(9, noise.repeats());
        assertTrue(noise.deviation() > 0.5, noise.toString());
    }

    @ParameterizedTest
    @CsvSource({"31, 3.1", "3.1, 31", "5.1, 3.1", "-3.1, 3.1"})
    void ofTwoTouchesOfOnePlaceTheOneThatGoesLeastWithTheOthersIsNamed(double first, double second) {
        Board board = SHAPE.read(5, 3, SHAPE.twist(3.1));
        List<Reading> readings = new ArrayList<>(board.readings());
        Reading corner = readings.get(0);
        assertEquals(3.1, corner.z(), 1e-9);
        readings.set(0, corner.withHeight(first));
        readings.add(new Reading(corner.x(), corner.y(), second, Face.A, "", 99));

        List<SuspectReading> suspects = MeasuredShape.of(with(board, readings, OptionalDouble.empty())).suspects(3);

        assertEquals(1, suspects.size(), suspects.toString());
        assertEquals(first == 3.1 ? second : first, suspects.get(0).reading().z());
    }

    @Test
    void repeatabilityGoesBeforeEverythingElse() {
        Board board = with(SHAPE.read(3, 3, (x, y) -> 0), SHAPE.read(3, 3, (x, y) -> 0).readings(),
            OptionalDouble.of(0.12));

        assertEquals(0.13, ReadingNoise.of(board, board.readings()).deviation(), 1e-12);
    }

    // Worked by hand: heights in 64ths of an inch are rounded by up to half of 0.396875 mm; evenly spread, that is a
    // variance of 0.396875²/12 on top of the usual 0.08² and 0.05².
    @Test
    void heightsWrittenInCoarseStepsAreLessSure() {
        Board board = SHAPE.read(5, 3, (x, y) -> Math.rint(x / 100) * 25.4 / 64);

        assertEquals(Math.sqrt(0.08 * 0.08 + 0.05 * 0.05 + Math.pow(25.4 / 64, 2) / 12),
            ReadingNoise.of(board, board.readings()).deviation(), 1e-12);
    }
}
