package outwind.scan.find;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import outwind.board.Board;
import outwind.board.PointCloud;
import outwind.board.Reading;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Progress;
import outwind.scan.file.Scan;
import outwind.scan.file.ScanFile;

/**
 * Files over 256 KiB are read by the rules of small ones. A small file that is only padded past that gives the same
 * board or the same faults. A scan's rows give the points that a small file of the same rows gives.
 */
class LargeFilesTest {

    private static final int LIMIT = 256 * 1024;

    /** How a file becomes large without saying anything else. */
    private enum Padding {
        REMARKS_BELOW, BLANKS_BEHIND_ROWS, COMMAS_BEHIND_ROWS, BLANK_ROWS_BELOW, COMMA_ROWS_BELOW, ONE_LONG_REMARK_A_ROW;

        String pad(String text, String end) {
            String[] lines = text.split(end, -1);
            String blank = (" ".repeat(99) + end).repeat(LIMIT / 99);
            int each = LIMIT / lines.length + 1;
            return switch (this) {
                case REMARKS_BELOW -> text + ("# " + "no more ".repeat(30) + end).repeat(LIMIT / 240);
                case BLANK_ROWS_BELOW -> text + blank;
                case COMMA_ROWS_BELOW -> text + (",".repeat(99) + end).repeat(LIMIT / 99);
                case BLANKS_BEHIND_ROWS -> String.join(" ".repeat(Math.min(each, 9_000)) + end, lines) + blank;
                case COMMAS_BEHIND_ROWS -> String.join(",".repeat(Math.min(each, 9_000)) + end, lines) + blank;
                case ONE_LONG_REMARK_A_ROW -> String.join(end + "# " + "ha ".repeat(Math.min(each / 3, 3_000)) + end, lines)
                    + blank;
            };
        }
    }

    private static final List<String> SMALL = List.of(
        "# board: shelf\n# units: mm\n# length: 900\n# width: 200\n# thickness: 30\nx,y,z\n20,15,0.5\n450,100,0\n880,180,-0.4\n",
        "\"# board: shelf, the left one\",,\n# units: in\n# length: 46 1/2\n# width: 8\n# thickness: 1-1/16\nx,y,z\n1,1/2,0\n20,1/2,1/64\n45,7 3/4,n/a\n45,7,0\n",
        "units: mm\nlength: 900\nwidth: 200\nx,y,depth,thickness,note\n20,15,0.5,30,knot\n450,100,0,,\n880,180,-,31,\n10,190,2,,\n",
        "# length: 480\n# width: 320\n# thickness: 29\ny\\x,10,240,470\n10,0.28,-0.06,-0.34\n310,-0.42,,0.24\n",
        "# length 900\n# width: 200\n# thickness: 30\nx,y,z\n20,15,0.5\n450,100,0\n880,180,-0.4\n",
        "# lenght: 900\n# width: 200\n# thickness: 30\nx,y,z,colour\n20,15,0.5\n450,100,0\n880,180,-0.4\n",
        "# length: 900\n# width: 200\n# thickness: 30\nx,y,z\n15,20,0.5\n100,450,0\n180,880,-0.4\n",
        "# length: 900\n# width: 200\n# thickness: 30\nx,y,z\n20,15,0,5\n450,100,0\n880,180,-0.4\n",
        "name,length,width,thickness,quantity\nleg,700,60,45,4\n",
        "");

    @TempDir
    private Path folder;

    /** The board that a file holds, or what is wrong with it. */
    private String read(Path file) throws IOException {
        try {
            Board board = AnyBoardFile.read(file, Defaults.NOTHING, Progress.UNSEEN);
            List<String> readings = board.readings().stream().map(one -> one.x() + " " + one.y() + " " + one.z() + " "
                + one.face() + " " + one.note()).toList();
            return board.name() + board.length() + board.width() + board.thickness() + readings + board.calipers().size()
                + withoutLines(board.remarks().toString()) + board.scan();
        } catch (BadBoardFile bad) {
            return String.join("\n", bad.faults().stream().map(fault -> withoutLines(fault.expected()
                + fault.found() + fault.mend())).toList());
        }
    }

    private static String withoutLines(String words) {
        return words.replaceAll("line \\d+", "line");
    }

    @ParameterizedTest
    @EnumSource(Padding.class)
    void aPaddedFileIsTheSameBoardOrHasTheSameFault(Padding padding) throws IOException {
        for (int k = 0; k < SMALL.size(); k++) {
            String end = List.of("\n", "\r\n", "\r").get((k + padding.ordinal()) % 3);
            String text = SMALL.get(k).replace("\n", end);
            String expected = read(Files.writeString(folder.resolve("board.csv"), text));
            Path large = Files.writeString(folder.resolve("board.csv"), padding.pad(text, end));

            assertTrue(Files.size(large) > LIMIT, padding + text);
            assertEquals(expected, read(large), padding + text);
        }
    }

    @Test
    void rowsBeyondWhatAnyoneTypesAreAScan() throws IOException {
        String rows = "20.0001,15.0002,0.5003        \n".repeat(20_000);

        assertTrue(ScanFile.isScan(Files.writeString(folder.resolve("scan.csv"), rows)));
        assertFalse(ScanFile.isScan(Files.writeString(folder.resolve("long.csv"), ("# remark\n" + rows.replace("\n", " ")
            .substring(0, 9_000) + "\n").repeat(40))));
    }

    // Reference: the reader of small files, whose cells are read by another parser.
    @Test
    void rowsOfAScanAreThePointsOfASmallFile() throws IOException, BadBoardFile {
        for (int seed = 0; seed < 60; seed++) {
            String text = styled(new SplittableRandom(seed));
            Path file = Files.writeString(folder.resolve("scan.csv"), text);
            Scan scan = ScanFile.read(file, Progress.UNSEEN);
            List<Reading> readings = BoardFile.parse("scan.csv", text, Defaults.NOTHING).readings();
            PointCloud points = scan.points();

            assertArrayEquals(readings.stream().mapToDouble(Reading::x).toArray(), points.x(), text);
            assertArrayEquals(readings.stream().mapToDouble(Reading::y).toArray(), points.y(), text);
            assertArrayEquals(readings.stream().mapToDouble(Reading::z).toArray(), points.z(), text);
            assertEquals(BoardFile.parse("scan.csv", text, Defaults.NOTHING).name(), scan.header().stream()
                .filter(line -> line.said().key().text().equals("board")).map(line -> line.said().value().text())
                .findFirst().orElse(""), text);
        }
    }

    /** Points in a style that spreadsheets write. */
    private static String styled(SplittableRandom random) {
        char delimiter = ",;\t".charAt(random.nextInt(3));
        boolean comma = delimiter != ',' && random.nextBoolean();
        boolean quotes = random.nextBoolean();
        String filler = random.nextBoolean() ? String.valueOf(delimiter).repeat(2) : "";
        List<String> lines = new ArrayList<>();
        lines.add(quotes ? "\"# board: shelf, left\"" + filler : "# board: shelf" + filler);
        lines.add((random.nextBoolean() ? "# " : "") + "units: mm" + filler);
        lines.addAll(List.of("# length: 900", "# width: 200", "# thickness: 30"));
        lines.add(String.join(String.valueOf(delimiter), random.nextBoolean() ? "X (mm)" : "x", "y", "z") + filler);
        for (int i = 0; i < 40; i++) {
            List<String> cells = new ArrayList<>();
            for (double most : new double[] {900, 200, 3}) {
                String number = String.format(Locale.ROOT, "%.2f", random.nextDouble() * most);
                cells.add(comma ? number.replace('.', ',') : number);
            }
            if (random.nextInt(9) == 0) {
                cells.set(2, List.of("", "n/a", "-").get(random.nextInt(3)));
            }
            lines.add(String.join(String.valueOf(delimiter), quotes ? cells.stream().map(cell -> '"' + cell + '"').toList()
                : cells) + filler);
            if (random.nextInt(9) == 0) {
                lines.add(List.of("", filler, "# a remark", "\"# one, more\"" + filler).get(random.nextInt(4)));
            }
        }
        return String.join(List.of("\n", "\r\n", "\r").get(random.nextInt(3)), lines) + (random.nextBoolean() ? "\n" : "");
    }
}
