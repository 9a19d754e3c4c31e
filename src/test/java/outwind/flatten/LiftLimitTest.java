package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import outwind.numeric.plane.Plane;

class LiftLimitTest {

    /** On a bed that rises by 1 mm along the board and falls by 0.4 mm across it. */
    private static final LiftLimit LIMIT = new LiftLimit(new Plane(5, 0.001, -0.002), 6, 1000, 200);

    // Worked by hand: 0.004 off the seat over 1000 mm is 4 mm, 0.01 over 200 mm is 2 mm; together one corner rises by
    // 6 mm against the one across, whichever way the board is tilted.
    @Test
    void liftIsReckonedFromTheSeatOverBothSides() {
        assertEquals(0, LIMIT.liftFor(new Plane(-7, 0.001, -0.002)), 1e-12);
        assertEquals(6, LIMIT.liftFor(new Plane(0, 0.005, 0.008)), 1e-12);
        assertEquals(6, LIMIT.liftFor(new Plane(0, -0.003, -0.012)), 1e-12);
        assertEquals(4, LIMIT.liftFor(new Plane(0, -0.003, -0.002)), 1e-12);
    }

    @Test
    void aLimitIsReachedByWhatLiftsAsFarAsItAllows() {
        assertTrue(LIMIT.isReachedBy(new Plane(0, 0.005, 0.008)));
        assertFalse(LIMIT.isReachedBy(new Plane(0, 0.004999, 0.008)));
    }
}
