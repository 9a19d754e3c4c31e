package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.TouchGrid;

class PredictedHeightTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    // What is predicted should differ from what is read by what is said of it: then the squares, in units of what is to
    // be expected, are 1 on average. One of each board, so that they do not hang together: the mean of 300 has a
    // standard error of 0.08. It came to 0.76 and 0.87 on 400 boards of two other seeds, a little on the wary side.
    // Deviations a quarter too large or too small are out of bounds.
    @Test
    void whatIsPredictedOfBoardsOfKnownNoiseIsAsFarOffAsItSays() {
        SplittableRandom random = new SplittableRandom(20260301);
        TouchGrid grid = new TouchGrid(1180, 212, 4, 3, 15);
        double sum = 0;
        for (int trial = 0; trial < 300; trial++) {
            Board board = ImaginedBoard.of(1180, 212, (trial + 0.5) / 300, random).touchedOff(grid.tour(), random);
            Reading reading = board.readings().get(random.nextInt(12));

            PredictedHeight predicted = MeasuredShape.of(board.without(reading)).predict(reading.x(), reading.y());

            sum += Math.pow((reading.z() - predicted.mean()) / predicted.deviation(), 2);
        }

        assertTrue(sum > 0.55 * 300 && sum < 1.25 * 300, "mean square " + sum / 300);
    }

    // Where one touch-off is known without end, another differs from it by its own noise alone; with n of them the
    // mean is sure to noise/√n, and the deviation is noise·√(1 + 1/n).
    @Test
    void aPlaceTouchedOftenPredictsItselfToWithinTheNoise() {
        Board board = SHAPE.read(4, 3, SHAPE.twist(1));
        List<Reading> often = new ArrayList<>(board.readings());
        for (int i = 0; i < 40; i++) {
            often.add(board.readings().get(0).withHeight(1.2));
        }

        MeasuredShape shape = MeasuredShape.of(board.withReadings(often));
        PredictedHeight predicted = shape.predict(0, 0);

        assertEquals(1.2, predicted.mean(), 0.02);
        assertEquals(shape.noise().deviation() * Math.sqrt(1 + 1 / 41.0), predicted.deviation(),
            0.01 * predicted.deviation());
    }

    // Identity: heights measured from a bed that is tilted are the same heights once the bed's own are taken off.
    @Test
    void heightsArePredictedAsTheyAreReadOverATiltedBed() {
        Board level = SHAPE.read(4, 3, SHAPE.twist(1));
        List<Reading> tilted = new ArrayList<>();
        level.readings().forEach(r -> tilted.add(r.withHeight(r.z() + 30 + bed(r.x(), r.y()))));
        for (double[] corner : new double[][] {{-50, -50}, {950, -50}, {0, 230}}) {
            tilted.add(new Reading(corner[0], corner[1], bed(corner[0], corner[1]), Face.BED, "", 1));
        }

        PredictedHeight predicted = MeasuredShape.of(level).predict(450, 60);
        PredictedHeight overBed = MeasuredShape.of(level.withReadings(tilted)).predict(450, 60);

        assertEquals(predicted.mean() + 30 + bed(450, 60), overBed.mean(), 1e-6);
    }

    private static double bed(double x, double y) {
        return 0.4 + 0.002 * x - 0.003 * y;
    }

    // Identity: the spread of the repeats, stated, is the noise that the repeats gave. The reference is the pooled
    // estimate by hand: two of four pairs 0.2 apart, each with squares of 0.2²/2 about its mean:
    // (4·0.08² + 2·0.02) / 8.
    @Test
    void repeatsStatedAsRepeatabilityLeaveTheNoiseAsItIs() {
        Board board = SHAPE.read(4, 3, SHAPE.twist(1.0037));
        List<Reading> repeated = new ArrayList<>(board.readings());
        for (int i = 0; i < 4; i++) {
            Reading first = board.readings().get(i);
            repeated.add(first.withHeight(first.z() + (i < 2 ? 0.2 : 0)));
        }
        Board touched = board.withReadings(repeated);

        double repeatability = ReadingNoise.repeatability(touched).orElseThrow();
        Board stated = new Board(touched.name(), touched.units(), touched.length(), touched.width(),
            touched.thickness(), touched.species(), ReadingNoise.repeatability(touched), touched.price(),
            touched.target(), touched.skim(), touched.trim(), touched.underside(), touched.turned(),
            touched.defects(), touched.readings(), touched.calipers(), touched.remarks(), Optional.empty(),
            touched.thickness().isPresent());

        assertEquals(Math.sqrt((4 * 0.08 * 0.08 + 2 * 0.02) / 8), repeatability, 1e-9);
        assertEquals(MeasuredShape.of(touched).noise().deviation(), MeasuredShape.of(stated).noise().deviation(),
            1e-12);
        assertTrue(ReadingNoise.repeatability(board).isEmpty());
    }
}
