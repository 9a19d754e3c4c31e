package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import outwind.board.CaliperReading;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;

class RecordCalipersTest {

    @TempDir
    private Path folder;

    private String record(String typed, String... more) {
        StringWriter out = new StringWriter();
        String[] args = Stream.concat(Stream.of("record",
            folder.resolve("board.csv").toString(), "--length", "900", "--width", "180", "--columns", "3", "--rows",
            "3"), Stream.of(more)).toArray(String[]::new);
        Main.run(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), new PrintWriter(out),
            new PrintWriter(out), args);
        return out.toString();
    }

    private List<CaliperReading> calipers() throws Exception {
        return BoardFile.read(folder.resolve("board.csv"), Defaults.NOTHING).calipers();
    }

    @Test
    void theCaliperIsAskedForOnceAllPlacesAreMeasured() throws Exception {
        String heights = "0\n".repeat(12);

        String said = record(heights + "caliper 31.2\ncaliper 31.3\nc 450 5 30.9\ndone\n", "--thickness", "31");

        assertTrue(said.contains("Now the caliper, at x 15 y 15: type caliper and the thickness."), said);
        assertTrue(said.contains("Now the caliper, at x 450 y 15"), said);
        assertEquals(List.of(31.2, 31.3, 30.9), calipers().stream().map(CaliperReading::thickness).toList());
        assertEquals(List.of(15.0, 450.0, 450.0), calipers().stream().map(CaliperReading::x).toList());
        assertEquals(5, calipers().get(2).y());
    }

    @Test
    void theLastCaliperReadingIsTakenBack() throws Exception {
        record("caliper 31.2\ncaliper 31.9\ncaliper back\n" + "0\n".repeat(12) + "done\n", "--thickness", "31");

        assertEquals(List.of(31.2), calipers().stream().map(CaliperReading::thickness).toList());
    }

    // The place that was asked for stays asked for, and the heights go where they belong.
    @Test
    void aCaliperReadingBetweenHeightsMovesNoHeight() throws Exception {
        record("0.1\n0.2\ncaliper 31.2\n0.3\n" + "0\n".repeat(9) + "done\n", "--thickness", "31");

        assertEquals(List.of(0.1, 0.2, 0.3), BoardFile.read(folder.resolve("board.csv"), Defaults.NOTHING).readings()
            .stream().limit(3).map(reading -> reading.z()).toList());
    }

    @Test
    void aThicknessThatIsNoneIsRefusedAndNothingIsKept() throws Exception {
        String said = record("caliper thick\ncaliper 1 2 3 4\n" + "0\n".repeat(12) + "done\n", "--thickness", "31");

        assertTrue(said.contains("Expected thickness in mm but found \"thick\""), said);
        assertEquals(List.of(), calipers());
    }
}
