package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
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

/** The program as a user runs it: arguments in; text, files and exit code out. */
class CommandLineTest {

    private static final String SAMPLE = "sample-probes/hall-table.csv";

    @TempDir
    private Path folder;

    private record Run(int code, String out, String err) { }

    private Run run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out), new PrintWriter(err), args);
        return new Run(code, out.toString(), err.toString());
    }

    private Run judge(String... args) {
        String[] all = Stream.concat(Stream.of("judge", "--out", folder.toString()), Stream.of(args))
            .toArray(String[]::new);
        return run(all);
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void detailsArePrintedWhereTheyAreAskedFor() throws IOException {
        String details = "Readings and fits";

        assertFalse(judge("--no-chart", SAMPLE).out().contains(details));
        Run run = judge("--no-chart", "--details", SAMPLE);
        assertTrue(run.out().contains(Files.readString(folder.resolve("hall-table-details.txt"))), run.out());
        assertTrue(run.out().contains(details), run.out());
    }

    @Test
    void severalBoardsGetThreeLinesEach() {
        Run run = judge("--no-chart", SAMPLE, "sample-probes/door-panel-misread.csv");

        List<String> lines = run.out().lines().toList();
        assertEquals(6, lines.size(), run.out());
        assertTrue(lines.get(0).startsWith("hall table top, left half: YES: it finishes at 26.0 mm."), run.out());
        assertTrue(lines.get(1).startsWith("  As measured: 28.4 mm (28.2 to 28.6 mm, 90 %)."), run.out());
        assertTrue(lines.get(2).startsWith("  Written: ") && lines.get(2).endsWith("hall-table-details.txt"), run.out());
        assertTrue(lines.get(4).endsWith("LOOK AGAIN at line 14."), run.out());
    }

    @Test
    void judgeWritesReportChartAndJson() throws IOException {
        Run run = judge("--json", SAMPLE);

        assertEquals(0, run.code());
        assertTrue(run.out().contains(Files.readString(folder.resolve("hall-table.txt"))));
        assertTrue(ImageIO.read(folder.resolve("hall-table.png").toFile()).getWidth() > 1000);
        JsonNode json = new ObjectMapper().readTree(folder.resolve("hall-table.json").toFile());
        assertEquals("hall table top, left half", json.at("/board/name").asText());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of("hall-table-details.png", "hall-table-details.txt", "hall-table.json", "hall-table.png",
                "hall-table.txt"),
                files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void jsonHoldsWhatTheContractNames() throws IOException {
        judge("--json", "--no-chart", SAMPLE);

        JsonNode json = new ObjectMapper().readTree(folder.resolve("hall-table.json").toFile());

        for (String pointer : List.of("/board/length", "/board/width", "/board/thickness", "/board/readings",
            "/fits/2/model", "/fits/2/terms/5", "/fits/2/coefficients/5", "/fits/2/standardErrors/5", "/fits/2/residualStandardDeviation",
            "/fits/2/rSquared", "/fits/2/degreesOfFreedom", "/warp/twist", "/warp/twistStandardError", "/warp/bow",
            "/warp/bowStandardError", "/warp/cup", "/warp/cupStandardError", "/readings/highest/x", "/readings/lowest/z",
            "/readings/spread", "/readings/minimumZone/width", "/readings/minimumZone/slopeX",
            "/readings/minimumZone/slopeY", "/planes/4/name", "/planes/4/slopeX", "/planes/4/slopeY",
            "/planes/4/deepestCut", "/planes/4/removed", "/planes/4/thickness", "/chosenPlane", "/thickness/atReadings",
            "/thickness/asMeasured", "/thickness/levelled", "/thickness/target", "/verdict", "/setup/choice",
            "/setup/rocks", "/setup/contacts/0/load", "/setup/shims/0/height", "/setup/other/shims/0/height",
            "/cuts/0/face", "/cuts/0/depth", "/cuts/0/passes/0", "/cuts/0/removed", "/cuts/1/keepBelow",
            // Beyond the contract: what the report tells besides.
            "/thickness/asMeasuredLow", "/thickness/asMeasuredHigh", "/setup/shims/0/plusMinus", "/setup/paperChecks",
            "/faceBChecks/5/height", "/board/remarks", "/board/readingsOnFaceB")) {
            assertFalse(json.at(pointer).isMissingNode(), pointer);
        }
    }

    @Test
    void targetOnTheCommandLineGoesBeforeTheFilesOwn() {
        assertTrue(judge("--no-chart", "--target", "30mm", SAMPLE).out().contains("NO: it does not finish at 30.0 mm"));
        assertTrue(judge("--no-chart", "--target", "13/16in", SAMPLE).out().contains("YES: it finishes at 20.64 mm"));
        assertTrue(judge("--no-chart", "--target", "20", SAMPLE).out().contains("YES: it finishes at 20.0 mm"));
    }

    @Test
    void unitsOfTheReportCanBeChosen() {
        Run run = judge("--no-chart", "--units", "in", SAMPLE);

        assertTrue(run.out().contains("46 1/2 x 8 3/8 x 1 15/64 in"), run.out());
    }

    // The same board in mm and in inches to many digits: order and units do not matter.
    @Test
    void moistureIsReckonedWithAndSaid() throws IOException {
        judge("--moisture", "18%:9%", "--no-chart", "--json", SAMPLE);

        assertTrue(Files.readString(folder.resolve("hall-table.txt")).contains("For later, at 9 %"));
        assertTrue(new ObjectMapper().readTree(folder.resolve("hall-table.json").toFile())
            .at("/board/width").asDouble() < 212);
        Run wrong = judge("--moisture", "wet", SAMPLE);
        assertEquals(2, wrong.code());
        assertTrue(wrong.err().contains("as 18:9"), wrong.err());
    }

    @Test
    void unitsOfTheFileDoNotChangeTheAnswer() throws IOException {
        StringBuilder inches = new StringBuilder("# units: in\n");
        for (String line : Files.readAllLines(Path.of(SAMPLE))) {
            if (line.startsWith("# units") || line.startsWith("# board") || line.startsWith("# species")) {
                continue;
            }
            if (line.startsWith("#")) {
                String[] parts = line.split(": ");
                String figure = parts[1].replace(" everywhere", "");
                inches.append(parts[0]).append(": ").append(Double.parseDouble(figure) / 25.4)
                    .append(parts[1].substring(figure.length())).append('\n');
            } else if (line.startsWith("x")) {
                inches.append(line).append('\n');
            } else {
                inches.append(String.join(",", Stream.of(line.split(","))
                    .map(cell -> String.valueOf(Double.parseDouble(cell) / 25.4)).toList())).append('\n');
            }
        }
        Path file = write("in-inches.csv", inches.toString());

        judge("--json", "--no-chart", SAMPLE, file.toString());

        ObjectMapper mapper = new ObjectMapper();
        JsonNode mm = mapper.readTree(folder.resolve("hall-table.json").toFile());
        JsonNode in = mapper.readTree(folder.resolve("in-inches.json").toFile());
        for (String pointer : List.of("/thickness/levelled", "/thickness/asMeasured", "/warp/twist", "/cuts/0/depth",
            "/readings/minimumZone/width")) {
            assertEquals(mm.at(pointer).asDouble(), in.at(pointer).asDouble(), 1e-9, pointer);
        }
    }

    @Test
    void badInputIsToldByLineAndColumnWithoutAStackTrace() throws IOException {
        Path file = write("typed.csv", "# length: 600\n# width: 200\n# thickness: 30 everywhere\nx,y,z\n0,0,-1.1O\n600,0,0\n"
            + "600,200,1\n0,200,zero\n");

        Run run = judge(file.toString());

        assertEquals(1, run.code());
        assertEquals(file + ":5:5: expected z in mm but found \"-1.1O\"\n"
            + "  Type a number such as -1.10, or leave the cell empty if the point was not touched.\n"
            + file + ":8:7: expected z in mm but found \"zero\"\n"
            + "  Type a number such as -1.10, or leave the cell empty if the point was not touched.\n", run.err());
    }

    @Test
    void oneBadFileDoesNotStopTheOthers() throws IOException {
        Path bad = write("bad.csv", "nothing in it\n");

        Run run = judge("--no-chart", bad.toString(), SAMPLE);

        assertEquals(1, run.code());
        assertTrue(Files.exists(folder.resolve("hall-table.txt")));
    }

    @Test
    void aMissingFileIsSaidInWords() {
        Run run = judge("no-such-board.csv");

        assertEquals(1, run.code());
        assertEquals("there is no file of this name: no-such-board.csv\n", run.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--target=twenty", "--units=cubit", "--step-down=0", "--target=-3", "--skim=-1",
        "--no-such-option"})
    void aBadCommandLineExitsWithTwo(String option) {
        Run run = judge("--no-chart", option, SAMPLE);

        assertEquals(2, run.code(), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
        assertFalse(run.err().contains("\tat "), run.err());
    }

    @Test
    void anInputFileIsNeverOverwritten() throws IOException {
        byte[] before = Files.readAllBytes(Path.of(SAMPLE));
        Path input = Files.write(folder.resolve("hall-table.txt"), before);

        Run run = judge("--no-chart", input.toString());

        assertEquals(1, run.code());
        assertTrue(run.err().contains("it is left as it is. Choose another folder with --out"), run.err());
        assertArrayEquals(before, Files.readAllBytes(input));
    }

    @Test
    void twoFilesOfOneNameAreBothWritten() throws IOException {
        Path other = Files.createDirectory(folder.resolve("other")).resolve("hall-table.csv");
        Files.copy(Path.of(SAMPLE), other);

        Run run = judge("--no-chart", SAMPLE, other.toString());

        assertEquals(0, run.code());
        assertTrue(Files.exists(folder.resolve("hall-table.txt")));
        assertTrue(Files.exists(folder.resolve("hall-table-2.txt")));
    }

    @Test
    void aFolderThatCannotBeMadeIsSaidInWords() throws IOException {
        Path file = write("a-file", "");

        Run run = run("judge", "--out", file.toString(), SAMPLE);

        assertEquals(1, run.code());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void withoutArgumentsItShowsHowToUseIt() {
        Run run = run();

        assertEquals(0, run.code());
        assertTrue(run.out().startsWith("Usage: outwind"), run.out());
    }

    private Run stack(String... args) {
        return run(Stream.concat(Stream.of("stack", "--out", folder.toString()), Stream.of(args))
            .toArray(String[]::new));
    }

    @Test
    void aBillAgainstAStackIsBoughtAndCut() throws IOException {
        Run run = stack("--shop-rate", "48", "--bill", "sample-probes/bills/bill-benches.csv", "--json",
            "sample-probes/stack");

        assertEquals("", run.err());
        assertEquals(0, run.code());
        assertEquals(1600, ImageIO.read(folder.resolve("stack-cuts.png").toFile()).getWidth());
        run.out().lines().forEach(line -> assertTrue(line.startsWith("Written:") || line.length() <= 80, line));
        Files.readAllLines(folder.resolve("stack-cuts.txt")).forEach(line -> assertTrue(line.length() <= 80, line));
        JsonNode bill = new ObjectMapper().readTree(folder.resolve("stack.json").toFile()).at("/bill");
        for (String pointer : List.of("/met", "/cost", "/least", "/gap", "/items/0/cut", "/boards/0/name",
            "/boards/0/layout/sections/0/0/chance", "/boards/0/layout/cuts/0/from")) {
            assertFalse(bill.at(pointer).isMissingNode(), pointer);
        }
        // Money adds up: the boards' costs in the report are the bill's.
        double sum = 0;
        for (JsonNode board : bill.at("/boards")) {
            sum += board.at("/cost").asDouble();
        }
        assertEquals(bill.at("/cost").asDouble(), sum, 1e-9);
    }

    @Test
    void aScanInAStackIsPricedAndWhatLiesBesideItIsNoBoard() throws IOException {
        Path stack = Files.createDirectory(folder.resolve("in"));
        Files.copy(Path.of(SAMPLE), stack.resolve("a.csv"));
        Files.copy(Path.of("sample-probes/bread-board-scan.ply"), stack.resolve("b.ply"));
        Files.writeString(stack.resolve("b.ply.txt"), "# price: 38 per board\n");

        Run run = stack("--no-chart", "--json", stack.toString());

        assertEquals("", run.err());
        assertEquals(0, run.code());
        JsonNode boards = new ObjectMapper().readTree(folder.resolve("stack.json").toFile()).at("/boards");
        assertEquals(2, boards.size());
        JsonNode scanned = boards.get(0).at("/file").asText().endsWith("b.ply") ? boards.get(0) : boards.get(1);
        assertEquals(38, scanned.at("/cost").asDouble(), boards.toPrettyString());
        assertTrue(scanned.at("/median").asDouble() > 33, boards.toPrettyString());
    }

    // Who buys a board pays for it as it is, however it dries.
    @Test
    void aBoardIsPaidForAsItIsBought() throws IOException {
        Path stack = Files.createDirectory(folder.resolve("in"));
        Files.writeString(stack.resolve("a.csv"), "# length: 1000\n# width: 200\n# thickness: 30\n"
            + "# price: 900 per m3\n# units: mm\n# species: white oak\nx,y,z\n15,20,0\n985,20,0\n985,180,0\n15,180,0\n");

        assertEquals(0, stack("--no-chart", "--json", "--moisture", "18:8", stack.toString()).code());

        JsonNode board = new ObjectMapper().readTree(folder.resolve("stack.json").toFile()).at("/boards/0");
        assertEquals(900 * 1 * 0.2 * 0.03, board.at("/wood").asDouble(), 0.005);
        assertEquals(1000.0 * 200 * 30, board.at("/boardFeet").asDouble() * 144 * Math.pow(25.4, 3), 1);
        assertTrue(board.at("/finishedArea").asDouble() < 1000 * 198, board.toPrettyString());
    }

    @Test
    void aBoardNamedTwiceCountsOnce() throws IOException {
        Run run = stack("--no-chart", "--json", SAMPLE, Path.of(SAMPLE).toAbsolutePath().toString());

        assertEquals(0, run.code(), run.err());
        assertEquals(1, new ObjectMapper().readTree(folder.resolve("stack.json").toFile()).at("/boards").size());
    }

    @Test
    void aBareTargetIsRefusedWhereBoardsDifferInTheirUnits() {
        Run run = stack("--no-chart", "--target", "26", SAMPLE, "sample-probes/blanket-chest-inches.csv");

        assertEquals(1, run.code());
        assertEquals("some boards are in mm and some in inches: give --target a unit, as 20mm\n", run.err());
        assertEquals(0, stack("--no-chart", "--target", "20mm", SAMPLE, "sample-probes/blanket-chest-inches.csv")
            .code());
    }

    @Test
    void aFolderWithoutBoardsIsNamed() throws IOException {
        Path empty = Files.createDirectory(folder.resolve("empty"));

        Run run = stack(empty.toString());

        assertEquals(1, run.code());
        assertEquals("no board file (.csv .tsv .txt .xyz .ply) in this folder: " + empty + "\n", run.err());
    }

    @Test
    void aSkimThatOneBoardCannotBearLeavesThatBoardOut() throws IOException {
        Path thin = write("thin.csv", "# length: 900\n# width: 150\n# thickness: 9\nx,y,z\n0,0,0\n900,0,0\n0,150,0\n");

        Run run = stack("--no-chart", "--skim", "5mm", SAMPLE, thin.toString());

        assertEquals(1, run.code());
        assertTrue(run.err().startsWith(thin + ": skim must be less than half the thickness of 9 mm"), run.err());
        assertTrue(Files.exists(folder.resolve("stack.txt")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--ignore=10", "--face-b=sample-probes/shelf-bow.csv"})
    void whatIsSaidOfOneBoardGoesWithOneBoard(String option) {
        Run run = run("judge", "--out", folder.toString(), option, SAMPLE, "sample-probes/shelf-bow.csv");

        assertEquals(2, run.code());
        assertTrue(run.err().contains("goes with one board file, not with 2"), run.err());
    }

    @Test
    void aBillThatTheStackDoesNotYieldIsSaidToBeShort() throws IOException {
        Path bill = write("bill.csv", "name,length,width,thickness,quantity\ntop,1100,190,25,2\nbeam,3000,60,20,1\n");

        Run run = stack("--no-chart", "--bill", bill.toString(), SAMPLE);

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().replace('\n', ' ').startsWith("The stack does not yield the whole bill: 1 of the 3 blanks"
            + " wanted comes out of the one board, for "), run.out());
        assertTrue(run.out().contains("Larger than every board: 1 x beam."), run.out());
        assertTrue(run.out().contains("No room in the whole stack, in two stages of cuts: 1 x top."), run.out());
    }

    @Test
    void aSampleSaysWhatItsPackHoldsAndWhatToBid() throws IOException {
        Run run = stack("--no-chart", "--json", "--pack", "60", "--sells", "400 EUR per m2", "--profit", "20%", "--shop-rate",
            "48", "sample-probes/stack");

        assertEquals("", run.err());
        assertEquals(0, run.code());
        assertTrue(run.out().startsWith("Of the 60 boards of the pack about "), run.out());
        String said = run.out().replace('\n', ' ');
        for (String part : List.of("14 boards were measured.", "A board of this pack is about 28.", "more boards, taken as they"
            + " come, to know the number within a tenth of the pack. Readings leave in doubt: oak 7. Read it at more places.",
            "Its finished boards should bring about ", " EUR per m³) is left 20 % of that on average.",
            "At the prices of the boards the pack costs about 2376.86 EUR.")) {
            assertTrue(said.contains(part), part + " in " + said);
        }
        run.out().lines().forEach(line -> assertTrue(line.startsWith("Written:") || line.length() <= 80, line));
        JsonNode pack = new ObjectMapper().readTree(folder.resolve("stack.json").toFile()).at("/pack");
        assertEquals(60, pack.at("/size").asInt());
        assertEquals(14, pack.at("/measured").asInt());
        assertTrue(pack.at("/low").asInt() < pack.at("/expected").asDouble());
        assertTrue(pack.at("/worth/sureBid").asDouble() < pack.at("/worth/bid").asDouble());
        // Worked by hand: 60/14 of what the fourteen cost.
        assertEquals(554.60 * 60 / 14, pack.at("/worth/asked").asDouble(), 0.005);
    }

    // Worked by hand at 40, 36 and 20 EUR per m²: 4 EUR lost on a board that makes 25 mm, 36 gained on one that does not.
    @Test
    void severalTargetsSayWhatEachBoardIsBestUsedFor() throws IOException {
        Run run = stack("--no-chart", "--json", "--target", "25mm,22mm,19mm", "--sells", "40 EUR per m2", "--sells",
            "36 EUR per m2", "--sells", "20 EUR per m2", "sample-probes/stack");

        assertEquals(0, run.code(), run.err());
        run.out().lines().forEach(line -> assertTrue(line.startsWith("Written:") || line.length() <= 80, line));
        assertTrue(run.out().startsWith("Of one thickness for all boards 22.0 mm brings most: "), run.out());
        assertTrue(run.out().lines().anyMatch(line -> line.matches("10 +oak 7 +24 % +over 99 % +over 99 % +22\\.0")), run.out());
        assertTrue(run.out().lines().anyMatch(line -> line.matches(" 1 +oak 3 +(over 99 % +){3}25\\.0")), run.out());
        assertFalse(Files.exists(folder.resolve("stack-uses.png")));
        JsonNode json = new ObjectMapper().readTree(folder.resolve("stack.json").toFile());
        JsonNode uses = json.at("/uses");
        double all = 0;
        double best = 0;
        for (int i = 0; i < 14; i++) {
            JsonNode board = json.at("/boards/" + i);
            double chance = uses.at("/boards/" + i + "/chances/0").asDouble();
            double area = board.get("finishedArea").asDouble() / 1e6;
            assertEquals(board.get("chance").asDouble(), chance, 1e-12);
            all += 36 * area * uses.at("/boards/" + i + "/chances/1").asDouble();
            best += area * Math.max(40 * chance, 36 * uses.at("/boards/" + i + "/chances/1").asDouble());
            String row = Files.readAllLines(folder.resolve("stack.csv")).get(i + 1);
            assertTrue(row.endsWith("EUR," + (int) uses.at("/boards/" + i + "/best").asDouble()), row);
        }
        assertEquals(all, uses.at("/targets/1/takings").asDouble(), 1e-9);
        assertEquals(best, uses.at("/bestTakings").asDouble(), 1e-9);
    }

    // Worked by hand: the costs of a folder's own boards over the finished area that they are likely to give.
    @Test
    void foldersAreSetSideBySide() throws IOException {
        Path yard = Files.createDirectories(folder.resolve("yard"));
        for (String name : List.of("north", "south")) {
            Files.createDirectories(yard.resolve(name));
        }
        for (int i = 1; i <= 6; i++) {
            String file = "oak-0" + i + ".csv";
            Files.copy(Path.of("sample-probes/stack", file), yard.resolve(i % 2 == 0 ? "north" : "south").resolve(file));
        }

        Run each = stack("--no-chart", "--json", yard.resolve("north").toString());
        JsonNode north = new ObjectMapper().readTree(folder.resolve("stack.json").toFile());
        Run run = stack("--compare", "--json", yard.resolve("north").toString(), yard.resolve("south").toString());

        assertEquals(0, each.code() + run.code(), run.err());
        double area = 0;
        for (JsonNode board : north.get("boards")) {
            area += board.get("finishedArea").asDouble() * board.get("chance").asDouble();
        }
        JsonNode json = new ObjectMapper().readTree(folder.resolve("compare.json").toFile());
        JsonNode stack = json.at("/stacks/0/name").asText().equals("north") ? json.at("/stacks/0") : json.at("/stacks/1");
        assertEquals("north", stack.get("name").asText());
        assertEquals(3, stack.get("boards").asInt());
        assertEquals(area, stack.get("finishedArea").asDouble(), 1e-3);
        assertEquals(north.get("cost").asDouble() / area, stack.get("costPerArea").asDouble(), 1e-12);
        String cost = String.format(java.util.Locale.ROOT, "%.2f", north.get("cost").asDouble() / area * 1e6);
        assertTrue(run.out().lines().anyMatch(line -> line.startsWith("north") && line.contains(cost)), cost + run.out());
        assertTrue(json.at("/stacks/0/costPerArea").asDouble() <= json.at("/stacks/1/costPerArea").asDouble());
        assertTrue(Files.size(folder.resolve("compare.png")) > 1000);
        run.out().lines().forEach(line -> assertTrue(line.startsWith("Written:") || line.length() <= 80, line));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--want=2m2", "--pack=60", "--target=26mm,19mm", "--shop-rate=48"})
    void whatIsForOneStackIsNotCompared(String option) {
        Run run = stack("--compare", "--no-chart", option, "sample-probes/stack");

        assertEquals(2, run.code(), run.err());
        assertTrue(run.err().startsWith("--compare takes two or more folders"), run.err());
    }

    // The files state 25 mm, and so the verdicts stay; 1 1/16 in is thicker than any board finishes but one.
    @Test
    void standardSurfacedThicknessesAreCompared() {
        Run run = stack("--no-chart", "--surfaced", "hardwood", "--units", "in", "sample-probes/stack");

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().replaceAll("\\s+", " ").contains("Thicknesses are those of the hardwood rules of the NHLA."),
            run.out());
        assertTrue(run.out().lines().anyMatch(line -> line.matches(" 1 +oak 3 .* 1 1/16")), run.out());
        run.out().lines().forEach(line -> assertTrue(line.startsWith("Written:") || line.length() <= 80, line));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--surfaced=birch", "--target=26mm,25mm,22mm,19mm,16mm", "--target=20mm,twenty"})
    void targetsThatCannotBeExitWithTwo(String option) {
        Run run = stack("--no-chart", option, "sample-probes/stack/oak-01.csv");

        assertEquals(2, run.code(), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void oneBoardIsJudgedForOneTarget() {
        Run run = run("judge", "--no-chart", "--out", folder.toString(), "--target", "26mm,19mm", "sample-probes/hall-table.csv");

        assertEquals(2, run.code());
        assertTrue(run.err().startsWith("give one --target, with a decimal point as in 28.5; stack takes several"), run.err());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"--sells|9 per m2|--sells and --profit go with --pack, and --sells with several targets",
        "--pack|1|a pack of 1 cannot be: 2 boards were measured"})
    void aPackThatCannotBeIsRefused(String option, String value, String message) {
        Run run = stack("--no-chart", option, value, "sample-probes/stack/oak-01.csv", "sample-probes/stack/oak-02.csv");

        assertEquals(2, run.code());
        assertTrue(run.err().startsWith(message), run.err());
    }

    // Worked by hand: 18 EUR for two blanks of one size are 9 EUR each.
    @Test
    void aMixedBillIsCutFromItsOwnWoods() throws IOException {
        String rows = "# length: 700\n# width: 90\n# thickness: 30 everywhere\nx,y,z\n0,0,0\n700,0,0\n0,90,0\n700,90,0\n350,45,0\n";
        Path ash = write("ash.csv", "# species: ash\n# price: 10 EUR per board\n" + rows);
        Path oak = write("oak.csv", "# species: oak\n# grade: prime\n# price: 8 EUR per board\n" + rows);
        Path bill = write("bill.csv", "name,length,width,thickness,quantity,species\nleg,600,80,20,1,OAK\nrail,600,80,20,1,ash\n");

        Run run = stack("--no-chart", "--json", "--bill", bill.toString(), ash.toString(), oak.toString());

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("1. ash (ash), 10.00 EUR: 1 x rail;"), run.out());
        assertTrue(run.out().contains("2. oak (oak, prime), 8.00 EUR: 1 x leg;"), run.out());
        List<String> list = Files.readAllLines(folder.resolve("stack-cuts.csv"));
        assertEquals(3, list.size());
        assertTrue(list.get(2).startsWith("oak," + oak + ",oak,prime,1,1,leg,mm,600.00,80.00,600.00,80.00,20.00,"), list.get(2));
        assertTrue(list.get(2).endsWith(",no,9.00,EUR"), list.get(2));
        // 0.6 m by 0.08 m of each board are used.
        List<String> buy = Files.readAllLines(folder.resolve("stack-cuts-buy.csv"));
        assertEquals(4, buy.size());
        assertTrue(buy.stream().anyMatch(line -> line.matches("\\d,oak,.*,oak,prime,mm,700.00,90.00,30.00,m2,0.0480,.*,8.00,,8.00,EUR")),
            buy.toString());
        assertTrue(buy.get(3).startsWith("total,,,,,,,,,m2,0.0960,") && buy.get(3).endsWith(",18.00,,18.00,EUR"), buy.get(3));
        JsonNode cut = new ObjectMapper().readTree(folder.resolve("stack.json").toFile()).at("/bill");
        assertEquals("prime", cut.at("/boards/1/grade").asText());
        assertEquals("OAK", cut.at("/items/0/species").asText());
    }

    @Test
    void severalThicknessesHaveAChart() throws IOException {
        Run run = stack("--target", "26mm,19mm", SAMPLE);

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("Written: " + folder.resolve("stack-uses.png")), run.out());
        assertEquals(1600, ImageIO.read(folder.resolve("stack-uses.png").toFile()).getWidth());
    }

    // The line of a board says what the stack's table says of it, and the last line what the report does.
    @Test
    void whatToBuyForAnAreaIsWrittenForSpreadsheets() throws IOException {
        Run run = stack("--no-chart", "--json", "--shop-rate", "48", "--want", "2m2", "sample-probes/stack");

        assertEquals(0, run.code(), run.err());
        List<String> buy = Files.readAllLines(folder.resolve("stack-buy.csv"));
        List<String> all = Files.readAllLines(folder.resolve("stack.csv"));
        JsonNode wanted = new ObjectMapper().readTree(folder.resolve("stack.json").toFile()).at("/wanted");
        assertEquals(2e6, wanted.get("area").asDouble());
        assertEquals(wanted.get("boards").size() + 2, buy.size());
        for (int i = 0; i < wanted.get("boards").size(); i++) {
            String[] cells = buy.get(i + 1).split(",", -1);
            String[] known = all.get(Integer.parseInt(cells[0])).split(",", -1);
            assertEquals(wanted.get("boards").get(i).asText(), cells[2]);
            assertEquals(known[1], cells[2]);
            assertEquals(Double.parseDouble(known[16]) / 1e6, Double.parseDouble(cells[10]), 5e-5, "finished area");
            assertEquals(Double.parseDouble(known[14]) / 1e9, Double.parseDouble(cells[12]), 5e-6, "rough volume");
            assertEquals(Double.parseDouble(known[5]), Double.parseDouble(cells[14]), 5.5e-4, "chance");
            assertEquals(List.of(known[20], known[21], known[19], "EUR"), List.of(cells[15], cells[16], cells[17], cells[18]));
        }
        String[] total = buy.get(buy.size() - 1).split(",", -1);
        assertTrue(run.out().replaceAll("\\s+", " ").contains(" of the list, for " + total[17] + " EUR."), run.out());
        assertEquals(wanted.get("cost").asDouble(), Double.parseDouble(total[17]));
        assertEquals(wanted.get("chance").asDouble(), Double.parseDouble(total[14]), 5.5e-4);
    }

    @Test
    void whereTheStackIsNotEnoughNothingIsToBeBought() throws IOException {
        Run run = stack("--no-chart", "--json", "--want", "200m2", "sample-probes/stack");

        assertEquals(0, run.code(), run.err());
        assertFalse(Files.exists(folder.resolve("stack-buy.csv")));
        assertEquals("{\"area\":2.0E8,\"chance\":null,\"gap\":null,\"cost\":null,\"boards\":[]}", new ObjectMapper()
            .readTree(folder.resolve("stack.json").toFile()).at("/wanted").toString());
    }

    @Test
    void faultsOfABillForAStackAreTold() throws IOException {
        Path bill = write("bill.csv", "name,length,width,thickness,quantity\nleg,five hundred,48,28,4\n");

        Run run = stack("--no-chart", "--bill", bill.toString(), SAMPLE);

        assertEquals(1, run.code());
        assertEquals(bill + ":2:5: expected length in mm but found \"five hundred\"\n"
            + "  Type a number such as 1180.\n", run.err());
    }

    @Test
    void oneBadBoardIsReportedAndLeftOutOfTheStack() throws IOException {
        Path bad = write("bad.csv", "nothing in it\n");

        Run run = stack("--no-chart", "--json", bad.toString(), SAMPLE);

        assertEquals(1, run.code());
        assertTrue(run.err().contains("bad.csv:1:"), run.err());
        assertTrue(run.err().contains("1 board was left out of the stack"), run.err());
        JsonNode json = new ObjectMapper().readTree(folder.resolve("stack.json").toFile());
        assertEquals("hall table top, left half", json.at("/boards/0/name").asText());
    }

    @Test
    void differentMoneyDoesNotAddUp() throws IOException {
        String board = Files.readString(Path.of(SAMPLE));
        Path euro = write("euro.csv", "# price: 9 EUR per bf\n" + board);
        Path dollar = write("dollar.csv", "# price: $9 per bf\n" + board);

        Run run = stack("--no-chart", euro.toString(), dollar.toString());

        assertEquals(1, run.code());
        assertEquals("boards are priced in different money, which does not add up: $, EUR\n", run.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--price=cheap", "--want=3", "--want=0m2", "--shop-rate=-1", "--shop-rate=much",
        "--min-chance=20%", "--kerf=-1", "--end-trim=600"})
    void aBadStackOptionExitsWithTwo(String option) {
        Run run = stack("--no-chart", "--bill", "sample-probes/bills/bill-small-table.csv", option, SAMPLE);

        assertEquals(2, run.code(), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void aFileGivenByAnOptionIsNeverOverwritten() throws IOException {
        byte[] before = Files.readAllBytes(Path.of("sample-probes/box-side-both-faces.csv"));
        Path board = Files.write(folder.resolve("b.csv"), before);
        Path other = Files.write(folder.resolve("b.txt"), before);

        judge("--no-chart", "--face-b", other.toString(), board.toString());

        assertArrayEquals(before, Files.readAllBytes(other));
    }

    @Test
    void aReadingInATableOfCellsIsLeftOutByItsPlace() {
        Run run = judge("--no-chart", "--ignore", "125x85", "sample-probes/bread-board-cells.csv");

        assertEquals("", run.err());
        assertTrue(run.out().contains("23 readings on face A"), run.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "400", "12x13", "here", "1x2x3"})
    void leavingOutWhatIsNotThereExitsWithTwo(String what) {
        Run run = judge("--no-chart", "--ignore", what, SAMPLE);

        assertEquals(2, run.code(), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void leavingOutATieOfTheFacesIsRefused() throws IOException {
        Path file = write("tied.csv", "# length: 900\n# width: 180\n# turned: along\nx,y,z,thickness,face\n0,0,1,30,A\n"
            + "900,0,1,30,A\n0,180,1,30,A\n900,180,1,,A\n0,0,1,,B\n900,0,1,,B\n0,180,1,,B\n");

        Run run = judge("--no-chart", "--ignore", "5", file.toString());

        assertEquals(2, run.code());
        assertTrue(run.err().contains("it takes 1 more, not all in one line"), run.err());
    }

    @Test
    void aLengthBesideAFileInInchesIsInInches() throws IOException {
        Path file = write("in.csv", "# units: in\n# width: 8\n# thickness: 1\nx,y,z\n0,0,0\n40,0,0\n40,8,0\n0,8,0\n");

        Run run = judge("--no-chart", "--length", "46", file.toString());

        assertEquals("", run.err());
        assertTrue(run.out().contains("46 x 8 x 1 in"), run.out());
    }

    @Test
    void aBoardThatCannotBeFlattenedGetsNoCuttingPlan() throws IOException {
        Path file = write("banana.csv", "# length: 1200\n# width: 200\n# thickness: 8\nx,y,z\n0,0,0\n1200,0,30\n"
            + "1200,200,0\n0,200,30\n");

        Run run = judge("--json", file.toString());

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("It cannot be flattened."), run.out());
        assertFalse(run.out().contains("Put the last pass"), run.out());
    }

    // The cutter comes down to 29.7 mm over the bed; clamps stay 3 mm clear of it.
    @Test
    void clampsTooNearTheCutterAreWarnedOf() {
        assertTrue(judge("--no-chart", "--clamp", "27mm", SAMPLE).out()
            .contains("WARNING: the cutter would meet your clamps or stops of 27.0 mm on face A."));
        assertFalse(judge("--no-chart", "--clamp", "20mm", SAMPLE).out().contains("WARNING"));
    }

    @Test
    void aBoardWithoutAPriceStandsLastAndIsNamed() throws IOException {
        Path priced = write("priced.csv", "# price: 90 per bf\n" + Files.readString(Path.of(SAMPLE)));

        Run run = stack("--no-chart", "--shop-rate", "40", SAMPLE, priced.toString());

        assertTrue(run.out().contains("No price for hall table top, left half"), run.out());
        assertFalse(run.out().contains("All of them cost"), run.out());
    }
}
