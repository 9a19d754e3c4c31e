package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.Fault;
import outwind.board.Reading;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Line;

/**
 * Files that are wrong in one way get one message: the cause, the line it stands in, and how to mend it. What people
 * write that can mean only one thing is read.
 */
class WrongFilesTest {

    private static final String KEYS = "# units: mm\n# length: 1180\n# width: 212\n# thickness: 31.5\n";

    private static final String ROWS = "x,y,z\n20,15,0.5\n590,15,-0.7\n1160,197,0.4\n";

    private static String text(String written) {
        return written.replace("KEYS|", KEYS).replace("ROWS|", ROWS).replace('|', '\n') + "\n";
    }

    private static Board board(String written) throws BadBoardFile {
        return BoardFile.parse("board.csv", text(written), Defaults.NOTHING);
    }

    private static Fault only(BadBoardFile bad) {
        assertEquals(1, bad.faults().size(), bad.getMessage());
        assertTrue(!bad.getMessage().contains("not listed"), bad.getMessage());
        return bad.faults().get(0);
    }

    private static void requireCause(Fault fault, int line, String cause) {
        assertEquals(line, fault.line(), fault.message());
        assertTrue(fault.message().contains(cause), fault.message());
        assertTrue(fault.mend().matches("\\p{Lu}.*\\."), fault.message());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(quoteCharacter = '\'', delimiter = ';', value = {
        "a key misspelt; '# lenght: 1180|# width: 212|ROWS|'; 1; Did you mean length",
        "the key of the unit misspelt; '# unit: in|# length: 46 1/2|# width: 8|# thickness: 1 1/4|x,y,z|1,1,1/64|45,1,0|45,7,1/32'; 1; Did you mean units",
        "a key without its colon; '# length 1180|# width: 212|# thickness: 20|ROWS|'; 1; a colon after \"length\"",
        "a key without # and colon; 'length 1180|# width: 212|# thickness: 20|ROWS|'; 1; a colon after \"length\"",
        "a key without # misspelt; 'lenght: 1180|# width: 212|# thickness: 20|ROWS|'; 1; Did you mean length",
        "one size twice; 'KEYS|# length: 1200|ROWS|'; 5; keep the one that is right",
        "a size in words; '# length: long|# width: 212|# thickness: 20|ROWS|'; 1; \"long\"",
        "a unit that is none; '# units: cm|# length: 118|# width: 21|ROWS|'; 1; Write mm or in",
        "a defect of two numbers; 'KEYS|# defect: 1 1|ROWS|'; 5; defect",
        "a bill; 'name,length,width,thickness,quantity|leg,700,60,45,4'; 1; a board file but found a cutting bill",
        "a bill with units in its cells; 'name,length,width,thickness,quantity|leg,700mm,60mm,45mm,4'; 1; --bill",
        "a bill in inches; '# units: in|part,l,w,t,qty|leg,27,2,1 1/2,4'; 2; a cutting bill",
        "a shop file; '# bed: 900 x 600|# clamps: 20|cutter,diameter,deepest pass,feed|bit,25,1,2000'; 3; a shop file",
        "fractions without a unit; '# length: 46 1/2|# width: 8 1/4|# thickness: 1 1/4|x,y,z|1,1/2,1/64|20,1/2,0|45,7 3/4,1/32'; 1; '\"# units: in\"'",
        "fractions in the rows alone; '# length: 46|# width: 8|# thickness: 5|x,y,z|1,1/2,1/64|20,1/2,0|45,7 3/4,1-1/32'; 5; '\"# units: in\"'",
        "bare sizes that can only be inches; '# length: 16|# width: 8|# thickness: 1.06|x,y,z|1,1,0|15,1,0|8,7,0'; 1; the units of a board of 16 x 8 x 1.06",
        "x and y exchanged; 'KEYS|x,y,z|15,20,0.5|15,590,-0.7|197,1160,0.4'; 7; x along the length and y across",
        "x and y exchanged in cells; 'KEYS|y\\x,15,197|20,0.5,0.4|590,0.1,-0.7|1160,0.4,0.2'; 7; Exchange the names of the columns",
        "length and width exchanged; '# length: 212|# width: 1180|# thickness: 31.5|ROWS|'; 1; write length 1180 and width 212",
        "heights downwards over a bed; 'KEYS|x,y,z,face|20,15,-30.1,|590,15,-30.7,|1160,197,-31,|0,0,0,bed'; 9; heights measured upwards",
        "a column height; 'KEYS|x,y,height|20,15,0|590,15,0|1160,197,0'; 5; \"height\"",
        "decimal commas in a grid; 'KEYS|y\\x,20,590,1160|15,0,50,0,10,0,20|197,-0,05,0,00,0,25'; 6; one height below each of 3 places",
        "a form with no heights in it; 'KEYS|x,y,z|20,15,|590,15,|1160,197,'; 1; Fill in the heights first",
        "depths beside heights; 'KEYS|x,y,z,depth|20,15,0,0|590,15,0,0|1160,197,0,0'; 5; one column z or depth",
        "a column twice; 'KEYS|x,y,x|20,15,0|590,15,0|1160,197,0'; 5; one column x",
        "decimal commas; 'KEYS|x,y,z|1,1,0,5|9,1,0,7|9,9,0,1'; 6; decimal commas need semicolons",
        "no header; 'KEYS|1,1,0|9,1,0|9,9,0'; 5; a header row",
        "a letter for a digit; 'KEYS|x,y,z|1,1,-0.7l|9,1,0|9,9,0|20,20,0'; 6; -0.7l",
        "one reading off the board; 'KEYS|x,y,z|1,1,0|2000,1,0|9,9,0|20,20,0'; 7; off the board",
        "two readings; 'KEYS|x,y,z|1,1,0|9,1,0'; 1; at least 3",
        "a face that is none; 'KEYS|x,y,z,face|1,1,0,C|9,1,0,A|9,9,0,A|20,20,0,A'; 6; '\"C\"'",
        "nothing at all; ''; 1; Add a header row"})
    void aBoardFileThatIsWrongInOneWayGetsOneMessage(String kind, String written, int line, String cause) {
        requireCause(only(assertThrows(BadBoardFile.class, () -> board(written), kind)), line, cause);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(quoteCharacter = '\'', delimiter = ';', value = {
        "a board; 'KEYS|ROWS|'; 5; a cutting bill but found a board file",
        "a board in cells; '# units: mm|y\\x,15,197|20,0.5,0.4|590,0.1,-0.7'; 2; a board file",
        "a column misspelt; 'name,length,width,thickness,quantiy|leg,500,48,28,4'; 1; Did you mean quantity",
        "no header; 'leg,500,48,28,4|rail,400,48,28,2'; 1; a header row such as name,length",
        "decimal commas; 'name,length,width,thickness,quantity|leg,500,48,28,5,4|rail,500,48,28,5,4'; 2; decimal commas"})
    void aBillThatIsWrongInOneWayGetsOneMessage(String kind, String written, int line, String cause) {
        requireCause(only(assertThrows(BadBoardFile.class,
            () -> BillFile.parse("bill.csv", text(written), Units.MILLIMETRES), kind)), line, cause);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(quoteCharacter = '\'', delimiter = ';', value = {
        "a board; 'KEYS|ROWS|'; 5; a shop file but found a board file",
        "a bill; 'name,length,width,thickness,quantity|leg,700,60,45,4'; 1; a cutting bill",
        "a key misspelt; '# clamp: 25'; 1; Did you mean clamps",
        "a key without its colon; '# clamps 25'; 1; a colon after \"clamps\""})
    void aShopFileThatIsWrongInOneWayGetsOneMessage(String kind, String written, int line, String cause) {
        requireCause(only(assertThrows(BadBoardFile.class, () -> ShopFile.parse("shop.txt", text(written)), kind)),
            line, cause);
    }

    @Test
    void aFaultThatRunsThroughAllRowsIsCountedOnce() {
        String rows = "20,15,0,5\n".repeat(400);

        only(assertThrows(BadBoardFile.class, () -> board("KEYS|x,y,z|" + rows)));
    }

    // Two of three readings may be slips: then each is named.
    @Test
    void readingsOfWhichOneFitsOnlyAsItStandsAreNotCalledExchanged() {
        BadBoardFile bad = assertThrows(BadBoardFile.class,
            () -> board("KEYS|x,y,z|15,590,0|15,700,0|590,15,0"));

        assertEquals(2, bad.faults().size(), bad.getMessage());
    }

    @Test
    void aGridMayHoldDepths() throws BadBoardFile {
        Board board = board("KEYS|depth y\\x,20,1160|15,0.5,0|197,0,-0.4");

        assertEquals(List.of(-0.5, 0.0, 0.0, 0.4), board.readings().stream().map(reading -> reading.z() + 0.0).toList());
        assertTrue(board.remarks().stream().anyMatch(remark -> remark.startsWith("Depths count downwards")),
            board.remarks().toString());
    }

    @Test
    void depthsAreTurnedRoundAndTheReportSaysSo() throws BadBoardFile {
        Board board = board("KEYS|x,y,depth|20,15,0.5|590,15,0|1160,197,-0.4");

        assertEquals(List.of(-0.5, 0.0, 0.4), board.readings().stream().map(Reading::z).toList());
        assertTrue(board.remarks().stream().anyMatch(remark -> remark.startsWith("Depths count downwards")),
            board.remarks().toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"n/a", "N/A", "-", "–", "na", ""})
    void aWordForNoneIsNoReading(String none) throws BadBoardFile {
        Board named = board("KEYS|x,y,z,thickness|20,15,0.5," + none + "|590,15," + none + ",31.2|1160,197,0.4,|20,197,1,");
        Board cells = board("KEYS|y\\x,20,590,1160|15,0.5," + none + ",0.2|197,0.5,0.1," + none);

        assertEquals(3, named.readings().size());
        assertEquals(1, named.calipers().size());
        assertEquals(4, cells.readings().size());
    }

    @Test
    void wholeInchesMayBeTiedToTheirFraction() throws BadBoardFile {
        Board board = board("# units: in|# length: 46-1/2|# width: 8 1/4|# thickness: 1-1/16\"|x,y,z|1,1/2,1/64|20,1/2,0|45-1/4,7 3/4,-1/32");

        assertEquals(46.5 * 25.4, board.length(), 1e-9);
        assertEquals(17 / 16.0 * 25.4, board.thickness().orElseThrow(), 1e-9);
        assertEquals(45.25 * 25.4, board.readings().get(2).x(), 1e-9);
    }

    @Test
    void keysAboveTheTableNeedNoMark() throws BadBoardFile {
        Board board = board("units: mm|length: 1180,,|\"board: shelf #3, left\"|width: 212|thickness: 31.5|ROWS|");

        assertEquals(1180, board.length());
        assertEquals("shelf #3, left", board.name());
    }

    @Test
    void aBillMayHaveUnitsInItsCellsAndBehindItsColumns() throws BadBoardFile {
        assertEquals(700, BillFile.parse("bill.csv", "name,length,width mm,thickness (mm),quantity\nleg,700mm,60,45 mm,4\n",
            Units.MILLIMETRES).items().get(0).length());
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '\'', value = {"' split\r\nin\ttwo\u0000', 99, split in two", "abcdef, 3, abc",
        "'ab\uD83E\uDEB5', 3, ab", "'', 5, ''"})
    void whatIsTypedFitsOneLine(String typed, int longest, String fit) {
        assertEquals(fit, Line.fit(typed, longest));
    }
}
