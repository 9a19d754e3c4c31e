package outwind.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;

/** The bench in a process of its own, asked over the loopback. */
final class BenchProcess implements AutoCloseable {

    static final ObjectMapper MAPPER = new ObjectMapper();

    private final Process process;
    private final String base;
    private final HttpClient client;
    private final double startSeconds;

    /** Starts it from the jar that {@code mvn verify} has made. */
    BenchProcess(Path folder) throws IOException, InterruptedException {
        long since = System.nanoTime();
        process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-jar", "target/outwind.jar", "bench", "--no-open", "--port", "0", folder.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD).start();
        BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
        String opening = out.readLine().replaceAll(".*(http\\S+).*", "$1");
        base = opening.substring(0, opening.indexOf("/?"));
        client = HttpClient.newBuilder().cookieHandler(new CookieManager()).version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NORMAL).build();
        client.send(HttpRequest.newBuilder(URI.create(opening)).build(), HttpResponse.BodyHandlers.ofString());
        startSeconds = (System.nanoTime() - since) / 1e9;
    }

    /** From the start of the process to the page. */
    double startSeconds() {
        return startSeconds;
    }

    JsonNode get(String path) throws IOException, InterruptedException {
        return answer(HttpRequest.newBuilder(URI.create(base + "/api/" + path)));
    }

    JsonNode post(String path, ObjectNode body) throws IOException, InterruptedException {
        return answer(HttpRequest.newBuilder(URI.create(base + "/api/" + path))
            .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
    }

    private JsonNode answer(HttpRequest.Builder request) throws IOException, InterruptedException {
        HttpResponse<String> answer = client.send(request.timeout(Duration.ofSeconds(20)).build(),
            HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IOException(answer.statusCode() + " " + answer.body());
        }
        return MAPPER.readTree(answer.body());
    }

    /** Begins a board of 1180 x 212 x 31.5 mm to finish at 26 mm. */
    String begin(String name) throws IOException, InterruptedException {
        return post("begin", MAPPER.createObjectNode().put("name", name).put("length", "1180").put("width", "212")
            .put("thickness", "31.5").put("target", "26")).path("file").asText();
    }

    /** Sends a reading. */
    JsonNode touch(String board, String revision, double x, double y, double height)
            throws IOException, InterruptedException {
        return post("touch", MAPPER.createObjectNode().put("board", board).put("base", revision).put("x", x)
            .put("y", y).put("height", String.valueOf(height)).put("insists", true));
    }

    /** Memory that the process holds (MB), as Linux tells it. */
    double residentMegabytes() throws IOException {
        return Files.readAllLines(Path.of("/proc", String.valueOf(process.pid()), "status")).stream()
            .filter(line -> line.startsWith("VmRSS")).mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")))
            .sum() / 1024;
    }

    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }


    @Override
    public void close() throws IOException {
        process.destroyForcibly();
    }
}
