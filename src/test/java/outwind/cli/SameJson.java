package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reports for scripts compared: the same names and words, and numbers that agree to nine digits. */
final class SameJson {

    /** Machines round elementary functions otherwise in the last digit, and what is computed from them in some more. */
    private static final double AGREEMENT = 1e-9;

    private SameJson() { }

    static void assertSame(Path expected, Path actual) throws IOException {
        JsonNode before = read(expected);
        JsonNode now = read(actual);
        if (!before.equals(SameJson::compare, now)) {
            // Says where, line by line.
            assertEquals(before.toPrettyString(), now.toPrettyString(), expected.toString());
        }
    }

    /** Without the version of the program, which changes with each release. */
    private static JsonNode read(Path file) throws IOException {
        ObjectNode root = (ObjectNode) new ObjectMapper().readTree(Files.readString(file));
        root.remove("version");
        return root;
    }

    private static int compare(JsonNode a, JsonNode b) {
        boolean same = a.isNumber() && b.isNumber()
            ? Math.abs(a.doubleValue() - b.doubleValue()) <= AGREEMENT * Math.max(1, Math.abs(a.doubleValue()))
            : a.equals(b);
        return same ? 0 : 1;
    }
}
