package outwind.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import outwind.board.file.Recording;

/**
 * The bench killed at random moments while readings come in. A reading whose answer was lost is sent again, as the page
 * does, with the revision that it was first sent with.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=BenchKills}.
 */
public final class BenchKills {

    private static final int KILLS = 200;
    private static final int LONGEST_WAIT_MS = 120;

    private BenchKills() { }

    /** A reading that was sent. */
    private record Sent(String base, double x, double y, double z) { }

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("bench");
        SplittableRandom random = new SplittableRandom(1);
        int accepted = 0;
        int resent = 0;
        int wrong = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            List<Sent> sent = new ArrayList<>();
            String board;
            boolean answered;
            try (BenchProcess bench = new BenchProcess(folder)) {
                board = bench.begin("board " + kill);
                JsonNode state = bench.get("measure?board=" + board);
                int wait = random.nextInt(LONGEST_WAIT_MS);
                Thread killer = new Thread(() -> {
                    try {
                        Thread.sleep(wait);
                        bench.kill();
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                });
                killer.start();
                answered = true;
                while (answered && sent.size() < 60) {
                    sent.add(new Sent(state.path("revision").asText(), 10 + 19 * sent.size(),
                        random.nextInt(200), random.nextInt(100) / 100.0));
                    try {
                        state = send(bench, board, sent.get(sent.size() - 1));
                    } catch (IOException e) {
                        answered = false;
                    }
                }
                killer.join();
            }
            if (!answered) {
                resent++;
                try (BenchProcess bench = new BenchProcess(folder)) {
                    send(bench, board, sent.get(sent.size() - 1));
                }
            }
            List<Double> found = Recording.read(folder.resolve(board)).entries().stream()
                .map(entry -> entry.height().orElseThrow()).toList();
            accepted += sent.size();
            wrong += found.equals(sent.stream().map(Sent::z).toList()) ? 0 : 1;
        }
        System.out.println(KILLS + " kills, " + accepted + " readings, " + resent
            + " sent again: boards that lack one or hold one twice: " + wrong);
    }

    private static JsonNode send(BenchProcess bench, String board, Sent sent) throws IOException, InterruptedException {
        JsonNode answer = bench.touch(board, sent.base(), sent.x(), sent.y(), sent.z());
        if (!answer.path("kept").asBoolean()) {
            throw new IllegalStateException("not kept: " + answer);
        }
        return answer;
    }
}
