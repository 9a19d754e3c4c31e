package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import outwind.benchmark.RecordingKills;
import outwind.board.text.BadBoardFile;

/** A few real processes, really killed; {@link RecordingKills} kills more, and {@code RecordingFileTest} finer. */
class RecordKilledTest {

    @Test
    void aKilledRecordingHasEveryHeightThatWasAnswered(@TempDir Path folder)
            throws IOException, BadBoardFile, InterruptedException {
        SplittableRandom random = new SplittableRandom(12);
        for (int kill = 0; kill < 6; kill++) {
            RecordingKills.Left left = RecordingKills.kill(System.getProperty("java.class.path"),
                folder.resolve(kill + ".csv"), random);

            assertTrue(left.isRight(), "kill " + kill + ": " + left);
        }
    }
}
