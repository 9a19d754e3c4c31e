package outwind.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;
import outwind.board.BadValue;
import outwind.board.text.BadBoardFile;
import outwind.judge.Judgement;
import outwind.report.sheet.BoardSheet;
import outwind.report.sheet.BuyChart;
import outwind.report.sheet.StackChart;
import outwind.report.text.StackReport;
import outwind.report.text.TextReport;
import outwind.report.words.Figures;
import outwind.stock.Stack;
import outwind.surface.ImpossibleBoard;

/**
 * Turns requests into calls. Whatever goes wrong is answered with a sentence, never with a trace; a board file's fault
 * is the person's to mend and is answered with 422.
 */
final class Desk implements HttpHandler {

    private static final ObjectMapper MAPPER = new ObjectMapper();

    /** Only this server's own files, no script in the page itself, and no frame around it (CSP level 3). */
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
        + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    /** With no weight, or with one above zero. */
    private static final Pattern GZIP = Pattern.compile("(?i)(x-)?gzip(;q=(1.*|0\\.0*[1-9].*))?");

    private final Gate gate;
    private final Boards boards;
    private final Runnable admitted;
    private final Consumer<Throwable> troubles;

    /**
     * @param admitted called when a code was used up
     * @param troubles takes what nobody foresaw
     */
    Desk(Gate gate, Boards boards, Runnable admitted, Consumer<Throwable> troubles) {
        this.gate = gate;
        this.boards = boards;
        this.admitted = admitted;
        this.troubles = troubles;
    }

    /** What is sent back. */
    private record Answer(int status, String type, byte[] bytes, Map<String, String> headers) {

        /**
         * The same for a client that unpacks gzip (RFC 9110, section 8.4.1.3): files of the page, which hold nothing
         * secret that could be guessed from their size.
         */
        Answer packedFor(HttpExchange exchange) throws IOException {
            boolean unpacks = headers.containsKey("Vary") && accepts(exchange.getRequestHeaders().get("Accept-Encoding"));
            if (!unpacks) {
                return this;
            }
            ByteArrayOutputStream packed = new ByteArrayOutputStream();
            try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
                out.write(bytes);
            }
            Map<String, String> more = new HashMap<>(headers);
            more.put("Content-Encoding", "gzip");
            return new Answer(status, type, packed.toByteArray(), more);
        }

        private static boolean accepts(List<String> encodings) {
            return encodings != null && encodings.stream().flatMap(line -> Arrays.stream(line.split(",")))
                .map(one -> one.replaceAll("\\s", "")).anyMatch(one -> GZIP.matcher(one).matches());
        }

        static Answer json(ObjectNode node) {
            return new Answer(200, "application/json", node.toString().getBytes(StandardCharsets.UTF_8), Map.of());
        }

        static Answer said(int status, String sentence) {
            ObjectNode node = JsonNodeFactory.instance.objectNode().put("trouble", sentence);
            return new Answer(status, "application/json", node.toString().getBytes(StandardCharsets.UTF_8), Map.of());
        }

        static Answer download(String type, String name, String text) {
            return download(type, name, text.getBytes(StandardCharsets.UTF_8));
        }

        static Answer download(String type, String name, byte[] bytes) {
            return new Answer(200, type, bytes, Map.of("Content-Disposition",
                "attachment; filename=\"" + name.replaceAll("[^A-Za-z0-9._-]", "_") + "\""));
        }
    }

    @Override
    public void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            Answer answer = guarded(exchange).packedFor(exchange);
            Headers headers = exchange.getResponseHeaders();
            headers.set("Content-Security-Policy", POLICY);
            headers.set("X-Content-Type-Options", "nosniff");
            headers.set("X-Frame-Options", "DENY");
            // Without any, browsers send a form's origin as "null", and the form for the code would be refused.
            headers.set("Referrer-Policy", "same-origin");
            headers.set("Cross-Origin-Resource-Policy", "same-origin");
            headers.set("Cache-Control", "no-store");
            headers.set("Content-Type", answer.type());
            answer.headers().forEach(headers::set);
            boolean hasBody = answer.bytes().length > 0 && !"HEAD".equals(exchange.getRequestMethod());
            exchange.sendResponseHeaders(answer.status(), hasBody ? answer.bytes().length : -1);
            if (hasBody) {
                exchange.getResponseBody().write(answer.bytes());
            }
        }
    }

    private Answer guarded(HttpExchange exchange) {
        try {
            gate.requireOwnSite(exchange);
            return answer(exchange);
        } catch (Refused e) {
            return Answer.said(e.status(), e.getMessage());
        } catch (BadValue e) {
            return Answer.said(422, capital(e.getMessage()) + ". " + e.mend());
        } catch (BadBoardFile | ImpossibleBoard e) {
            return Answer.said(422, boards.named(e.getMessage()));
        } catch (IOException e) {
            return Answer.said(503, "The board's file could not be read or written just now. Try again.");
        } catch (RuntimeException e) {
            troubles.accept(e);
            return Answer.said(500, "That went wrong, and it is our fault. What was kept before is still there.");
        }
    }

    private static String capital(String sentence) {
        return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
    }

    private Answer answer(HttpExchange exchange) throws IOException, Refused, BadBoardFile {
        String method = exchange.getRequestMethod();
        String path = exchange.getRequestURI().getPath();
        Map<String, String> query = query(exchange.getRequestURI().getRawQuery());
        if (path == null || !method.equals("GET") && !method.equals("POST") && !method.equals("HEAD")) {
            throw new Refused(405, "The bench takes GET and POST only.");
        }
        boolean posts = method.equals("POST");
        if (path.equals("/") && query.containsKey("key")
                && gate.opensWith(query.get("key"), exchange.getRemoteAddress().getAddress())) {
            return letIn();
        }
        if (path.equals("/enter")) {
            return enter(exchange, posts, query);
        }
        if (!gate.knows(exchange)) {
            if (path.equals("/") || path.equals("/bench.css")) {
                return page(path.equals("/") ? "enter.html" : "bench.css");
            }
            throw new Refused(401, "This device was not let in yet. Type the code that the bench shows.");
        }
        if (!path.startsWith("/api/")) {
            return page(path.equals("/") ? "index.html" : path.substring(1));
        }
        return posts ? post(path.substring(5), exchange, query) : get(path.substring(5), query);
    }

    private Answer letIn() {
        return new Answer(303, "text/plain", new byte[0], Map.of("Location", "/", "Set-Cookie", gate.cookie()));
    }

    private Answer enter(HttpExchange exchange, boolean posts, Map<String, String> query) throws IOException, Refused {
        String code = posts ? query(new String(Limits.body(exchange), StandardCharsets.UTF_8)).getOrDefault("code", "")
            : query.getOrDefault("code", "");
        if (code.isEmpty()) {
            return page("enter.html");
        }
        try {
            if (gate.admits(code)) {
                admitted.run();
                return letIn();
            }
            return entrance(403, "That is not the code. Each lets one device in: type the one that the bench shows now.");
        } catch (Refused e) {
            return entrance(e.status(), e.getMessage());
        }
    }

    private static Answer entrance(int status, String sentence) throws IOException, Refused {
        Answer form = page("enter.html");
        String said = new String(form.bytes(), StandardCharsets.UTF_8)
            .replace("role=\"alert\">", "role=\"alert\">" + sentence);
        return new Answer(status, form.type(), said.getBytes(StandardCharsets.UTF_8), form.headers());
    }

    private static Answer page(String name) throws IOException, Refused {
        PageFiles.PageFile file = PageFiles.of(name).orElseThrow(() -> new Refused(404, "There is no such page."));
        return new Answer(200, file.type(), file.bytes(), Map.of("Vary", "Accept-Encoding"));
    }

    private Answer get(String path, Map<String, String> query) throws IOException, Refused, BadBoardFile {
        String board = query.getOrDefault("board", "");
        return switch (path) {
            case "boards" -> Answer.json(boards.list());
            case "stack" -> Answer.json(SeenStack.of(boards.pile(query.getOrDefault("bill", ""))));
            case "stack-file" -> stackFile(query.getOrDefault("kind", ""), boards.pile(query.getOrDefault("bill", "")));
            case "measure" -> {
                Optional<ObjectNode> state = boards.touching(board).state(query.getOrDefault("known", ""),
                    !query.getOrDefault("judged", "").equals("false"));
                yield state.isPresent() ? Answer.json(state.get())
                    : new Answer(204, "application/json", new byte[0], Map.of());
            }
            case "see" -> Answer.json(SeenBoard.of(judge(board, query), boards.cutters()));
            case "cut" -> Answer.json(boards.cutting(board).state(judge(board, Map.of()), boards.revision(board)));
            case "file" -> Answer.download("text/csv; charset=utf-8", board, boards.text(board));
            case "report" -> {
                Judgement judgement = judge(board, query);
                yield Answer.download("text/plain; charset=utf-8", board + ".report.txt",
                    TextReport.of(judgement, new Figures(judgement.board().units())));
            }
            case "sheet" -> {
                Judgement judgement = judge(board, query);
                Figures figures = new Figures(judgement.board().units());
                yield Answer.download("image/png", board + ".png", BoardSheet.png(judgement, figures));
            }
            default -> throw new Refused(404, "The bench does not know that question.");
        };
    }

    /** The stack to take along: as a table, as a report, or as a sheet to print. */
    private static Answer stackFile(String kind, Boards.Pile pile) throws Refused {
        Stack stack = pile.stack().orElseThrow(() -> new Refused(404, "There is no board to price yet."));
        return switch (kind) {
            case "csv" -> Answer.download("text/csv; charset=utf-8", "stack.csv", StackReport.csv(stack, Optional.empty()));
            case "report" -> Answer.download("text/plain; charset=utf-8", "stack.txt", StackReport.of(stack,
                pile.figures(), Optional.empty(), pile.plan(), Optional.empty(), Optional.empty(), Optional.empty()));
            case "sheet" -> Answer.download("image/png", "stack.png", pile.plan().isPresent()
                ? BuyChart.png(pile.plan().get(), stack.currency(), pile.figures())
                : StackChart.png(stack, pile.figures()));
            default -> throw new Refused(404, "The bench does not know that question.");
        };
    }

    private Judgement judge(String board, Map<String, String> query) throws IOException, Refused, BadBoardFile {
        return boards.judge(board, new Boards.Wish(query.getOrDefault("target", ""), query.getOrDefault("skim", ""),
            query.getOrDefault("without", ""), query.getOrDefault("cutter", "")));
    }

    private Answer post(String path, HttpExchange exchange, Map<String, String> query)
            throws IOException, Refused, BadBoardFile {
        byte[] bytes = Limits.body(exchange);
        if (path.equals("take")) {
            return Answer.json(boards.take(query.getOrDefault("name", ""), bytes));
        }
        JsonNode body = read(bytes);
        String board = body.path("board").asText();
        String base = body.path("base").asText();
        double x = body.path("x").asDouble(Double.NaN);
        double y = body.path("y").asDouble(Double.NaN);
        boolean needsPlace = path.equals("touch") || path.equals("skip") || path.equals("caliper");
        if (needsPlace && !(Double.isFinite(x) && Double.isFinite(y))) {
            throw new Refused(400, "Say x and y of the place, in mm.");
        }
        return Answer.json(switch (path) {
            case "begin" -> boards.begin(body);
            case "touch" -> boards.touching(board).touch(new TouchDesk.Touch(base, x, y,
                body.path("height").asText(), body.path("insists").asBoolean()));
            case "undo" -> boards.touching(board).undo(base);
            case "skip" -> boards.touching(board).skip(x, y);
            case "caliper" -> boards.touching(board).caliper(base, x, y, body.path("thickness").asText());
            case "caliper-back" -> boards.touching(board).withoutLastCaliper(base);
            case "note" -> boards.touching(board).note(base, body.path("note").asText());
            case "tick" -> boards.cutting(board).tick(judge(board, Map.of()), boards.revision(board),
                body.path("step").asText(), body.path("done").asBoolean());
            case "face-b" -> boards.cutting(board).read(judge(board, Map.of()), boards.revision(board),
                body.path("place").asInt(-1), body.path("height").asText());
            default -> throw new Refused(404, "The bench does not know that order.");
        });
    }

    private static JsonNode read(byte[] bytes) throws Refused {
        try {
            JsonNode node = MAPPER.readTree(bytes);
            if (node != null && node.isObject()) {
                return node;
            }
        } catch (JsonProcessingException e) {
            throw new Refused(400, "What was sent is not JSON (RFC 8259).");
        } catch (IOException e) {
            throw new Refused(400, "What was sent could not be read.");
        }
        throw new Refused(400, "What was sent is no JSON object.");
    }

    private static Map<String, String> query(String raw) throws Refused {
        Map<String, String> query = new HashMap<>();
        for (String pair : raw == null ? new String[0] : raw.split("&")) {
            int equals = pair.indexOf('=');
            if (equals > 0) {
                try {
                    query.put(URLDecoder.decode(pair.substring(0, equals), StandardCharsets.UTF_8),
                        URLDecoder.decode(pair.substring(equals + 1), StandardCharsets.UTF_8));
                } catch (IllegalArgumentException e) {
                    throw new Refused(400, "The address is not written as it should be.");
                }
            }
        }
        return query;
    }
}
