package outwind.scan.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Progress;
import outwind.scan.bytes.ReadingPlan;

/** The files under {@code ply/} were written by other programs; its README names them. */
class PlyScanTest {

    private static final Path FILES = Path.of("src/test/resources/ply");

    @TempDir
    private Path folder;
    private OnDisk disk;

    @BeforeEach
    void useFolder() {
        disk = new OnDisk(folder);
    }

    @ParameterizedTest
    @ValueSource(strings = {"ascii", "little-endian", "big-endian"})
    void anotherProgramsSheetIsReadNumberByNumber(String form) throws IOException, BadBoardFile {
        double[] expected = numbers(Files.readAllLines(FILES.resolve("sheet-points.csv")), "");

        for (int blockSize : new int[] {1, 100, 100_000}) {
            Scan scan = ScanFile.read(FILES.resolve("sheet-" + form + ".ply"),
                new ReadingPlan(3, blockSize, Progress.UNSEEN));

            assertArrayEquals(expected, OnDisk.flat(scan.points()));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"char-ushort-float", "uchar-int-double", "short-uint-double", "int8-uint16-float32",
        "uint8-int32-float64", "int16-uint32-float64", "lists"})
    void everyTypeAndListIsReadNumberByNumber(String stem) throws IOException, BadBoardFile {
        double[] expected = numbers(Files.readAllLines(FILES.resolve("points.csv")), stem + ",");
        assertFalse(expected.length == 0);

        for (String form : List.of("ascii", "binary_little_endian", "binary_big_endian")) {
            Scan scan = ScanFile.read(FILES.resolve(stem + "-" + form + ".ply"), Progress.UNSEEN);

            assertArrayEquals(expected, OnDisk.flat(scan.points()), form);
            assertEquals(stem.equals("lists") ? "with lists" : "mm", scan.header().get(0).said().value().text());
        }
    }

    /** The numbers of the lines that begin so; the first line names columns. */
    private static double[] numbers(List<String> lines, String start) {
        return lines.stream().skip(1).filter(line -> line.startsWith(start))
            .flatMap(line -> Arrays.stream(line.substring(start.length()).split(",")))
            .mapToDouble(Double::parseDouble).toArray();
    }

    @ParameterizedTest
    @ValueSource(strings = {"sheet-ascii.ply", "sheet-big-endian.ply", "lists-ascii.ply", "lists-binary_big_endian.ply",
        "uchar-int-double-binary_little_endian.ply"})
    void aFileCutShortAnywhereIsRefusedOrWhole(String name) throws IOException {
        byte[] whole = Files.readAllBytes(FILES.resolve(name));
        for (int length = 0; length < whole.length; length += 1 + length / 40) {
            Path file = Files.write(folder.resolve(name), Arrays.copyOf(whole, length));
            try {
                // What is behind the points, such as faces, is not missed; the last number of a text may lose digits.
                Scan scan = ScanFile.read(file, Progress.UNSEEN);
                assertEquals(ScanFile.read(FILES.resolve(name), Progress.UNSEEN).points().size(), scan.points().size());
            } catch (BadBoardFile e) {
                assertFalse(e.faults().isEmpty());
            }
        }
    }

    @Test
    void pointsThatAreNotFiniteAreLeftOutAndCounted() throws IOException, BadBoardFile {
        byte[] header = header("binary_little_endian", 4, "property float x\nproperty float y\nproperty float z\n");
        ByteBuffer bytes = ByteBuffer.allocate(header.length + 48).order(ByteOrder.LITTLE_ENDIAN).put(header);
        for (float number : new float[] {1, 2, 3, Float.NaN, 2, 3, 1, 2, Float.POSITIVE_INFINITY, 4, 5, 6}) {
            bytes.putFloat(number);
        }
        Path file = Files.write(folder.resolve("board.ply"), bytes.array());

        Scan scan = ScanFile.read(file, Progress.UNSEEN);

        assertEquals(2, scan.unmeasured());
        assertArrayEquals(new double[] {1, 2, 3, 4, 5, 6}, OnDisk.flat(scan.points()));
    }

    private static byte[] header(String format, long count, String properties) {
        return ("ply\nformat " + format + " 1.0\nelement vertex " + count + "\n" + properties + "end_header\n")
            .getBytes(StandardCharsets.US_ASCII);
    }

    // The arrays for so many points would need 2.4 TB: refused by the file's size before anything is taken.
    @ParameterizedTest
    @ValueSource(strings = {"ascii", "binary_little_endian", "binary_big_endian"})
    void aCountBeyondTheFileIsRefused(String format) throws IOException {
        byte[] file = Arrays.copyOf(header(format, 99_999_999_999L,
            "property double x\nproperty double y\nproperty double z\n"), 400);
        Arrays.fill(file, 400 - 245, 400, (byte) '\n');

        String refusal = disk.refusal("board.ply", file);

        assertEquals("board.ply:3:1: expected 99999999999 vertices in the file, as this line says but found ",
            refusal.substring(0, refusal.indexOf("found ") + 6));
    }

    @Test
    void aListThatClaimsToBeLongerThanTheFileIsRefused() throws IOException {
        byte[] header = header("binary_little_endian", 1,
            "property list uint double tags\nproperty uchar x\nproperty uchar y\nproperty uchar z\n");
        byte[] file = Arrays.copyOf(header, header.length + 200);
        Arrays.fill(file, header.length, file.length, (byte) 0xFF);

        assertEquals("""
            board.ply:3:1: expected 1 vertices in the file, as this line says but found 0 that are whole
              The file has been cut short, or its header is wrong: export or copy it again.""",
            disk.refusal("board.ply", file));
    }

    @Test
    void headersThatAreNoneAreRefusedInWords() throws IOException {
        assertEquals("""
            board.ply:2:1: expected format ascii 1.0 or a binary one of 1.0 but found "format ascii 2.0"
              This is no .ply header as published; export the scan again, or as .xyz.
            board.ply:3:1: expected an element before its properties but found "property float x"
              This is no .ply header as published; export the scan again, or as .xyz.
            board.ply:4:1: expected element, its name and how many there are but found "element vertex -1"
              This is no .ply header as published; export the scan again, or as .xyz.
            board.ply:5:1: expected vertices with a property y but found none
              Every point needs x, y and z; export the scan with all three.
            board.ply:5:1: expected vertices with a property z but found none
              Every point needs x, y and z; export the scan with all three.
            board.ply:6:1: expected property, its type and its name but found "property real y"
              This is no .ply header as published; export the scan again, or as .xyz.
            board.ply:8:1: expected each property once but found "property float x"
              This is no .ply header as published; export the scan again, or as .xyz.
            board.ply:9:1: expected property, its type and its name but found "property list float int z"
              This is no .ply header as published; export the scan again, or as .xyz.
            board.ply:10:1: expected format, comment, element, property or end_header but found "vertices"
              This is no .ply header as published; export the scan again, or as .xyz.""",
            disk.refusal("board.ply", """
                ply
                format ascii 2.0
                property float x
                element vertex -1
                element vertex 2
                property real y
                property float x
                property float x
                property list float int z
                vertices
                end_header
                """));
        assertEquals("""
            board.ply:1:1: expected ply in the first line of a .ply file but found "solid"
              Export the scan again as .ply or as .xyz.""", disk.refusal("board.ply", "solid\n"));
        assertEquals("""
            board.ply:1:1: expected the line end_header but found the end of the file
              Export the scan again.""", disk.refusal("board.ply", "ply\nformat ascii 1.0\n"));
        assertEquals("""
            board.ply:4:1: expected a line format before this one but found none
              Export the scan again, or as .xyz.
            board.ply:4:1: expected an element vertex before this line but found none
              Only points are read: export the scan as points.""",
            disk.refusal("board.ply", "ply\nelement face 1\nproperty float x\nend_header\n"));
    }

    @Test
    void aHeaderWithoutALineEndIsAFileCutShort() throws IOException {
        String header = new String(header("ascii", 2, "property float x\nproperty float y\nproperty float z\n"),
            StandardCharsets.US_ASCII);

        assertEquals("""
            board.ply:3:1: expected 2 vertices in the file, as this line says but found 0 that are whole
              The file has been cut short, or its header is wrong: export or copy it again.""",
            disk.refusal("board.ply", header.strip()));
    }

    @Test
    void aHeaderBeyondTheLimitIsRefused() throws IOException {
        assertEquals("""
            expected the line end_header but found none in the first 65536 bytes
              Export the scan again.""",
            disk.refusal("board.ply", "ply\nformat ascii 1.0\n" + "comment\n".repeat(9_000)).substring(15));
    }

    @Test
    void aTextRowThatHasTooFewNumbersNamesItsLine() throws IOException {
        assertEquals("""
            board.ply:8:1: expected x, y and z as line 3 has them but found "1 2"
              A row ends too early: the file may have been cut short. Export it again, or take the line out.""",
            disk.refusal("board.ply", "ply\nformat ascii 1.0\nelement vertex 2\nproperty float x\nproperty float y\n"
                + "property float z\nend_header\n1 2\n3 4 5\n"));
    }

    @Test
    void aMissingFileIsSaidByTheSystem() {
        assertThrows(IOException.class, () -> ScanFile.read(folder.resolve("none.ply"), Progress.UNSEEN));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "ply\nformat ascii 1.0\nelement vertex 2\nproperty float x\nproperty float y\nproperty float z\nend_header\n"
            + "1 2 3\n4 5 6\n7 8 9\n",
        "ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\nproperty float z\n"
            + "element edge 1\nproperty int a\nend_header\n1 2 3\n4 5 6\n1\n",
        "ply\nformat binary_little_endian 1.0\nelement vertex 1\nproperty char x\nproperty char y\n"
            + "property char z\nend_header\nabcabc",
        "ply\nformat binary_little_endian 1.0\nelement vertex 1\nproperty char x\nproperty char y\n"
            + "property char z\nproperty list uchar char more\nend_header\nabc\0abc\0"})
    void moreVerticesThanTheHeaderTellsOfAreRefused(String text) {
        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> disk.read("board.ply", text));

        assertTrue(refused.getMessage().contains("more than the header tells of"), refused.getMessage());
    }

    @Test
    void whatFollowsTheVerticesMustBeWhole() {
        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> disk.read("board.ply",
            "ply\nformat binary_little_endian 1.0\nelement vertex 1\nproperty char x\nproperty char y\n"
                + "property char z\nelement edge 2\nproperty int a\nend_header\nabc1234"));

        assertTrue(refused.getMessage().contains("2 of the element edge"), refused.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1 2 3\n", "1 2 3", "1 2 3\n\n \r\n\n", "1 2 3\n  "})
    void blankLinesAtTheEndAreNoVertices(String rows) throws IOException, BadBoardFile {
        Scan scan = disk.read("board.ply", "ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\n"
            + "property float y\nproperty float z\nend_header\n" + rows);

        assertArrayEquals(new double[] {1, 2, 3}, OnDisk.flat(scan.points()));
    }
}
