package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every output for scripts holds to the published schema, by an independent validator (JSON Schema 2020-12). */
class SchemaTest {

    private static final Path SCHEMA = Path.of("src/site/resources/schema/outwind-1.json");
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static Schema schema() throws IOException {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(Files.readString(SCHEMA));
    }

    /** What every command wrote; {@link ReportsInTheTreeTest} holds that they still do. */
    private static List<Path> outputs() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/test/resources/outwind/cli"))) {
            return files.filter(file -> file.toString().endsWith(".json")).sorted().toList();
        }
    }

    @Test
    void everyCommandHoldsToTheSchema() throws IOException {
        Schema schema = schema();
        Set<String> kinds = new TreeSet<>();
        for (Path output : outputs()) {
            JsonNode written = MAPPER.readTree(output.toFile());
            kinds.add(written.path("kind").asText());

            assertEquals(List.of(), schema.validate(written), output.toString());
        }
        Set<String> described = new TreeSet<>();
        MAPPER.readTree(SCHEMA.toFile()).path("$defs").fieldNames().forEachRemaining(described::add);
        assertEquals(described, kinds);
    }

    @Test
    void whatIsMissingOrMisspeltIsRefused() throws IOException {
        ObjectNode right = (ObjectNode) MAPPER.readTree(Path.of("src/test/resources/outwind/cli/hall-table.json").toFile());

        ObjectNode missing = right.deepCopy();
        missing.remove("verdict");
        ObjectNode misspelt = right.deepCopy();
        misspelt.put("verdikt", "yes");
        ObjectNode wrong = right.deepCopy();
        wrong.put("verdict", "perhaps");

        for (ObjectNode bad : List.of(missing, misspelt, wrong)) {
            assertFalse(schema().validate(bad).isEmpty());
        }
    }

    @Test
    void everyKeyIsDescribed() throws IOException {
        List<String> undescribed = new ArrayList<>();
        for (JsonNode properties : MAPPER.readTree(SCHEMA.toFile()).findValues("properties")) {
            properties.properties().stream().filter(key -> key.getValue().path("description").asText().isBlank())
                .forEach(key -> undescribed.add(key.getKey()));
        }

        assertEquals(List.of(), undescribed);
    }
}
