package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.BasicStroke;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;

/**
 * The program run on its samples as the pages say: what it writes is what lies in reports/, our own earlier output that
 * was looked at. What no page shows lies in the resources of the tests: reports for scripts, and rarer questions. Charts
 * are compared pixel by pixel where this machine draws letters, lines and curves just as the one that drew those. With
 * {@code -Doutwind.accept} all of it is written over by what the program writes now, to be looked at and committed.
 */
class ReportsInTheTreeTest {

    private static final Path REPORTS = Path.of("reports");

    private static final Path NOT_SHOWN = Path.of("src/test/resources/outwind/cli");

    private static final Pattern NUMBER = Pattern.compile("\\d+ \\d+/\\d+|\\d+([./]\\d+)?");

    /** Check sum of the drawing below by the machine that drew the charts. */
    private static final long AS_DRAWN = 688_459_446L;

    private static final boolean DRAWS_ALIKE = checkSum(drawing()) == AS_DRAWN;

    private static final boolean ACCEPTS = System.getProperty("outwind.accept") != null;

    @TempDir
    private Path folder;

    private static BufferedImage drawing() {
        Paper paper = new Paper(600, 200);
        for (TextStyle style : TextStyle.values()) {
            paper.fromLeft("Levelled 28.4 mm ½ → ±", style, Paper.INK, 10 + 20 * style.ordinal(), 20 + 10 * style.ordinal());
        }
        paper.line(3, 190, 590, 7, Paper.SOFT_INK, new BasicStroke(2.5f));
        paper.pen().draw(new Ellipse2D.Double(300.3, 20.7, 90, 70));
        try {
            return ImageIO.read(new ByteArrayInputStream(paper.png(200)));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    private static long checkSum(BufferedImage image) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * image.getWidth() * image.getHeight());
        bytes.asIntBuffer().put(pixels(image));
        CRC32 sum = new CRC32();
        sum.update(bytes.array());
        return sum.getValue();
    }

    private String run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out), new PrintWriter(err), Stream.concat(Arrays.stream(arguments),
            Stream.of("--json", "--out", folder.toString())).toArray(String[]::new));
        assertEquals("", err.toString());
        assertEquals(0, code);
        return out.toString();
    }

    /** @param name in the tree */
    private void assertSame(String name, String written) throws IOException {
        Path shown = REPORTS.resolve(name);
        Path expected = Files.exists(shown) ? shown : NOT_SHOWN.resolve(name);
        Path actual = folder.resolve(written);
        if (ACCEPTS) {
            Files.copy(actual, expected, StandardCopyOption.REPLACE_EXISTING);
        }
        if (name.endsWith(".json")) {
            SameJson.assertSame(expected, actual);
        } else if (!name.endsWith(".png")) {
            assertEquals(Files.readString(expected), Files.readString(actual), name);
        } else if (DRAWS_ALIKE) {
            assertSameChart(expected.toFile(), actual.toFile());
        } else {
            assertTrue(Files.size(actual) > 0, name);
        }
    }

    private void assertSameBoard(String name) throws IOException {
        for (String end : List.of(".txt", "-details.txt", ".png", "-details.png", ".json")) {
            assertSame(name + end, name + end);
        }
    }

    private static void assertSameChart(File expected, File actual) throws IOException {
        BufferedImage before = ImageIO.read(expected);
        BufferedImage now = ImageIO.read(actual);
        assertEquals(before.getWidth() + " x " + before.getHeight(), now.getWidth() + " x " + now.getHeight(),
            expected.getName());
        int first = Arrays.mismatch(pixels(before), pixels(now));
        assertTrue(first < 0, () -> expected.getName() + " is drawn otherwise from the pixel at "
            + first % now.getWidth() + ", " + first / now.getWidth() + " on");
    }

    private static void assertEightyColumns(String printed) {
        for (String line : printed.lines().toList()) {
            assertTrue(line.startsWith("Written:") || line.length() <= 80, line);
        }
    }

    static Stream<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-probes"))) {
            return files.filter(file -> Files.isRegularFile(file) && !file.endsWith("outwind-shop.txt")).sorted().toList()
                .stream();
        }
    }

    @Test
    void thereAreAtLeastEightSamples() throws IOException {
        assertTrue(samples().count() >= 8);
    }

    @ParameterizedTest
    @MethodSource("samples")
    void aSampleIsJudgedAsInTheTree(Path sample) throws IOException {
        String printed = run("judge", sample.toString());

        String name = sample.getFileName().toString().replaceFirst("\\.[a-z]+$", "");
        assertSameBoard(name);
        assertEightyColumns(printed);
        // What is read at the machine fits on one screen; an inch fraction is one number. What the bed is too small for
        // adds four numbers of its own.
        String report = Files.readString(folder.resolve(name + ".txt"));
        int most = report.contains("LARGER THAN THE BED") ? 64 : 60;
        assertTrue(report.lines().count() <= 40, report.lines().count() + " lines\n" + report);
        assertTrue(NUMBER.matcher(report).results().count() <= most, report);
    }

    /** @param files names in the tree, and after a colon the name that the program gives where that is another */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "blanks --bill sample-probes/bills/bill-small-table.csv sample-probes/stair-tread-kink.csv"
            + " | stair-tread-kink-blanks.txt stair-tread-kink-blanks.csv stair-tread-kink-blanks.png"
            + " stair-tread-kink-blanks.json",
        "blanks sample-probes/bed-rail-short.csv"
            + " | bed-rail-short-blanks.txt bed-rail-short-blanks.png bed-rail-short-blanks.json",
        "blanks --recut --labels --bill sample-probes/bills/bill-small-table.csv sample-probes/mantel-wedge.csv"
            + " | mantel-wedge-blanks.txt mantel-wedge-blanks.csv mantel-wedge-blanks.json mantel-wedge-blanks.png"
            + " mantel-wedge-blanks-labels.png",
        "blanks --over-length 1/2in --first-edge 1/8in sample-probes/blanket-chest-inches.csv"
            + " | blanket-chest-inches-blanks.txt blanket-chest-inches-blanks.json",
        "stack --want 2m2 sample-probes/stack | stack.txt stack.csv stack-buy.csv stack.png stack-want.json:stack.json",
        "stack --target 26mm,19mm,16mm sample-probes/stack"
            + " | stack-uses.png stack-uses.txt:stack.txt stack-uses.csv:stack.csv stack-uses.json:stack.json",
        "stack --surfaced hardwood --units in --pack 60 --sells 70_EUR_per_m2 --profit 15% sample-probes/stack"
            + " | stack-pack.txt:stack.txt stack-pack.csv:stack.csv stack-pack.json:stack.json",
        "stack --bill sample-probes/bills/bill-benches.csv sample-probes/stack | stack-benches.txt:stack.txt"
            + " stack-benches-cuts.txt:stack-cuts.txt stack-benches-cuts.png:stack-cuts.png"
            + " stack-benches.json:stack.json stack-benches-cuts.csv:stack-cuts.csv"
            + " stack-benches-cuts-buy.csv:stack-cuts-buy.csv",
        "stack --recut --bill sample-probes/bills/bill-small-table.csv sample-probes/stack/oak-03.csv"
            + " sample-probes/stack/oak-05.csv | stack-recut.json:stack.json stack-recut-cuts.csv:stack-cuts.csv",
        "points --length 1180mm --width 212mm --thickness 31.5mm --target 26mm --name side_table_top"
            + " | side-table-top-points.txt side-table-top.csv side-table-top-points.png side-table-top-points.json",
        "points --units in --length 47in --width 7in --thickness 1.25in --target 1in --columns 6 --rows 4"
            + " | board-points.txt board.csv board-points.png board-points.json"})
    void aCommandWritesWhatIsInTheTree(String command, String files) throws IOException {
        assertEightyColumns(run(Arrays.stream(command.split(" ")).map(word -> word.replace('_', ' '))
            .toArray(String[]::new)));

        for (String file : files.split(" ")) {
            String[] names = file.split(":");
            assertSame(names[0], names[names.length - 1]);
        }
    }

    // What no sample shows: a face B read again, a finished face, two folders. Our own earlier output as well.

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.8})
    void whatIsLeftToCutIsSaidAsBefore(double sprung) throws IOException {
        StringBuilder faceB = new StringBuilder("x,y,z\n");
        for (int k = 0; k < 9; k++) {
            faceB.append(20 + 570 * (k % 3)).append(',').append(15 + 91 * (k / 3)).append(',')
                .append(29.4 + 0.1 * (k % 2) + (k % 3 == 2 ? sprung : 0)).append('\n');
        }
        Path read = Files.writeString(folder.resolve("face-b.csv"), faceB);

        String name = sprung > 0 ? "finish-sprung" : "finish";
        assertSaid(name, run("finish", "--target", "26mm", "sample-probes/hall-table.csv", read.toString()));
        assertSame(name + ".json", "face-b-finish.json");
    }

    @ParameterizedTest
    @CsvSource({"0.2mm, check-no", "3.6mm, check-doubtful", "4mm, check-yes"})
    void aFinishedFaceIsCheckedAsBefore(String within, String name) throws IOException {
        assertSaid(name, run("check", "--within", within, "sample-probes/shelf-bow.csv"));
        assertSame(name + ".json", "shelf-bow-check.json");
    }

    // Low shims under a thin board, the shims of a shop, and readings so close that most are drawn without their heights.
    @Test
    void aThinBoardReadAtManyPlacesIsJudgedAsBefore() throws IOException {
        StringBuilder thin = new StringBuilder("# board: thin panel\n# length: 500\n# width: 150\n# target: 9\n"
            + "# thickness: 12 everywhere\nx,y,z\n");
        for (int k = 0; k < 45; k++) {
            double u = k % 15 / 7.0 - 1;
            double v = k / 15 - 1;
            thin.append(10 + 34.25 * (k % 15)).append(',').append(10 + 65 * (k / 15)).append(',')
                .append(0.2 * u * v + 0.15 * u * u + 0.01 * (k % 2)).append('\n');
        }
        Path read = Files.writeString(folder.resolve("thin.csv"), thin);
        Path shop = Files.writeString(folder.resolve("shop.txt"), "# units: mm\n# shims: 0.1, 0.2, 0.3, 0.5, 1, 2\n# clamps: 8\n");

        run("judge", "--shop", shop.toString(), read.toString());

        assertSameBoard("thin");
    }

    @Test
    void foldersAreComparedAsBefore() throws IOException {
        for (int k = 1; k <= 7; k++) {
            Path to = Files.createDirectories(folder.resolve(k < 4 ? "north" : "south"));
            Files.copy(Path.of("sample-probes/stack/oak-0" + k + ".csv"), to.resolve(k + ".csv"));
        }

        assertSaid("compare", run("stack", "--compare", folder.resolve("south").toString(),
            folder.resolve("north").toString()));
        assertSame("compare.json", "compare.json");
    }

    private void assertSaid(String name, String printed) throws IOException {
        Files.writeString(folder.resolve("said.txt"), printed.replaceAll("(?m)^Written: .*\\R", ""));
        assertSame(name + ".txt", "said.txt");
    }
}
