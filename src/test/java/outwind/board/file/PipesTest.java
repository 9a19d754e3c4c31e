package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Progress;
import outwind.scan.file.ScanFile;

/** A named pipe that nobody writes to gave no answer, for ever. */
class PipesTest {

    @TempDir
    private Path folder;

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aPipeWithoutAWriterIsRefusedAtOnce() throws Exception {
        Path pipe = folder.resolve("board.csv");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());

        BadBoardFile refused = assertTimeoutPreemptively(Duration.ofSeconds(20),
            () -> assertThrows(BadBoardFile.class, () -> BoardFile.read(pipe, Defaults.NOTHING)));

        assertTrue(refused.getMessage().contains("expected a file but found a pipe or a device"), refused.getMessage());
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void noScanIsAwaitedFromAPipe() throws Exception {
        Path pipe = folder.resolve("board.ply");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());

        BadBoardFile refused = assertTimeoutPreemptively(Duration.ofSeconds(20),
            () -> assertThrows(BadBoardFile.class, () -> ScanFile.read(pipe, Progress.UNSEEN)));

        assertTrue(refused.getMessage().contains("expected a file but found a pipe or a device"), refused.getMessage());
    }
}
