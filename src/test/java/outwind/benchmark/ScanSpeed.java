package outwind.benchmark;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.BufferedOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import outwind.board.PointCloud;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Progress;
import outwind.scan.file.ScanFile;

/**
 * What reading a dense scan costs: five million points of a warped board, 106 MB of text, in a process of its own
 * each time, so that starting the program and warming it up counts. The file is in the page cache. Processor seconds
 * are those of all threads, compiler and collector among them: they tell the work apart from what else the machine
 * does.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=ScanSpeed}. An argument says where to write the file and leave
 * it,
 * for {@code src/test/python/read_scan.py}, which tells what Python's readers make of it.
 */
public final class ScanSpeed {

    private static final int ALONG = 2_500;
    private static final int ACROSS = 2_000;
    private static final int RUNS = 11;

    private ScanSpeed() { }

    public static void main(String[] args) throws IOException, InterruptedException, BadBoardFile {
        if (args.length == 2 && args[0].equals("read")) {
            read(Path.of(args[1]));
            return;
        }
        Path folder = Files.createTempDirectory("scan-speed");
        Path file = args.length == 1 && !args[0].equals("--") ? Path.of(args[0]) : folder.resolve("board.xyz");
        try {
            write(file);
            measure(file);
        } finally {
            Files.deleteIfExists(folder.resolve("board.xyz"));
            Files.delete(folder);
        }
    }

    /** One reading, and what it took: seconds within the process, processor seconds, heap at its peak (MB). */
    private static void read(Path file) throws IOException, BadBoardFile {
        long start = System.nanoTime();
        PointCloud points = ScanFile.read(file, Progress.UNSEEN).points();
        double seconds = (System.nanoTime() - start) / 1e9;
        long peak = ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .map(MemoryPoolMXBean::getPeakUsage).mapToLong(usage -> usage.getUsed()).sum();
        double worked = ProcessHandle.current().info().totalCpuDuration().orElseThrow().toMillis() / 1e3;
        System.out.printf(Locale.ROOT, "%d %.4f %.3f %.1f%n", points.size(), seconds, worked, peak / 1e6);
    }

    private static void measure(Path file) throws IOException, InterruptedException {
        String classPath = String.join(File.pathSeparator, home(ScanFile.class), home(ScanSpeed.class),
            home(JavaDoubleParser.class));
        List<double[]> runs = new ArrayList<>();
        for (int run = 0; run < RUNS; run++) {
            long start = System.nanoTime();
            Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp", classPath, ScanSpeed.class.getName(), "read", file.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT).start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
            if (process.waitFor() != 0) {
                throw new IllegalStateException("reading ended with " + process.exitValue());
            }
            double whole = (System.nanoTime() - start) / 1e9;
            double[] figures = Arrays.stream(said.strip().split(" ")).mapToDouble(Double::parseDouble).toArray();
            runs.add(new double[] {figures[1], whole, figures[2], figures[3], figures[0]});
        }
        System.out.printf(Locale.ROOT, "%.0f points, %.1f MB of text, %d runs%n", runs.get(0)[4],
            Files.size(file) / 1e6, RUNS);
        print("reading, s", runs, 0);
        print("whole process, s", runs, 1);
        print("processor, s", runs, 2);
        print("heap at its peak, MB", runs, 3);
        System.out.printf(Locale.ROOT, "points a second (median reading)  %.1f million%n",
            runs.get(0)[4] / column(runs, 0)[RUNS / 2] / 1e6);
    }

    /** Where a class was loaded from. */
    private static String home(Class<?> type) {
        return new File(type.getProtectionDomain().getCodeSource().getLocation().getPath()).toString();
    }

    private static void print(String name, List<double[]> runs, int column) {
        double[] values = column(runs, column);
        System.out.printf(Locale.ROOT, "%-22s least %7.3f  median %7.3f  most %7.3f%n", name, values[0],
            values[RUNS / 2], values[RUNS - 1]);
    }

    private static double[] column(List<double[]> runs, int column) {
        return runs.stream().mapToDouble(run -> run[column]).sorted().toArray();
    }

    /** A board of 2.4 m x 240 mm with twist, bow and the camera's noise, two decimals along and across, four up. */
    static void write(Path file) throws IOException {
        SplittableRandom random = new SplittableRandom(1);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
            byte[] line = new byte[64];
            for (int i = 0; i < ALONG; i++) {
                for (int j = 0; j < ACROSS; j++) {
                    double u = (double) i / (ALONG - 1);
                    double v = (double) j / (ACROSS - 1);
                    double z = 3 * (2 * u - 1) * (2 * v - 1) + 4 * u * (1 - u) + random.nextDouble(-0.05, 0.05);
                    int end = decimal(line, 0, Math.round(240_000 * u), 2, ' ');
                    end = decimal(line, end, Math.round(24_000 * v), 2, ' ');
                    end = decimal(line, end, Math.round(10_000 * z), 4, '\n');
                    out.write(line, 0, end);
                }
            }
        }
    }

    private static int decimal(byte[] line, int begin, long value, int decimals, char behind) {
        String digits = String.valueOf(Math.abs(value));
        String padded = "0".repeat(Math.max(0, decimals + 1 - digits.length())) + digits;
        int point = padded.length() - decimals;
        String text = (value < 0 ? "-" : "") + padded.substring(0, point) + "." + padded.substring(point) + behind;
        for (int i = 0; i < text.length(); i++) {
            line[begin + i] = (byte) text.charAt(i);
        }
        return begin + text.length();
    }
}
