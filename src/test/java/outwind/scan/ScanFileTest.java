package outwind.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.BadBoardFile;
import outwind.board.PointCloud;

class ScanFileTest {

    private static final Path PLY = Path.of("src/test/resources/ply");

    @TempDir
    private Path folder;

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private Scan read(String name, String text) throws IOException, BadBoardFile {
        return ScanFile.read(write(name, text), (done, all) -> { });
    }

    private String faultOf(String name, String text) throws IOException {
        Path file = write(name, text);
        return assertThrows(BadBoardFile.class, () -> ScanFile.read(file, (done, all) -> { })).getMessage();
    }

    private static void assertPoints(PointCloud points, double... xyz) {
        assertEquals(xyz.length / 3, points.size());
        for (int i = 0; i < points.size(); i++) {
            assertArrayEquals(new double[] {xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]},
                new double[] {points.x()[i], points.y()[i], points.z()[i]});
        }
    }

    // Written by an independent writer, see the README beside the files.
    @ParameterizedTest
    @ValueSource(strings = {"text.ply", "little-endian.ply", "big-endian.ply"})
    void plyOfAnotherWriterIsReadNumberByNumber(String name) throws IOException, BadBoardFile {
        double[] expected = Files.readAllLines(PLY.resolve("points.csv")).stream().skip(1)
            .flatMap(line -> List.of(line.split(",")).stream()).mapToDouble(Float::parseFloat).toArray();
        Scan scan = ScanFile.read(PLY.resolve(name), (done, all) -> { });

        PointCloud points = scan.points();
        assertEquals(60, points.size());
        for (int i = 0; i < 60; i++) {
            // The text file spells the same 32-bit floats out in plain decimal.
            assertEquals((float) expected[3 * i], (float) points.x()[i]);
            assertEquals((float) expected[3 * i + 1], (float) points.y()[i]);
            assertEquals((float) expected[3 * i + 2], (float) points.z()[i]);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "rows.xyz | `1 2 3\n4.5 -5 6e1`",
        "rows.xyz | `1,2,3\r\n4.5,-5,6e1\r\n`",
        "rows.xyz | `\n# remark\n  1\t2\t3 \n\n4.5\t-5\t6e1\t255 0 0\n`",
        "rows.xyz | `1, 2, 3\n4.5, -5, 6e1\n`",
        "rows.csv | `x,y,z\n1,2,3\n4.5,-5,60\n`",
        "rows.csv | `\"z\",\"name, or none\",Y,x\n3,\"a \"\"b\"\", c\",2,1\n60,,-5,\"4.5\"\n`",
        "rows.csv | `x;y;z;note\n1,0;2,0;3,0;near\n4,5;-5,0;60,0;\n`",
        "rows.txt | `1,0\t2,0\t3,0\n4,5\t-5,0\t60,0\n`",
        "rows.xyz | `\ufeff1 2 3\n4.5 -5 60`"})
    void rowsAreReadHoweverTheyAreParted(String name, String text) throws IOException, BadBoardFile {
        assertPoints(read(name, text).points(), 1, 2, 3, 4.5, -5, 60);
    }

    // Reference: the JDK's own splitting and parsing.
    @Test
    void cutIntoPartsOfAnySizeTheFileReadsTheSame() throws IOException, BadBoardFile {
        SplittableRandom random = new SplittableRandom(5);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 400; i++) {
            text.append(String.format(Locale.ROOT, "%.3f %.2f %.4f", random.nextDouble(-9, 9999),
                random.nextDouble(300), random.nextDouble(-4, 4))).append(random.nextInt(3) == 0 ? "\r\n" : "\n");
            text.append(switch (random.nextInt(12)) {
                case 0 -> "\n";
                case 1 -> "# remark 1 2 3\n";
                case 2 -> "1 2 nan\n";
                default -> "";
            });
        }
        double[] expected = text.toString().lines().filter(line -> !line.isBlank() && !line.startsWith("#")
            && !line.endsWith("nan")).flatMap(line -> List.of(line.split(" ")).stream())
            .mapToDouble(Double::parseDouble).toArray();
        for (int ending = 0; ending < 2; ending++) {
            String whole = ending == 0 ? text.toString() : text.toString().stripTrailing();
            for (long part : new long[] {1, 2, 3, 7, 20, 64, 999, whole.length(), 1 << 20}) {
                Path file = write("parts.xyz", whole);
                try (FileChannel channel = FileChannel.open(file)) {
                    TextRows rows = new TextRows(new ScanSource(channel, (done, all) -> { }),
                        RowForm.bare(RowForm.BLANKS, (byte) '.'), new ScanFaults("parts.xyz"), 0, 1, Long.MAX_VALUE,
                        part);

                    assertPoints(rows.read(), expected);
                    assertEquals(text.toString().lines().filter(line -> line.endsWith("nan")).count(),
                        rows.unmeasured());
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 5, 64, 1000})
    void faultsNameTheirLineWhereverTheFileIsCut(long part) throws IOException {
        StringBuilder text = new StringBuilder();
        for (int i = 1; i <= 100; i++) {
            text.append(i == 37 ? "1 2 3O\n" : i == 90 ? "1 2\n" : "10.5 20.25 -1.5\n");
        }
        Path file = write("faults.xyz", text.toString());
        try (FileChannel channel = FileChannel.open(file)) {
            TextRows rows = new TextRows(new ScanSource(channel, (done, all) -> { }),
                RowForm.bare(RowForm.BLANKS, (byte) '.'), new ScanFaults("faults.xyz"), 0, 1, Long.MAX_VALUE, part);

            String message = assertThrows(BadBoardFile.class, rows::read).getMessage();

            assertTrue(message.startsWith("faults.xyz:37:5: expected z as a number but found \"3O\""), message);
            assertTrue(message.contains("faults.xyz:90:4: expected x, y and z in each row"), message);
        }
    }

    @Test
    void keysAreReadFromHeadCommentsAndTheFileBeside() throws IOException, BadBoardFile {
        String text = folder.resolve("keys.xyz").toString();
        String ply = folder.resolve("keys.ply").toString();
        assertEquals(List.of(new HeaderLine(text, 1, 11, "length", "900")),
            read("keys.xyz", "# length: 900\n\n# a remark\n1 2 3\n# not: a key\n").header());

        write("keys.ply.txt", "length: 900\n\n# width: 120\n");
        assertEquals(List.of(new HeaderLine(ply, 4, 16, "units", "in"),
            new HeaderLine(ply + ".txt", 1, 9, "length", "900"), new HeaderLine(ply + ".txt", 3, 10, "width", "120")),
            read("keys.ply", "ply\nformat ascii 1.0\ncomment made by: another program\ncomment units: in\n"
                + "element vertex 1\nproperty float x\nproperty float y\nproperty float z\nend_header\n1 2 3\n")
                .header());
    }

    @Test
    void elementsBeforeTheVerticesArePassedOver() throws IOException, BadBoardFile {
        assertPoints(read("later.ply", "ply\nformat ascii 1.0\nelement camera 2\nproperty float f\nelement vertex 2\n"
            + "property uchar grey\nproperty double z\nproperty double y\nproperty double x\nend_header\n9\n9\n"
            + "7 3 2 1\n7 60 -5 4.5\n").points(), 1, 2, 3, 4.5, -5, 60);
    }

    @Test
    void listsBeforeBinaryVerticesArePassedOver() throws IOException, BadBoardFile {
        byte[] head = ("ply\nformat binary_big_endian 1.0\nelement strip 2\nproperty list uchar short index\n"
            + "property uchar flag\nelement vertex 1\nproperty short x\nproperty short y\nproperty int z\nend_header\n")
            .getBytes(StandardCharsets.US_ASCII);
        byte[] body = {2, 0, 1, 0, 2, 9, 0, 9, 0, 1, 0, 2, -1, -1, -1, -3};
        byte[] all = new byte[head.length + body.length];
        System.arraycopy(head, 0, all, 0, head.length);
        System.arraycopy(body, 0, all, head.length, body.length);
        Path file = Files.write(folder.resolve("strips.ply"), all);

        assertPoints(ScanFile.read(file, (done, whole) -> { }).points(), 1, 2, -3);
    }

    @Test
    void pointsThatWereNotMeasuredAreLeftOutAndCounted() throws IOException, BadBoardFile {
        Scan scan = read("holes.csv", "x,y,z\n1,2,3\n1,2,\n1,2,NaN\ninf,2,3\n4.5,-5,60\n");

        assertPoints(scan.points(), 1, 2, 3, 4.5, -5, 60);
        assertEquals(3, scan.unmeasured());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "`plyy\n` | `\"ply\" in the first line`",
        "`ply\nformat ascii 2.0\nend_header\n` | `1.0`",
        "`ply\nformat ascii 1.0\n` | `ends with end_header`",
        "`ply\nend_header\n` | `format`",
        "`ply\nformat ascii 1.0\nelement face 1\nproperty float x\nend_header\n1\n` | `element vertex`",
        "`ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\nend_header\n1 2\n` "
            + "| `x, y and z`",
        "`ply\nformat ascii 1.0\nelement vertex many\n` | `count`",
        "`ply\nformat ascii 1.0\nproperty float x\n` | `property of an element`",
        "`ply\nformat ascii 1.0\nelement vertex 1\nproperty list float int x\n` | `property of an element`",
        "`ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\nproperty float z\nend_header\n"
            + "1 2 3\n4 5 6\n` | `3 vertices, as the header says, but found the end of the file after 2`",
        "`ply\nformat ascii 1.0\nelement vertex 99999999999\nproperty float x\nproperty float y\nproperty float z\n"
            + "end_header\n1 2 3\n` | `vertices`",
        "`ply\nformat binary_little_endian 1.0\nelement vertex 200000000\nproperty float x\nproperty float y\n"
            + "property float z\nend_header\nabc` | `200000000 vertices, as the header says`",
        "`ply\nformat binary_little_endian 1.0\nelement other 999999999999999999\nproperty double a\nelement vertex 1\n"
            + "property float x\nproperty float y\nproperty float z\nend_header\nabc` | `end of the file`"})
    void brokenPlyIsToldInWords(String text, String expected) throws IOException {
        String message = faultOf("broken.ply", text).replace(", but found", ", but found");

        assertTrue(message.replace(" but found", ", but found").contains(expected)
            || message.contains(expected), message);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "`` | `no rows`", "`# only: remarks\n` | `no rows`", "`x,y\n1,2\n` | `columns named x, y and z`",
        "`1 2 nan\n` | `no measured point`", "`1 2 3abc\n` | `z as a number`"})
    void brokenTextIsToldInWords(String text, String expected) throws IOException {
        assertTrue(faultOf("broken.csv", text).contains(expected));
    }

    @Test
    void lineWithoutEndIsRefusedBeforeItFillsTheMemory() throws IOException {
        assertTrue(faultOf("long.xyz", "1 2 3\n" + "7".repeat(TextRows.LONGEST_LINE + 9000) + "\n")
            .contains("long.xyz:2:1: expected a row of at most"));
    }

    @Test
    void fewFaultsAreListedHoweverManyThereAre() throws IOException {
        assertTrue(faultOf("all.xyz", "1 2 3\n" + "a b c\n".repeat(100_000)).lines().count() <= 40);
    }

    @Test
    void plyAndLargeTextAreScans() throws IOException {
        assertTrue(ScanFile.isScan(write("any.PLY", "")));
        assertFalse(ScanFile.isScan(write("few.xyz", "1 2 3\n")));
        assertTrue(ScanFile.isScan(write("many.xyz", "1 2 3\n".repeat(50_000))));
        assertFalse(ScanFile.isScan(write("many.png", "1 2 3\n".repeat(50_000))));
    }
}
