package outwind.board.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;

/** Files that are wrong in one way get one message, which names it. */
class OneCauseTest {

    private static final String KEYS = "# units: mm\n# length: 1180\n# width: 212\n# thickness: 31.5\n";

    @ParameterizedTest
    @CsvSource(quoteCharacter = '\'', value = {
        "'# lenght: 1180|# width: 212|x,y,z|1,1,0|9,1,0|9,9,0', Did you mean length",
        "'name,length,width,thickness,quantity|leg,700mm,60mm,45mm,4', --bill",
        "'# units: in|name,length,width,thickness,quantity|leg,27,2,1 1/2,4', --bill",
        "'# length: 46 1/2|# width: 8 1/4|x,y,z|1,1/2,1/64|20,1/2,0|45,7 3/4,1/32', '# units: in'",
        "'', Add a header row",
        "'units: mm|length: 1180|width: 212|x,y,z|1,1,0|9,1,0|9,9,0', '# units: mm'",
        "'KEYS|x,y,height|1,1,0|9,1,0|9,9,0', height",
        "'KEYS|x,y,depth|1,1,0|9,1,0|9,9,0', depth",
        "'KEYS|x,y,x|1,1,0|9,1,0|9,9,0', one column x",
        "'KEYS|x,y,z|1,1,0,5|9,1,0,7|9,9,0,1', decimal commas need semicolons",
        "'KEYS|1,1,0|9,1,0|9,9,0', a header row",
        "'KEYS|x,y,z|1,1,-0.7l|9,1,0|9,9,0|20,20,0', -0.7l",
        "'KEYS|x,y,z|1,1,0|2000,1,0|9,9,0|20,20,0', off the board",
        "'KEYS|# length: 1200|x,y,z|1,1,0|9,1,0|9,9,0', keep the one that is right",
        "'KEYS|x,y,z|1,1,0|9,1,0', at least 3",
        "'# units: cm|# length: 118|# width: 21|x,y,z|1,1,0|9,1,0|9,9,0', Write mm or in",
        "'# length 1180|# width: 212|# length: 1180|# thickness: 20|x,y,z|1,1,0|9,1,0|9,9,0', a colon after",
        "'# length: long|# width: 212|# thickness: 20|x,y,z|1,1,0|9,1,0|9,9,0', long",
        "'KEYS|# defect: 1 1|x,y,z|1,1,0|9,1,0|9,9,0', defect",
        "'KEYS|x,y,z,face|1,1,0,C|9,1,0,A|9,9,0,A|20,20,0,A', '\"C\"'"})
    void oneCauseGivesOneMessage(String text, String cause) {
        String whole = text == null ? "" : text.replace("KEYS|", KEYS).replace('|', '\n') + "\n";

        BadBoardFile bad = assertThrows(BadBoardFile.class, () -> BoardFile.parse("board.csv", whole, Defaults.NOTHING));

        assertEquals(1, bad.faults().size(), bad.getMessage());
        assertTrue(bad.getMessage().replaceAll("\\s+", " ").contains(cause), bad.getMessage());
    }
}
