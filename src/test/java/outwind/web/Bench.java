package outwind.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A running bench and one device that was let in. */
final class Bench implements AutoCloseable {

    static final ObjectMapper MAPPER = new ObjectMapper();

    final BenchServer server;
    final String base;
    final List<Throwable> troubles = Collections.synchronizedList(new ArrayList<>());
    private final HttpClient client;

    Bench(Path folder, boolean shared) throws IOException, InterruptedException {
        server = BenchServer.start(folder, 0, shared, () -> { }, troubles::add);
        String opening = server.opening();
        base = opening.substring(0, opening.indexOf("/?"));
        client = HttpClient.newBuilder().cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL).build();
        client.send(HttpRequest.newBuilder(URI.create(opening)).build(), HttpResponse.BodyHandlers.ofString());
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(URI.create(base + path)).build(),
            HttpResponse.BodyHandlers.ofString());
    }

    HttpResponse<byte[]> packed(String path, String encodings) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(URI.create(base + path)).header("Accept-Encoding", encodings).build(),
            HttpResponse.BodyHandlers.ofByteArray());
    }

    HttpResponse<String> post(String path, String body) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(URI.create(base + path))
            .POST(HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.ofString());
    }

    JsonNode asked(String path) throws IOException, InterruptedException {
        return MAPPER.readTree(get("/api/" + path).body());
    }

    JsonNode post(String path, JsonNode body) throws IOException, InterruptedException {
        return MAPPER.readTree(post("/api/" + path, body.toString()).body());
    }

    /** Begins a board of 1180 x 212 x 31.5 mm to finish at 26 mm; the name of its file. */
    String begin(String name) throws IOException, InterruptedException {
        return post("begin", MAPPER.createObjectNode().put("name", name).put("length", "1180").put("width", "212")
            .put("thickness", "31,5").put("target", "26")).path("file").asText();
    }

    JsonNode touch(String board, JsonNode state, int place, String height)
            throws IOException, InterruptedException {
        JsonNode spot = state.path("plan").path(place);
        return post("touch", MAPPER.createObjectNode().put("board", board)
            .put("base", state.path("revision").asText()).put("x", spot.path("x").asDouble())
            .put("y", spot.path("y").asDouble()).put("height", height));
    }

    @Override
    public void close() {
        server.close();
    }
}
