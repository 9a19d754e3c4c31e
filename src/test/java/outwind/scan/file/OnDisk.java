package outwind.scan.file;

import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import outwind.board.PointCloud;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Progress;
import outwind.scan.bytes.ReadingPlan;

/** Scans written to a folder and read from it. */
record OnDisk(Path folder) {

    Scan read(String name, String text) throws IOException, BadBoardFile {
        return ScanFile.read(write(name, text), Progress.UNSEEN);
    }

    Scan read(String name, String text, int threads, int blockSize) throws IOException, BadBoardFile {
        return ScanFile.read(write(name, text), new ReadingPlan(threads, blockSize, Progress.UNSEEN));
    }

    /** What is said about a scan that cannot be read, the folder left out. */
    String refusal(String name, byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve(name), bytes);
        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> ScanFile.read(file, Progress.UNSEEN));
        return refused.getMessage().replace(folder + file.getFileSystem().getSeparator(), "");
    }

    String refusal(String name, String text) throws IOException {
        return refusal(name, text.getBytes(StandardCharsets.UTF_8));
    }

    Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    /** The points as [x1, y1, z1, x2, ...]. */
    static double[] flat(PointCloud points) {
        double[] flat = new double[3 * points.size()];
        Arrays.setAll(flat, i -> (i % 3 == 0 ? points.x() : i % 3 == 1 ? points.y() : points.z())[i / 3]);
        return flat;
    }
}
