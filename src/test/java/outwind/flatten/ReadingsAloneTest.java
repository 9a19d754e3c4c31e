package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.Face;
import outwind.board.PointCloud;
import outwind.board.Reading;
import outwind.board.ScannedFace;
import outwind.surface.MeasuredShape;
import outwind.surface.ShapeOf;

class ReadingsAloneTest {

    // Closed form: corners 2 mm off the mean plane in turn need a zone of 4 mm; a board of one thickness, 30 mm, yields
    // that less the zone and less a skim of 0.3 mm on each face.
    @Test
    void twistSeenAtTheReadingsAloneIsToldByHighestLowestZoneAndPromise() {
        ShapeOf shape = ShapeOf.board();
        Board board = shape.read(5, 3, shape.twist(2));

        ReadingsAlone alone = ReadingsAlone.of(board, MeasuredShape.of(board), 0.3);

        assertEquals(board.readings().get(0), alone.highest());
        assertEquals(board.readings().get(4), alone.lowest());
        assertEquals(4, alone.spread(), 1e-12);
        assertEquals(4, alone.minimumZone().width(), 1e-9);
        assertEquals(30 - 4 - 0.6, alone.promise(), 1e-9);
    }

    // Identity: of a board of one thickness, the thickest slab between the readings is that less their minimum zone,
    // however unevenly they lie; a face smoothed through them would promise a little more.
    @Test
    void unevenReadingsAreTakenAsTheyAre() {
        ShapeOf shape = ShapeOf.board();
        SplittableRandom random = new SplittableRandom(4);
        Board board = shape.read(5, 3, (x, y) -> random.nextGaussian(0, 0.5));

        ReadingsAlone alone = ReadingsAlone.of(board, MeasuredShape.of(board), 0.3);

        assertEquals(30 - alone.minimumZone().width() - 0.6, alone.promise(), 1e-9);
    }

    // Closed form: corners 3 mm up and down in turn have a zone of 6 mm, whatever the cells of the scan average; what
    // is promised is that of the cells.
    @Test
    void ofAScanHighestLowestAndZoneAreThoseOfItsPoints() {
        ShapeOf shape = ShapeOf.board();
        Board read = shape.read(5, 3, shape.twist(2));
        ScannedFace scan = new ScannedFace(new PointCloud(new double[] {450, 0, 900, 900, 0},
            new double[] {90, 0, 0, 180, 180}, new double[] {0, 3, -3.1, 3.1, -3}), new CellHeights(900, 180, 1, 1,
            new double[] {0}, new double[] {0.1}, new int[] {5}, OptionalDouble.empty()), false);
        Board scanned = ShapeOf.scanned(read, scan);

        ReadingsAlone alone = ReadingsAlone.of(scanned, MeasuredShape.of(read), 0.3);

        assertEquals(new Reading(900, 180, 3.1, Face.A, "", 0), alone.highest());
        assertEquals(new Reading(900, 0, -3.1, Face.A, "", 0), alone.lowest());
        assertEquals(6.1, alone.minimumZone().width(), 1e-9);
        assertEquals(30 - 4 - 0.6, alone.promise(), 1e-9);
    }
}
