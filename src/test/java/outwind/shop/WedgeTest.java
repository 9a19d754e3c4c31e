package outwind.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class WedgeTest {

    // Worked by hand: a wedge 150 mm long and 12 mm thick rises 1 mm in every 12.5.
    @Test
    void slidesInByTheRuleOfThree() {
        Wedge wedge = new Wedge(150, 12);

        assertEquals(12.5, wedge.slideIn(1, 0), 1e-12);
        assertEquals(150, wedge.slideIn(12, 0), 1e-12);
        // Under the middle of a board the tip has that far to go first.
        assertEquals(112.5, wedge.slideIn(1, 100), 1e-12);
        assertTrue(wedge.reaches(12));
        assertFalse(wedge.reaches(12.01));
    }

    @Test
    void aWedgeWithoutABodyIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Wedge(0, 12));
        assertThrows(IllegalArgumentException.class, () -> new Wedge(150, 0));
        assertThrows(IllegalArgumentException.class, () -> new Wedge(Double.POSITIVE_INFINITY, 12));
        assertThrows(IllegalArgumentException.class,
            () -> new Wedge(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
    }
}
