package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.text.BadBoardFile;

class PastedRowsTest {

    private static final String KEYS = "# length: 900\n# width: 180\n# thickness: 30\n# units: mm\nx,y,z\n";

    private static String rows(int count) {
        return IntStream.range(0, count).mapToObj(i -> (20 + 215 * (i % 5)) + "," + (15 + 75 * (i / 5)) + ",0." + i % 10)
            .collect(Collectors.joining("\n", "", "\n"));
    }

    private static Board read(String rows) throws BadBoardFile {
        return BoardFile.parse("pasted.csv", KEYS + rows, Defaults.NOTHING);
    }

    @Test
    void allRowsPastedTwiceCountOnceAndItIsSaid() throws BadBoardFile {
        Board once = read(rows(15));
        Board twice = read(rows(15) + rows(15));

        assertEquals(once.readings(), twice.readings());
        assertTrue(twice.remarks().contains("15 rows stand in the file twice, to the last digit; each is counted once."),
            twice.remarks().toString());
    }

    // Three places read again on a dial that shows tenths may well read the same.
    @Test
    void aFewPlacesReadAgainStayRepeats() throws BadBoardFile {
        assertEquals(18, read(rows(15) + rows(3)).readings().size());
    }

    // Counted before they were taken for one, these rows once made a board of a single touch-off.
    @Test
    void rowsThatRepeatOneAnotherAreTooFew() {
        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> read("20,15,0.3\n".repeat(12)));

        assertEquals("pasted.csv:1:1: expected at least 3 touch-offs on face A that differ but found 1\n"
            + "  The other rows repeat these to the last digit: touch off more points.", refused.getMessage());
    }
}
