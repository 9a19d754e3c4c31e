package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

class RasterTest {

    private static final Cutter CUTTER = new Cutter(0.5, 0.2, 40, 20, 1000, 20);

    /** A board of 1000 x 200 mm looked at on a grid of 11 x 5. */
    private static SampledBoard board() {
        Places places = Places.grid(new Region(0, 0, 1000, 200), 11, 5);
        return new SampledBoard(places, new double[55], new double[55]);
    }

    // Worked by hand: 200 + 2·20 = 240 mm across in steps of 20 are 13 rows of 1000 + 2·20 = 1040 mm, and 240 mm from
    // the first row to the last: 13 760 mm, at 1000 mm a minute 13.76 minutes.
    @Test
    void everyRowFromEndToEnd() {
        assertEquals(13.76, new Raster(CUTTER, 1000, 200).minutes(), 1e-12);
    }

    @Test
    void woodAllOverTakesAsLongAsTheWholeRaster() {
        assertEquals(13.76, new Raster(CUTTER, 1000, 200).woodMinutes(board(), i -> 1), 1e-12);
    }

    @Test
    void airTakesNoTime() {
        assertEquals(0, new Raster(CUTTER, 1000, 200).woodMinutes(board(), i -> 0));
    }

    // Worked by hand: wood at the end x = 1000 alone, which with a cell of 100 mm may begin at 900: each of the 13 rows
    // takes 100 + 2·20 = 140 mm, and 240 mm from the first to the last: 2060 mm.
    @Test
    void aHighEndIsCutAlone() {
        SampledBoard board = board();

        assertEquals(2.06, new Raster(CUTTER, 1000, 200).woodMinutes(board, i -> board.x()[i] == 1000 ? 1 : 0), 1e-12);
    }

    // Worked by hand: wood along the edge y = 0 alone; cutter's radius 20 and a cell of 50 mm reach it from rows at
    // −20,
    // 0, 20, 40 and 60: five rows of 1040 mm and 80 mm between them.
    @Test
    void aHighEdgeTakesTheRowsThatReachIt() {
        SampledBoard board = board();

        assertEquals(5.28, new Raster(CUTTER, 1000, 200).woodMinutes(board, i -> board.y()[i] == 0 ? 1 : 0), 1e-12);
    }

    @Test
    void theCutterRunsOutAtLeastByItsRadius() {
        assertThrows(IllegalArgumentException.class, () -> new Cutter(0.5, 0.2, 40, 20, 1000, 19));
        assertThrows(IllegalArgumentException.class, () -> new Cutter(0.5, 0.2, 40, 41, 1000, 20));
    }
}
