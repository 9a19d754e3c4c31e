package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Reading;

class SampledBoardTest {

    private static SampledBoard sample(Board board) {
        return MeasuredShape.of(board).at(Places.fine(board, Region.whole(board)));
    }

    @Test
    void holdsEveryReadingAndEveryCorner() {
        ShapeOf shape = ShapeOf.board();
        Board board = shape.read(4, 3, shape.twist(2));

        SampledBoard sampled = sample(board);

        for (Reading reading : board.readings()) {
            assertTrue(IntStream.range(0, sampled.size()).anyMatch(i -> sampled.x()[i] == reading.x()
                && sampled.y()[i] == reading.y() && Math.abs(sampled.top()[i] - reading.z()) < 1e-12),
                "no place for " + reading);
        }
        for (double[] corner : new double[][] {{0, 0}, {900, 0}, {900, 180}, {0, 180}}) {
            assertTrue(IntStream.range(0, sampled.size()).anyMatch(i -> sampled.x()[i] == corner[0]
                && sampled.y()[i] == corner[1]));
        }
    }

    @Test
    void weightsAddUpToTheArea() {
        Board board = ShapeOf.board().read(3, 3, (x, y) -> 0);

        assertEquals(900 * 180, sample(board).integral(i -> 1), 1e-6);
    }

    // Worked by hand: a mean thickness of 30 mm, a tilt that averages out.
    @Test
    void meanOfAPlaneIsItsMiddle() {
        Board board = ShapeOf.board().read(3, 3, (x, y) -> 0.01 * x - 0.02 * y);
        SampledBoard sampled = sample(board);

        assertEquals(30, sampled.mean(i -> sampled.top()[i] - sampled.underside()[i]), 1e-10);
        assertEquals(0.01 * 450 - 0.02 * 90, sampled.mean(i -> sampled.top()[i]), 1e-10);
    }

    @Test
    void cornersBeyondTheReadingsFollowTheTrend() {
        ShapeOf shape = ShapeOf.board();
        Board inset = shape.read(5, 3, shape.twist(2));
        List<Reading> moved = inset.readings().stream().map(r -> new Reading(50 + r.x() * 800 / 900, 20 + r.y() * 140
            / 180, shape.twist(2).applyAsDouble(50 + r.x() * 800 / 900, 20 + r.y() * 140 / 180), r.face(), "",
            r.line())).toList();
        Board board = new Board("inset", inset.units(), 900, 180, inset.thickness(), inset.species(),
            inset.repeatability(), inset.price(), inset.target(), inset.skim(), inset.trim(), inset.underside(),
            inset.turned(), inset.defects(), moved, inset.calipers(), inset.remarks(), Optional.empty(),
            inset.thickness().isPresent());

        assertEquals(2, MeasuredShape.of(board).topAt(0, 0), 1e-9);
        assertEquals(-2, MeasuredShape.of(board).topAt(900, 0), 1e-9);
    }

    @Test
    void undersideAlikeLiesOneThicknessBelow() {
        ShapeOf shape = ShapeOf.board();
        MeasuredShape measured = MeasuredShape.of(shape.read(3, 3, shape.bow(2)));

        assertEquals(measured.topAt(100, 30) - 30, measured.undersideAt(100, 30), 1e-12);
    }

    @Test
    void flatUndersideLiesOneMeanThicknessBelow() {
        Board board = ShapeOf.board().lyingFlat().read(3, 3, (x, y) -> 0.001 * x);
        MeasuredShape measured = MeasuredShape.of(board);

        assertEquals(0.45 - 30, measured.undersideAt(0, 0), 1e-12);
        assertEquals(0.45 - 30, measured.undersideAt(900, 180), 1e-12);
    }

    // Closed form: thickness readings on a wedge 28 + x/900·4 fix the wedge, but for the few thousandths by which small
    // wedges are believed in; the underside is the top less that.
    @Test
    void thicknessReadingsMakeAWedge() {
        List<CaliperReading> calipers = List.of(new CaliperReading(0, 0, 28, 2), new CaliperReading(900, 0, 32, 3),
            new CaliperReading(900, 180, 32, 4), new CaliperReading(0, 180, 28, 5));
        Board board = ShapeOf.board().read(3, 3, (x, y) -> 1, calipers);
        MeasuredShape measured = MeasuredShape.of(board);

        assertEquals(1 - 30, measured.undersideAt(450, 90), 1e-6);
        assertEquals(1 - 28.4, measured.undersideAt(90, 10), 0.005);
    }

    @Test
    void oneThicknessReadingIsTheThicknessEverywhere() {
        Board board = ShapeOf.board().read(3, 3, (x, y) -> 0, List.of(new CaliperReading(10, 10, 29.5, 2)));

        assertEquals(-29.5, MeasuredShape.of(board).undersideAt(800, 170), 1e-12);
    }
}
