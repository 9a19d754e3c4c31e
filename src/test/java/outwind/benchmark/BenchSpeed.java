package outwind.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * What the bench costs: starting, keeping a reading, judging for another target, and fifty devices at once.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=BenchSpeed}.
 */
public final class BenchSpeed {

    private static final int STARTS = 7;
    private static final int BOARDS = 12;
    private static final int WARMING = 3;
    private static final int CLIENTS = 50;
    private static final int SECONDS = 15;
    private static final int QUIET_SECONDS = 30;

    private BenchSpeed() { }

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("bench");
        double[] starts = new double[STARTS];
        double memory = 0;
        for (int i = 0; i < STARTS; i++) {
            try (BenchProcess bench = new BenchProcess(folder)) {
                starts[i] = bench.startSeconds();
                memory = bench.residentMegabytes();
            }
        }
        say("start to page: median %.2f s of %d; then %.0f MB resident", quantile(starts, 0.5), STARTS, memory);
        try (BenchProcess bench = new BenchProcess(folder)) {
            List<Double> cold = new ArrayList<>();
            List<Double> warm = new ArrayList<>();
            for (int i = 0; i < BOARDS; i++) {
                readings(bench, bench.begin("board " + i), i < WARMING ? cold : warm, 0);
            }
            say("reading kept and verdict: first %d boards p95 %.0f ms, later ones p95 %.0f ms", WARMING,
                1e3 * quantile(cold, 0.95), 1e3 * quantile(warm, 0.95));
            List<Double> targets = new ArrayList<>();
            for (int i = 0; i < 40; i++) {
                String target = String.valueOf(24 + i / 10.0);
                targets.add(timed(() -> bench.get("see?board=board-0.csv&target=" + target)));
            }
            say("another target: p95 %.0f ms", 1e3 * quantile(targets, 0.95));
            crowd(bench);
            double busy = bench.residentMegabytes();
            Thread.sleep(1000 * QUIET_SECONDS);
            say("after that %.0f MB resident, %.0f MB after %d quiet seconds", busy, bench.residentMegabytes(),
                QUIET_SECONDS);
        }
    }

    private static void crowd(BenchProcess bench) throws Exception {
        ExecutorService devices = Executors.newFixedThreadPool(CLIENTS);
        List<Double> all = Collections.synchronizedList(new ArrayList<>());
        List<Callable<Void>> work = new ArrayList<>();
        for (int i = 0; i < CLIENTS; i++) {
            String board = bench.begin("crowd " + i);
            int delay = i * 1000 / CLIENTS;
            work.add(() -> {
                Thread.sleep(delay);
                readings(bench, board, all, 1000);
                return null;
            });
        }
        for (var done : devices.invokeAll(work)) {
            done.get();
        }
        devices.shutdown();
        say("%d devices, each a reading a second for %d s: p50 %.0f ms, p99 %.0f ms, no error in %d", CLIENTS, SECONDS,
            1e3 * quantile(all, 0.5), 1e3 * quantile(all, 0.99), all.size());
    }

    /** Touches a twisted board off (invented); every so many ms, or at once after each other. */
    private static void readings(BenchProcess bench, String board, List<Double> seconds, int every) throws Exception {
        JsonNode[] state = {bench.get("measure?board=" + board)};
        for (int i = 0; i < 15; i++) {
            long begun = System.nanoTime();
            double x = state[0].path("plan").path(i).path("x").asDouble();
            double y = state[0].path("plan").path(i).path("y").asDouble();
            double z = Math.rint(100 * 2.4 * (x / 1180 - 0.5) * (y / 212 - 0.5)) / 100;
            seconds.add(timed(() -> {
                state[0] = bench.touch(board, state[0].path("revision").asText(), x, y, z);
                return state[0];
            }));
            if (!state[0].path("kept").asBoolean()) {
                throw new IOException("not kept: " + state[0]);
            }
            Thread.sleep(Math.max(0, every - (System.nanoTime() - begun) / 1_000_000));
        }
    }

    private static double timed(Callable<?> work) throws Exception {
        long since = System.nanoTime();
        work.call();
        return (System.nanoTime() - since) / 1e9;
    }

    private static double quantile(List<Double> values, double share) {
        return quantile(values.stream().mapToDouble(Double::doubleValue).toArray(), share);
    }

    private static double quantile(double[] values, double share) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)];
    }

    private static void say(String format, Object... values) {
        System.out.printf(format + "%n", values);
    }
}
