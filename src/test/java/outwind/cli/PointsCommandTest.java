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
import org.junit.jupiter.params.provider.ValueSource;

/** The command {@code points} as a user runs it. */
class PointsCommandTest {

    private static final String[] TABLE = {"--length", "1180mm", "--width", "212mm", "--thickness", "31.5mm",
        "--target", "26mm", "--name", "side table top"};

    @TempDir
    private Path folder;

    private record Run(int code, String out, String err) { }

    private Run points(String[] board, String... more) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out), new PrintWriter(err), Stream.of(
            Stream.of("points", "--out", folder.toString()), Stream.of(board), Stream.of(more))
            .flatMap(s -> s).toArray(String[]::new));
        return new Run(code, out.toString(), err.toString());
    }

    @Test
    void aBoardGivesReportSheetJsonAndAFileToFillIn() throws IOException {
        Run run = points(TABLE, "--json");

        assertEquals("", run.err());
        assertEquals(0, run.code());
        assertTrue(ImageIO.read(folder.resolve("side-table-top-points.png").toFile()).getWidth() > 1000);
        JsonNode json = new ObjectMapper().readTree(folder.resolve("side-table-top-points.json").toFile());
        for (String pointer : List.of("/board/length", "/columns", "/travel", "/reason", "/places/14/x",
            "/grids/0/range", "/grids/5/minutes")) {
            assertFalse(json.at(pointer).isMissingNode(), pointer);
        }
    }

    @Test
    void aFileThatIsBeingFilledInIsLeftAsItIs() throws IOException {
        Path file = Files.writeString(folder.resolve("side-table-top.csv"), "x,y,z\n15,15,0.31\n");

        Run run = points(TABLE);

        assertEquals(1, run.code());
        assertEquals(file + " is there already and is left as it is. Move it away, or choose another --name or another"
            + " folder with --out\n", run.err());
        assertEquals("x,y,z\n15,15,0.31\n", Files.readString(file));
        assertFalse(Files.exists(folder.resolve("side-table-top-points.txt")));
    }

    @Test
    void theSameAgainIsNoFault() {
        points(TABLE, "--no-chart");

        Run run = points(TABLE, "--no-chart");

        assertEquals(0, run.code(), run.err());
    }

    @Test
    void aGridOfOnesOwnInInches() throws IOException {
        Run run = points(new String[] {"--length", "46 1/2", "--width", "9 1/4", "--units", "in"}, "--columns", "3",
            "--rows", "2", "--seconds", "30");

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("Take 6 readings, 3 along by 2 across: about 5 minutes."), run.out());
        assertTrue(run.out().contains("Fewer than four columns cannot tell a kink from a bow"), run.out());
        assertTrue(run.out().contains("Two rows cannot show cup"), run.out());
        assertTrue(Files.readString(folder.resolve("board.csv")).contains("\n# length: 46 1/2\n"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--columns=3", "--columns=1 --rows=3", "--columns=30 --rows=3", "--columns=20 --rows=20",
        "--inset=200mm", "--inset=-1", "--seconds=-5", "--within=thin", "--thickness=0", "--target=-3",
        "--length=0mm", "--width=0.001", "--no-such-option"})
    void aBadCommandLineExitsWithTwo(String options) {
        Run run = points(new String[] {"--width", "212", "--length", "1180"}, ("--no-chart " + options).split(" "));

        assertEquals(2, run.code(), run.err() + run.out());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void sizesAreNeeded() {
        Run run = points(new String[] {"--length", "1180mm"});

        assertEquals(2, run.code());
        assertTrue(run.err().contains("Missing required option: '--width=LENGTH'"), run.err());
    }
}
