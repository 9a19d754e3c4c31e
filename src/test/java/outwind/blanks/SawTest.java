package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.shop.SawLimits;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

class SawTest {

    /** 900 x 180 mm; 25 mm are trimmed off each end, 12 mm off each edge. */
    private static final Board BOARD = ShapeOf.board().trimmed(25, 12).read(3, 3, (x, y) -> 0);

    private static Saw straightening(double endTrim, double firstEdge) {
        return new Saw(3, endTrim, 5, new SawLimits(0, 1000, firstEdge, 0, 0));
    }

    private static String refused(double kerf, double endTrim, double raster) {
        return assertThrows(IllegalArgumentException.class, () -> new Saw(kerf, endTrim, raster)).getMessage();
    }

    @Test
    void figuresOutOfRangeAreRefused() {
        assertEquals("the kerf must be from 0 to 100 mm, got -0.1 mm", refused(-0.1, 0, 5));
        assertEquals("the kerf must be from 0 to 100 mm, got 100.1 mm", refused(100.1, 0, 5));
        assertEquals("the end trim must not be below zero, got -0.1 mm", refused(3, -0.1, 5));
        assertEquals("the raster must be from 0.5 to 1000 mm, got 0.4 mm", refused(3, 0, 0.4));
        assertEquals("the raster must be from 0.5 to 1000 mm, got 1000.1 mm", refused(3, 0, 1000.1));
        assertEquals(0, new Saw(0, 0, 0.5).kerf());
        assertEquals(1000, new Saw(100, 0, 1000).raster());
    }

    // The usual figures are common practice.
    @Test
    void theUsualSawTrimsAsTheBoardStates() {
        SawLimits limits = new SawLimits(150, 300, 2, 0, 0);

        assertEquals(new Saw(3.2, 25, 5, SawLimits.NONE, false), Saw.usual(BOARD));
        assertEquals(new Saw(3.2, 25, 5, limits, false), Saw.usual(BOARD, limits));
    }

    @Test
    void theShortestLengthIsThatOfTheShopOrTheUsualOne() {
        assertEquals(300, new Saw(3, 0, 5).shortestLength());
        assertEquals(150, new Saw(3, 0, 5, new SawLimits(150, 300, 0, 0, 0)).shortestLength());
    }

    // Worked by hand: straightening is part of the trim of an edge, whichever takes more.
    @Test
    void straighteningIsPartOfTheTrim() {
        assertEquals(new Region(40, 12, 860, 168), straightening(40, 5).usable(BOARD));
        assertEquals(new Region(40, 20, 860, 168), straightening(40, 20).usable(BOARD));
        assertEquals(new Region(0, 20, 900, 180), straightening(40, 20).straightened(BOARD));
    }

    // Worked by hand: 450 mm off both ends of 900 mm leave nothing; neither do 168 and 12 mm off both edges of 180 mm.
    @Test
    void whatLeavesNothingIsRefused() {
        assertTrue(straightening(449.9, 167.9).leavesWood(BOARD));
        assertFalse(straightening(450, 0).leavesWood(BOARD));
        assertFalse(straightening(0, 168).leavesWood(BOARD));
        assertEquals("an end trim of 450.0 mm at each end leaves nothing of a board 900.0 mm long",
            assertThrows(IllegalArgumentException.class, () -> straightening(450, 0).usable(BOARD)).getMessage());
        assertEquals("straightening the first edge by 168.0 mm leaves nothing of a board 180.0 mm wide",
            assertThrows(IllegalArgumentException.class, () -> straightening(0, 168).usable(BOARD)).getMessage());
    }
}
