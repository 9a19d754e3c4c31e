package outwind.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import outwind.cli.CompletionShell;
import outwind.fuzz.ReaderTrial;

/**
 * Twenty million made-up inputs for whatever reads something: files, scans, lengths and prices, the words that the shell
 * completes, and scripts of guided entry ({@link RecordScripts}).
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=ReaderFuzz}; {@code seed}, {@code part} of the usual number,
 * and {@code kinds} with commas between them are properties of the virtual machine.
 */
public final class ReaderFuzz {

    private static final Map<String, Long> TRIES = Map.of("length", 10_000_000L, "price", 6_000_000L, "board file", 1_000_000L,
        "cutting bill", 500_000L, "shop file", 1_200_000L, "bare points", 1_400_000L, "ply scan", 150_000L, "text scan",
        100_000L);
    private static final String COMPLETION = "completion";
    private static final String RECORD = "record";
    private static final long OTHERS = 100_000;

    private ReaderFuzz() { }

    public static void main(String[] args) throws IOException {
        long seed = Long.getLong("seed", 20261128L);
        double part = Double.parseDouble(System.getProperty("part", "1"));
        List<String> kinds = List.of(System.getProperty("kinds", String.join(",", ReaderTrial.NAMES) + ","
            + COMPLETION + "," + RECORD).split(","));
        System.out.printf("%-14s %10s %10s %10s %12s %7s %8s%n", "", "tries", "taken", "refused", "slowest (ms)", "faults",
            "time (s)");
        long faults = 0;
        for (String kind : kinds) {
            long since = System.nanoTime();
            faults += switch (kind) {
                case COMPLETION -> completion((long) (part * OTHERS), seed);
                case RECORD -> record((long) (part * OTHERS), seed);
                default -> reader(kind, (long) (part * TRIES.get(kind)), seed);
            };
            System.out.printf(" %8.0f%n", (System.nanoTime() - since) / 1e9);
        }
        if (faults > 0) {
            System.exit(1);
        }
    }

    private static long reader(String kind, long tries, long seed) throws IOException {
        ReaderTrial trial = new ReaderTrial(kind, Path.of("target", "reader-fuzz"));
        trial.run(tries, seed);
        System.out.printf("%-14s %10d %10d %10d %12.0f %7d", kind, trial.tries(), trial.taken(),
            trial.tries() - trial.taken() - trial.faults(), 1e3 * trial.slowest(), trial.faults());
        return trial.faults();
    }

    private static long completion(long tries, long seed) throws IOException {
        try (CompletionShell shell = new CompletionShell(Files.createTempDirectory("completion"))) {
            long words = 0;
            long faults = 0;
            double slowest = 0;
            SplittableRandom random = new SplittableRandom(seed);
            for (long i = 0; i < tries; i++) {
                long since = System.nanoTime();
                List<String> typed = CompletionShell.typed(random);
                String fault = shell.fault(typed);
                slowest = Math.max(slowest, (System.nanoTime() - since) / 1e9);
                words += shell.offered().isEmpty() ? 0 : 1;
                if (!fault.isEmpty()) {
                    faults++;
                    System.out.println(typed + ": " + fault);
                }
            }
            System.out.printf("%-14s %10d %10d %10d %12.0f %7d", COMPLETION, tries, words, tries - words - faults,
                1e3 * slowest, faults);
            return faults;
        }
    }

    /** Ends with the first difference from the model. */
    private static long record(long commands, long seed) throws IOException {
        Path folder = Files.createTempDirectory("scripts");
        SplittableRandom random = new SplittableRandom(seed);
        long done = 0;
        double slowest = 0;
        while (done < commands) {
            long since = System.nanoTime();
            done += RecordScripts.run(folder.resolve("board.csv"), random.split(), new TreeMap<>());
            slowest = Math.max(slowest, (System.nanoTime() - since) / 1e9);
            Files.delete(folder.resolve("board.csv"));
        }
        Files.delete(folder);
        System.out.printf("%-14s %10d %10d %10d %12.0f %7d", RECORD, done, done, 0, 1e3 * slowest, 0);
        return 0;
    }
}
