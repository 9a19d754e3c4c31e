package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import outwind.report.words.Release;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine;

/** How the program speaks when it is asked for help, asked to be quiet, misunderstood, or broken. */
class CourtesyTest {

    private static final String SAMPLE = "sample-probes/hall-table.csv";

    @TempDir
    private Path folder;

    private record Run(int code, String out, String err) { }

    private static Run run(CommandLine commandLine, String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(commandLine, new PrintWriter(out), new PrintWriter(err), args);
        return new Run(code, out.toString(), err.toString());
    }

    private static Run run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out), new PrintWriter(err), args);
        return new Run(code, out.toString(), err.toString());
    }

    static List<String> commands() {
        return List.copyOf(Main.whole(System.in).getSubcommands().keySet());
    }

    @ParameterizedTest
    @MethodSource("commands")
    void helpHasAnExampleAndNoColourAndFitsAnyWidth(String command) {
        for (int columns : new int[] {55, 80, 120}) {
            Run run = run(Main.whole(System.in).setUsageHelpWidth(columns), command, "--help");

            assertEquals(0, run.code());
            assertTrue(run.out().contains("\nExample: "), run.out());
            assertTrue(run.out().contains("outwind " + command), run.out());
            assertFalse(run.out().contains("\u001b"), run.out());
            run.out().lines().forEach(line -> assertTrue(line.length() <= columns, line));
        }
    }

    @Test
    void helpOfTheWholeHasAnExampleAndNoColour() {
        Run run = run("--help");

        assertTrue(run.out().contains("Example: outwind judge"), run.out());
        assertFalse(run.out().contains("\u001b"), run.out());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "juge board.csv|outwind has no command juge. Did you mean judge?|outwind --help",
        "blank|outwind has no command blank. Did you mean blanks?|outwind --help",
        "qqq|outwind has no command qqq. Commands are |outwind --help",
        "judge --taret 20mm x.csv|outwind judge has no option --taret. Did you mean --target|outwind judge --help",
        "stack --shoprate=4 x|outwind stack has no option --shoprate=4. Did you mean --shop or --shop-rate|outwind stack --help",
        "judge|Missing required parameter: 'FILE'|outwind judge --help",
        "blanks a.csv b.csv|outwind blanks takes no more than it was given before b.csv.|outwind blanks --help"})
    void aSlipOnTheCommandLineIsAnsweredInTwoLines(String line, String said, String help) {
        Run run = run(line.split(" "));

        assertEquals(2, run.code());
        assertTrue(run.err().startsWith(said), run.err());
        assertTrue(run.err().endsWith("See: " + help + System.lineSeparator()), run.err());
        assertEquals(2, run.err().lines().count(), run.err());
        assertEquals("", run.out());
    }

    @Test
    void aFileOfAnImpossibleNameIsToldWithoutTheNameOfAClass() {
        Run run = run("judge", "a\0b.csv");

        assertEquals(2, run.code());
        assertTrue(run.err().contains("no file or folder can have the name"), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void quietlyNothingIsPrintedAndTheFilesAreWritten() {
        Run run = run("judge", "--quiet", "--no-chart", "--out", folder.toString(), SAMPLE);

        assertEquals(new Run(0, "", ""), run);
        assertTrue(Files.exists(folder.resolve("hall-table.txt")));
        assertEquals(new Run(0, "", ""), run("--quiet", "blanks", "--no-chart", "--out", folder.toString(), SAMPLE));
        assertTrue(Files.exists(folder.resolve("hall-table-blanks.txt")));
    }

    @Test
    void quietlyWhatWentWrongIsStillToldAndHelpIsStillHelp() {
        Run wrong = run("judge", "--quiet", "no-such-board.csv");

        assertEquals(1, wrong.code());
        assertEquals("", wrong.out());
        assertTrue(wrong.err().contains("there is no file of this name"), wrong.err());
        assertTrue(run("judge", "--quiet", "--help").out().startsWith("Usage: outwind judge"));
    }

    @Test
    void everyCommandMayBeQuiet() {
        for (String command : commands()) {
            assertTrue(run(command, "--help").out().contains("--quiet"), command);
        }
    }

    @Test
    void theShellLearnsCommandsAndOptions() {
        Run run = run("completion");

        assertEquals(0, run.code());
        assertTrue(run.out().contains("complete -o filenames -F _outwind outwind"), run.out());
        for (String word : List.of("judge", "blanks", "stack", "--target", "--bill", "--quiet")) {
            assertTrue(run.out().contains(word), word);
        }
    }

    /** A command that breaks down in the way that it is asked for. */
    @Command(name = "breaks")
    private static final class Breaking implements Runnable {

        @Parameters
        private String how;

        @Override
        public void run() {
            switch (how) {
                case "bug" -> throw new IllegalStateException("seven blanks,\n\tbut room for six");
                case "bug without words" -> throw new CompletionException(new NullPointerException());
                case "memory" -> throw new OutOfMemoryError("Java heap space");
                case "memory of another thread" -> throw new CompletionException(new OutOfMemoryError());
                case "depth" -> deep(0);
                default -> throw new java.io.UncheckedIOException(new IOException("Stale file handle"));
            }
        }

        private static int deep(int depth) {
            return deep(depth + 1) + 1;
        }
    }

    private static Run broken(String how) {
        Run run = run(new CommandLine(new Breaking()), how);
        assertEquals(1, run.code());
        assertEquals(1, run.err().lines().count(), run.err());
        assertFalse(run.err().contains("\tat "), run.err());
        return run;
    }

    @Test
    void aFaultOfOursIsOneLineThatSaysWhatToReport() {
        String err = broken("bug").err();

        assertTrue(err.startsWith("Outwind itself is at fault here, not your input. Please report this line, the"
            + " command and its files: outwind " + Release.version() + ", Java " + System.getProperty("java.version")
            + ", IllegalStateException at outwind.cli.CourtesyTest$Breaking:"), err);
        assertTrue(err.strip().endsWith(": seven blanks, but room for six"), err);
        assertTrue(broken("bug without words").err().contains("NullPointerException at outwind."));
        assertTrue(broken("depth").err().contains("StackOverflowError at outwind."));
    }

    @Test
    void memoryThatRunsOutIsSaidWithWhatToDo() {
        for (String how : List.of("memory", "memory of another thread")) {
            String err = broken(how).err();
            assertTrue(err.startsWith("This takes more memory than Java was given, "), err);
            assertTrue(err.contains("-Xmx4g"), err);
        }
    }

    @Test
    void aDiskThatFailsInTheMidstIsNoFaultOfOurs() {
        assertEquals("Stale file handle" + System.lineSeparator(), broken("disk").err());
    }

    @Test
    void theWholeCauseIsShownToWhoAsksForIt() {
        StringWriter err = new StringWriter();

        Breakdown.tell(new IllegalStateException("seven blanks"), new PrintWriter(err), true);

        assertTrue(err.toString().lines().count() > 3, err.toString());
        assertTrue(err.toString().contains("\tat outwind.cli.CourtesyTest"), err.toString());
    }
}
