package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import outwind.board.Board;
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
}
