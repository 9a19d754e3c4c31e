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
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** What README and the pages of the site show is what the program prints, and what they link to is there. */
class PagesTest {

    private static final Path PAGES = Path.of("src/site/markdown");

    private static String page(String name) throws IOException {
        return Files.readString(PAGES.resolve(name));
    }

    /** README and every page. */
    private static Map<Path, String> all() throws IOException {
        Map<Path, String> all = new TreeMap<>(Map.of(Path.of("README.md"), readme()));
        try (var pages = Files.list(PAGES)) {
            for (Path page : pages.toList()) {
                all.put(page, Files.readString(page));
            }
        }
        return all;
    }

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"));
    }

    @ParameterizedTest
    @CsvSource({"stair-tread-kink-blanks.txt, blanks.md, stair tread", "stack.txt, stack.md, Of 14 boards",
        "stack-benches.txt, stack.md, The bill is met by", "side-table-top-points.txt, measuring.md, side table top"})
    void theReportsShownAreTheRealOnes(String file, String page, String beginning) throws IOException {
        String shown = block(page(page), beginning, "...\n```");

        String report = Files.readString(Path.of("reports", file));

        assertTrue(shown.startsWith(beginning), shown);
        assertEquals(report.substring(0, shown.length()), shown);
    }

    @Test
    void theGridsShownAreThoseOfTheReport() throws IOException {
        String report = Files.readString(Path.of("reports/side-table-top-points.txt"));
        String table = report.substring(report.indexOf("  grid  "), report.indexOf("\n\nMinutes:"));

        assertTrue(page("measuring.md").contains("```\n" + table + "\n```"), table);
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
        assertTrue(page("board-files.md").contains("```\n" + fault + "```"), fault);
    }

    @Test
    void theTouchOffsShownAreReallyAskedFor(@TempDir Path folder) throws IOException {
        String shown = block(page("recording.md"), "18 places", "...\n```");
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
    void theBoardFileOfReadmeGivesTheReportOfReadme(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("my-board.csv"), block(readme(), "# board: hall table", "```"));
        StringWriter out = new StringWriter();

        Main.run(new PrintWriter(out), new PrintWriter(new StringWriter()), "judge", "--no-chart", "--out",
            folder.toString(), file.toString());

        String shown = block(readme(), "hall table top", "...\n```");
        assertTrue(shown.lines().count() > 5, shown);
        assertEquals(shown, out.toString().substring(0, shown.length()));
    }

    @Test
    void everySampleIsNamedAndEveryOptionOfEveryCommand() throws IOException {
        String boardFiles = page("board-files.md");
        try (var samples = Files.list(Path.of("sample-probes"))) {
            samples.filter(Files::isRegularFile).forEach(sample -> assertTrue((boardFiles
                + "`sample-probes/outwind-shop.txt`").contains(sample.getFileName() + "`"), "" + sample));
        }
        CommandLine whole = Main.whole(System.in);
        for (CommandLine command : whole.getSubcommands().values()) {
            String name = command.getCommandName();
            assertTrue(readme().contains("`" + name), name);
            for (OptionSpec option : command.getCommandSpec().options()) {
                assertTrue(option.usageHelp() || option.versionHelp() || option.hidden() || pagesWith(name).contains(option.longestName()),
                    name + " " + option.longestName());
            }
        }
    }

    /** What the options of a command are explained on: its own page and those it leads to. */
    private static String pagesWith(String command) throws IOException {
        return readme() + page("index.md") + page("board-files.md") + page(switch (command) {
            case "points" -> "measuring.md";
            case "record" -> "recording.md";
            case "bench" -> "bench.md";
            case "blanks" -> "blanks.md";
            case "stack" -> "stack.md";
            default -> "shop-file.md";
        }) + ("stack".equals(command) ? page("blanks.md") : "");
    }

    @Test
    void everyKeyIsExplained(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("board.csv"), "# colour: red\nx,y,z\n1,1,0\n");
        StringWriter err = new StringWriter();

        Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), "judge", file.toString());

        Matcher keys = Pattern.compile("Keys are ([^;]*);").matcher(err.toString().replaceAll("\\s+", " "));
        assertTrue(keys.find(), err.toString());
        for (String key : keys.group(1).split(", ")) {
            assertTrue(page("board-files.md").contains("`" + key + "`"), key);
        }
    }

    @Test
    void everyLinkLeadsToAFileAndEveryPageLinksHome() throws IOException {
        for (var page : all().entrySet()) {
            Path folder = page.getKey().toAbsolutePath().getParent();
            for (MatchResult link : Pattern.compile("\\]\\(([^)#]+)(?:#([^)]*))?\\)").matcher(page.getValue()).results()
                .filter(link -> !link.group(1).startsWith("http")).toList()) {
                Path target = folder.resolve(link.group(1)).normalize();
                assertTrue(Files.exists(target), page.getKey() + ": " + link.group());
                if (link.group(2) != null) {
                    assertTrue(Files.readAllLines(target).stream().filter(line -> line.startsWith("#"))
                        .map(line -> line.replaceFirst("#+ ", "").toLowerCase(Locale.ROOT).replace(' ', '-'))
                        .anyMatch(link.group(2)::equals), page.getKey() + ": " + link.group());
                }
            }
            if (page.getKey().startsWith(PAGES)) {
                String name = page.getKey().getFileName().toString();
                assertTrue("index.md".equals(name) || page.getValue().contains("(index.md)"), name + " does not link home");
                assertTrue("index.md".equals(name) || page("index.md").contains("(" + name + ")"), "no link to " + name);
            }
        }
    }

    @Test
    void readmeFitsOnTwoScreensAndNoSentenceIsLong() throws IOException {
        assertTrue(Files.size(Path.of("README.md")) <= 8000);
        for (var page : all().entrySet()) {
            for (String sentence : sentences(page.getValue())) {
                assertTrue(sentence.split("\\s+").length <= 25, page.getKey() + ": " + sentence);
            }
        }
    }

    /** Running text, without code, tables and headings. */
    private static List<String> sentences(String markdown) {
        String text = markdown.replaceAll("(?s)```.*?```", "").replaceAll("(?m)^(    .*|\\|.*|#.*)$", "")
            .replaceAll("!?\\[([^\\]]*)\\]\\([^)]*\\)", "$1").replaceAll("`[^`]*`", "X")
            .replaceAll("(?m)^(- |\\d+\\. )", "\n\n");
        return List.of(text.split("(?<=[.?!:;])\\s+|\\n\\s*\\n"));
    }

    private static String block(String page, String beginning, String end) {
        int start = page.indexOf("```\n" + beginning) + 4;
        assertTrue(start > 4, beginning);
        return page.substring(start, page.indexOf(end, start));
    }
}
