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
import java.util.Locale;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sample board after face A is cut: face B is read, and one cut is left. */
class FinishCommandTest {

    private static final String SAMPLE = "sample-probes/hall-table.csv";

    @TempDir
    Path folder;

    private StringWriter out;
    private StringWriter err;

    @BeforeEach
    void listen() {
        out = new StringWriter();
        err = new StringWriter();
    }

    private int run(String... args) {
        return Main.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    private int finish(Path second) {
        return run("finish", "--json", "--out", folder.toString(), SAMPLE, second.toString());
    }

    /** Face B at the six places of the check table, with something added to the heights that are printed there. */
    private Path faceB(String name, DoubleBinaryOperator added, String... more) throws IOException {
        StringWriter printed = new StringWriter();
        Main.run(new PrintWriter(printed), new PrintWriter(err), "judge", "--details", "--no-chart", "--out", folder.toString(),
            SAMPLE);
        StringBuilder file = new StringBuilder("x,y,z,face\n");
        String table = printed.toString().substring(printed.toString().indexOf("height (mm)"));
        table.lines().map(line -> line.strip().split("\\s+")).filter(cells -> cells.length == 4
            && cells[0].matches("\\d+")).limit(6).forEach(cells -> file.append(String.format(Locale.ROOT,
                "%s,%s,%.3f,A%n", cells[0], cells[1], Double.parseDouble(cells[2])
                    + added.applyAsDouble(Double.parseDouble(cells[0]), Double.parseDouble(cells[1])))));
        for (String row : more) {
            file.append(row).append('\n');
        }
        return Files.writeString(folder.resolve(name), file.toString());
    }

    private JsonNode json(String name) throws IOException {
        return new ObjectMapper().readTree(folder.resolve(name).toFile());
    }

    @Test
    void aBoardThatHasNotMovedHasOneCutLeft() throws IOException {
        assertEquals(0, finish(faceB("b.csv", (x, y) -> 0)), err.toString());

        String report = out.toString();
        assertTrue(report.contains("YES: it finishes at 26.0 mm."), report);
        assertTrue(report.contains("The board has not moved"), report);
        assertTrue(report.replaceAll("\\s+", " ").contains("Set zero on the bed. Make the last pass of face B at"
            + " 26.0 mm above it"),
            report);
        assertFalse(report.contains("face A up") || report.contains("turn it over") || report.contains("shim "),
            report);
        JsonNode json = json("b-finish.json");
        assertEquals(1, json.at("/cuts").size());
        assertEquals("B", json.at("/cuts/0/face").asText());
        assertEquals("bed", json.at("/cuts/0/datum").asText());
        assertFalse(json.at("/movement/moved").asBoolean());
    }

    // Face B is skimmed and face A is not: what comes out is the lowest height less one skim. The skim also moves the
    // plane that face A was planned to by a hair, and with it what is expected of face B: a hundredth of a mm allows for
    // that. The lowest of the whole face lies below the lowest reading of 27.49 mm, which is inset.
    @Test
    void onlyFaceBIsSkimmed() throws IOException {
        finish(faceB("b.csv", (x, y) -> 0));
        double skimmed = json("b-finish.json").at("/thickness/median").asDouble();
        out.getBuffer().setLength(0);
        run("finish", "--json", "--skim", "1.3mm", "--out", folder.toString(), SAMPLE,
            folder.resolve("b.csv").toString());

        assertEquals(skimmed - 1, json("b-finish.json").at("/thickness/median").asDouble(), 0.01);
        assertTrue(skimmed < 27.49 - 0.3, "below the lowest reading less the skim, got " + skimmed);
    }

    @Test
    void sprungEndsAreMovement() throws IOException {
        assertEquals(0, finish(faceB("b.csv", (x, y) -> Math.pow(x / 590 - 1, 2))), err.toString());

        assertTrue(out.toString().contains("THE BOARD HAS MOVED:"), out.toString());
        assertTrue(json("b-finish.json").at("/movement/moved").asBoolean());
        assertEquals(1, json("b-finish.json").at("/movement/bow").asDouble(), 0.02);
    }

    @Test
    void heightsAreCountedFromABedThatWasRead() throws IOException {
        finish(faceB("b.csv", (x, y) -> 0));
        finish(faceB("c.csv", (x, y) -> -40, "0,0,-40,bed"));

        assertEquals("", err.toString());
        assertEquals(json("b-finish.json").at("/thickness/median").asDouble(),
            json("c-finish.json").at("/thickness/median").asDouble(), 1e-6);
    }

    @Test
    void heightsThatAreNotCountedFromTheBedAreRefused() throws IOException {
        assertEquals(1, finish(faceB("b.csv", (x, y) -> -29)));

        assertTrue(err.toString().contains("b.csv: face B lies") && err.toString().contains("Set zero on the bed"),
            err.toString());
        assertFalse(Files.exists(folder.resolve("b-finish.txt")));
    }

    @Test
    void aBoardOfAnotherSizeIsRefused() throws IOException {
        Path other = Files.writeString(folder.resolve("o.csv"), "# length: 900\n# width: 212\nx,y,z\n0,0,29\n"
            + "900,0,29\n0,200,29\n");

        assertEquals(1, finish(other));

        assertTrue(err.toString().contains("the board is of another size than in " + SAMPLE), err.toString());
    }

    // Worked by hand: of a rectangle with one corner lifted by t, two parallel planes t/2 apart hold all four corners.
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 1})
    void aFinishedFaceIsFlatOrNot(double lift) throws IOException {
        StringBuilder file = new StringBuilder("# length: 900\n# width: 200\n# repeatability: 0.01\nx,y,z\n");
        for (double x = 0; x <= 900; x += 225) {
            for (double y = 0; y <= 200; y += 100) {
                file.append(x + "," + y + "," + (26 + lift * x / 900 * y / 200) + "\n");
            }
        }
        Path board = Files.writeString(folder.resolve("done.csv"), file.toString());

        int code = run("check", "--json", "--within", "0.3mm", "--out", folder.toString(), board.toString());

        assertEquals(0, code, err.toString());
        assertTrue(out.toString().contains(lift < 0.3 ? "YES: it is flat to 0.30 mm."
            : "NO: it is not flat to 0.30 mm."), out.toString());
        assertEquals(lift / 2, json("done-check.json").at("/flatness/median").asDouble(), 0.12);
    }

    @ParameterizedTest
    @ValueSource(strings = {"--within=0mm", "--within=-1", "--within=wide", ""})
    void checkNeedsAnAmount(String option) {
        String[] args = option.isEmpty() ? new String[] {"check", SAMPLE} : new String[] {"check", option, SAMPLE};

        assertEquals(2, run(args));
        assertFalse(err.toString().contains("Exception"), err.toString());
    }
}
