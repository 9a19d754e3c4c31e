package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FaultTest {

    @Test
    void saysWhereAndWhatAndThenTheCure() {
        Fault fault = new Fault(Fault.Kind.CAUSE, "hall-table.csv", 9, 11, "z in mm", Fault.shown("-1.1O"), "Type a number.");

        assertEquals("""
            hall-table.csv:9:11: expected z in mm but found "-1.1O"
              Type a number.""", fault.message());
    }

    @Test
    void textIsShownShortenedWithWhatCannotBeSeenAsEscapes() {
        assertEquals("nothing", Fault.shown(" "));
        assertEquals("\"" + "7".repeat(40) + "\"", Fault.shown("7".repeat(40)));
        assertEquals("\"" + "7".repeat(40) + "…\"", Fault.shown("7".repeat(41)));
        assertEquals("\"1\\u00a0180\\u0007\\u200b\"", Fault.shown("1\u00a0180\u0007\u200b"));
        assertEquals("\"größe 1 3/16\"", Fault.shown("größe 1 3/16"));
    }
}
