package outwind.report.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReportNamesTest {

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({"hall-table.csv, hall-table", "Tür 3.csv, Tür 3", "a.b.csv, a.b", "🪵.csv, 🪵", "'C:board.csv', C_board",
        "'a\\b.csv', a_b", "con.csv, _con", "nul.tar.csv, _nul.tar", "COM1, _COM1", "console.csv, console",
        ".csv, csv", "..., board", "'oak. .csv', oak", "'what?*.csv', what__"})
    void anInputsNameIsMadeFit(String file, String stem) {
        assertEquals(stem, ReportNames.stem(Path.of(file)));
    }

    @Test
    void theRootOfADiskHasAName() {
        assertEquals("board", ReportNames.stem(Path.of("/")));
    }

    static Stream<String> ways() {
        return Stream.of("../out.txt", "../../etc/passwd", "/etc/passwd", "..", ".", "", "a/../../b.txt", "..\\b.txt",
            "C:\\b.txt", "a\0b.txt", "a\nb.txt", "NUL", "nul.txt", "aux.csv", "lpt1.txt", "board.", "board. ", " board",
            "x".repeat(5000), "ü".repeat(300) + ".json", "🪵".repeat(100) + "-blanks.json", "\ud83e.txt", "\ufffd.txt",
            "a\u2028b.txt", ".hidden", "~", "-rf");
    }

    @ParameterizedTest
    @MethodSource("ways")
    void noNameLeadsOutOfTheFolder(String name) throws IOException {
        Path reports = Files.createDirectories(folder.resolve("deep/reports"));

        Path written = new Reports(reports, List.of()).write(name, "text");

        assertEquals(reports, written.getParent());
        assertEquals(reports.toRealPath(), written.toRealPath().getParent());
        assertEquals("text", Files.readString(written));
        try (Stream<Path> all = Files.walk(folder)) {
            assertEquals(1, all.filter(Files::isRegularFile).count());
        }
    }

    // Any characters at all: a fixed seed, and the case is printed.
    @Test
    void whateverItIsMadeOfANameStaysInTheFolderAndFitsAFileSystem() {
        Random random = new Random(7);
        String pieces = "ab./\\:*?\"<>|\0\n\t ~-_é🪵\ud83e²com1nul";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder name = new StringBuilder();
            for (int j = random.nextInt(random.nextInt(20) == 0 ? 400 : 12); j >= 0; j--) {
                name.append(pieces.charAt(random.nextInt(pieces.length())));
            }
            String fit = ReportNames.fit(name.toString());
            assertEquals(1, Path.of(fit).getNameCount(), name.toString());
            assertEquals(folder.resolve(fit), folder.resolve(fit).normalize(), name.toString());
            assertTrue(fit.getBytes(StandardCharsets.UTF_8).length <= 255, name.toString());
            assertFalse(fit.matches("(?s).*[/\\\\:*?\"<>|\\p{Cntrl}].*|.*[. ]|[. ].*"), name.toString());
            assertEquals(fit, ReportNames.fit(fit), "made fit twice");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"hall-table.txt", "hall-table-details.png", "stack.csv", "Tür 3.json"})
    void aFitNameStaysAsItIs(String name) {
        assertEquals(name, ReportNames.fit(name));
    }

    @Test
    void aLongNameIsCutBetweenCharactersAndLeavesRoomForWhatIsHungBehind() {
        String stem = ReportNames.stem(Path.of("🪵".repeat(60) + ".csv"));

        assertEquals("🪵".repeat(30), stem);
        assertEquals(stem + "-blanks.json", ReportNames.fit(stem + "-blanks.json"));
    }

    @Test
    void namesOfOneRunAreAllDifferent() {
        ReportNames names = new ReportNames();

        assertEquals("oak", names.free(Path.of("a/oak.csv"), "-details"));
        assertEquals("oak-2", names.free(Path.of("b/oak.csv"), "-details"));
        assertEquals("Oak-3", names.free(Path.of("c/Oak.csv"), "-details"));
        assertEquals("a_b", names.free(Path.of("a:b.csv"), "-details"));
        assertEquals("a_b-2", names.free(Path.of("a?b.csv"), "-details"));
        String cut = names.free(Path.of("x".repeat(150) + "1.csv"), "-details");
        assertEquals(cut + "-2", names.free(Path.of("x".repeat(150) + "2.csv"), "-details"));
    }

    // The sheet beside oak.txt is oak-details.png, which would also be the chart of a board oak-details.
    @Test
    void noReportTakesTheNameOfWhatIsWrittenBesideAnother() {
        ReportNames one = new ReportNames();
        ReportNames other = new ReportNames();

        assertEquals("oak", one.free(Path.of("oak.csv"), "-details"));
        assertEquals("oak-details-2", one.free(Path.of("oak-details.csv"), "-details"));
        assertEquals("oak-details", other.free(Path.of("oak-details.csv"), "-details"));
        assertEquals("oak-2", other.free(Path.of("oak.csv"), "-details"));
    }
}
