package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import outwind.benchmark.RecordScripts;

/** A few scripts of {@link RecordScripts}, which runs many. */
class RecordScriptsTest {

    @Test
    void guidedEntryDoesWhatItsPageSays(@TempDir Path folder) {
        SplittableRandom random = new SplittableRandom(7);
        int typed = 0;
        for (int i = 0; i < 5; i++) {
            typed += RecordScripts.run(folder.resolve(i + ".csv"), random.split(), new TreeMap<>());
        }

        assertTrue(typed > 90, "typed " + typed);
    }
}
