package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.pty4j.PtyProcess;
import com.pty4j.PtyProcessBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.file.Recording;
import outwind.board.text.BadBoardFile;

/** Guided entry on a real terminal: keys in, a screen out. */
class RecordTerminalTest {

    /** As a terminal sends them once the program has said that it takes keys. */
    private static final String UP = "\u001bOA";
    private static final String LEFT = "\u001bOD";
    private static final String BACKSPACE = "\u007f";
    private static final String CTRL_C = "\u0003";
    private static final String CTRL_D = "\u0004";

    /** Long enough for the busiest machine; nothing waits longer than it must. */
    private static final long PATIENCE_SECONDS = 30;

    @TempDir
    private Path folder;

    private PtyProcess process;
    private final StringBuilder screen = new StringBuilder();
    private int seen;

    private void start(String terminal, String... options) throws IOException {
        Map<String, String> environment = new HashMap<>(System.getenv());
        environment.put("TERM", terminal);
        Stream<String> command = Stream.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), "outwind.cli.Main", "record",
            file().toString(), "--length", "1180", "--width", "212", "--thickness", "31.5");
        process = new PtyProcessBuilder(Stream.concat(command, Arrays.stream(options)).toArray(String[]::new))
            .setEnvironment(environment).setInitialColumns(100).setInitialRows(30).start();
        Thread reader = new Thread(this::watch);
        reader.setDaemon(true);
        reader.start();
    }

    private Path file() {
        return folder.resolve("board.csv");
    }

    private void watch() {
        try (InputStream out = process.getInputStream()) {
            byte[] some = new byte[4096];
            for (int n = out.read(some); n >= 0; n = out.read(some)) {
                synchronized (screen) {
                    screen.append(new String(some, 0, n, StandardCharsets.UTF_8));
                    screen.notifyAll();
                }
            }
        } catch (IOException e) {
            // The terminal closes with the process.
            return;
        }
    }

    /** Waits until something new on the screen holds a text. */
    private void await(String text) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        synchronized (screen) {
            while (screen.indexOf(text, seen) < 0) {
                if (System.nanoTime() > end) {
                    fail("no \"" + text + "\" on the screen:\n" + screen);
                }
                screen.wait(100);
            }
            seen = screen.indexOf(text, seen) + text.length();
        }
    }

    private void type(String keys) throws IOException {
        process.getOutputStream().write(keys.getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().flush();
    }

    private void requireEnd() throws InterruptedException {
        assertTrue(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS), screen.toString());
        assertEquals(0, process.exitValue(), screen.toString());
    }

    private List<Double> heights() {
        try {
            return Recording.read(file()).entries().stream().map(entry -> entry.height().getAsDouble()).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (BadBoardFile e) {
            throw new IllegalStateException(e);
        }
    }

    @AfterEach
    void end() {
        if (process != null) {
            process.destroyForcibly();
        }
    }

    @Test
    void linesAreEditedAndEarlierOnesComeBack() throws IOException, InterruptedException {
        start("xterm");
        await("1 of 18, x ");
        type("0.37" + BACKSPACE + "5\r");
        await("2 of 18, x ");
        type(UP + LEFT + BACKSPACE + "4\r");
        await("3 of 18, x ");
        type("0.9");
        await("0.9");
        type(CTRL_C);
        await("3 of 18, x ");
        type("-0.2\r");
        await("4 of 18, x ");
        type(CTRL_D);

        await("3 readings are in ");
        requireEnd();
        assertEquals(List.of(0.35, 0.45, -0.2), heights());
    }

    @Test
    void pastedRowsAreAllTaken() throws IOException, InterruptedException {
        start("xterm-256color");
        await("1 of 18, x ");
        type("15 15 0.1\r15 106 0.2\r15,197,0.3\r302 197 0.4\r590 197 0.5\r");
        type("done\r");

        await("5 readings are in ");
        requireEnd();
        assertEquals(List.of(0.1, 0.2, 0.3, 0.4, 0.5), heights());
    }

    @ParameterizedTest
    @CsvSource({"xterm, true", "dumb, false"})
    void controlCOnAnEmptyLineEndsAndKeepsEverything(String terminal, boolean saysGoodbye)
            throws IOException, InterruptedException {
        start(terminal);
        await("1 of 18, x ");
        type("0.5\r");
        await("2 of 18, x ");
        type(CTRL_C);

        assertTrue(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS), screen.toString());
        assertEquals(List.of(0.5), heights());
        assertEquals(saysGoodbye, screen.indexOf("1 reading is in ") >= 0, screen.toString());
        assertTrue(Files.readString(file()).endsWith("\n"));
        assertFalse(screen.toString().contains("Exception"), screen.toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"xterm", "dumb"})
    void toAPersonQuestionsCannotBeAskedQuietly(String terminal) throws IOException,
            InterruptedException {
        start(terminal, "--quiet");

        await("--quiet would hide the questions");
        assertTrue(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS), screen.toString());
        assertEquals(2, process.exitValue());
        assertFalse(Files.exists(file()));
    }

    @Test
    void aDumbTerminalGetsNoKeysAndNoColours() throws IOException, InterruptedException {
        start("dumb");
        await("1 of 18, x ");
        type("0.37" + BACKSPACE + "5\r");
        await("2 of 18, x ");
        type(CTRL_D);

        await("1 reading is in ");
        requireEnd();
        assertEquals(List.of(0.35), heights());
        assertFalse(screen.toString().replace("\b \b", "").contains("\u001b"), screen.toString());
    }
}
