package outwind.benchmark;

import java.io.BufferedWriter;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.PointCloud;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.numeric.SweptLeastSquares;
import outwind.numeric.plane.WidestGap;
import outwind.scan.bytes.Progress;
import outwind.scan.file.Scan;
import outwind.scan.file.ScanFile;
import outwind.scan.find.ScannedBoard;

/**
 * What a scan costs as a whole process, from start to exit: reading it, fits and minimum zone of its points; and
 * reading it, finding the board and judging it. With the most memory that the process held.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=ScanWholeProcess}; what it measures is a plain process of its
 * own, started again for each figure.
 */
public final class ScanWholeProcess {

    private static final double LENGTH = 1180;
    private static final double WIDTH = 212;
    private static final Defaults SIZES = new Defaults(Optional.empty(), Optional.of("1180"), Optional.of("212"),
        Optional.of("31.5"));

    private static final int[] SIZES_OF_SCANS = {10_000, 100_000, 1_000_000, 5_000_000, 10_000_000};
    private static final int RUNS = 3;

    /** Reading, fits and minimum zone, without looking for the board. */
    private static final String PLANES = "fits and minimum zone";

    private ScanWholeProcess() { }

    public static void main(String[] args) throws IOException, BadBoardFile, InterruptedException {
        if (args.length == 2) {
            work(args[0], Path.of(args[1]));
            return;
        }
        Path folder = Files.createTempDirectory("scan-whole-process");
        for (int points : SIZES_OF_SCANS) {
            Path scan = made(folder, points);
            for (String what : List.of(PLANES, "board judged")) {
                for (int run = 0; run < RUNS; run++) {
                    run(what, scan);
                }
            }
            Files.delete(scan);
        }
        Files.delete(folder);
    }

    private static void run(String what, Path scan) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
            "target/test-classes" + File.pathSeparator + "target/outwind.jar",
            ScanWholeProcess.class.getName(), what, scan.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String said = new String(process.getInputStream().readAllBytes()).strip();
        if (process.waitFor() != 0) {
            throw new IllegalStateException("the process failed");
        }
        System.out.printf(Locale.ROOT, "%s, %.1f MB, %s: %.2f s whole process; %s%n", scan.getFileName(),
            Files.size(scan) / 1e6, what, (System.nanoTime() - start) / 1e9, said);
    }

    private static void work(String what, Path file) throws IOException, BadBoardFile {
        long start = System.nanoTime();
        Scan scan = ScanFile.read(file, Progress.UNSEEN);
        double read = (System.nanoTime() - start) / 1e9;
        double answer = what.equals(PLANES) ? zone(scan.points()) : levelled(scan, file);
        System.out.printf(Locale.ROOT, "read %.2f s, all %.2f s (%.3f mm), most memory %s, three arrays of the points"
            + " %d MB", read, (System.nanoTime() - start) / 1e9, answer, mostMemory(),
            24L * scan.points().size() / 1_000_000);
    }

    /** Plane, twisted and curved fit, and the width of the minimum zone (mm). */
    private static double zone(PointCloud points) {
        SweptLeastSquares.Nested fits = SweptLeastSquares.fit((i, row) -> {
            double u = 2 * points.x()[i] / LENGTH - 1;
            double v = 2 * points.y()[i] / WIDTH - 1;
            row[0] = 1;
            row[1] = u;
            row[2] = v;
            row[3] = u * v;
            row[4] = u * u;
            row[5] = v * v;
        }, points.z(), new int[] {3, 4, 6}, 0.05);
        if (fits.fits().size() != 3) {
            throw new IllegalStateException("three fits were asked for");
        }
        return WidestGap.minimumZone(points.x(), points.y(), points.z()).width();
    }

    /** The thickness that the board finishes at, levelled (mm). */
    private static double levelled(Scan scan, Path file) throws BadBoardFile {
        Board board = ScannedBoard.in(scan, file.toString(), SIZES);
        return Judgement.of(board, JudgeOptions.usual(board)).outlook().levelled().median();
    }

    /** Peak resident memory, where the system tells it. */
    private static String mostMemory() throws IOException {
        Path status = Path.of("/proc/self/status");
        return !Files.exists(status) ? "unknown" : Files.readAllLines(status).stream()
            .filter(line -> line.startsWith("VmHWM")).map(line -> line.replaceAll("\\s+", " ")).findFirst()
            .orElse("unknown");
    }

    private static Path made(Path folder, int count) throws IOException {
        Files.createDirectories(folder);
        Path file = folder.resolve("scan-" + count + ".xyz");
        SplittableRandom random = new SplittableRandom(1);
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int i = 0; i < count; i++) {
                double x = random.nextDouble(0, LENGTH);
                double y = random.nextDouble(0, WIDTH);
                double u = 2 * x / LENGTH - 1;
                double v = 2 * y / WIDTH - 1;
                double z = u * v + 0.8 * u * u - 0.3 * v * v + random.nextGaussian(0, 0.04);
                out.write(thousandths(x) + " " + thousandths(y) + " " + thousandths(z) + "\n");
            }
        }
        return file;
    }

    private static String thousandths(double mm) {
        return String.valueOf(Math.rint(mm * 1000) / 1000);
    }
}
