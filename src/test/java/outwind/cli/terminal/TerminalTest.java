package outwind.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Text arrives at the terminal in its width and its characters. */
class TerminalTest {

    private static Terminal terminal(String columns, String... properties) {
        Properties machine = new Properties();
        for (int i = 0; i < properties.length; i += 2) {
            machine.setProperty(properties[i], properties[i + 1]);
        }
        return Terminal.of(Map.of("COLUMNS", columns), machine);
    }

    private static byte[] printed(Terminal terminal, String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintWriter writer = terminal.writer(new PrintStream(bytes, true), "stdout");
        writer.print(text);
        writer.flush();
        return bytes.toByteArray();
    }

    @ParameterizedTest
    @CsvSource({"'', 80, 80", "wide, 80, 80", "-5, 80, 80", "0, 80, 80", "10, 40, 55", "40, 40, 55", "60, 60, 60",
        "100, 100, 100", "500, 120, 120", "99999999999, 80, 80"})
    void itsWidthIsWhatColumnsSays(String said, int columns, int help) {
        assertEquals(columns, terminal(said).columns());
        assertEquals(help, terminal(said).helpColumns());
    }

    // The names that POSIX gives the locale C, and usual ones of Windows.
    @ParameterizedTest
    @CsvSource({"ANSI_X3.4-1968, '2.00 m2, 4 x 5, 18 deg, a-b, -1 ... Tur'",
        "UTF-8, '2.00 m², 4 × 5, 18°, a–b, −1 … Tür'", "ISO-8859-1, '2.00 m², 4 × 5, 18°, a-b, -1 ... Tür'",
        "windows-1252, '2.00 m², 4 × 5, 18°, a–b, -1 … Tür'"})
    void whatItCannotShowIsWrittenWithStandIns(String charset, String shown) {
        Terminal terminal = terminal("", "native.encoding", charset);

        byte[] bytes = printed(terminal, "2.00 m², 4 × 5, 18°, a–b, −1 … Tür");

        assertEquals(shown, new String(bytes, Charset.forName(charset)));
    }

    @Test
    void aLetterWithoutStandInIsAQuestionMark() {
        assertEquals("board ?, 13?", StandIns.in("board 板, 13\uD83E\uDEB5", StandardCharsets.US_ASCII));
    }

    @Test
    void theStreamsOwnCharactersGoBeforeTheLocales() {
        assertEquals(1, printed(terminal("", "stdout.encoding", "ISO-8859-1", "native.encoding", "UTF-8"), "²").length);
        assertEquals(1, printed(terminal("", "sun.stdout.encoding", "Cp1252", "native.encoding", "UTF-8"), "²").length);
        assertEquals(2, printed(terminal("", "stderr.encoding", "Cp1252", "native.encoding", "UTF-8"), "²").length);
        assertEquals(1, printed(terminal("", "stdout.encoding", "no such", "native.encoding", "US-ASCII"), "²").length);
    }

    // Every character of ours that is not ASCII, so that none comes out as a question mark.
    @Test
    void everySignThatReportsUseHasAStandIn() throws IOException {
        try (Stream<Path> reports = Files.list(Path.of("reports"))) {
            for (Path report : reports.filter(file -> file.toString().endsWith(".txt")).toList()) {
                String text = Files.readString(report);
                assertEquals(text.chars().filter(c -> c == '?').count(),
                    StandIns.in(text, StandardCharsets.US_ASCII).chars().filter(c -> c == '?').count(), "" + report);
            }
        }
    }

    static Stream<Path> reports() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("reports"))) {
            return files.filter(file -> file.toString().endsWith(".txt")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("reports")
    void aReportOnANarrowTerminalHasTheSameWordsInShorterLines(Path report) throws IOException {
        String text = Files.readString(report);

        for (int columns : new int[] {40, 50, 64, 79}) {
            String folded = FoldedText.of(text, columns);

            assertEquals(words(text), words(folded), report + " at " + columns);
            for (String line : folded.split("\n")) {
                assertTrue(line.length() <= columns || !line.strip().contains(" "), line);
            }
        }
    }

    /** Words in their order; the lines under headings are none. */
    private static List<String> words(String text) {
        return Arrays.stream(text.strip().split("\\s+")).filter(word -> !word.matches("-{3,}")).toList();
    }

    @Test
    void aReportAsWideAsTheTerminalStaysAsItIs() throws IOException {
        String text = Files.readString(Path.of("reports/hall-table.txt"));

        assertEquals(text, new String(printed(terminal("80", "native.encoding", "UTF-8"), text),
            StandardCharsets.UTF_8));
        assertEquals(text, FoldedText.of(text, 80));
    }

    // Worked by hand: the first line has 78 characters, and the next word would not have gone behind it.
    @Test
    void aParagraphIsPutTogetherAndWrappedAnew() {
        String text = """
             1. Lay the board on the bed with face A up, as it lay when you touched off.
                Slide these shims in until they just touch.
             2. Cut.
            """;

        assertEquals("""
             1. Lay the board on the bed with face A
                up, as it lay when you touched off.
                Slide these shims in until they just
                touch.
             2. Cut.
            """, FoldedText.of(text, 40));
    }

    // Worked by hand: of three blanks between columns two are taken out where all rows have them, from the right.
    @Test
    void aTableIsDrawnTogether() {
        String text = "  no.   x (mm)   edge   shim (mm)   give\n    1       40   near         2.0   0.17\n";

        assertEquals(text, FoldedText.of(text, 40));
        assertEquals("  no.   x (mm)   edge shim (mm) give\n    1       40   near       2.0 0.17\n",
            FoldedText.of(text, 36));
        assertEquals(" no. x (mm) edge shim (mm) give\n   1     40 near       2.0 0.17\n",
            FoldedText.of(text, 31));
    }

    @Test
    void aFaultKeepsItsTwoLines() {
        assertEquals("""
            hall-table.csv:10:8: expected z in mm but
            found "-1.1O"
              Type a number such as -1.10.
            """, FoldedText.of("hall-table.csv:10:8: expected z in mm but found \"-1.1O\"\n"
                + "  Type a number such as -1.10.\n", 42));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "\n\n", "a", "a\n", "-----------------------------------------------------\n",
        "                                                       x", "  y"})
    void littleTextIsNoTrouble(String text) {
        assertEquals(text.strip().replaceAll("-+", ""), FoldedText.of(text, 40).strip().replaceAll("-+", ""));
        assertFalse(FoldedText.of(text, 40).lines().anyMatch(line -> line.matches("-{41,}")));
    }
}
