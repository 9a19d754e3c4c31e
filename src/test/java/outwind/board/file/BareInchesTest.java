package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import outwind.board.text.BadBoardFile;

/** A board of 16 x 8 x 1.06 inches without its unit was read as a chip of wood in mm. */
class BareInchesTest {

    private static final String BOARD = "# length: 16\n# width: 8\n# thickness: 1.06\nx,y,z\n1,1,0\n15,1,0\n8,7,0\n";

    @Test
    void sizesThatAreNoBoardInMillimetresNeedTheirUnit() {
        BadBoardFile refused = assertThrows(BadBoardFile.class,
            () -> BoardFile.parse("shelf.csv", BOARD, Defaults.NOTHING));

        assertTrue(refused.getMessage().contains("the units of a board of 16 x 8 x 1.06"), refused.getMessage());
    }

    @Test
    void withItsUnitEitherIsRead() throws BadBoardFile {
        assertEquals(16, BoardFile.parse("shelf.csv", "# units: mm\n" + BOARD, Defaults.NOTHING).length());
        assertEquals(406.4, BoardFile.parse("shelf.csv", "# units: in\n" + BOARD, Defaults.NOTHING).length(), 1e-9);
    }
}
