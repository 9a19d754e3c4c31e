package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Large files made to do harm: each is answered, with a verdict or in words, within ten seconds of a processor and in
 * 512 MB of memory. What a file costs is bounded here and not measured; it usually is far less.
 */
class HostileFilesTest {

    private static final String HEAD = "# length: 1000\n# width: 200\n# thickness: 30 everywhere\n";
    private static final int SIZE = 4_000_000;

    /** A little less than what is read as a scan. */
    private static final int LARGEST = 262_000;

    private static final double MOST_SECONDS = 10;

    @TempDir
    private Path folder;

    private final Random random = new Random(11);

    private void write(String name, String head, String row, int bytes) throws IOException {
        try (BufferedWriter file = Files.newBufferedWriter(folder.resolve(name))) {
            file.write(head);
            for (int written = head.length(); written + row.length() <= bytes; written += row.length()) {
                file.write(row);
            }
        }
    }

    private String readings(int count, String separator) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < count; i++) {
            rows.append(random.nextInt(1001)).append(separator).append(random.nextInt(201)).append(separator)
                .append(random.nextInt(3)).append('\n');
        }
        return rows.toString();
    }

    private void writeAll() throws IOException {
        for (int bytes : new int[] {SIZE, LARGEST}) {
            write(bytes + "-one-line.csv", "", "x", bytes);
            write(bytes + "-commas.csv", HEAD + "x,y,z\n", ",", bytes);
            write(bytes + "-remarks.csv", "", "#\n", bytes);
            write(bytes + "-keys.csv", "", "#a:b\n", bytes);
            write(bytes + "-quotes.csv", "", "\"", bytes);
            write(bytes + "-lines-of-quotes.csv", "", "\"".repeat(9998) + "\n", bytes);
            write(bytes + "-digits.csv", "", "7", bytes);
            write(bytes + "-long-numbers.csv", HEAD + "x,y,z\n", "7".repeat(3000) + ",1,2\n", bytes);
            write(bytes + "-no-text.csv", "", "\0", bytes);
            write(bytes + "-empty-lines.csv", "", "\n", bytes);
            write(bytes + "-one-line.xyz", "", "1 ", bytes);
        }
        write("same-key.csv", "", "# length: 1000\n", LARGEST);
        write("defects.csv", HEAD, "# defect: 1 1 9 9\n", LARGEST);
        write("no-face.csv", HEAD + "x,y,z,face\n", "1,1,1,Q\n", LARGEST);
        write("fractions.csv", "# units: in\n# length: 40\n# width: 8\n# thickness: 1\nx,y,z\n",
            "1 1/3,1 1/7,1/64\n38 1/2,1,0\n20,7 3/4,1/8\n", LARGEST);
        Files.writeString(folder.resolve("many.csv"), HEAD + "x,y,z\n" + readings(400_000, ","));
        Files.writeString(folder.resolve("many.xyz"), HEAD + readings(400_000, " "));
        Files.writeString(folder.resolve("most.csv"), HEAD + "x,y,z\n" + readings(26_000, ","));
        writeScans();
        // Caliper readings that all lie in one line do not tie face B to face A, however one looks at them.
        write("calipers.csv", HEAD + "# turned: along\nx,y,z,face,thickness\n1,1,0,B,\n90,1,0,B,\n1,90,0,B,\n",
            "500,100,1,,30\n", LARGEST);
        write("cells.csv", HEAD + "y\\x" + ",7".repeat(2000) + "\n", "1" + ",0".repeat(2000) + "\n", LARGEST);
        Files.write(folder.resolve("not-utf-8.csv"), new byte[] {(byte) 0xff, (byte) 0xff, (byte) 0xff});
    }

    /** Scans of no board: all points at one place, in one line, at three places, far apart, or out of all reach. */
    private void writeScans() throws IOException {
        int bytes = 400_000;
        write("scan-of-one-place.csv", HEAD + "x,y,z\n", "1,1,1\n", bytes);
        write("scan-of-a-line.csv", HEAD + "x,y,z\n", "0,1,1\n500,101,1\n900,181,1\n", bytes);
        write("scan-of-three-places.csv", HEAD + "x,y,z\n", "1,1,1\n500,1,1\n900,181,1\n", bytes);
        write("scan-of-the-sky.csv", HEAD + "x,y,z\n", "1,1,1e300\n500,1,-1e300\n900,181,1\n", bytes);
        write("scan-of-a-county.csv", HEAD + "x,y,z\n", "1,1,1\n5e8,1,1\n900,1e8,1\n", bytes);
        write("scan-of-a-street.csv", HEAD + "x,y,z\n", "1,1,1\n5e5,1,1\n900,1e5,1\n7e5,4e5,90\n", bytes);
        StringBuilder strays = new StringBuilder(HEAD + "x,y,z\n");
        for (int i = 0; i < 40; i++) {
            strays.append(readings(1_000, ",")).append("1e200,-1e200,1e200\n1e9,5,5\n");
        }
        Files.writeString(folder.resolve("scan-with-strays.csv"), strays);
    }

    @Test
    void everyOneIsAnsweredInTimeAndInLittleMemory() throws Exception {
        writeAll();
        List<String> files = new ArrayList<>();
        try (var all = Files.list(folder)) {
            all.map(Path::toString).sorted().forEach(files::add);
        }
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = new ArrayList<>(List.of(java, "-Xmx512m", "-cp", System.getProperty("java.class.path"),
            "outwind.cli.HostileFiles", folder.resolve("reports").toString()));
        command.addAll(files);
        Path printed = folder.resolve("printed");
        Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(printed.toFile())
            .start();
        boolean ended = process.waitFor(15, TimeUnit.MINUTES);
        if (!ended) {
            process.destroyForcibly();
        }

        List<String> lines = Files.readAllLines(printed, StandardCharsets.UTF_8);
        assertTrue(ended, lines.toString());
        assertEquals(files.size(), lines.size(), String.join("\n", lines));
        Map<String, Integer> codes = new TreeMap<>();
        for (String line : lines) {
            String[] fields = line.split("\t", 4);
            codes.put(Path.of(fields[2]).getFileName().toString(), Integer.parseInt(fields[0]));
            assertTrue(Double.parseDouble(fields[1]) < MOST_SECONDS, line);
            assertTrue(fields[0].equals("0") ? fields[3].isEmpty() : fields[3].contains(": expected "), line);
            assertFalse(line.contains("memory"), line);
        }
        // The answers are not all of one kind, or only one part of the way would have been tried.
        assertEquals(0, codes.get("most.csv"));
        assertEquals(0, codes.get("fractions.csv"));
        assertEquals(0, codes.get("scan-with-strays.csv"));
        assertEquals(1, codes.get("scan-of-one-place.csv"));
        assertEquals(1, codes.get("calipers.csv"));
        assertEquals(1, codes.get("cells.csv"));
    }
}
