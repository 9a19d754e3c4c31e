package outwind.benchmark;

import java.io.IOException;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import outwind.web.AnyRequest;

/**
 * A million made-up requests from a fixed seed against the handler of the bench; ends with the first answer that must
 * not be. One in 200 may ask to judge boards.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=BenchFuzz}.
 */
public final class BenchFuzz {

    private static final int REQUESTS = 1_000_000;

    private BenchFuzz() { }

    public static void main(String[] args) throws IOException {
        AnyRequest requests = new AnyRequest();
        SplittableRandom random = new SplittableRandom(1);
        Map<Integer, Integer> answers = new TreeMap<>();
        long since = System.nanoTime();
        for (int i = 0; i < REQUESTS; i++) {
            answers.merge(requests.send(random::nextInt, 200), 1, Integer::sum);
        }
        System.out.printf("%d requests in %.0f s, by status: %s%n", REQUESTS, (System.nanoTime() - since) / 1e9, answers);
    }
}
