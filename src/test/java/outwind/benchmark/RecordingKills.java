package outwind.benchmark;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import outwind.board.file.Recording;
import outwind.board.text.BadBoardFile;

/**
 * Guided entry in a process of its own that is killed at random moments, and what its file holds afterwards.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=RecordingKills}.
 */
public final class RecordingKills {

    private static final int KILLS = 200;
    private static final int MOST_ANSWERS = 5;
    private static final int LONGEST_WAIT_MICROSECONDS = 6000;

    private RecordingKills() { }

    /**
     * What a kill has left.
     *
     * @param answered heights whose next question had been asked when the process was killed
     * @param typed    heights that had been typed
     * @param found    heights in the file, in their order
     */
    public record Left(List<Double> answered, List<Double> typed, List<Double> found) {

        /** True if every height that was answered is there, and nothing that was never typed. */
        public boolean isRight() {
            return found.size() >= answered.size() && found.size() <= typed.size()
                && typed.subList(0, found.size()).equals(found);
        }
    }

    public static void main(String[] args) throws IOException, BadBoardFile, InterruptedException {
        Path folder = Files.createTempDirectory("kills");
        SplittableRandom random = new SplittableRandom(20261125);
        int right = 0;
        int answered = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            Left left = kill("target/outwind.jar", folder.resolve(kill + ".csv"), random);
            right += left.isRight() ? 1 : 0;
            if (!left.isRight()) {
                System.out.println("kill " + kill + ": " + left);
            }
            answered += left.answered().size();
        }
        System.out.printf("%d processes killed, %d heights answered; nothing lost and nothing misread in %d%n", KILLS,
            answered, right);
    }

    /**
     * Starts a recording, answers a few questions, and kills it in the middle of whatever it then does.
     *
     * @param program class path of the program
     */
    public static Left kill(String program, Path file, SplittableRandom random)
            throws IOException, BadBoardFile, InterruptedException {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1", "-cp", program, "outwind.cli.Main", "record",
            file.toString(), "--length", "1180", "--width", "212", "--thickness", "31.5").redirectErrorStream(true)
            .start();
        List<Double> typed = new ArrayList<>();
        List<Double> answered = new ArrayList<>();
        int last = random.nextInt(MOST_ANSWERS);
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
                BufferedWriter in = process.outputWriter(StandardCharsets.UTF_8)) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                if (line.matches("\\d+ of \\d+, x .*")) {
                    // A height that is asked for again was doubted, and is not in the file.
                    typed = new ArrayList<>(typed.subList(0, Integer.parseInt(line.split(" ")[0]) - 1));
                    answered = List.copyOf(typed);
                    double height = random.nextInt(-50, 50) / 100.0;
                    typed.add(height);
                    in.write(height + "\n");
                    in.flush();
                    if (typed.size() > last) {
                        break;
                    }
                }
            }
            TimeUnit.MICROSECONDS.sleep(random.nextInt(LONGEST_WAIT_MICROSECONDS));
            process.destroyForcibly().waitFor();
        }
        return new Left(answered, typed, Recording.read(file).entries().stream()
            .map(entry -> entry.height().getAsDouble()).toList());
    }
}
