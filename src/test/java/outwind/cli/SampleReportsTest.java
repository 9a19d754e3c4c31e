package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every sample board judged as README says: reports/ holds our own earlier output, a snapshot. */
class SampleReportsTest {

    private static final Pattern NUMBER = Pattern.compile("\\d+ \\d+/\\d+|\\d+([./]\\d+)?");

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
    void itsReportIsThatInTheTreeAndFitsOnAPage(Path sample, @TempDir Path folder) throws IOException {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();

        int code = Main.run(new PrintWriter(out), new PrintWriter(err), "judge", "--out", folder.toString(), "--no-chart",
            sample.toString());

        assertEquals("", err.toString());
        assertEquals(0, code);
        String name = sample.getFileName().toString().replaceFirst("\\.[a-z]+$", "");
        String report = Files.readString(folder.resolve(name + ".txt"));
        assertEquals(Files.readString(Path.of("reports", name + ".txt")), report);
        assertEquals(Files.readString(Path.of("reports", name + "-details.txt")),
            Files.readString(folder.resolve(name + "-details.txt")));
        assertTrue(Files.size(Path.of("reports", name + ".png")) > 0);
        for (String line : out.toString().lines().toList()) {
            assertTrue(line.startsWith("Written:") || line.length() <= 80, line);
        }
        // What is read at the machine fits on one screen; an inch fraction is one number. What the bed is too small for
        // adds four numbers of its own.
        int most = report.contains("LARGER THAN THE BED") ? 64 : 60;
        assertTrue(report.lines().count() <= 40, report.lines().count() + " lines\n" + report);
        assertTrue(NUMBER.matcher(report).results().count() <= most, report);
    }
}
