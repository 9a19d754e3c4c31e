package outwind.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * What one board costs as a person sees it: {@code java -jar} from start to exit, report and chart written.
 *
 * <p>Run by {@code mvn -q verify -P whole-process -DskipTests}. Arguments: the jar, a board file, a folder to write to.
 */
public final class WholeProcess {

    private static final int WARM_UP = 3;
    private static final int RUNS = 21;

    private WholeProcess() { }

    public static void main(String[] args) throws IOException, InterruptedException {
        run(args, "as it is", List.of());
        // A process so short does not pay for the second, slower compiler.
        run(args, "with -XX:TieredStopAtLevel=1", List.of("-XX:TieredStopAtLevel=1"));
    }

    private static void run(String[] args, String how, List<String> flags) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(flags);
        command.addAll(List.of("-jar", args[0], "judge", args[1], "--out", args[2]));
        double[] seconds = new double[RUNS];
        for (int run = -WARM_UP; run < RUNS; run++) {
            long start = System.nanoTime();
            Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
            if (process.waitFor() != 0) {
                throw new IllegalStateException("the process failed");
            }
            if (run >= 0) {
                seconds[run] = (System.nanoTime() - start) / 1e9;
            }
        }
        Arrays.sort(seconds);
        System.out.printf(Locale.ROOT, "whole process, %s: one board, report, chart and sheet: median %.2f s, fastest"
            + " %.2f s, slowest %.2f s of %d runs; %d processors, Java %s%n", how, seconds[RUNS / 2], seconds[0],
            seconds[RUNS - 1], RUNS, Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"));
    }
}
