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
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every output for scripts holds to the published schema, by an independent validator (JSON Schema 2020-12). */
class SchemaTest {

    private static final Path SCHEMA = Path.of("src/site/resources/schema/outwind-1.json");
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static Schema schema() throws IOException {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(Files.readString(SCHEMA));
    }

    private static void run(Path out, String... args) {
        List<String> all = new ArrayList<>(Arrays.asList(args));
        all.addAll(List.of("--json", "--out", out.toString()));
        if (!List.of("check", "finish").contains(args[0])) {
            all.add("--no-chart");
        }
        Main.run(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()), all.toArray(String[]::new));
    }

    private static List<Path> outputs(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".json")).toList();
        }
    }

    private static List<String> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-probes"))) {
            return files.map(Path::toString).filter(file -> file.endsWith(".csv") || file.endsWith(".ply")).sorted()
                .toList();
        }
    }

    @Test
    void everyCommandHoldsToTheSchemaOnEverySample(@TempDir Path folder) throws IOException {
        List<String> judge = new ArrayList<>(List.of("judge"));
        judge.addAll(samples());
        run(folder.resolve("judge"), judge.toArray(String[]::new));
        run(folder.resolve("blanks"), "blanks", "--bill", "sample-probes/bills/bill-small-table.csv",
            "sample-probes/stair-tread-kink.csv");
        run(folder.resolve("lengths"), "blanks", "sample-probes/bed-rail-short.csv");
        run(folder.resolve("stack"), "stack", "sample-probes/stack/oak-01.csv", "sample-probes/stack/oak-02.csv");
        run(folder.resolve("bill"), "stack", "--recut", "--bill", "sample-probes/bills/bill-benches.csv", "sample-probes/stack");
        run(folder.resolve("pack"), "stack", "--pack", "60", "--sells", "90 EUR per m2", "sample-probes/stack");
        run(folder.resolve("uses"), "stack", "--target", "25mm,19mm", "sample-probes/stack/oak-01.csv");
        Path north = Files.createDirectories(folder.resolve("north"));
        Path south = Files.createDirectories(folder.resolve("south"));
        Files.copy(Path.of("sample-probes/stack/oak-01.csv"), north.resolve("oak-01.csv"));
        Files.copy(Path.of("sample-probes/stack/oak-02.csv"), south.resolve("oak-02.csv"));
        run(folder.resolve("compare"), "stack", "--compare", north.toString(), south.toString());
        run(folder.resolve("points"), "points", "--length", "1180", "--width", "212");
        run(folder.resolve("check"), "check", "--within", "0.2mm", "sample-probes/shelf-bow.csv");
        Path faceB = Files.writeString(folder.resolve("b.csv"), "x,y,z\n20,15,29.6\n590,15,29.5\n1160,15,29.4\n"
            + "20,106,29.5\n590,106,29.5\n1160,106,29.6\n20,197,29.4\n590,197,29.6\n1160,197,29.5\n");
        run(folder.resolve("finish"), "finish", "--target", "26mm", "sample-probes/hall-table.csv", faceB.toString());

        List<Path> outputs = outputs(folder);

        assertEquals(samples().size() + 10, outputs.size(), outputs.toString());
        for (Path output : outputs) {
            assertEquals(List.of(), schema().validate(MAPPER.readTree(output.toFile())), output.toString());
        }
    }

    @Test
    void whatIsMissingOrMisspeltIsRefused(@TempDir Path folder) throws IOException {
        run(folder, "judge", "sample-probes/hall-table.csv");
        ObjectNode right = (ObjectNode) MAPPER.readTree(folder.resolve("hall-table.json").toFile());

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
