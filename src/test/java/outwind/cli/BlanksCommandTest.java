package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command {@code blanks} as a user runs it. */
class BlanksCommandTest {

    private static final String TREAD = "sample-probes/stair-tread-kink.csv";
    private static final String RAIL = "sample-probes/bed-rail-short.csv";
    private static final String BILL = "sample-probes/bills/bill-small-table.csv";

    @TempDir
    private Path folder;

    private record Run(int code, String out, String err) { }

    private Run blanks(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out), new PrintWriter(err), Stream.concat(
            Stream.of("blanks", "--out", folder.toString()), Stream.of(args)).toArray(String[]::new));
        return new Run(code, out.toString(), err.toString());
    }

    @Test
    void aBillGivesReportPlanAndJson() throws IOException {
        Run run = blanks(TREAD, "--bill", BILL, "--json");

        assertEquals("", run.err());
        assertEquals(0, run.code());
        assertTrue(ImageIO.read(folder.resolve("stair-tread-kink-blanks.png").toFile()).getWidth() > 1000);
        JsonNode json = new ObjectMapper().readTree(folder.resolve("stair-tread-kink-blanks.json").toFile());
        for (String pointer : List.of("/board/length", "/saw/kerf", "/items/0/cut", "/layout/order", "/layout/bound",
            "/layout/sections/0/0/chance", "/layout/sections/0/0/x2", "/layout/cuts/0/from", "/layout/offcuts/0/x1",
            "/otherLayout/value")) {
            assertFalse(json.at(pointer).isMissingNode(), pointer);
        }
    }

    // Worked by hand: face A level at 0 and the bed at −30, so the board is 30 mm thick and holds
    // blanks of 28 mm but none of 40.
    @Test
    void heightsToldFromATouchedBedAreReckonedFromItOnce() throws IOException {
        Path board = Files.writeString(folder.resolve("board.csv"), overBed(-30));
        Path bill = Files.writeString(folder.resolve("bill.csv"),
            "name,length,width,thickness,quantity\nthin,300,60,28,1\nthick,300,60,40,1\n");

        Run run = blanks(board.toString(), "--bill", bill.toString(), "--json");

        assertEquals(0, run.code(), run.err());
        JsonNode json = new ObjectMapper().readTree(folder.resolve("board-blanks.json").toFile());
        assertEquals(1, json.at("/items/0/cut").asInt(), json.toPrettyString());
        assertEquals(0, json.at("/items/1/cut").asInt(), json.toPrettyString());
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aBoardThatCannotBeIsNotCut(boolean toBill) throws IOException {
        Path board = Files.writeString(folder.resolve("board.csv"), overBed(5));

        Run run = toBill ? blanks(board.toString(), "--bill", BILL) : blanks(board.toString(), "--target", "20mm");

        assertEquals(1, run.code());
        assertTrue(run.err().startsWith(board + ":21:1: expected heights measured upwards but found a board below its bed"),
            run.err());
    }

    /** A level face A of 900 x 150 mm, and the bed it lies on with a flat underside. */
    private static String overBed(double bed) {
        StringBuilder text = new StringBuilder("# length: 900\n# width: 150\n# thickness: 31 everywhere\n# underside: flat\n"
            + "x,y,z,face\n");
        for (int i = 0; i <= 4; i++) {
            for (int j = 0; j <= 2; j++) {
                text.append(225 * i).append(',').append(75 * j).append(",0,A\n");
            }
        }
        return text + "-20,0," + bed + ",bed\n-20,150," + bed + ",bed\n920,75," + bed + ",bed\n";
    }

    // A board with a stated thickness and caliper readings was called "x 38.0 mm" here, "by caliper" in judge.
    @ParameterizedTest
    @ValueSource(strings = {"mantel-wedge", "box-side-both-faces", "hall-table", "blanket-chest-inches"})
    void theSizeIsToldAsInJudge(String board) throws IOException {
        blanks("sample-probes/" + board + ".csv", "--bill", BILL, "--no-chart");

        assertEquals(Files.readAllLines(Path.of("reports/" + board + ".txt")).subList(0, 2),
            Files.readAllLines(folder.resolve(board + "-blanks.txt")).subList(0, 2));
    }

    // Worked by hand: the board is white oak, so the row of ash stays out; the cut list opens in a spreadsheet.
    @Test
    void aBlankOfAnotherWoodIsNotCut() throws IOException {
        Path bill = Files.writeString(folder.resolve("bill.csv"),
            "name,length,width,thickness,quantity,species,grade\n=leg,300,60,20,1,White Oak,\nrail,300,60,20,2,ash,select\n");
        Path board = Files.writeString(folder.resolve("board.csv"), "# species: white oak\n# grade: select\n" + overBed(-30));

        Run run = blanks(board.toString(), "--bill", bill.toString(), "--json", "--no-chart");

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("The board is not of their wood: 2 x rail in ash, select."), run.out());
        assertTrue(run.out().contains("white oak, select, 900 x 150"), run.out());
        List<String> list = Files.readAllLines(folder.resolve("board-blanks.csv"));
        assertEquals(2, list.size());
        assertTrue(list.get(1).startsWith("board," + board + ",white oak,select,1,1,'=leg,mm,300.00,60.00,300.00,60.00,20.00,"),
            list.get(1));
        JsonNode json = new ObjectMapper().readTree(folder.resolve("board-blanks.json").toFile());
        assertEquals("otherWood", json.at("/items/1/missing").asText());
        assertEquals("ash", json.at("/items/1/species").asText());
        assertEquals("select", json.at("/board/grade").asText());
        assertTrue(json.at("/items/0/grade").isNull());
    }

    // Worked by hand: 3 mm off the edge and 60 + 4 mm wide put the first rip 67 mm from the uncut edge, the fence at 64.
    // The shop's over-width counts, its over-length gives way to the command line; a block of 80 + 20 mm is too short.
    @Test
    void limitsOfTheShopFileAndTheCommandLineCount() throws IOException {
        Path bill = Files.writeString(folder.resolve("bill.csv"),
            "name,length,width,thickness,quantity\nleg,300,60,20,1\nblock,80,60,20,1\n");
        Path board = Files.writeString(folder.resolve("board.csv"), overBed(-30));
        Files.writeString(folder.resolve("outwind-shop.txt"),
            "# shortest: 120\n# first edge: 3\n# over length: 10\n# over width: 4\n");

        Run run = blanks(board.toString(), "--bill", bill.toString(), "--json", "--no-chart", "--over-length", "20mm");

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("Too short to rip or too wide for the machine: 1 x block."), run.out());
        assertTrue(run.out().contains("First straighten the near edge, 3.0 mm off. All cuts start from there."), run.out());
        assertTrue(run.out().replaceAll("\\s+", " ").contains("Blanks are cut over size: 20.0 mm longer and 4.0 mm wider"
            + " than finished."), run.out());
        assertTrue(run.out().lines().anyMatch(line -> line.matches(" +\\d\\. rip .* 64\\.0 .* y 67\\.0")), run.out());
        assertTrue(Files.readAllLines(folder.resolve("board-blanks.csv")).get(1).contains(
            ",leg,mm,300.00,60.00,320.00,64.00,20.00,"));
        JsonNode json = new ObjectMapper().readTree(folder.resolve("board-blanks.json").toFile());
        assertEquals("outOfLimits", json.at("/items/1/missing").asText());
        assertEquals(120, json.at("/saw/shortest").asDouble());
        assertTrue(json.at("/saw/widest").isNull());
        assertEquals(3, json.at("/saw/firstEdge").asDouble());
        assertEquals(20, json.at("/saw/overLength").asDouble());
        assertEquals(4, json.at("/saw/overWidth").asDouble());
        for (JsonNode cut : json.at("/layout/cuts")) {
            boolean rip = cut.get("kind").asText().equals("rip");
            assertEquals(rip ? 64 : 320, cut.get("setting").asDouble(), 1e-9, cut.toString());
            assertEquals(1, cut.get("before").asInt(), cut.toString());
        }
    }

    // Worked by hand: strips of 70 mm; the short rail leaves 900 − 360 − 3.2 = 536.8 x 70 mm. In a strip ten pegs
    // of 50 mm follow each other (10 · 50 + 9 · 3.2 = 528.8); cut again, 2 · 10.
    @Test
    void offcutsAreCutAgainWhereThatIsAsked() throws IOException {
        Path bill = Files.writeString(folder.resolve("bill.csv"),
            "name,length,width,thickness,quantity\nlong,895,70,20,1\nshort,360,70,20,1\npeg,50,30,20,20\n");
        Path board = Files.writeString(folder.resolve("board.csv"), overBed(-30));

        Run two = blanks(board.toString(), "--bill", bill.toString(), "--no-chart");
        Run again = blanks(board.toString(), "--bill", bill.toString(), "--json", "--recut");

        assertTrue(two.out().contains("No room beside what is cut, in two stages of cuts: 10 x peg."), two.out());
        assertTrue(again.out().contains("All 22 blanks come out."), again.out());
        assertTrue(again.out().replaceAll("\\s+", " ").contains("Offcut 1 is 53"), again.out());
        assertTrue(again.out().lines().anyMatch(line -> line.matches(" +\\d+\\. (rip|crosscut) +offcut 1 .*")), again.out());
        JsonNode json = new ObjectMapper().readTree(folder.resolve("board-blanks.json").toFile());
        assertEquals(20, json.at("/items/2/cut").asInt());
        assertTrue(json.at("/layout/recut/0/cuts/0/section").isInt(), json.toPrettyString());
        assertEquals(23, Files.readAllLines(folder.resolve("board-blanks.csv")).size());
    }

    @Test
    void otherColumnsOfABillAreNamedAndLabelsAreDrawn() throws IOException {
        Path bill = Files.writeString(folder.resolve("bill.csv"), "Part,Qty,L,W,T,Colour\nleg,1,300,60,20,red\n");
        Path board = Files.writeString(folder.resolve("board.csv"), overBed(-30));

        Run run = blanks(board.toString(), "--bill", bill.toString(), "--no-chart", "--labels", "--over-width", "4");

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("Not used of the bill: column Colour."), run.out());
        assertTrue(run.out().contains("Blanks are cut over size: 4.0 mm wider than finished."), run.out());
        assertEquals(1600, ImageIO.read(folder.resolve("board-blanks-labels.png").toFile()).getWidth());
    }

    // The scan is of a board that the sizes of the blanks are made up for: two go side by side.
    @Test
    void aScannedBoardIsCutLikeAnyOther() throws IOException {
        Path bill = Files.writeString(folder.resolve("bill.csv"),
            "name,length,width,thickness,quantity\nhalf,600,120,33,2\n");

        Run run = blanks("sample-probes/bread-board-scan.ply", "--bill", bill.toString(), "--json");

        assertEquals("", run.err());
        assertEquals(0, run.code());
        JsonNode json = new ObjectMapper().readTree(folder.resolve("bread-board-scan-blanks.json").toFile());
        assertEquals(2, json.at("/items/0/cut").asInt(), json.toPrettyString());
    }

    @Test
    void withoutABillLengthsAreCutForTheTarget() throws IOException {
        Run run = blanks(RAIL, "--json");

        assertEquals(0, run.code(), run.err());
        JsonNode json = new ObjectMapper().readTree(folder.resolve("bed-rail-short-blanks.json").toFile());
        assertTrue(json.at("/longest/x2").asDouble() > json.at("/longest/x1").asDouble() + 1000);
    }

    @ParameterizedTest
    @CsvSource({"mm, hall-table", "in, hall-table", "in, blanket-chest-inches", "mm, stool-seat-four-corners"})
    void reportsAreEightyColumnsWide(String units, String board) {
        Run run = blanks("sample-probes/" + board + ".csv", "--bill", BILL, "--units", units, "--no-chart");

        assertEquals(0, run.code(), run.err());
        for (String line : run.out().lines().toList()) {
            assertTrue(line.startsWith("Written:") || line.length() <= 80, line);
        }
    }

    @Test
    void faultsOfABillAreTold() throws IOException {
        Path bill = Files.writeString(folder.resolve("bill.csv"),
            "name,length,width,thickness,quantity\nleg,five hundred,48,28,4\n");

        Run run = blanks(TREAD, "--bill", bill.toString());

        assertEquals(1, run.code());
        assertEquals(bill + ":2:5: expected length in mm but found \"five hundred\"\n"
            + "  Type a number such as 1180.\n", run.err());
    }

    @Test
    void aMissingBillIsSaidInWords() {
        Run run = blanks(TREAD, "--bill", "no-such-bill.csv");

        assertEquals(1, run.code());
        assertEquals("there is no file of this name: no-such-bill.csv\n", run.err());
    }

    @Test
    void withNeitherBillNorTargetThereIsNothingToAnswer() throws IOException {
        Path board = Files.writeString(folder.resolve("plank.csv"),
            "# length: 600\n# width: 100\n# thickness: 30 everywhere\nx,y,z\n0,0,0\n600,0,0\n600,100,1\n0,100,0\n");

        Run run = blanks(board.toString());

        assertEquals(1, run.code());
        assertEquals(board + ": there is neither a cutting bill nor a target: give --bill, or --target and a"
            + " thickness\n",
            run.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--kerf=-1", "--min-chance=often", "--min-chance=20%", "--raster=0.1", "--end-trim=600", "--first-edge=300", "--shortest=wide",
        "--widest=-1", "--target=20",
        "--no-such-option"})
    void aBadCommandLineExitsWithTwo(String option) {
        Run run = blanks("--no-chart", TREAD, "--bill", BILL, option);

        assertEquals(2, run.code(), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void anInputFileIsNeverOverwritten() throws IOException {
        Path bill = Files.copy(Path.of(BILL), folder.resolve("stair-tread-kink-blanks.txt"));

        Run run = blanks("--no-chart", TREAD, "--bill", bill.toString());

        assertEquals(1, run.code());
        assertTrue(run.err().contains("it is left as it is"), run.err());
    }
}
