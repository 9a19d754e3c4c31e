package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Defect;
import outwind.board.Face;
import outwind.board.Price;
import outwind.board.PriceUnit;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Turned;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;

class BoardFileTest {

    private static final String SHELF = """
        # board: shelf
        # units: mm
        # length: 1000
        # width: 200
        # thickness: 30
        x,y,z
        15,20,-0.4
        500,20,-1.10
        985,180,0.25
        """;

    private static Board parse(String text) throws BadBoardFile {
        return BoardFile.parse("shelf.csv", text, Defaults.NOTHING);
    }

    private static Reading onA(double x, double y, double z, int line) {
        return new Reading(x, y, z, Face.A, "", line);
    }

    @Test
    void aThicknessIsOneReadingUnlessItIsSaidToBeEverywhere() throws BadBoardFile {
        assertFalse(parse(SHELF).evenThickness());

        Board planed = parse(SHELF.replace("thickness: 30", "thickness: 30 Everywhere"));
        assertTrue(planed.evenThickness());
        assertEquals(30, planed.thickness().getAsDouble());
        assertTrue(planed.withTarget(20).withReadings(planed.readings()).evenThickness());
    }

    @Test
    void readsKeysAndReadings() throws BadBoardFile {
        Board board = parse(SHELF);

        assertEquals("shelf", board.name());
        assertEquals(Units.MILLIMETRES, board.units());
        assertEquals(1000, board.length());
        assertEquals(200, board.width());
        assertEquals(OptionalDouble.of(30), board.thickness());
        assertEquals(List.of(onA(15, 20, -0.4, 7), onA(500, 20, -1.1, 8), onA(985, 180, 0.25, 9)), board.readings());
        assertEquals(List.of(), board.remarks());
    }

    @Test
    void whatIsNotSaidHasItsDefault() throws BadBoardFile {
        Board board = parse(SHELF.replace("# board: shelf\n", "").replace("# units: mm\n", ""));

        assertEquals("shelf", board.name());
        assertEquals(Optional.empty(), board.species());
        assertEquals(OptionalDouble.empty(), board.repeatability());
        assertEquals(Optional.empty(), board.price());
        assertEquals(OptionalDouble.empty(), board.target());
        assertEquals(OptionalDouble.empty(), board.skim());
        assertEquals(Trim.NONE, board.trim());
        assertEquals(Underside.ALIKE, board.underside());
        assertEquals(Optional.empty(), board.turned());
        assertEquals(List.of(), board.defects());
        assertEquals(List.of("No units are stated: bare numbers are read in mm."), board.remarks());
    }

    @Test
    void readsEveryKeyInAnyCaseAnywhere() throws BadBoardFile {
        Board board = parse(SHELF + """
            #SPECIES :  red oak
            # grade: No. 1 common
            # a remark without a colon is skipped
              # Repeatability: 0.05
            # price: $9.50 per bf
            # target: 20
            # skim: 0.4
            # trim: 20 x 5
            # underside: flat
            # turned: End over end
            # defect: 420, 40, 300, 90
            # defect: 10 10; 20,20
            # length: 1000.0
            """);

        assertEquals(Optional.of("red oak"), board.species());
        assertEquals(Optional.of("No. 1 common"), board.grade());
        assertEquals(board.kind(), board.withTarget(20).withSkim(0).onFlatUnderside().named("b").kind());
        assertEquals(OptionalDouble.of(0.05), board.repeatability());
        assertEquals(Optional.of(new Price(new BigDecimal("9.50"), "$", PriceUnit.BOARD_FOOT)), board.price());
        assertEquals(OptionalDouble.of(20), board.target());
        assertEquals(OptionalDouble.of(0.4), board.skim());
        assertEquals(new Trim(20, 5), board.trim());
        assertEquals(Underside.FLAT, board.underside());
        assertEquals(Optional.of(Turned.END_OVER_END), board.turned());
        assertEquals(List.of(new Defect(300, 40, 420, 90), new Defect(10, 10, 20, 20)), board.defects());
    }

    @Test
    void columnsComeInAnyOrderWithTheirUnits() throws BadBoardFile {
        Board board = parse("""
            # length: 1000
            # width: 200
            # turned: along
            Note,Z (mm),thickness mm,Y[mm],face,X
            "knot, ""loose\""",-0.4,31,20,a,15
            ,-1.1,30.5,20,,500
            ,0.2,,180,B,985
            ,-31,,-60,bed,-50
            ,,30,180,,500
            end,0.3,,180,A,15
            ,0.1,,20,B,985
            ,0,,20,B,15
            not touched,,,180,,500
            """);

        assertEquals(List.of(
            new Reading(15, 20, -0.4, Face.A, "knot, \"loose\"", 5),
            onA(500, 20, -1.1, 6),
            new Reading(985, 180, 0.2, Face.B, "", 7),
            new Reading(-50, -60, -31, Face.BED, "", 8),
            new Reading(15, 180, 0.3, Face.A, "end", 10),
            new Reading(985, 20, 0.1, Face.B, "", 11),
            new Reading(15, 20, 0, Face.B, "", 12)), board.readings());
        assertEquals(List.of(new CaliperReading(15, 20, 31, 5), new CaliperReading(500, 20, 30.5, 6),
            new CaliperReading(500, 180, 30, 9)), board.calipers());
        assertEquals(OptionalDouble.empty(), board.thickness());
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t", " ; ", ", "})
    void anyDelimiterReadsTheSame(String delimiter) throws BadBoardFile {
        assertEquals(parse(SHELF), parse(SHELF.replace(",", delimiter)));
    }

    @ParameterizedTest
    @ValueSource(strings = {";", "\t"})
    void decimalCommaReadsAsAPointBetweenSemicolonsAndTabs(String delimiter) throws BadBoardFile {
        String text = SHELF.replace("thickness: 30", "thickness: 30.5") + "# defect: 10.5 20 30 40\n";

        assertEquals(parse(text), parse(text.replace(",", delimiter).replace('.', ',')));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r", "\n\n", "\n,,,\n"})
    void anyLineEndAndBlankLinesReadTheSame(String end) throws BadBoardFile {
        List<Reading> expected = parse(SHELF).readings();

        List<Reading> readings = parse(SHELF.replace("\n", end)).readings();

        assertEquals(expected.stream().map(Reading::z).toList(), readings.stream().map(Reading::z).toList());
        int linesEach = end.length() > 1 && !end.equals("\r\n") ? 2 : 1;
        assertEquals(6 * linesEach + 1, readings.get(0).line());
    }

    @Test
    void byteOrderMarkIsNoPartOfTheText(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("shelf.csv");
        Files.writeString(file, "\ufeff" + SHELF, StandardCharsets.UTF_8);

        assertEquals(parse(SHELF), BoardFile.read(file, Defaults.NOTHING));
    }

    @Test
    void readsAFileOfAnyLetters(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("größe.csv");
        Files.writeString(file, SHELF.replace("# board: shelf\n", "# species: Bergahorn 楓\n"));

        Board board = BoardFile.read(file, Defaults.NOTHING);

        assertEquals("größe", board.name());
        assertEquals(Optional.of("Bergahorn 楓"), board.species());
    }

    @Test
    void unitsMayStandAfterTheSizes() throws BadBoardFile {
        Board board = parse("""
            # length: 46 1/2
            # width: 8 3/8"
            # thickness: 31.75 mm
            # defect: 12 1/2 3 18 5 1/2
            # trim: 3/4 x 1/4
            x,y,z
            1/2,1/2,-5/64
            46 1/2,8,0.125
            20,4,-1mm
            # units: in
            """);

        assertEquals(Units.INCHES, board.units());
        assertEquals(46.5 * 25.4, board.length());
        assertEquals(8.375 * 25.4, board.width());
        assertEquals(OptionalDouble.of(31.75), board.thickness());
        assertEquals(List.of(new Defect(12.5 * 25.4, 3 * 25.4, 18 * 25.4, 5.5 * 25.4)), board.defects());
        assertEquals(new Trim(0.75 * 25.4, 0.25 * 25.4), board.trim());
        assertEquals(List.of(onA(12.7, 12.7, -5 * 25.4 / 64, 7), onA(46.5 * 25.4, 8 * 25.4, 3.175, 8),
            onA(20 * 25.4, 4 * 25.4, -1, 9)), board.readings());
    }

    @Test
    void readsReadingsInTheCellsOfATable() throws BadBoardFile {
        Board board = parse("""
            # length: 1000
            # width: 200
            # thickness: 30
            y\\x,15,500,985
            20,-0.4,,0.1
            180,0.3,-1.1
            """);

        assertEquals(List.of(onA(15, 20, -0.4, 5), onA(985, 20, 0.1, 5), onA(15, 180, 0.3, 6),
            onA(500, 180, -1.1, 6)), board.readings());
    }

    @Test
    void cellTableTakesADecimalCommaBetweenSemicolons() throws BadBoardFile {
        Board board = parse("""
            # length: 1000,5
            # width: 200
            # thickness: 30
            Y / X;15,5;500;985
            20;-0,4;;0,1
            180;0,3;-1,1;
            """);

        assertEquals(1000.5, board.length());
        assertEquals(onA(15.5, 20, -0.4, 5), board.readings().get(0));
        assertEquals(4, board.readings().size());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "1500 | 200 | 30 | LOOK AGAIN at the length: nothing was touched off beyond x 985 mm of 1500 mm.",
        "1300 | 200 | 30 | ''",
        "1000 | 185 | 190 | LOOK AGAIN at the sizes: the board is thicker than wide, 190 mm by 185 mm."})
    void sizesThatLookLikeASlipAreRemarkedOn(String length, String width, String thickness, String remark)
            throws BadBoardFile {
        Board board = parse("# units: mm\n# length: " + length + "\n# width: " + width + "\n# thickness: " + thickness
            + "\nx,y,z\n15,20,-0.4\n500,20,-1.10\n985,180,0.25\n");

        assertEquals(remark.isEmpty() ? 0 : 1, board.remarks().size(), board.remarks().toString());
        assertTrue(String.join("", board.remarks()).startsWith(remark), board.remarks().toString());
    }

    @Test
    void anEndThatWasNotTouchedIsNamedByWhereTheReadingsBegin() throws BadBoardFile {
        Board board = parse("# units: mm\n# length: 1000\n# width: 200\n# thickness: 30\nx,y,z\n310,20,-0.4\n"
            + "500,20,-1.10\n985,180,0.25\n");

        assertEquals(1, board.remarks().size(), board.remarks().toString());
        assertTrue(board.remarks().get(0).startsWith("LOOK AGAIN at the length: nothing was touched off before x 310 mm"
            + " of 1000 mm."), board.remarks().toString());
    }

    @Test
    void keyLinesMayCarryWhatASpreadsheetAdds() throws BadBoardFile {
        Board board = parse("""
            "# board: shelf, left half",,
            # units: mm,,
            # length:,1000,
            # width: 200,,
            "# a remark, with a comma",,
            # thickness: 30,,
            x,y,z
            15,20,-0.4
            500,20,-1.10
            985,180,0.25
            ,,
            """);

        assertEquals("shelf, left half", board.name());
        assertEquals(1000, board.length());
        assertEquals(3, board.readings().size());
    }

    @Test
    void whatIsGivenStandsInForWhatTheFileDoesNotSay() throws BadBoardFile {
        Defaults given = new Defaults(Optional.of(Units.INCHES), Optional.of("900mm"), Optional.of("150mm"),
            Optional.of("25mm"));

        Board silent = BoardFile.parse("bare.csv", "x,y,z\n1,1,0\n20,2,0\n35,1,0\n", given);
        Board saying = BoardFile.parse("shelf.csv", SHELF, given);

        assertEquals(Units.INCHES, silent.units());
        assertEquals(900, silent.length());
        assertEquals(150, silent.width());
        assertEquals(OptionalDouble.of(25), silent.thickness());
        assertEquals(25.4, silent.readings().get(0).x());
        assertEquals(List.of(), silent.remarks());
        assertEquals(parse(SHELF), saying);
    }

    @Test
    void barePointsTakeTheBoardsSizeFromTheirReach() throws BadBoardFile {
        Board board = BoardFile.parse("scans/Shelf.XYZ", """
            # thickness: 30
            # units: mm
             0 0 -0.4
            1000\t200   1e-1

            500.5 100 −1.1
            """, Defaults.NOTHING);

        assertEquals("Shelf", board.name());
        assertEquals(1000, board.length());
        assertEquals(200, board.width());
        assertEquals(List.of(onA(0, 0, -0.4, 3), onA(1000, 200, 0.1, 4), onA(500.5, 100, -1.1, 6)),
            board.readings());
        assertEquals(List.of("No length is stated: 1000 mm is taken, which is as far as the readings reach.",
            "No width is stated: 200 mm is taken, which is as far as the readings reach."), board.remarks());
    }

    @Test
    void barePointsLieOnABoardOfStatedSize() throws BadBoardFile {
        Defaults given = new Defaults(Optional.of(Units.MILLIMETRES), Optional.empty(), Optional.of("210"),
            Optional.of("30"));

        Board board = BoardFile.parse("shelf.xyz", "# length: 1010\n0 0 0\n1000 200 0\n500 100 1\n", given);

        assertEquals(1010, board.length());
        assertEquals(210, board.width());
        assertEquals(List.of(), board.remarks());
    }

    @ParameterizedTest
    @ValueSource(strings = {"shelf.csv", "rack/shelf.csv", "C:\\rack\\shelf.csv", "shelf"})
    void nameComesFromTheFileWhereNoneIsStated(String fileName) throws BadBoardFile {
        String text = SHELF.replace("# board: shelf\n", "");

        assertEquals("shelf", BoardFile.parse(fileName, text, Defaults.NOTHING).name());
    }
}
