package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.file.ShopFile;
import outwind.board.text.BadBoardFile;
import outwind.shop.BedSize;
import outwind.shop.Shop;

/** The shop file from the command that writes one to the figures of a plan. */
class ShopCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        return Main.whole(new ByteArrayInputStream(new byte[0])).setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true)).execute(arguments);
    }

    private JsonNode judge(String... options) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("judge", "--no-chart", "--json", "--out",
            folder.resolve("reports").toString()));
        arguments.addAll(List.of(options));
        arguments.add(board("").toString());
        assertEquals(0, run(arguments.toArray(String[]::new)), err.toString());
        return new ObjectMapper().readTree(folder.resolve("reports/board.json").toFile());
    }

    private Path board(String keys) throws IOException {
        return Files.writeString(folder.resolve("board.csv"), keys + """
            # length: 900
            # width: 180
            # thickness: 30 everywhere
            # target: 25
            # units: mm
            x,y,z
            20,20,0.5
            450,20,0
            880,20,-0.5
            20,160,-0.5
            450,160,0
            880,160,0.5
            """);
    }

    @Test
    void theFileItWritesIsAShopFile() throws IOException, BadBoardFile {
        assertEquals(0, run("shop", folder.toString()));

        Shop shop = ShopFile.read(folder.resolve(ShopFile.NAME));
        assertEquals(new BedSize(1500, 600), shop.bed().orElseThrow());
        assertTrue(shop.cutters().isEmpty(), "the cutters of the example count");
        assertEquals(1, run("shop", folder.toString()));
        assertTrue(err.toString().contains("is there already and stays as it is"), err.toString());
    }

    @Test
    void withoutAShopNoMinutesAreNamed() throws IOException {
        JsonNode cuts = judge().at("/cuts");

        assertTrue(cuts.get(0).path("minutes").isNull());
        assertFalse(out.toString().contains("minute"), out.toString());
        assertTrue(out.toString().contains("That is "), out.toString());
        assertTrue(out.toString().contains(" of 0.5 mm"), out.toString());
    }

    @Test
    void theShopBesideTheBoardIsFound() throws IOException {
        Files.writeString(folder.resolve(ShopFile.NAME), """
            # clamps: 28
            # bed: 800 x 400
            cutter,diameter,deepest pass,feed
            end mill,12.7,5,2500
            """);

        JsonNode json = judge();

        assertEquals("end mill", json.at("/cuts/0/passes/0/cutter").asText());
        assertTrue(out.toString().contains("LARGER THAN THE BED of 800 x"),
            out.toString());
        assertTrue(out.toString().contains("Or cut it in 2 set-ups"), out.toString());
        assertTrue(out.toString().contains("WARNING: the cutter would meet your clamps or stops of 28.0 mm"),
            out.toString());
    }

    @Test
    void aFaultyShopFileIsToldByItsLine() throws IOException {
        Files.writeString(folder.resolve(ShopFile.NAME), "# clampz: 28\n");

        assertEquals(1, run("judge", "--out", folder.toString(), board("").toString()));

        assertTrue(err.toString().contains(ShopFile.NAME + ":1:3: expected a key but found \"clampz\""), err.toString());
    }

    // Each option in its unit reaches the pass that it is for. Worked by hand: 900 + 2·20 by 180 + 2·20 mm are 11 + 1
    // rows 20 mm apart, 940 mm each, and 220 mm across, at 1000 mm a minute 11.5 minutes a pass over the whole board.
    @Test
    void everyOptionOfACutterReachesThePlan() throws IOException {
        JsonNode cut = judge("--cutter", "40mm", "--deepest-pass", "10mm", "--rows", "20mm", "--feed", "1m", "--overrun",
            "20mm", "--last-pass", "0.25mm").at("/cuts/0");

        assertEquals(2, cut.at("/passes").size());
        assertEquals((12 * 940 + 220) / 1000.0, cut.at("/passes/1/minutes").asDouble(), 1e-9);
        assertEquals(0.25, cut.at("/depth").asDouble() - cut.at("/passes/0/depth").asDouble(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"router, Lay the board on the base of the sled with face A up", "planer, Run sled and board through the"})
    void aSledChangesTheWords(String sled, String words) throws IOException {
        JsonNode without = judge();
        JsonNode with = judge("--sled", sled);

        assertTrue(out.toString().replaceAll("\\s+", " ").contains(words), out.toString());
        assertEquals(without, with);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"--rows=20mm|name its diameter with --cutter",
        "--cutter=40mm|goes with --deepest-pass and --feed", "--cutter=wide|no shop file names cutters",
        "--bed=1500|expected a bed such as 1500mmx600mm", "--sled=none|expected sled router or planer",
        "--cutter=40mm --deepest-pass=1mm --feed=1m --rows=50mm|distance between rows"})
    void aWrongOptionIsRefused(String options, String words) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("judge", "--no-chart", "--out", folder.toString()));
        arguments.addAll(List.of(options.split(" ")));
        arguments.add(board("").toString());

        assertEquals(2, run(arguments.toArray(String[]::new)));

        assertTrue(err.toString().contains(words), err.toString());
    }

    @Test
    void aShopRateNeedsACutter() throws IOException {
        assertEquals(2, run("stack", "--no-chart", "--shop-rate", "40", "--out", folder.toString(), board("").toString()));

        assertTrue(err.toString().contains("--shop-rate needs the time on the machine"), err.toString());
    }
}
