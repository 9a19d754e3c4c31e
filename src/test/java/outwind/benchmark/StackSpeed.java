package outwind.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import outwind.board.Board;
import outwind.board.Reading;

/**
 * What pricing a stack costs as a whole process: made-up boards of 15 readings, a thousand possible boards drawn for
 * each, no chart. The heap is held to one size, so that memory that grew with the stack would show.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=StackSpeed}: prints the table of {@code speed.md}.
 */
public final class StackSpeed {

    private static final String HEAP = "-Xmx160m";

    private StackSpeed() { }

    public static void main(String[] args) throws IOException, InterruptedException {
        System.out.println("| boards | seconds | boards a second | most memory |");
        System.out.println("| --- | --- | --- | --- |");
        Path folder = Files.createTempDirectory("stack-speed");
        try {
            for (int count : new int[] {10, 100, 1000, 10_000}) {
                measure(Path.of("target/outwind.jar"), count, folder);
            }
        } finally {
            delete(folder);
        }
    }

    private static void measure(Path jar, int count, Path folder) throws IOException, InterruptedException {
        Path boards = Files.createDirectories(folder.resolve("boards-" + count));
        for (int i = 0; i < count; i++) {
            Files.writeString(boards.resolve("board-" + i + ".csv"), file(i));
        }
        long start = System.nanoTime();
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), HEAP,
            "-jar", jar.toString(), "stack", "--no-chart", "--price", "9.50 per bf", "--shop-rate", "48", "--cutter", "25mm",
            "--deepest-pass", "1mm", "--feed", "2m", "--out",
            folder.resolve("out").toString(), boards.toString())
            .redirectOutput(ProcessBuilder.Redirect.DISCARD).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String memory = "";
        while (process.isAlive()) {
            memory = residentMost(process, memory);
            Thread.sleep(20);
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        if (process.exitValue() != 0) {
            throw new IllegalStateException("the process failed");
        }
        System.out.printf(Locale.ROOT, "| %,d | %.1f | %.0f | %s |%n", count, seconds, count / seconds, memory);
    }

    /** Most memory that a process has held so far, as Linux tells it; what was known before where it does not. */
    private static String residentMost(Process process, String before) {
        try (Stream<String> lines = Files.lines(Path.of("/proc", String.valueOf(process.pid()), "status"))) {
            return lines.filter(line -> line.startsWith("VmHWM:")).findFirst()
                .map(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024 + " MB").orElse(before);
        } catch (IOException e) {
            return before;
        }
    }

    private static String file(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        SimulatedBoard made = SimulatedBoard.of(SimulatedBoard.Family.SMOOTH, random);
        Board read = made.read(5, 3, OptionalDouble.empty(), random);
        double thickness = read.thickness().orElseThrow();
        StringBuilder file = new StringBuilder(String.format(Locale.ROOT, "# units: mm%n# length: %.2f%n# width: %.2f%n"
            + "# thickness: %.2f%n# target: %.1f%nx,y,z%n", read.length(), read.width(), thickness, thickness - 4));
        for (Reading reading : read.readings()) {
            file.append(String.format(Locale.ROOT, "%.2f,%.2f,%.2f%n", reading.x(), reading.y(), reading.z()));
        }
        return file.toString();
    }

    private static void delete(Path folder) throws IOException {
        List<Path> deepestFirst;
        try (Stream<Path> all = Files.walk(folder)) {
            deepestFirst = all.sorted((a, b) -> b.compareTo(a)).toList();
        }
        for (Path path : deepestFirst) {
            Files.delete(path);
        }
    }
}
