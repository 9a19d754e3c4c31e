package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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

    @TempDir
    private Path folder;

    private Screen screen;

    private void start(String terminal, String... options) throws IOException {
        start(Map.of("TERM", terminal), options);
    }

    private void start(Map<String, String> environment, String... options) throws IOException {
        Stream<String> command = Stream.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            // As the manifest of the runnable jar asks for.
            "--enable-native-access=ALL-UNNAMED",
            "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), "outwind.cli.Main", "record",
            file().toString(), "--length", "1180", "--width", "212", "--thickness", "31.5");
        screen = new Screen(Path.of("").toAbsolutePath(), environment,
            Stream.concat(command, Arrays.stream(options)).toArray(String[]::new));
    }

    private Path file() {
        return folder.resolve("board.csv");
    }

    private void await(String text) throws InterruptedException {
        screen.await(text);
    }

    private void type(String keys) throws IOException {
        screen.type(keys);
    }

    private void requireEnd() throws InterruptedException {
        assertEquals(0, screen.exitCode(), screen.toString());
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
        if (screen != null) {
            screen.close();
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

        screen.exitCode();
        assertEquals(List.of(0.5), heights());
        assertEquals(saysGoodbye, screen.toString().contains("1 reading is in "), screen.toString());
        assertTrue(Files.readString(file()).endsWith("\n"));
        assertFalse(screen.toString().contains("Exception"), screen.toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"xterm", "dumb"})
    void toAPersonQuestionsCannotBeAskedQuietly(String terminal) throws IOException,
            InterruptedException {
        start(terminal, "--quiet");

        await("--quiet would hide the questions");
        assertEquals(2, screen.exitCode());
        assertFalse(Files.exists(file()));
    }

    @Test
    void aDumbTerminalGetsNoKeysAndNoColours() throws IOException, InterruptedException {
        start("dumb");
        requireOneReading();
        assertFalse(screen.toString().replace("\b \b", "").contains("\u001b"), screen.toString());
    }

    // The library that edits lines once looked at what the terminal can do by programs, and printed their stack trace.
    @ParameterizedTest
    @ValueSource(strings = {"xterm", "never-heard-of"})
    void noProgramIsStartedWhateverTheTerminal(String terminal) throws IOException, InterruptedException {
        Path programs = Files.createDirectory(folder.resolve("programs"));
        for (String name : List.of("infocmp", "test", "tty", "stty", "uname", "sh", "tput")) {
            Path program = Files.writeString(programs.resolve(name), "#!/bin/sh\necho " + name + " >> '"
                + folder.resolve("started") + "'\nexit 1\n");
            assertTrue(program.toFile().setExecutable(true));
        }
        start(Map.of("TERM", terminal, "PATH", programs.toString()));
        requireOneReading();
        assertFalse(Files.exists(folder.resolve("started")), () -> "started: " + folder);
        assertFalse(screen.toString().contains("Exception"), screen.toString());
    }

    /** Types one reading, mending a digit on the way, and ends. */
    private void requireOneReading() throws IOException, InterruptedException {
        await("1 of 18, x ");
        type("0.37" + BACKSPACE + "5\r");
        await("2 of 18, x ");
        type(CTRL_D);

        await("1 reading is in ");
        requireEnd();
        assertEquals(List.of(0.35), heights());
    }
}
