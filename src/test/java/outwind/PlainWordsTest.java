package outwind;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Everything that is written in the project uses today's English: text for users, comments and tests alike. */
class PlainWordsTest {

    /** Words and turns that no foreman would say, and no technical text needs. */
    private static final Pattern OLD = Pattern.compile("(?i)\\b(anew|reckon\\w*|foret[eo]l[dl]\\w*|hangs? on|so held|round about"
        + "|left to itself|goes before|lost in the noise|nought|whence|hence|thereof|wherein|whilst|betwixt|forthwith|lest"
        + "|(is|are|was|were|be) told (in|by|as|of|from the bed))\\b");

    @Test
    void noOldWordsAreWritten() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path file : written()) {
            int number = 0;
            for (String line : Files.readAllLines(file)) {
                number++;
                if (OLD.matcher(line).find()) {
                    found.add(file + ":" + number + ": " + line.strip());
                }
            }
        }
        assertEquals(List.of(), found);
    }

    private static List<Path> written() throws IOException {
        try (Stream<Path> sources = Files.walk(Path.of("src"))) {
            return Stream.concat(sources.filter(file -> file.toString().matches(".*\\.(java|md|js|html|css)")),
                    Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md")))
                .filter(file -> !file.endsWith("PlainWordsTest.java")).sorted().toList();
        }
    }
}
