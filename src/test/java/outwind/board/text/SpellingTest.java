package outwind.board.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Units;
import outwind.board.file.BillFile;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;

/** A misspelt word is answered with the one that was meant. */
class SpellingTest {

    private static final List<String> BILL =
        List.of("name", "length", "width", "thickness", "quantity", "value", "any grain");

    // Slips counted by hand: one letter left out, doubled, wrong; two letters changed over are two slips.
    @ParameterizedTest
    @CsvSource({"lenght, length", "widht, width", "thicknes, thickness", "QUANTITIY, quantity", "valeu, value",
        "any-grain, any grain"})
    void theNearestColumnIsOffered(String written, String meant) {
        assertEquals("Did you mean " + meant + "? ", Spelling.suggestion(written, BILL));
    }

    @ParameterizedTest
    @CsvSource({"colour", "pq", "''", "a remark of many words"})
    void nothingIsOfferedForAWordThatIsNearToNone(String written) {
        assertEquals("", Spelling.suggestion(written, BILL));
    }

    // One letter in place of another would make any letter an x.
    @Test
    void aNameOfOneLetterIsNotGuessed() {
        assertEquals("", Spelling.suggestion("q", List.of("x", "y", "z")));
    }

    @Test
    void columnsOfBoardFilesAndBillsAreOfferedInTheFault() {
        BadBoardFile board = assertThrows(BadBoardFile.class, () -> BoardFile.parse("t.csv",
            "# length: 900\n# width: 200\nx,y,z,thicknes\n1,1,0,30\n800,1,0,\n1,150,0,\n", Defaults.NOTHING));
        BadBoardFile bill = assertThrows(BadBoardFile.class, () -> BillFile.parse("b.csv",
            "name,length,width,thickness,quantiy\nleg,500,48,28,4\n", Units.MILLIMETRES));

        assertTrue(board.getMessage().contains("t.csv:3:7: expected a column x, y, z, depth, thickness, face or note but"
            + " found \"thicknes\"\n  Did you mean thickness? Rename it or take it out"), board.getMessage());
        assertTrue(bill.getMessage().contains("b.csv:1:29: expected a column name, length, width, thickness, quantity,"
            + " value, any grain, species or grade but found \"quantiy\"\n  Did you mean quantity? Rename it or take it out."),
            bill.getMessage());
    }
}
