package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.shop.Cutter;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

class RasterTest {

    private static final Cutter CUTTER = new Cutter("wide", 40, 0.5, 0.2, 20, 1000, 20);

    /** A board of 1000 x 200 mm looked at on a grid of 11 x 5. */
    private static final SampledBoard BOARD = new SampledBoard(Places.grid(new Region(0, 0, 1000, 200), 11, 5),
        new double[55], new double[55]);

    private static final Raster RASTER = Raster.over(BOARD, CUTTER);

    // Worked by hand: 200 + 2·20 = 240 mm across in steps of 20 are 13 rows of 1000 + 2·20 = 1040 mm, and 240 mm from
    // the first row to the last: 13 760 mm, at 1000 mm a minute 13.76 minutes.
    @Test
    void everyRowFromEndToEnd() {
        assertEquals(13.76, RASTER.minutes(RASTER.board()), 1e-12);
        assertEquals(new Area(0, 1000, 0, 200), RASTER.board());
    }

    @Test
    void woodAllOverIsOneArea() {
        assertEquals(List.of(RASTER.board()), RASTER.areas(i -> true));
    }

    @Test
    void airIsNotCut() {
        assertEquals(List.of(), RASTER.areas(i -> false));
    }

    // Worked by hand: wood at the end x = 1000 alone, which with a cell of 100 mm may begin at 900: each of the 13 rows
    // takes 100 + 2·20 = 140 mm, and 240 mm from the first to the last: 2060 mm.
    @Test
    void aHighEndIsCutAlone() {
        List<Area> areas = RASTER.areas(i -> BOARD.x()[i] == 1000);

        assertEquals(List.of(new Area(900, 1000, 0, 200)), areas);
        assertEquals(2.06, RASTER.minutes(areas), 1e-12);
    }

    // A twisted board stands highest at two opposite corners.
    @Test
    void twoHighCornersAreCutApart() {
        assertEquals(List.of(new Area(0, 100, 0, 50), new Area(900, 1000, 150, 200)),
            RASTER.areas(i -> BOARD.x()[i] + 5 * BOARD.y()[i] == 0 || BOARD.x()[i] + 5 * BOARD.y()[i] == 2000));
    }

    // All of a board but a hole in its middle saves too little time.
    @Test
    void aHollowIsPassedOver() {
        assertEquals(List.of(RASTER.board()), RASTER.areas(i -> BOARD.x()[i] != 500));
    }

    // Identity: no wood lies outside the areas, and they never take longer than the whole board.
    @Test
    void allWoodIsCut() {
        SplittableRandom random = new SplittableRandom(3);
        for (int layer = 0; layer < 200; layer++) {
            double share = random.nextDouble();
            boolean[] wood = new boolean[BOARD.size()];
            for (int i = 0; i < wood.length; i++) {
                wood[i] = random.nextDouble() < share * share;
            }
            List<Area> areas = RASTER.areas(i -> wood[i]);
            assertTrue(RASTER.minutes(areas) <= RASTER.minutes(RASTER.board()) + 1e-9);
            for (int i = 0; i < wood.length; i++) {
                double x = BOARD.x()[i];
                double y = BOARD.y()[i];
                assertTrue(!wood[i] || areas.stream().anyMatch(area -> area.x1() <= x && x <= area.x2()
                    && area.y1() <= y && y <= area.y2()), layer + ": " + areas + " miss " + x + ", " + y);
            }
        }
    }
}
