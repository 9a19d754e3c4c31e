package outwind.cli.ask;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import outwind.board.file.Recording;
import outwind.board.text.BadBoardFile;
import outwind.cli.Main;

/**
 * Whatever is typed while a board is touched off, the program asks on until the end, and leaves a file that says all
 * that was taken; whatever file is there to begin with, it goes on with it or tells its faults. Fuzzed as
 * {@code outwind.fuzz.AnyInputTest} is.
 */
@Tag("any-input")
class AnyAnswersTest {

    private static final String[] SIZES = {"--length", "600", "--width", "150", "--thickness", "30", "--columns", "3",
        "--rows", "2"};

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void typed(byte[] bytes) throws IOException, BadBoardFile {
        inFolder(file -> {
            recorded(file, bytes, SIZES);
            List<Recording.Entry> taken = Recording.read(file).entries();
            // Called again, and nothing typed: nothing changes.
            assertEquals(0, recorded(file, new byte[0]));
            assertEquals(taken, Recording.read(file).entries());
        });
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void goneOnWith(byte[] bytes) throws IOException, BadBoardFile {
        inFolder(file -> {
            Files.write(file, bytes);
            if (recorded(file, "1.5\nu\ns\n0.5\nd\n".getBytes(StandardCharsets.US_ASCII), SIZES) == 0) {
                Recording.read(file);
            }
        });
    }

    private static int recorded(Path file, byte[] typed, String... options) {
        StringWriter said = new StringWriter();
        StringWriter faults = new StringWriter();
        String[] args = new String[options.length + 2];
        args[0] = "record";
        args[1] = file.toString();
        System.arraycopy(options, 0, args, 2, options.length);
        int code = Main.run(new ByteArrayInputStream(typed), new PrintWriter(said), new PrintWriter(faults), args);
        assertTrue(code == 0 || code == 1);
        assertTrue(code != 0 || !said.toString().isEmpty());
        assertTrue(!faults.toString().contains("at fault here"), faults.toString());
        return code;
    }

    /** What is done with a file that may or may not be there. */
    private interface Use {

        void of(Path file) throws IOException, BadBoardFile;
    }

    private static void inFolder(Use use) throws IOException, BadBoardFile {
        Path folder = Files.createTempDirectory("any-answers");
        Path file = folder.resolve("board.csv");
        try {
            use.of(file);
        } finally {
            try (var left = Files.list(folder)) {
                for (Path path : left.toList()) {
                    Files.delete(path);
                }
            }
            Files.delete(folder);
        }
    }
}
