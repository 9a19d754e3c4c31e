package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import outwind.board.text.BadBoardFile;

class BoardFileFaultsTest {

    private static final String KEYS = """
        # length: 1000
        # width: 200
        # thickness: 30
        """;

    private static final String ROWS = """
        x,y,z
        15,20,-0.4
        500,20,-1.1
        985,180,0.2
        """;

    private static final String ALL_KEYS = "Keys are board, units, length, width, thickness, species, grade, "
        + "repeatability, price, target, skim, trim, underside, turned, defect; a remark after # must hold no colon.";

    private static String faultsIn(String fileName, String text) {
        return assertThrows(BadBoardFile.class, () -> BoardFile.parse(fileName, text, Defaults.NOTHING)).getMessage();
    }

    private static Arguments key(String name, String line, String message) {
        return Arguments.of(name, KEYS + line + "\n" + ROWS, message);
    }

    private static Arguments row(String name, String row, String message) {
        return Arguments.of(name, KEYS + ROWS + row + "\n", message);
    }

    private static Arguments table(String name, String table, String message) {
        return Arguments.of(name, KEYS + table, message);
    }

    static Stream<Arguments> badKeys() {
        return Stream.of(
            key("unknown key, near a known one", "# lenght: 1000", """
                t.csv:4:3: expected a key but found "lenght"
                  Did you mean length?\s""" + ALL_KEYS),
            key("unknown key, far from any", "# measured by: Ida", """
                t.csv:4:3: expected a key but found "measured by"
                 \s""" + ALL_KEYS),
            key("no number", "# target: thick", """
                t.csv:4:11: expected target in mm but found "thick"
                  Type a number such as 20."""),
            key("no value", "# target:", """
                t.csv:4:10: expected target in mm but found nothing
                  Type a number such as 20."""),
            key("no name", "# board:", """
                t.csv:4:9: expected a value for board but found nothing
                  Write it after the colon, or take the line out."""),
            key("decimal comma between commas", "# target: 20,5", """
                t.csv:4:11: expected target in mm but found "20,5"
                  Write 20.5 with a point; only a file with semicolons or tabs between its cells may use a decimal \
                comma."""),
            key("zero target", "# target: 0", """
                t.csv:4:11: expected target more than 0 and at most 1000 mm but found "0"
                  Check the number and its unit; a bare number is read in mm here."""),
            key("negative repeatability", "# repeatability: -0.05", """
                t.csv:4:18: expected repeatability from 0 to 1000 mm but found "-0.05"
                  Check the number and its unit; a bare number is read in mm here."""),
            key("two lengths", "# length: 1200", """
                t.csv:4:11: expected one length but found "1200"
                  Line 1 says "1000", line 4 says "1200": keep the one that is right."""),
            key("skim of half the thickness", "# skim: 15", """
                t.csv:4:9: expected skim less than half the thickness of 30 mm but found "15"
                  The skim comes off both faces and must leave wood between them."""),
            key("trim of one number", "# trim: 20", """
                t.csv:4:9: expected trim at each end x at each edge in mm but found "20"
                  Write two numbers such as 20 x 5, or none."""),
            key("trim that leaves nothing", "# trim: 20 x 100", """
                t.csv:4:9: expected trim that leaves wood of 1000 x 200 mm but found "20 x 100"
                  The trim comes off each end and each edge; lessen it."""),
            key("unknown underside", "# underside: rough", """
                t.csv:4:14: expected underside alike or flat but found "rough"
                  Write alike if it has the shape of the face, flat if it was planed."""),
            key("unknown turn", "# turned: twice", """
                t.csv:4:11: expected turned along or end over end but found "twice"
                  Write along if the ends stayed where they were, end over end if they changed places."""),
            key("price without unit", "# price: 9.50", """
                t.csv:4:10: expected price per bf, ft3, m3, ft2, m2 or board but found "9.50"
                  Write it like "9.50 per bf", "1400 EUR per m3" or "38 per board", with a decimal point."""),
            key("defect of three numbers", "# defect: 300 40 420", """
                t.csv:4:11: expected defect as two opposite corners x1 y1 x2 y2 in mm but found "300 40 420"
                  Write four numbers such as 300; 40; 420; 90 that span an area."""),
            key("defect without area", "# defect: 300 40 300 90", """
                t.csv:4:11: expected defect as two opposite corners x1 y1 x2 y2 in mm but found "300 40 300 90"
                  Write four numbers such as 300; 40; 420; 90 that span an area."""),
            key("defect off the board", "# defect: 300 40 420 201", """
                t.csv:4:11: expected y from 0 to 200 mm but found "300 40 420 201"
                  This lies off the board: correct the y, or the width if the board is larger."""),
            key("unknown units, said before all else", "# units: cm\n# target: 13/16", """
                t.csv:4:10: expected units mm or in but found "cm"
                  Write mm or in."""));
    }

    static Stream<Arguments> badRows() {
        return Stream.of(
            row("letter for a digit", "15,180,-1.1O", """
                t.csv:8:8: expected z in mm but found "-1.1O"
                  Type a number such as -1.10, or leave the cell empty if the point was not touched."""),
            row("column behind spaces", "15,180,   abc", """
                t.csv:8:11: expected z in mm but found "abc"
                  Type a number such as -1.10, or leave the cell empty if the point was not touched."""),
            row("not a number", "15,NaN,1", """
                t.csv:8:4: expected y in mm but found "NaN"
                  Type a number such as 106."""),
            row("infinite", "Infinity,20,1", """
                t.csv:8:1: expected x in mm but found "Infinity"
                  Type a number such as 302.5."""),
            row("beyond a double", "15,20,1e999", """
                t.csv:8:7: expected z in mm but found "1e999"
                  Type a number such as -1.10, or leave the cell empty if the point was not touched."""),
            row("fraction of mm", "15,20,-5/64", """
                t.csv:8:7: expected z in mm but found "-5/64"
                  Fractions are read in inches only: write -5/64in, or state the units as inches."""),
            row("height of a house", "15,20,6000", """
                t.csv:8:7: expected z from -1000 to 1000 mm but found "6000"
                  Check the number and its unit; a bare number is read in mm here."""),
            row("x beyond the end", "1000.5,20,1", """
                t.csv:8:1: expected x from 0 to 1000 mm but found "1000.5"
                  This lies off the board: correct the x, or the length if the board is larger."""),
            row("y below the edge, point not touched", "15,-1,", """
                t.csv:8:4: expected y from 0 to 200 mm but found "-1"
                  This lies off the board: correct the y, or the width if the board is larger."""),
            row("no place", ",20,1", """
                t.csv:8:1: expected x in mm but found nothing
                  Type a number such as 302.5."""),
            row("row cut short", "15", """
                t.csv:8:3: expected y in mm but found nothing
                  Type a number such as 106."""),
            row("decimal comma taken for a delimiter", "15,20,-0,4", """
                t.csv:8:10: expected no cell beyond the columns named in line 4 but found "4"
                  Take it out or name its column; decimal commas need semicolons between the cells."""),
            row("quote never closed", "15,20,\"0.4", """
                t.csv:8:7: expected a closing quote but found the end of the line
                  Close the cell with a double quote; a double quote inside it is written twice."""),
            row("text behind a closing quote", "15,20,\"0\".4", """
                t.csv:8:10: expected a comma after the closing quote but found ".4"
                  A double quote inside a quoted cell is written twice."""),
            row("control character", "15,20,1\u0000", """
                t.csv:8:8: expected text but found the control character \\u0000
                  Save the file as plain text in UTF-8."""),
            row("endless line", "1".repeat(10_001), """
                t.csv:8:1: expected a line of at most 10000 characters but found 10001 characters
                  Save the readings as text with one row on each line."""));
    }

    static Stream<Arguments> badTables() {
        return Stream.of(
            table("no table", "", """
                t.csv:1:1: expected readings but found nothing
                  Add a header row such as "x,y,z" and below it one row for each point."""),
            table("no header", "15,20,-0.4\n", """
                t.csv:4:1: expected a header row such as x,y,z but found "15"
                  Above the first row of numbers put a row that names the columns: x, y, z, depth, thickness, face, note."""),
            table("unknown column", "x,y,z,height\n15,20,1,\n500,20,1,\n15,180,1,\n", """
                t.csv:4:7: expected a column x, y, z, depth, thickness, face or note but found "height"
                  Rename it or take it out; remarks go into a column named note."""),
            table("no y", "x,z\n15,1\n", """
                t.csv:4:4: expected a column y but found the end of the row
                  Every reading needs its place: x along the grain and y across."""),
            table("nothing measured", "x,y\n15,1\n", """
                t.csv:4:4: expected a column z or thickness but found the end of the row
                  Add a column z with the heights touched off, or thickness with the caliper readings."""),
            table("column twice", "x,y,z,Z\n15,20,1,\n500,20,1,\n15,180,1,\n", """
                t.csv:4:7: expected one column z but found "Z"
                  Rename it or take it out."""),
            table("column in another unit", "x,y,z (in)\n15,20,1\n500,20,1\n15,180,1\n", """
                t.csv:4:5: expected z in mm but found "z (in)"
                  Bare numbers of this file are read in mm: correct the column's name, or state the units in a line \
                "# units: in"."""),
            table("unknown face", "x,y,z,face\n15,20,1,C\n500,20,1,\n15,180,1,\n", """
                t.csv:5:9: expected face A, B or bed but found "C"
                  Write A, B or bed, or leave the cell empty for A."""),
            table("face B off the board", "x,y,z,face\n15,20,1,\n500,20,1,\n15,180,1,\n1001,20,1,B\n", """
                t.csv:8:1: expected x from 0 to 1000 mm but found "1001"
                  This lies off the board: correct the x, or the length if the board is larger."""),
            table("thickness in face B", "x,y,z,face,thickness\n15,20,1,,\n5,20,1,,\n15,180,1,,\n9,2,0,B,30\n", """
                t.csv:8:9: expected no thickness in a row of face B but found "30"
                  Write caliper readings in rows of face A, at the places as they lie on face A."""),
            table("thickness of the bed", "x,y,z,face,thickness\n15,20,1,,\n5,20,1,,\n15,180,1,,\n-9,2,0,bed,30\n", """
                t.csv:8:12: expected no thickness in a row of the bed but found "30"
                  Leave the cell empty, or correct the face."""),
            table("no thickness there", "x,y,z,thickness\n15,20,1,0\n500,20,1,x\n15,180,1,\n", """
                t.csv:5:9: expected thickness more than 0 and at most 1000 mm but found "0"
                  Check the number and its unit; a bare number is read in mm here.
                t.csv:6:10: expected thickness in mm but found "x"
                  Type a number such as 31.5, or leave the cell empty if it was not measured there."""),
            table("too few touch-offs", "x,y,z,face\n15,20,1,A\n500,20,1,\n15,180,1,B\n", """
                t.csv:1:1: expected at least 3 touch-offs on face A but found 2
                  Touch off more points: fewer than three fix no plane, so there is nothing to judge."""),
            table("cell table: no x above a reading", "y\\x,15,,985\n20,1,2,3\n180,1,,3,\n", """
                t.csv:5:6: expected an x position in line 4 above this cell but found "2"
                  Write the x position into the first row, or take this cell out."""),
            // Once read as a second column of y positions, which dropped the readings below it without a word.
            table("cell table: corner twice", "y\\x,y\\x,985\n20,1,2\n180,1,3\n", """
                t.csv:4:5: expected x in mm but found "y\\x"
                  Type a number such as 302.5."""),
            // Once read beyond the end of the first row.
            table("cell table: reading beyond the last x", "y\\x,15,985\n20,1,2,3\n180,1,3\n", """
                t.csv:5:8: expected an x position in line 4 above this cell but found "3"
                  Write the x position into the first row, or take this cell out."""),
            table("cell table: places off the board", "y\\x,15,1001\n20,1,2\n-1,1,2\n", """
                t.csv:4:8: expected x from 0 to 1000 mm but found "1001"
                  This lies off the board: correct the x, or the length if the board is larger.
                t.csv:6:1: expected y from 0 to 200 mm but found "-1"
                  This lies off the board: correct the y, or the width if the board is larger."""));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource({"badKeys", "badRows", "badTables"})
    void faultNamesPlaceAndCure(String name, String text, String message) {
        assertEquals(message, faultsIn("t.csv", text));
    }

    @Test
    void missingSizesAreAskedForWithTheReadingsReach() {
        assertEquals("""
            t.csv:1:1: expected the board's thickness but found nothing
              Add a line such as "# thickness: 31.5", or a column named thickness with at least one caliper reading.
            t.csv:1:1: expected the board's length but found nothing
              Add a line such as "# length: 1180"; the readings reach from x = 15 to 985 mm.
            t.csv:1:1: expected the board's width but found nothing
              Add a line such as "# width: 212"; the readings reach from y = 20 to 180 mm.""",
            faultsIn("t.csv", ROWS));
    }

    @Test
    void missingSizesAreAskedForInTheBoardsUnits() {
        assertEquals("""
            t.csv:1:1: expected the board's width but found nothing
              Add a line such as "# width: 8 3/8"; the readings reach from y = 0.5 to 4.25 in.""",
            faultsIn("t.csv", "# units: in\n# length: 40\n# thickness: 1\nx,y,z\n1,1/2,0\n20,4 1/4,0\n3,1,0\n"));
    }

    @Test
    void unreadableSizeIsNotCalledMissing() {
        assertEquals("""
            t.csv:1:11: expected length in mm but found "long"
              Type a number such as 1180.""",
            faultsIn("t.csv", KEYS.replace("1000", "long") + ROWS));
    }

    @Test
    void allFaultsComeAtOnceInTheOrderOfTheFile() {
        assertEquals("""
            t.csv:1:1: expected the board's width but found nothing
              Add a line such as "# width: 212"; the readings reach from y = 20 to 180 mm.
            t.csv:1:9: expected skim in mm but found "little"
              Type a number such as 0.3.
            t.csv:2:11: expected length in mm but found "1o00"
              Type a number such as 1180.
            t.csv:5:8: expected z in mm but found "?"
              Type a number such as -1.10, or leave the cell empty if the point was not touched.
            t.csv:7:1: expected x in mm but found "a"
              Type a number such as 302.5.
            t.csv:7:3: expected y in mm but found "b"
              Type a number such as 106.
            t.csv:7:5: expected z in mm but found "c"
              Type a number such as -1.10, or leave the cell empty if the point was not touched.""", faultsIn("t.csv", """
            # skim: little
            # length: 1o00
            # thickness: 30
            x,y,z
            500,20,?
            15,20,-0.4
            a,b,c
            985,180,0.2
            """));
    }

    @Test
    void fiftyFaultsAreListedAndTheRestCounted() {
        BadBoardFile bad = assertThrows(BadBoardFile.class,
            () -> BoardFile.parse("t.csv", "# width: 200\n" + ROWS + "15,20,?\n".repeat(60), Defaults.NOTHING));

        assertEquals(50, bad.faults().size());
        assertEquals("the board's thickness", bad.faults().get(0).expected());
        assertEquals(53, bad.faults().get(49).line());
        assertEquals("12 more faults in this file are not listed.",
            bad.getMessage().lines().reduce((first, second) -> second).orElseThrow());
        assertEquals(101, bad.getMessage().lines().count());
    }

    @Test
    void scanRowsHaveThreeNumbers() {
        assertEquals("""
            t.xyz:1:1: expected three numbers x y z but found "1 2 3 255"
              Write the place along the grain, the place across and the height, and nothing else.
            t.xyz:2:2: expected three numbers x y z but found "1,2,3"
              Write the place along the grain, the place across and the height, and nothing else.
            t.xyz:3:5: expected z in mm but found "z"
              Type a number such as -1.10, or leave the cell empty if the point was not touched.""",
            faultsIn("t.xyz", "1 2 3 255\n 1,2,3\n5 6 z\n" + KEYS));
    }

    @Test
    void scanThatBeginsBelowZeroDoesNotTellTheLength() {
        assertEquals("""
            t.xyz:1:1: expected the board's length but found nothing
              Add a line such as "# length: 1180"; the readings reach from x = -5 to 9 mm.""",
            faultsIn("t.xyz", "-5 2 0\n9 9 1\n8 9 1\n# thickness: 30\n"));
    }

    @Test
    void emptyScanHasNoReadings() {
        assertEquals("""
            t.xyz:1:1: expected readings but found nothing
              Write one point x y z on each line.""", faultsIn("t.xyz", KEYS));
    }

    @Test
    void readingsHaveABound() {
        BadBoardFile bad = assertThrows(BadBoardFile.class,
            () -> BoardFile.parse("t.xyz", KEYS + "1 1 0\n".repeat(50_001), Defaults.NOTHING));

        assertEquals("""
            t.xyz:50004:1: expected at most 50000 readings but found 50001 rows
              Thin them out, for instance to every tenth.""", bad.getMessage());
    }

    @Test
    void readingsInCellsHaveTheSameBound() {
        String row = "1" + ",0".repeat(2000) + "\n";
        String cells = "y\\x" + ",1".repeat(2000) + "\n" + row.repeat(26);

        assertEquals("""
            t.csv:30:1: expected at most 50000 readings but found 52000 cells
              Thin them out, for instance to every tenth.""",
            assertThrows(BadBoardFile.class, () -> BoardFile.parse("t.csv", KEYS + cells, Defaults.NOTHING))
                .getMessage());
    }

    @Test
    void hugeFileIsRefusedUnread(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("t.csv");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(3_200_001);
        }

        BadBoardFile bad = assertThrows(BadBoardFile.class, () -> BoardFile.read(file, Defaults.NOTHING));

        assertEquals(file + """
            :1:1: expected a file of at most 3200000 bytes but found 3200001 bytes
              Thin out the readings, for instance to every tenth.""", bad.getMessage());
    }

    // A device or a pipe states no size.
    @Test
    void aFileThatNeverEndsIsRefused() {
        Path endless = Path.of("/dev/zero");
        assumeTrue(Files.exists(endless));

        assertEquals("""
            /dev/zero:1:1: expected a file of at most 3200000 bytes but found more
              Thin out the readings, for instance to every tenth.""",
            assertThrows(BadBoardFile.class, () -> BoardFile.read(endless, Defaults.NOTHING)).getMessage());
    }

    @Test
    void plyIsNoBoardFile() {
        assertEquals("""
            scan.PLY:1:1: expected a board file or an .xyz file but found a .ply scan
              A scan can only be the board that is judged, not what is stated beside it: give a board file here.""",
            faultsIn("scan.PLY", "ply\n"));
    }

    @Test
    void bytesThatAreNotUtf8AreNamedWithTheirPlace(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("t.csv");
        Files.write(file, ("\ufeff" + KEYS + "# species: ").getBytes(StandardCharsets.UTF_8));
        Files.write(file, new byte[] {'p', (byte) 0xe9, 'c', '\n'}, StandardOpenOption.APPEND);

        BadBoardFile bad = assertThrows(BadBoardFile.class, () -> BoardFile.read(file, Defaults.NOTHING));

        assertEquals(file + """
            :4:13: expected text in UTF-8 but found the byte 0xE9
              Save the file as UTF-8; a spreadsheet calls it "CSV UTF-8".""", bad.getMessage());
    }

    @Test
    void missingFileIsNoBadBoardFile(@TempDir Path folder) {
        assertThrows(NoSuchFileException.class, () -> BoardFile.read(folder.resolve("t.csv"), Defaults.NOTHING));
    }

    @Test
    void givenSizesBoundTheReadingsToo() {
        Defaults given = new Defaults(Optional.empty(), Optional.of("900"), Optional.of("200"), Optional.of("30"));

        BadBoardFile bad = assertThrows(BadBoardFile.class, () -> BoardFile.parse("t.csv", ROWS, given));

        assertEquals("""
            t.csv:4:1: expected x from 0 to 900 mm but found "985"
              This lies off the board: correct the x, or the length if the board is larger.""", bad.getMessage());
    }

    @Test
    void impossibleSizeStatedBesideTheFileIsAFault() {
        Defaults given = new Defaults(Optional.empty(), Optional.of("900"), Optional.of("3001"), Optional.of("30"));

        BadBoardFile bad = assertThrows(BadBoardFile.class,
            () -> BoardFile.parse("t.csv", "x,y,z\n0,0,1\n900,0,1\n0,100,1\n", given));

        assertTrue(bad.getMessage().startsWith("t.csv:1:1: expected width more than 0 and at most 3000 mm but found"
            + " \"3001\""), bad.getMessage());
    }
}
