package outwind.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What one board costs as a person sees it: from start to exit, with report, chart and sheet written, for each way to
 * start the program. The ways take turns, so that whatever else the machine does slows all of them alike.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -P app -Dbenchmark=WholeProcess}.
 */
public final class WholeProcess {

    private static final int WARM_UP = 2;
    private static final int RUNS = 21;

    private static final String JAVA = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    private static final String JAR = "target/outwind.jar";
    private static final Path APP = Path.of("target/app/outwind/bin/outwind");

    private WholeProcess() { }

    public static void main(String[] args) throws IOException, InterruptedException {
        Map<String, List<String>> ways = new LinkedHashMap<>();
        ways.put("the jar", List.of(JAVA, "-jar", JAR));
        ways.put("the jar, quick compiler alone", List.of(JAVA, "-XX:TieredStopAtLevel=1", "-jar", JAR));
        if (Files.exists(APP)) {
            ways.put("the app", List.of(APP.toString()));
        }
        Map<String, double[]> seconds = new LinkedHashMap<>();
        ways.keySet().forEach(way -> seconds.put(way, new double[RUNS]));
        for (int run = -WARM_UP; run < RUNS; run++) {
            for (String way : ways.keySet()) {
                double taken = run(ways.get(way));
                if (run >= 0) {
                    seconds.get(way)[run] = taken;
                }
            }
        }
        seconds.forEach(WholeProcess::print);
    }

    private static double run(List<String> way) throws IOException, InterruptedException {
        List<String> command = Stream.concat(way.stream(),
            Stream.of("judge", "sample-probes/hall-table.csv", "--out", "target/whole-process")).toList();
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
        if (process.waitFor() != 0) {
            throw new IllegalStateException("the process failed: " + command);
        }
        return (System.nanoTime() - start) / 1e9;
    }

    private static void print(String way, double[] seconds) {
        Arrays.sort(seconds);
        System.out.printf(Locale.ROOT, "one board, report, chart and sheet by %s: median %.2f s, fastest %.2f s,"
            + " slowest %.2f s of %d runs; %d processors, Java %s%n", way, seconds[RUNS / 2], seconds[0],
            seconds[RUNS - 1], RUNS, Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"));
    }
}
