package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Whatever a user reads is easy to read.
 *
 * <p>The measure is the grade level of Kincaid, Fishburne, Rogers and Chissom, "Derivation of new readability formulas",
 * Naval Technical Training Command, Research Branch Report 8-75 (1975):
 * 0.39 words a sentence + 11.8 syllables a word − 15.59.
 */
class ReadableTextTest {

    private static final double HIGHEST_GRADE = 8;
    private static final int MOST_WORDS = 25;
    private static final int FEWEST_WORDS = 3;

    private static final Pattern WORD = Pattern.compile("[A-Za-z][A-Za-z'’-]*");
    private static final Pattern VOWELS = Pattern.compile("[aeiouy]+");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*)\"");

    /** The formula on sentences whose words and syllables are counted by hand. */
    @Test
    void theGradeIsTheOnePublished() {
        assertEquals(0.39 * 6 + 11.8 * 1 - 15.59, grade(List.of("The cat sat on the mat.")), 1e-12);
        assertEquals(0.39 * 4 + 11.8 * 8 / 4 - 15.59, grade(List.of("Every table is level.")), 1e-12);
    }

    @Test
    void pagesAreEasyToRead() throws IOException {
        for (Path page : files(Path.of("src/site/markdown"), ".md")) {
            assertReadable(page.toString(), sentences(prose(Files.readString(page))));
        }
        assertReadable("README.md", sentences(prose(Files.readString(Path.of("README.md")))));
    }

    @Test
    void helpIsEasyToRead() {
        List<String> help = new ArrayList<>();
        for (CommandLine command : commands(Main.whole(InputStream.nullInputStream())).toList()) {
            CommandSpec spec = command.getCommandSpec();
            help.addAll(sentences(String.join(" ", spec.usageMessage().description())));
            spec.args().forEach(arg -> help.addAll(sentences(String.join(" ", arg.description()))));
        }
        assertReadable("help", help);
    }

    /** The literals of a statement belong together; what is put in between them counts as a word. */
    @Test
    void messagesAreEasyToRead() throws IOException {
        List<String> messages = new ArrayList<>();
        for (Path source : files(Path.of("src/main/java"), ".java")) {
            for (String statement : Files.readString(source).split(";\\s*\n|\\{\\s*\n|\\},?\\s*\n|\\*/")) {
                String whole = statement.replaceAll("(?m)^\\s*(//|/?\\*).*$", "").replaceAll("\"\\s*\\+\\s*\"", "")
                    .replaceAll("\"\\s*:\\s*\"", "\\\\n\\\\n");
                String text = LITERAL.matcher(whole).results().map(found -> found.group(1)).collect(Collectors.joining(" it "))
                    .replace("\\n", "\n").replace("%n", "\n").replace("\\\"", "").replaceAll("(?<=[.!?]) it( it)*(?=\\s+[A-Z])", "");
                messages.addAll(sentences(text).stream().filter(sentence -> sentence.matches("[A-Z].*[a-z)]\\.")).toList());
            }
        }
        assertTrue(messages.size() > 300, messages.size() + " sentences");
        assertReadable("messages", messages);
    }

    private static void assertReadable(String what, List<String> sentences) {
        assertEquals(List.of(), sentences.stream().filter(sentence -> words(sentence).size() > MOST_WORDS).toList(), what);
        double grade = sentences.isEmpty() ? 0 : grade(sentences);
        assertTrue(grade <= HIGHEST_GRADE, what + " has grade " + grade);
    }

    private static double grade(List<String> sentences) {
        List<String> words = sentences.stream().flatMap(sentence -> words(sentence).stream()).toList();
        double syllables = words.stream().mapToInt(ReadableTextTest::syllables).sum();
        return 0.39 * words.size() / sentences.size() + 11.8 * syllables / words.size() - 15.59;
    }

    /** Groups of vowels, less an e at the end that is not sounded. */
    private static int syllables(String word) {
        String lower = word.toLowerCase(Locale.ROOT);
        int groups = (int) VOWELS.matcher(lower).results().count();
        boolean silent = lower.matches(".*[^aeiouyl]e") || lower.matches(".*[^aeiouytd]ed");
        return Math.max(1, silent && groups > 1 ? groups - 1 : groups);
    }

    private static List<String> words(String sentence) {
        return WORD.matcher(sentence).results().map(MatchResult::group).toList();
    }

    private static List<String> sentences(String text) {
        return Arrays.stream(text.split("\n\\s*\n|\n\\s*[-*] |\n\\s*\\d+\\. "))
            .map(paragraph -> paragraph.replaceAll("\\s+", " ").strip())
            .flatMap(paragraph -> Arrays.stream(paragraph.split("(?<=[.!?:;])\\s+(?=[A-Z0-9\"“(])")))
            .filter(sentence -> words(sentence).size() >= FEWEST_WORDS).toList();
    }

    /** A page without its blocks, tables, headings, pictures and the targets of its links; code counts as a word. */
    private static String prose(String markdown) {
        return markdown.replaceAll("(?s)```.*?```", "").replaceAll("(?m)^(\\||#|    ).*$", "")
            .replaceAll("!\\[[^\\]]*\\]\\([^)]*\\)", "").replaceAll("\\[([^\\]]*)\\]\\([^)]*\\)", "$1")
            .replaceAll("`[^`]*`", "Code").replace("**", "");
    }

    private static Stream<CommandLine> commands(CommandLine command) {
        return Stream.concat(Stream.of(command),
            command.getSubcommands().values().stream().flatMap(ReadableTextTest::commands));
    }

    private static List<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        }
    }
}
