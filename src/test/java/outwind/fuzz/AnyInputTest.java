package outwind.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import outwind.board.BadValue;
import outwind.board.Board;
import outwind.board.Length;
import outwind.board.PointCloud;
import outwind.board.Price;
import outwind.board.Units;
import outwind.board.file.BillFile;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.scan.file.Scan;
import outwind.scan.file.ScanFile;

/**
 * Whatever bytes a reader is given, it answers with what it read or with faults in words, never with another exception.
 *
 * <p>In the ordinary build every method goes through the inputs kept for it under {@code AnyInputTestInputs}. With
 * {@code JAZZER_FUZZ=1} in the environment, a method run alone makes up new ones, guided by what the code does with
 * them, and keeps those that found something.
 */
@Tag("any-input")
class AnyInputTest {

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void boardFile(byte[] bytes) {
        try {
            assertIsBoard(BoardFile.parse("board.csv", new String(bytes, StandardCharsets.UTF_8), Defaults.NOTHING));
        } catch (BadBoardFile e) {
            assertTold(e.getMessage());
        }
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void pointsWithoutHeader(byte[] bytes) {
        onDisk("board.xyz", bytes, file -> assertIsBoard(BoardFile.read(file, Defaults.NOTHING)));
    }

    private static void assertIsBoard(Board board) {
        assertTrue(board.length() > 0 && board.width() > 0);
        assertFalse(board.readings().isEmpty());
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void cuttingBill(byte[] bytes) {
        try {
            assertFalse(BillFile.parse("bill.csv", new String(bytes, StandardCharsets.UTF_8), Units.MILLIMETRES).items()
                .isEmpty());
        } catch (BadBoardFile e) {
            assertTold(e.getMessage());
        }
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void length(@NotNull String text) {
        try {
            assertTrue(Double.isFinite(Length.parse(text, Units.INCHES)));
        } catch (BadValue e) {
            assertTold(e.getMessage());
        }
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void price(@NotNull String text) {
        try {
            assertTrue(Price.parse(text, true).amount().signum() >= 0);
        } catch (BadValue e) {
            assertTold(e.getMessage());
        }
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void plyScan(byte[] bytes) {
        onDisk("scan.ply", bytes, file -> assertIsScan(ScanFile.read(file, (done, all) -> { })));
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 2_000_000)
    void textScan(byte[] bytes) {
        onDisk("scan.csv", bytes, file -> assertIsScan(ScanFile.read(file, (done, all) -> { })));
    }

    private static void assertIsScan(Scan scan) {
        PointCloud points = scan.points();
        assertTrue(points.size() > 0);
        for (int i = 0; i < points.size(); i++) {
            assertTrue(Double.isFinite(points.x()[i]) && Double.isFinite(points.y()[i])
                && Double.isFinite(points.z()[i]));
        }
    }

    /** Something that reads a file. */
    private interface Reader {

        void read(Path file) throws IOException, BadBoardFile;
    }

    private static void onDisk(String name, byte[] bytes, Reader reader) {
        try {
            Path folder = Files.createTempDirectory("any-input");
            Path file = folder.resolve(name);
            try {
                Files.write(file, bytes);
                reader.read(file);
            } catch (BadBoardFile e) {
                assertTold(e.getMessage());
            } finally {
                Files.deleteIfExists(file);
                Files.delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void assertTold(String message) {
        assertTrue(message.contains("expected") || message.contains("must"), message);
    }
}
