package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The completion script as a shell runs it, in folders with hostile names. */
class CompletionTest {

    @TempDir
    private Path folder;

    /** What bash offers for a command line whose last word is being typed. */
    private List<String> offered(String... words) throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "no bash on this machine");
        StringWriter script = new StringWriter();
        Main.run(new PrintWriter(script), new PrintWriter(new StringWriter()), "completion");
        String quoted = Arrays.stream(words).map(word -> "'" + word + "'").reduce("outwind", (a, b) -> a + " " + b);
        String run = script + "\nCOMP_WORDS=(" + quoted + ")\nCOMP_CWORD=" + words.length
            + "\n_outwind\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n";
        Process bash = new ProcessBuilder("/bin/bash", "--norc", "-c", run).directory(folder.toFile())
            .redirectErrorStream(true).start();
        String out = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(bash.waitFor(20, TimeUnit.SECONDS));
        return out.lines().filter(line -> !line.isEmpty()).toList();
    }

    @Test
    void commandsOptionsAndFilesAreOffered() throws IOException, InterruptedException {
        Files.writeString(folder.resolve("hall table.csv"), "");

        assertEquals(List.of("judge"), offered("ju"));
        assertTrue(offered("judge", "--ta").contains("--target"));
        assertEquals(List.of("hall table.csv"), offered("judge", "ha"));
    }

    // Once the names of files went through the shell's word expansion, and Tab ran what they held.
    @Test
    void namesOfFilesAreNeverRun() throws IOException, InterruptedException {
        List<String> names = List.of("$(touch ran).csv", "`touch ran`.csv", "a;touch ran;.csv", "${IFS}touch.csv");
        for (String name : names) {
            Files.writeString(folder.resolve(name), "");
        }

        List<String> offered = offered("judge", "");

        assertTrue(offered.containsAll(names), offered.toString());
        assertFalse(Files.exists(folder.resolve("ran")), "a file name was run");
    }

    // The benchmark ReaderFuzz types 100,000 of these lines.
    @Test
    void whateverIsTypedOnlyWhatFitsIsOffered() throws IOException {
        assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "no bash on this machine");
        SplittableRandom random = new SplittableRandom(1);
        try (CompletionShell shell = new CompletionShell(Files.createDirectory(folder.resolve("typed")))) {
            for (int i = 0; i < 60; i++) {
                List<String> typed = CompletionShell.typed(random);
                assertEquals("", shell.fault(typed), typed.toString());
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"/bin/bash, --norc", "/bin/zsh, -f"})
    void whatTabAddsIsTheNameAndNothingRuns(String shell, String bare) throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(Path.of(shell)), "no " + shell + " on this machine");
        StringWriter script = new StringWriter();
        Main.run(new PrintWriter(script), new PrintWriter(new StringWriter()), "completion");
        Path sourced = Files.writeString(folder.resolve("completion.sh"), script
            + "\noutwind() { printf '<%s>' \"$@\"; printf 'shown\\n'; }\n");
        Path boards = Files.createDirectory(folder.resolve("boards"));
        for (String name : List.of("$(touch ran).csv", "`touch ran`.csv", "hall table.csv", "it's;touch ran;.csv")) {
            Files.writeString(boards.resolve(name), "");
        }
        try (Screen screen = new Screen(boards, Map.of("TERM", "xterm", "PS1", "> ", "HOME", folder.toString()),
                shell, bare, "-i")) {
            screen.type("source '" + sourced + "'; echo rea''dy\r");
            screen.await("ready");
            screen.type("outwind ju\t\r");
            screen.await("<judge>shown");
            screen.type("outwind judge --targ\t\r");
            screen.await("<judge><--target>shown");
            screen.type("outwind judge ha\t\r");
            screen.await("<judge><hall table.csv>shown");
            screen.type("outwind judge '$(t\t\r");
            screen.await("<judge><$(touch ran).csv>shown");
            screen.type("outwind judge \\`\t\r");
            screen.await("<judge><`touch ran`.csv>shown");
            screen.type("outwind judge it\t\r");
            screen.await("<judge><it's;touch ran;.csv>shown");
            screen.type("exit\r");
            screen.exitCode();
        }
        assertFalse(Files.exists(boards.resolve("ran")), "a file name was run");
    }
}
