package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two runs that write into one folder at once: every file is whole, and is one run's or the other's. */
class TwoRunsTest {

    private static final String SAMPLE = "sample-probes/hall-table.csv";

    @TempDir
    private Path folder;

    private static String[] arguments(Path out, String target) {
        return new String[] {"judge", "--json", "--target", target, "--out", out.toString(), SAMPLE};
    }

    private static int run(Path out, String target) {
        return Main.run(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()),
            arguments(out, target));
    }

    private static Map<String, Integer> contents(Path where) throws IOException {
        Map<String, Integer> contents = new TreeMap<>();
        try (Stream<Path> files = Files.list(where)) {
            for (Path file : files.toList()) {
                contents.put(file.getFileName().toString(), Arrays.hashCode(Files.readAllBytes(file)));
            }
        }
        return contents;
    }

    private void assertEachIsOneOrTheOther(Path both) throws IOException {
        Map<String, Integer> one = contents(folder.resolve("one"));
        Map<String, Integer> other = contents(folder.resolve("other"));
        Map<String, Integer> found = contents(both);
        assertEquals(one.keySet(), found.keySet());
        assertEquals(5, found.size());
        found.forEach((name, hash) -> {
            assertFalse(one.get(name).equals(other.get(name)), "the runs must differ in " + name);
            assertTrue(hash.equals(one.get(name)) || hash.equals(other.get(name)), name);
        });
    }

    @Test
    void filesAreWholeAndOfOneRun() throws Exception {
        assertEquals(0, run(folder.resolve("one"), "20mm"));
        assertEquals(0, run(folder.resolve("other"), "19mm"));
        Path both = folder.resolve("both");
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<CompletableFuture<Integer>> runs = IntStream.range(0, 4).mapToObj(i -> CompletableFuture
                .supplyAsync(() -> run(both, i % 2 == 0 ? "20mm" : "19mm"), threads)).toList();
            for (CompletableFuture<Integer> each : runs) {
                assertEquals(0, each.get());
            }
        } finally {
            threads.shutdown();
        }
        assertEachIsOneOrTheOther(both);

        Path processes = folder.resolve("processes");
        List<Process> started = new ArrayList<>();
        for (String target : List.of("20mm", "19mm")) {
            List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java")
                .toString(), "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"),
                "outwind.cli.Main"));
            command.addAll(List.of(arguments(processes, target)));
            started.add(new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(folder.resolve(target + ".txt").toFile()).start());
        }
        for (Process process : started) {
            assertTrue(process.waitFor(5, TimeUnit.MINUTES));
            assertEquals(0, process.exitValue());
        }
        assertEachIsOneOrTheOther(processes);
    }
}
