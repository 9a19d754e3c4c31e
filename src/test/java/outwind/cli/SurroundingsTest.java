package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The program in a process of its own on odd machines: what it writes is the same to the byte wherever it runs. Each
 * shell line sets up its surroundings and ends where the program's name begins.
 */
@DisabledOnOs(OS.WINDOWS)
class SurroundingsTest {

    private static final String USUAL = "exec ";

    @TempDir
    private static Path folder;

    private static Path usual;

    @BeforeAll
    static void asUsual() throws Exception {
        usual = written("usual", USUAL, "", "");
    }

    /** Reports, sheets and JSON of a board in mm and one in inches. */
    private static Path written(String name, String surroundings, String java, String after)
            throws IOException, InterruptedException {
        Path out = folder.resolve(name);
        String run = surroundings + "'" + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -Djava.awt.headless=true -XX:-UsePerfData -XX:TieredStopAtLevel=1 " + java + " -cp '"
            + System.getProperty("java.class.path") + "' outwind.cli.Main judge sample-probes/hall-table.csv"
            + " sample-probes/blanket-chest-inches.csv --json --quiet --out '" + out + "' " + after;
        Process process = new ProcessBuilder("/bin/sh", "-c", run)
            .redirectErrorStream(true).redirectOutput(folder.resolve(name + ".said").toFile()).start();
        process.getOutputStream().close();
        assertTrue(process.waitFor(120, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), Files.readString(folder.resolve(name + ".said")));
        return out;
    }

    private static List<String> names(Path out) throws IOException {
        try (Stream<Path> files = Files.list(out)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static void assertAsUsual(Path out) throws IOException {
        assertEquals(names(usual), names(out));
        for (String name : names(usual)) {
            assertArrayEquals(Files.readAllBytes(usual.resolve(name)), Files.readAllBytes(out.resolve(name)), name);
        }
    }

    // Digits of its own; a Turkish dotless i and a decimal comma.
    @ParameterizedTest
    @ValueSource(strings = {"ar-EG-u-nu-arab", "tr-TR"})
    void nothingDependsOnTheLocale(String tag) throws Exception {
        String[] parts = tag.split("-", 4);

        assertAsUsual(written(tag, "LC_ALL=" + parts[0] + "_" + parts[1] + ".UTF-8 exec ", "-Duser.language=" + parts[0]
            + " -Duser.country=" + parts[1] + (parts.length > 2 ? " -Duser.extensions=" + tag.substring(6) : ""), ""));
    }

    @Test
    void nothingDependsOnTheShell() throws Exception {
        assertAsUsual(written("odd", "umask 077; unset HOME TERM LANG; cd .; COLUMNS=23 LINES=1 TZ=Pacific/Chatham"
            + " LC_ALL=C exec ", "-Duser.home=/nowhere -Dfile.encoding=ISO-8859-1 -Duser.timezone=Pacific/Chatham", ""));
    }

    @Test
    void nothingDependsOnClosedStreams() throws Exception {
        assertAsUsual(written("closed", USUAL, "", "<&-"));
    }
}
