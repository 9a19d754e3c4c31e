package outwind.scan.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.LineBlocks;
import outwind.scan.bytes.Progress;
import outwind.scan.bytes.ReadingPlan;
import outwind.board.text.FaultList;

class TextScanTest {

    @TempDir
    private Path folder;
    private OnDisk disk;

    @BeforeEach
    void useFolder() {
        disk = new OnDisk(folder);
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "1 -2.5 3e1\n4 5 6\n",
        "1 -2.5 3e1\n4 5 6",
        "\ufeff1 -2.5 3e1\n4 5 6\n",
        "1 -2.5 3e1\r\n4 5 6\r\n",
        "1 -2.5 3e1\r\n\r\n \t\n4 5 6\r\n\r\n",
        "# a remark\n\n1 -2.5 3e1\n#another\n4 5 6\n# end",
        "  1   -2.5 \t 3e1  \n4 5\t6\n",
        "1\t-2.5\t3e1\n4\t5\t6\n",
        "1,-2.5,3e1\n4,5,6\n",
        "1, -2.5 ,3e1\n 4 , 5 , 6 \n",
        "1;-2,5;3e1\n4;5;6,0\n",
        "1\t-2,5\t3e1\n4\t5\t6\n",
        "1 -2.5 3e1 200 17 x\n4 5 6 1\n",
        "1;-2.5;3e1;200;17\n4;5;6;1;\n",
        "x,y,z\n1,-2.5,3e1\n4,5,6\n",
        "X y Z\n1 -2.5 3e1\n4 5 6\n",
        "z;x;y\n30;1;-2,5\n6;4;5\n",
        "\"x\",\"y\",\"z\"\n\"1\",\"-2.5\",\"30\"\n4,5,6\n",
        "id,y,note,x,z,red\n7,-2.5,\"one, \"\"two\"\"\",1,30,\n8,5,,4,6,255\n",
        "x,y,z,\n1,-2.5,30,\n4,5,6\n",
        "1 -2.5 3e1\r4 5 6\r",
        "# board: a\rx,y,z\r1,-2.5,30\r\r4,5,6",
        "\"# board: a, b\",,\nx,y,z\n,,\n1,-2.5,30\n\"# note: c, d\",,\n4,5,6\n,,\n",
        "board: a\nunits: mm,,\nx,y,z\n1,-2.5,30\n4,5,6\n",
        "nan nan nan\n1 -2.5 30\n4 5 6\n",
        "x,y,z\n,,\n1,-2.5,30\n9,9,\n9,9,-inf\n9,NaN,9\n4,5,6\n1e999,0,0\n"})
    void twoPointsAreReadFromAnyForm(String text) throws IOException, BadBoardFile {
        for (String name : List.of("board.xyz", "board.csv")) {
            Scan scan = disk.read(name, text);

            assertArrayEquals(new double[] {1, -2.5, 30, 4, 5, 6}, OnDisk.flat(scan.points()), text);
        }
    }

    @Test
    void pointsWithoutAFiniteHeightAreLeftOutAndCounted() throws IOException, BadBoardFile {
        Scan scan = disk.read("board.csv", "x,y,z\n1,2,3\n,,\n1,2,\n1,2,n/a\n1,nan,3\n1,2,-inf\n1e999,2,3\n4,5,6\n");

        assertEquals(5, scan.unmeasured());
        assertArrayEquals(new double[] {1, 2, 3, 4, 5, 6}, OnDisk.flat(scan.points()));
    }

    @Test
    void keyLinesComeAlongAsWrittenAndThenThoseOfTheFileBeside() throws IOException, BadBoardFile {
        Path beside = disk.write("board.xyz.txt", "# thickness:31.5\n\n# only a remark\n");
        Path file = disk.write("board.xyz",
            "\ufeff# board:  Eiche: rauh \r\n#units:in\r\n# remark\r\n1 2 3\r\n#late:  4\r\n");

        Scan scan = ScanFile.read(file, Progress.UNSEEN);

        assertEquals(List.of(file + ":1:11 board=Eiche: rauh", file + ":2:8 units=in", file + ":5:9 late=4",
            beside + ":1:13 thickness=31.5"), scan.header().stream().map(line -> line.file() + ":"
                + line.said().value().line() + ":" + line.said().value().column() + " " + line.said().key().text() + "="
                + line.said().value().text()).toList());
    }

    @Test
    void aUnitBehindAColumnsNameIsALineUnits() throws IOException, BadBoardFile {
        Scan scan = disk.read("board.csv", "x (mm),y [mm],z,red\n1,2,3,4\n");

        assertEquals(List.of("units=mm at 1", "units=mm at 8"), scan.header().stream()
            .map(line -> line.said().key().text() + "=" + line.said().value().text() + " at "
                + line.said().value().column()).toList());
    }

    // Reference: the lines split by the JDK and each cell read by its parseDouble.
    @Test
    void blocksAndThreadsDoNotMatter() throws IOException, BadBoardFile {
        SplittableRandom random = new SplittableRandom(5);
        for (int run = 0; run < 300; run++) {
            List<Double> expected = new ArrayList<>();
            String text = randomText(random, expected);
            int threads = 1 + random.nextInt(4);
            int blockSize = 1 + random.nextInt(random.nextBoolean() ? 40 : 3_000);

            Scan scan = disk.read("board.xyz", text, threads, blockSize);

            assertArrayEquals(expected.stream().mapToDouble(Double::doubleValue).toArray(),
                OnDisk.flat(scan.points()), "run " + run + ", blocks of " + blockSize);
            assertEquals(lines(text, "# key"), scan.header().stream().map(line -> line.said().value().line()).toList());
        }
    }

    private static String randomText(SplittableRandom random, List<Double> expected) {
        StringBuilder text = new StringBuilder(random.nextBoolean() ? "\ufeff" : "");
        String end = random.nextBoolean() ? "\n" : "\r\n";
        int lines = 1 + random.nextInt(120);
        text.append("0 0 0").append(end);
        expected.addAll(List.of(0.0, 0.0, 0.0));
        for (int i = 0; i < lines; i++) {
            switch (random.nextInt(12)) {
                case 0 -> text.append("# key: ").append(i);
                case 1 -> text.append(" ".repeat(random.nextInt(30)));
                case 2 -> text.append("1 2 nan");
                default -> {
                    for (int axis = 0; axis < 3; axis++) {
                        String number = String.format(Locale.ROOT, "%." + random.nextInt(20) + "f",
                            random.nextDouble(-2000, 2000));
                        expected.add(Double.parseDouble(number));
                        text.append(number).append(axis < 2 ? " ".repeat(1 + random.nextInt(2)) : "");
                    }
                }
            }
            text.append(i + 1 < lines || random.nextBoolean() ? end : "");
        }
        return text.toString();
    }

    private static List<Integer> lines(String text, String start) {
        List<Integer> numbers = new ArrayList<>();
        String[] lines = text.split("\r?\n", -1);
        for (int i = 0; i < lines.length; i++) {
            if (lines[i].startsWith(start)) {
                numbers.add(i + 1);
            }
        }
        return numbers;
    }

    @Test
    void aLineAsLongAsAllowedIsReadAcrossSmallBlocks() throws IOException, BadBoardFile {
        String blanks = " ".repeat(LineBlocks.LONGEST_LINE - 5);
        Scan scan = disk.read("board.xyz", "1 2 3\n4 " + blanks + "5 6\n7 8 9\n", 2, 10);

        assertArrayEquals(new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9}, OnDisk.flat(scan.points()));
    }

    @Test
    void faultsAreTheSameHoweverTheFileIsSharedOut() throws IOException {
        String text = "1 2 3\n".repeat(50) + "1 2 x\n4 5\n".repeat(40);
        String expected = disk.refusal("board.xyz", text);

        for (int blockSize : new int[] {1, 7, 64, 1000}) {
            for (int threads = 1; threads < 4; threads++) {
                ReadingPlan plan = new ReadingPlan(threads, blockSize, Progress.UNSEEN);
                BadBoardFile refused = assertThrows(BadBoardFile.class,
                    () -> ScanFile.read(folder.resolve("board.xyz"), plan));
                assertEquals(expected, refused.getMessage().replace(folder + "/", ""));
                assertEquals(20, refused.faults().size());
            }
        }
    }

    @Test
    void faultsNameLineColumnAndCure() throws IOException {
        assertEquals("""
            board.csv:3:5: expected y as a number but found "2;5"
              Write it like -12.5; decimal commas need semicolons or tabs between the cells.
            board.csv:4:1: expected x, y and z as line 2 has them but found "4,Ö"
              A row ends too early: the file may have been cut short. Export it again, or take the line out.
            board.csv:5:8: expected no cell beyond those of line 2 but found "5"
              Take it out or name its column; decimal commas need semicolons or tabs between the cells.
            board.csv:6:1: expected x as a number but found "1 2 3"
              Write it like -12.5; decimal commas need semicolons or tabs between the cells.
            board.csv:7:7: expected z as a number but found "0x1p3"
              Write it like -12.5; decimal commas need semicolons or tabs between the cells.""",
            disk.refusal("board.csv", "# é\nx,n,y,z\n1,é,2;5,3\n4,Ö\n1,,2,3,5\n1 2 3,,4,5\n1,é,2,0x1p3\n"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "''|1:1: expected points but found nothing",
        "'x,y,z'|1:1: expected points but found nothing",
        "'# units: mm\\n\\n'|1:1: expected points but found nothing",
        "'nan nan nan\\n1 2 inf\\n'|1:1: expected points but found only 2 points that are not finite",
        "'# 1\\nlorem ipsum dolor\\n'|2:1: expected a point x y z, or a row that names the columns x, y and z "
            + "but found \"lorem\"",
        "'x,y,red\\n1,2,3\\n'|1:8: expected a column z but found the end of the row",
        "'x,y,z,X\\n1,2,3\\n'|1:7: expected one column x but found \"X\"",
        "'x,y,z,face\\n1,2,3,B\\n'|1:7: expected a scan of one face: columns x, y, z and no face but found \"face\"",
        "'1,5,2,5,3,5\\n'|1:7: expected no cell beyond those of a row x y z but found \"5\"",
        "'5000000\\n1 2 3\\n'|1:1: expected x, y and z as a row x y z has them but found \"5000000\"",
        "'1 2 3\\n1 2\\0 3\\n'|2:3: expected y as a number but found \"2\\u0000\""})
    void whatIsNoScanIsRefused(String text, String expected) throws IOException {
        String refusal = disk.refusal("board.csv",
            text.replace("\\n", "\n").replace("\\r", "\r").replace("\\0", "\0"));

        assertEquals("board.csv:" + expected, refusal.substring(0, refusal.indexOf('\n')));
    }

    @Test
    void linesBeyondTheLimitAreRefused() throws IOException {
        String blanks = " ".repeat(LineBlocks.LONGEST_LINE);

        assertEquals("""
            board.xyz:2:1: expected a line of at most 10000 bytes but found a longer one
              Save the scan as text with one point on each line.""",
            disk.refusal("board.xyz", "1 2 3\n4 5" + blanks + "6\n7 8 9\n"));
        assertEquals("""
            board.xyz:1:1: expected points but found none in the first 65536 bytes
              Write one point x y z on each line.""",
            disk.refusal("board.xyz", "# remark\n".repeat(8_000) + "1 2 3\n"));
        assertEquals("""
            board.xyz:1002:1: expected at most 1000 lines "# key: value" but found one more
              Take those out that tell nothing about the board.""",
            disk.refusal("board.xyz", "1 2 3\n" + "# k: v\n".repeat(1_001)));
    }

    @Test
    void aFileBesideTheScanHoldsKeyLinesOnly() throws IOException {
        disk.write("board.xyz.txt", "# units: mm\nthickness 31\n");

        assertEquals("""
            board.xyz.txt:2:1: expected a line "# key: value" about the scan but found "thickness 31"
              Begin the line with #, or move the file elsewhere if it is not about board.xyz.""",
            disk.refusal("board.xyz", "1 2 3\n"));
    }

    @Test
    void onlyPlyAndLargeTextsAreScans() throws IOException {
        String small = "1 2 3\n".repeat(40_000);
        String large = "1 2 3\n".repeat(50_000);

        assertFalse(ScanFile.isScan(disk.write("small.xyz", small)));
        assertTrue(ScanFile.isScan(disk.write("large.XYZ", large)));
        assertTrue(ScanFile.isScan(disk.write("large.csv", large)));
        assertFalse(ScanFile.isScan(disk.write("large.json", large)));
        assertTrue(ScanFile.isScan(disk.write("small.PLY", "ply\n")));
        assertFalse(ScanFile.isScan(folder.resolve("missing.xyz")));
    }

    @Test
    void progressEndsWithAllBytes() throws IOException, BadBoardFile {
        List<Long> heard = new ArrayList<>();
        Path file = disk.write("board.xyz", "1 2 3\n".repeat(50_000));

        ScanFile.read(file, (done, all) -> heard.addAll(List.of(done, all)));

        assertEquals(List.of(300_000L, 300_000L), heard.subList(heard.size() - 2, heard.size()));
    }

    // An export numbers its rows: 1 10.0 20.0 0.5. Read as x y z it is a board nobody scanned.
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 17})
    void runningNumbersAreNoPlaces(int first) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 3_000; i++) {
            text.append(first + i).append(' ').append(i % 100).append(' ').append(i / 100).append(" 0.5\n");
        }

        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> disk.read("board.xyz", text.toString()));

        assertTrue(refused.getMessage().contains("numbers that count the rows"), refused.getMessage());
    }
}
