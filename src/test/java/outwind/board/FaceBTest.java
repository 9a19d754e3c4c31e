package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;

class FaceBTest {

    private static final String ON_A = "0,0,1,30,A\n900,0,1,30,A\n0,180,1,,A\n";
    private static final String ON_B = "0,0,1,,B\n900,0,1,,B\n0,180,1,,B\n";

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "not turned | '' | 0,180,1,30,A | '' | Readings on face B need to know how the board was turned over: add"
            + " \"# turned: along\" or \"# turned: end over end\".",
        "one more caliper | along | '' | '' | Face B is tied to face A by caliper readings, and there are 2; it takes"
            + " 1 more, not all in one line.",
        "calipers in line | along | 450,0,1,30,A | '' | The caliper readings that should tie face B to face A lie in"
            + " one line; it takes 1 more beside that line."})
    void whatIsMissingToTieTheFacesIsSaid(String name, String turned, String row, String none, String mend) {
        String text = "# length: 900\n# width: 180\n" + (turned.isEmpty() ? "" : "# turned: " + turned + "\n")
            + "x,y,z,thickness,face\n" + ON_A + row + "\n" + ON_B;

        BadBoardFile bad = assertThrows(BadBoardFile.class,
            () -> BoardFile.parse("b.csv", text, Defaults.NOTHING));

        assertEquals("b.csv:1:1: expected face B tied to face A but found too little for that\n  " + mend,
            bad.getMessage());
    }
}
