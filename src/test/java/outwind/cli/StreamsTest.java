package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.file.Recording;

/** The program in a process of its own whose streams are closed or full, as a shell leaves them. */
@DisabledOnOs(OS.WINDOWS)
class StreamsTest {

    private static final String RECORD = "record board.csv --length 600 --width 150 --thickness 30";

    @TempDir
    private Path folder;

    private int shell(String before, String arguments, String redirected) throws IOException, InterruptedException {
        Path program = Path.of(System.getProperty("java.home"), "bin", "java");
        // With a file of its own for measurements Java would meet the limit before the program does.
        String run = before + "'" + program + "' -XX:-UsePerfData -XX:TieredStopAtLevel=1 -cp '"
            + System.getProperty("java.class.path") + "' outwind.cli.Main " + arguments + " " + redirected;
        Process process = new ProcessBuilder("/bin/sh", "-c", run).directory(folder.toFile())
            .redirectError(folder.resolve("err.txt").toFile()).redirectOutput(folder.resolve("out.txt").toFile()).start();
        process.getOutputStream().close();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        return process.exitValue();
    }

    private String said() throws IOException {
        return Files.readString(folder.resolve("err.txt"));
    }

    // Java's own library files took the place of the closed stream, and 197,000 lines of them were heights.
    @ParameterizedTest
    @ValueSource(strings = {"<&-", "<&- >&-", "<&- >&- 2>&-", "</dev/zero"})
    void nothingIsTakenFromWhatIsNoText(String closed) throws Exception {
        assertEquals(1, shell("", RECORD, closed + (closed.endsWith("zero") ? " & sleep 2; kill $!; exit 1" : "")));

        assertEquals(List.of(), Recording.read(folder.resolve("board.csv")).entries());
    }

    @ParameterizedTest
    @ValueSource(strings = {">/dev/full", ">&-"})
    void whatCouldNotBePrintedShowsInTheExitCode(String where) throws Exception {
        assumeTrue(Files.exists(Path.of("/dev/full")) || !where.contains("full"), "no /dev/full on this system");

        assertEquals(1, shell("", "shop --help", where));

        assertTrue(said().contains("Not everything could be printed"), said());
    }

    // Two blocks of 512 bytes hold the plan and a few heights.
    @Test
    void aFullDiskSaysThatTheLastHeightIsNotKept() throws Exception {
        // Notes fill the file before there are readings enough to judge.
        Files.writeString(folder.resolve("heights.txt"), ("0.1\nnote " + "by the knot, ".repeat(15) + "\n").repeat(9));

        assertEquals(1, shell("ulimit -f 2; ", RECORD, "<heights.txt >/dev/null"));

        assertTrue(said().contains("What was typed last is not kept"), said());
        assertFalse(Recording.read(folder.resolve("board.csv")).entries().isEmpty());
    }
}
