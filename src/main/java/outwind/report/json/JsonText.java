package outwind.report.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import outwind.report.words.Release;

/** How every report for scripts is spelt: indented, what is one of a few kinds as a code, unknown as null. */
public final class JsonText {

    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    /** Raised when a name or a meaning of the schema changes; a new name alone leaves it. */
    private static final int SCHEMA_VERSION = 1;

    private JsonText() { }

    /** The root of a report, which names its schema's version, its kind and who wrote it. */
    public static ObjectNode root(String kind) {
        return JsonNodeFactory.instance.objectNode().put("schemaVersion", SCHEMA_VERSION).put("kind", kind)
            .put("version", Release.version());
    }

    /** A tree as text, with a line end after it. */
    public static String of(ObjectNode root) {
        try {
            return MAPPER.writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of numbers and words could not be written", e);
        }
    }

    /** One of a few kinds as a code: {@code TOO_THICK} is "tooThick". */
    static String code(Enum<?> kind) {
        String[] words = kind.name().toLowerCase(Locale.ROOT).split("_");
        StringBuilder code = new StringBuilder(words[0]);
        for (int i = 1; i < words.length; i++) {
            code.append(Character.toUpperCase(words[i].charAt(0))).append(words[i].substring(1));
        }
        return code.toString();
    }
}
