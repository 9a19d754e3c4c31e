package outwind.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import outwind.board.Board;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;

/**
 * What judging one board costs once the program is warm, without report and chart: on all cores, or on one with
 * {@code -Djava.util.concurrent.ForkJoinPool.common.parallelism=0}.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=JudgingSpeed}.
 */
public final class JudgingSpeed {

    private static final int WARM_UP = 100;
    private static final int RUNS = 200;

    private JudgingSpeed() { }

    public static void main(String[] args) throws IOException, BadBoardFile {
        Board board = BoardFile.read(Path.of("sample-probes/hall-table.csv"), Defaults.NOTHING);
        double[] milliseconds = new double[RUNS];
        double sum = 0;
        for (int run = -WARM_UP; run < RUNS; run++) {
            long start = System.nanoTime();
            // Another seed each time, so that nothing can be remembered from the last.
            sum += Judgement.of(board, JudgeOptions.usual(board).withSeed(run)).outlook().levelled().median();
            if (run >= 0) {
                milliseconds[run] = (System.nanoTime() - start) / 1e6;
            }
        }
        Arrays.sort(milliseconds);
        System.out.printf(Locale.ROOT, "judging %s, %d readings, warm, one at a time: median %.0f ms, slowest tenth over"
            + " %.0f ms of %d runs (mean thickness %.2f mm)%n", board.name(), board.readings().size(),
            milliseconds[RUNS / 2], milliseconds[RUNS * 9 / 10], RUNS, sum / (RUNS + WARM_UP));
    }
}
