package outwind.report.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;

/** How every report for scripts is spelt: indented, and what is one of a few kinds in plain words. */
public final class JsonText {

    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private JsonText() { }

    /** A tree as text, with a line end after it. */
    public static String of(ObjectNode root) {
        try {
            return MAPPER.writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of numbers and words could not be written", e);
        }
    }

    /** One of a few kinds in words: {@code TOO_THICK} is "too thick". */
    static String words(Enum<?> kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
