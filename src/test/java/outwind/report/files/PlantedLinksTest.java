package outwind.report.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Files that another could have put where the program writes, and files that it must not write over. */
@DisabledOnOs(OS.WINDOWS)
class PlantedLinksTest {

    @TempDir
    private Path folder;

    // The name beside the recording is known beforehand; a link there led to any file that its owner may write to.
    @Test
    void aLinkAtTheTemporaryNameIsNotFollowed() throws IOException {
        Path precious = Files.writeString(folder.resolve("precious"), "as before");
        Files.createSymbolicLink(folder.resolve(".board.csv.part"), precious);
        Path file = folder.resolve("board.csv");

        RecordingFile.at(file).keep("# length: 1\n");

        assertEquals("as before", Files.readString(precious));
        assertEquals("# length: 1\n", Files.readString(file));
        assertFalse(Files.isSymbolicLink(file));
        assertFalse(Files.exists(folder.resolve(".board.csv.part"), LinkOption.NOFOLLOW_LINKS));
    }

    @Test
    void anEndlessDeviceIsNoRecording() {
        IOException refused = assertThrows(IOException.class, () -> RecordingFile.at(Path.of("/dev/zero")));

        assertTrue(refused.getMessage().contains("heights cannot be kept in it"), refused.getMessage());
    }

    @Test
    void whatLiesBesideAScanIsNotWrittenOver() throws IOException {
        Files.writeString(folder.resolve("board.ply"), "ply\n");
        Path beside = Files.writeString(folder.resolve("board.ply.txt"), "# thickness: 31.5\n");

        assertThrows(IOException.class, () -> new Reports(folder, List.of()).write("board.ply.txt", "a report"));

        assertEquals("# thickness: 31.5\n", Files.readString(beside));
    }
}
