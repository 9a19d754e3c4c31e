package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What README shows is what the program prints. */
class ReadmeTest {

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"));
    }

    @ParameterizedTest
    @CsvSource({"hall-table.txt, 'hall table top, left half'", "stair-tread-kink-blanks.txt, stair tread",
        "stack.txt, Of 14 boards", "stack-benches.txt, The bill is met by",
        "side-table-top-points.txt, side table top"})
    void theReportsShownAreTheRealOnes(String file, String beginning) throws IOException {
        String readme = readme();
        int start = readme.indexOf("```\n" + beginning) + 4;
        String shown = readme.substring(start, readme.indexOf("...\n```", start));

        String report = Files.readString(Path.of("reports", file));

        assertTrue(shown.startsWith(beginning), shown);
        assertEquals(report.substring(0, shown.length()), shown);
    }

    @Test
    void theGridsShownAreThoseOfTheReport() throws IOException {
        String report = Files.readString(Path.of("reports/side-table-top-points.txt"));
        String table = report.substring(report.indexOf("  grid  "), report.indexOf("\n\nMinutes:"));

        assertTrue(readme().contains("```\n" + table + "\n```"), table);
    }

    @Test
    void theFaultShownIsTheRealOne(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("hall-table.csv");
        Files.writeString(file, Files.readString(Path.of("sample-probes/hall-table.csv"))
            .replace("305,15,-0.30", "305,15,-1.1O"));
        StringWriter err = new StringWriter();

        Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), "judge", "--out", folder.toString(),
            file.toString());

        String fault = err.toString().replace(folder + "/", "");
        assertTrue(readme().contains("```\n" + fault + "```"), fault);
    }

    @Test
    void theTouchOffsShownAreReallyAskedFor(@TempDir Path folder) throws IOException {
        String readme = readme();
        int start = readme.indexOf("```\n18 places to measure") + 4;
        String shown = readme.substring(start, readme.indexOf("...\n```", start));
        String typed = shown.lines().filter(line -> line.matches("\\d+ of .*"))
            .map(line -> line.substring(line.indexOf(": ") + 2) + "\n").collect(Collectors.joining());
        StringWriter out = new StringWriter();

        Main.run(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), new PrintWriter(out),
            new PrintWriter(new StringWriter()), "record", folder.resolve("side-table.csv").toString(), "--length",
            "1180", "--width", "212", "--thickness", "31.5", "--target", "26");

        // On a terminal the answer stands behind the question.
        String asked = shown.replaceAll("(?m)^(\\d+ of [^:]*:).*$", "$1");
        assertEquals(asked, out.toString().substring(0, asked.length()));
    }

    @Test
    void everySampleAndEveryOptionIsNamed() throws IOException {
        String readme = readme();
        try (var samples = Files.list(Path.of("sample-probes"))) {
            samples.filter(Files::isRegularFile).forEach(sample -> assertTrue(readme.contains("`"
                + sample.getFileName() + "`"), "" + sample));
        }
        StringWriter help = new StringWriter();
        for (String command : new String[] {"judge", "finish", "check", "points", "record", "stack", "blanks", "bench"}) {
            Main.run(new PrintWriter(help), new PrintWriter(new StringWriter()), command, "--help");
        }
        help.toString().lines().map(String::strip).filter(line -> line.startsWith("--"))
            .map(line -> line.split("[=\\s]")[0])
            .forEach(option -> assertTrue(readme.contains(option), option));
    }
}
