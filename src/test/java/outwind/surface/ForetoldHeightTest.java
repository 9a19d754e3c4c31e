package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import outwind.board.BadBoardFile;
import outwind.board.Board;
import outwind.board.BoardFile;
import outwind.board.Face;
import outwind.board.Given;
import outwind.board.Reading;

class ForetoldHeightTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    private static Board sample() throws IOException, BadBoardFile {
        return BoardFile.read(Path.of("sample-probes/hall-table.csv"), Given.NOTHING);
    }

    /** Sum of squares of what is foretold of each touch-off by the others, in units of what is to be expected. */
    private static double misfit(Board board) {
        double sum = 0;
        for (Reading reading : board.readings()) {
            ForetoldHeight foretold = MeasuredShape.of(board.without(reading)).foretell(reading.x(), reading.y());
            sum += Math.pow((reading.z() - foretold.mean()) / foretold.deviation(), 2);
        }
        return sum;
    }

    // What is foretold should differ from what is read by what is said of it: 15 squares then sum to about 15. They are
    // not independent, so the bounds are those of chi-square at one in a thousand either way for half as many.
    @Test
    void whatIsForetoldOfASampleIsAsFarOffAsItSays() throws IOException, BadBoardFile {
        double misfit = misfit(sample());

        assertTrue(misfit > 0.6 && misfit < 37.7, "sum of squares " + misfit);
    }

    // Where one touch-off is known without end, another differs from it by its own noise alone; with n of them the
    // mean is sure to noise/√n, and the deviation is noise·√(1 + 1/n).
    @Test
    void aPlaceTouchedOftenForetellsItselfToWithinTheNoise() {
        Board board = SHAPE.read(4, 3, SHAPE.twist(1));
        List<Reading> often = new ArrayList<>(board.readings());
        for (int i = 0; i < 40; i++) {
            often.add(board.readings().get(0).withHeight(1.2));
        }

        MeasuredShape shape = MeasuredShape.of(board.withReadings(often));
        ForetoldHeight foretold = shape.foretell(0, 0);

        assertEquals(1.2, foretold.mean(), 0.02);
        assertEquals(shape.noise().deviation() * Math.sqrt(1 + 1 / 41.0), foretold.deviation(),
            0.01 * foretold.deviation());
    }

    // Identity: heights told from a bed that is tilted are the same heights once the bed's own are taken off.
    @Test
    void heightsAreForetoldAsTheyAreReadOverATiltedBed() {
        Board level = SHAPE.read(4, 3, SHAPE.twist(1));
        List<Reading> tilted = new ArrayList<>();
        level.readings().forEach(r -> tilted.add(r.withHeight(r.z() + 30 + bed(r.x(), r.y()))));
        for (double[] corner : new double[][] {{-50, -50}, {950, -50}, {0, 230}}) {
            tilted.add(new Reading(corner[0], corner[1], bed(corner[0], corner[1]), Face.BED, "", 1));
        }

        ForetoldHeight foretold = MeasuredShape.of(level).foretell(450, 60);
        ForetoldHeight overBed = MeasuredShape.of(level.withReadings(tilted)).foretell(450, 60);

        assertEquals(foretold.mean() + 30 + bed(450, 60), overBed.mean(), 1e-6);
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

        double repeatability = TouchOffNoise.repeatability(touched).orElseThrow();
        Board stated = new Board(touched.name(), touched.units(), touched.length(), touched.width(),
            touched.thickness(), touched.species(), TouchOffNoise.repeatability(touched), touched.price(),
            touched.target(), touched.skim(), touched.trim(), touched.underside(), touched.turned(),
            touched.defects(), touched.readings(), touched.calipers(), touched.remarks());

        assertEquals(Math.sqrt((4 * 0.08 * 0.08 + 2 * 0.02) / 8), repeatability, 1e-9);
        assertEquals(MeasuredShape.of(touched).noise().deviation(), MeasuredShape.of(stated).noise().deviation(),
            1e-12);
        assertTrue(TouchOffNoise.repeatability(board).isEmpty());
    }
}
