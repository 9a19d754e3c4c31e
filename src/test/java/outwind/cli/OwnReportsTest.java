package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reports written among the boards were once priced with them. */
class OwnReportsTest {

    private static final String KEYS = "# length: 600\n# width: 150\n# thickness: 30\n";
    private static final String ROWS = "x,y,z\n15,15,0.1\n585,15,0.2\n15,135,-0.1\n585,135,0.4\n300,75,0.3\n";

    @TempDir
    private Path folder;

    private String run(String... args) {
        StringWriter said = new StringWriter();
        int code = Main.run(new PrintWriter(new StringWriter()), new PrintWriter(said), args);
        assertEquals(0, code, said.toString());
        return said.toString();
    }

    @Test
    void reportsAmongTheBoardsAreNoBoards() throws IOException {
        Files.writeString(folder.resolve("oak.csv"), KEYS + ROWS);
        // A board by the name of a report stays a board.
        Files.writeString(folder.resolve("oak-2.txt"), KEYS + ROWS);
        String here = folder.toString();
        run("judge", "--no-chart", "--out", here, folder.resolve("oak.csv").toString());
        run("stack", "--no-chart", "--target", "25mm", "--out", here, here);
        Path bill = Files.writeString(Files.createDirectory(folder.resolve("bills")).resolve("bill.csv"),
            "name,length,width,thickness,quantity\nleg,300,40,25,2\n");
        run("blanks", "--no-chart", "--out", here, "--bill", bill.toString(), folder.resolve("oak.csv").toString());
        String first = Files.readString(folder.resolve("stack.csv"));

        String said = run("stack", "--no-chart", "--target", "25mm", "--out", here, here);

        assertEquals("Left out as reports, not boards: oak-blanks.csv, oak-blanks.txt, oak-details.txt,"
            + " oak.txt, stack.csv, stack.txt", said.strip());
        assertEquals(first, Files.readString(folder.resolve("stack.csv")));
        assertTrue(first.contains("oak-2.txt"), first);
    }

    @Test
    void aBoardWhoseKeysLackTheirMarkIsNoReport() throws IOException {
        Path board = Files.writeString(folder.resolve("rail.csv"), KEYS + ROWS);
        Path other = Files.writeString(folder.resolve("rail-left.txt"), KEYS.replace("# ", "") + ROWS);
        Path report = Files.writeString(folder.resolve("rail-details.txt"), "rail\n  Twist: 0.4 mm\n");

        assertEquals(List.of(report), OwnReports.among(List.of(board, other, report)));
    }
}
