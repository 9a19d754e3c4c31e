package outwind.benchmark;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import outwind.board.BadBoardFile;
import outwind.board.Board;
import outwind.board.Given;
import outwind.numeric.WidestGap;
import outwind.scan.Progress;
import outwind.scan.ScanFile;
import outwind.scan.ScannedBoard;
import outwind.stock.Judgement;
import outwind.stock.Request;
import outwind.surface.Fits;

/**
 * What a scan costs as a whole process, from start to exit: reading it, finding the board, fits and minimum zone; and
 * judging it altogether. With the most memory that the process held.
 *
 * <p>Run by {@code java -cp target/test-classes:target/outwind.jar outwind.benchmark.ScanWholeProcess}, so that what is
 * started is a plain process. Arguments: a folder to write scans to, and numbers of points.
 */
public final class ScanWholeProcess {

    private static final double LENGTH = 1180;
    private static final double WIDTH = 212;
    private static final Given SIZES = new Given(Optional.empty(), Optional.of("1180"), Optional.of("212"),
        Optional.of("31.5"));

    private ScanWholeProcess() { }

    public static void main(String[] args) throws IOException, BadBoardFile, InterruptedException {
        if (args[0].equals("fits") || args[0].equals("judge")) {
            work(args[0], Path.of(args[1]));
            return;
        }
        for (int i = 1; i < args.length; i++) {
            Path scan = made(Path.of(args[0]), Integer.parseInt(args[i]));
            for (String what : List.of("fits", "judge")) {
                run(what, scan);
            }
        }
    }

    private static void run(String what, Path scan) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
            System.getProperty("java.class.path"), ScanWholeProcess.class.getName(), what, scan.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String said = new String(process.getInputStream().readAllBytes()).strip();
        if (process.waitFor() != 0) {
            throw new IllegalStateException("the process failed");
        }
        System.out.printf(Locale.ROOT, "%s, %.1f MB, %s: %.2f s whole process; %s%n", scan.getFileName(),
            Files.size(scan) / 1e6, what, (System.nanoTime() - start) / 1e9, said);
    }

    private static void work(String what, Path scan) throws IOException, BadBoardFile {
        long start = System.nanoTime();
        Board board = ScannedBoard.in(ScanFile.read(scan, Progress.UNSEEN), scan.toString(), SIZES);
        double found = (System.nanoTime() - start) / 1e9;
        double answer;
        if (what.equals("fits")) {
            Fits.of(board);
            var points = board.scan().orElseThrow().points();
            answer = WidestGap.minimumZone(points.x(), points.y(), points.z()).width();
        } else {
            answer = Judgement.of(board, Request.usual(board)).outlook().levelled().median();
        }
        System.out.printf(Locale.ROOT, "read and found %.2f s, all %.2f s (%.3f mm), most memory %s,"
            + " least possible %d MB",
            found, (System.nanoTime() - start) / 1e9, answer, mostMemory(), 24L * board.pointsOnFaceA() / 1_000_000);
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
