package outwind.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpContext;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpPrincipal;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Requests that somebody makes up, put straight to the handler: every order and question with names, numbers and texts
 * that are right, nearly right or nonsense. Whatever comes, the answer is no 500, shows nothing of the program's
 * inside, and nothing beside the folder is read or written.
 */
public final class AnyRequest {

    private static final String SECRET = "keep-this-to-yourself";
    private static final String BOARD = """
        # units: mm
        # length: 600
        # width: 150
        # thickness: 30
        # target: 24
        x,y,z,note
        15,15,0.1,
        300,15,0.4,
        585,15,0.2,
        15,135,-0.3,
        300,135,0.2,
        585,135,
        """;

    private static final List<String> METHODS = List.of("GET", "POST", "HEAD", "PUT", "OPTIONS", "");
    private static final List<String> PATHS = List.of("/", "/enter", "/bench.js", "/api/boards", "/api/stack",
        "/api/measure", "/api/see", "/api/cut", "/api/file", "/api/report", "/api/stack-file", "/api/sheet",
        "/api/take", "/api/begin", "/api/touch", "/api/undo", "/api/skip", "/api/note", "/api/caliper", "/api/caliper-back", "/api/tick",
        "/api/face-b", "/api/../secret.csv", "/../../etc/passwd", "/api/", "//", "/api/%2e%2e/");
    private static final List<String> KEYS = List.of("board", "name", "known", "target", "skim", "without", "cutter",
        "bill", "kind", "code", "key", "base", "x", "y", "height", "insists", "thickness", "note", "step", "done",
        "place", "length", "width", "units", "columns", "rows");
    private static final List<String> VALUES = List.of("a.csv", "../secret.csv", "..\\secret.csv", "/etc/passwd",
        "link.csv", "a.csv.cut.json", ".csv", "a.csv\u0000", "CON.csv", "csv", "report", "sheet", "1", "0", "-1", "15",
        "135", "585", "0.3", "0,3", "1 3/16", "1/0", "NaN", "Infinity", "1e308", "-1e-308", "99999999999999999999",
        "shim-1", "face-b", "care", "in", "mm", "", " ", "\r\nX: y", "<img src=x onerror=alert(1)>", "${x}", "%n%s",
        "true", "null", "[]", "{}", "\"", "\uD800", "\u202e", "# length: 5", "x,y,z\n1,2,3", BOARD,
        "name,length,width,thickness,quantity\nleg,100,40,20,2\n");

    /** Where the next choice comes from. */
    public interface Choices {

        /** A number from 0 to below a bound. */
        int below(int bound);
    }

    private final Path root;
    private final Path folder;
    private final Gate gate = new Gate(Set.of("127.0.0.1:1"), true, System::nanoTime);
    private final List<Throwable> troubles = new ArrayList<>();
    private final Desk desk;

    public AnyRequest() throws IOException {
        root = Files.createTempDirectory("any-request");
        folder = Files.createDirectory(root.resolve("boards"));
        Files.writeString(root.resolve("secret.csv"), SECRET);
        Files.createSymbolicLink(folder.resolve("link.csv"), root.resolve("secret.csv"));
        desk = new Desk(gate, new Boards(new BoardFolder(folder.toRealPath()), new Workload(() -> { })), () -> { },
            troubles::add);
        tidy();
    }

    private void tidy() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(one -> !one.endsWith("link.csv")).toList()) {
                Files.delete(file);
            }
        }
        Files.writeString(folder.resolve("a.csv"), BOARD);
    }

    /**
     * Sends one request.
     *
     * @param costly one in so many may ask to judge boards; 1 for any
     * @return status of the answer
     * @throws IllegalStateException if the answer is one that must not be
     */
    public int send(Choices choices, int costly) throws IOException {
        boolean judges = choices.below(costly) == 0;
        String method = choices.below(8) > 1 ? METHODS.get(choices.below(2)) : one(METHODS, choices);
        String path = choices.below(20) == 0 ? "/" + text(choices) : one(PATHS, choices);
        boolean isCostly = path.startsWith("/api/s") || Set.of("/api/cut", "/api/report", "/api/tick", "/api/face-b",
            "/api/touch", "/api/begin", "/api/take").contains(path);
        String board = !isCostly || judges ? "a.csv" : value(choices);
        if (isCostly && !judges && (path.startsWith("/api/stack") || board.equals("a.csv"))) {
            path = "/api/measure";
        }
        StringBuilder query = new StringBuilder("board=" + encoded(board));
        StringBuilder body = new StringBuilder("{\"board\":" + quoted(board));
        for (int i = choices.below(7); i > 0; i--) {
            String key = one(KEYS, choices);
            String value = value(choices);
            query.append('&').append(key).append('=').append(choices.below(9) == 0 ? value.strip() : encoded(value));
            body.append(",\"").append(key).append("\":").append(choices.below(3) == 0 ? value : quoted(value));
        }
        String sent = choices.below(10) == 0 ? text(choices) : body + (choices.below(12) == 0 ? "" : "}");
        Exchange exchange = new Exchange(method, address(path + "?" + query), sent.getBytes(StandardCharsets.UTF_8));
        exchange.asked.set("Host", choices.below(15) == 0 ? header(choices) : "127.0.0.1:1");
        if (choices.below(15) == 0) {
            exchange.asked.set("Origin", choices.below(2) == 0 ? "http://127.0.0.1:1" : "null");
        }
        exchange.asked.set("Cookie", choices.below(15) == 0 ? header(choices) : gate.cookie());
        desk.handle(exchange);
        require(exchange, method + " " + path + "?" + query + "\n" + sent);
        return exchange.status;
    }

    private void require(Exchange exchange, String request) throws IOException {
        String answer = exchange.answer.toString(StandardCharsets.UTF_8);
        boolean leaks = Stream.of(SECRET, "Exception", "\tat ", "outwind.web.", root.toString())
            .anyMatch(answer::contains);
        if (exchange.status >= 500 || !troubles.isEmpty() || leaks) {
            throw new IllegalStateException(exchange.status + " " + answer + "\nfor " + request,
                troubles.isEmpty() ? null : troubles.get(0));
        }
        try (Stream<Path> beside = Files.list(root)) {
            if (beside.count() != 2 || !Files.readString(root.resolve("secret.csv")).equals(SECRET)) {
                throw new IllegalStateException("something was written beside the folder for " + request);
            }
        }
        try (Stream<Path> inside = Files.list(folder)) {
            if (inside.count() > 12) {
                tidy();
            }
        }
    }

    private static URI address(String wanted) {
        try {
            return URI.create("http://127.0.0.1:1" + wanted.replaceAll("[\\p{Cc}\\s\"<>\\\\^`{|}]", "_"));
        } catch (IllegalArgumentException e) {
            // The server refuses what is no address before the handler sees it.
            return URI.create("http://127.0.0.1:1/");
        }
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static String quoted(String text) {
        return Bench.MAPPER.getNodeFactory().textNode(text).toString();
    }

    private static String value(Choices choices) {
        return choices.below(4) == 0 ? text(choices) : one(VALUES, choices);
    }

    private static String text(Choices choices) {
        StringBuilder text = new StringBuilder();
        for (int i = choices.below(12); i > 0; i--) {
            text.append((char) (choices.below(10) == 0 ? choices.below(0x10000) : choices.below(128)));
        }
        return text.toString();
    }

    /** A line end ends a header before the handler sees it. */
    private static String header(Choices choices) {
        return text(choices).replaceAll("[\\r\\n]", " ");
    }

    private static String one(List<String> of, Choices choices) {
        return of.get(choices.below(of.size()));
    }

    /** A request that no network carried. */
    private static final class Exchange extends HttpExchange {

        private final Headers asked = new Headers();
        private final Headers answered = new Headers();
        private final ByteArrayOutputStream answer = new ByteArrayOutputStream();
        private final String method;
        private final URI address;
        private final byte[] body;
        private int status;

        Exchange(String method, URI address, byte[] body) {
            this.method = method;
            this.address = address;
            this.body = body;
        }

        @Override
        public Headers getRequestHeaders() {
            return asked;
        }

        @Override
        public Headers getResponseHeaders() {
            return answered;
        }

        @Override
        public URI getRequestURI() {
            return address;
        }

        @Override
        public String getRequestMethod() {
            return method;
        }

        @Override
        public HttpContext getHttpContext() {
            return null;
        }

        @Override
        public void close() {
            status = status == 0 ? 599 : status;
        }

        @Override
        public InputStream getRequestBody() {
            return new ByteArrayInputStream(body);
        }

        @Override
        public OutputStream getResponseBody() {
            return answer;
        }

        @Override
        public void sendResponseHeaders(int code, long length) {
            status = code;
        }

        @Override
        public InetSocketAddress getRemoteAddress() {
            return new InetSocketAddress(InetAddress.getLoopbackAddress(), 2);
        }

        @Override
        public int getResponseCode() {
            return status;
        }

        @Override
        public InetSocketAddress getLocalAddress() {
            return new InetSocketAddress(InetAddress.getLoopbackAddress(), 1);
        }

        @Override
        public String getProtocol() {
            return "HTTP/1.1";
        }

        @Override
        public Object getAttribute(String name) {
            return null;
        }

        @Override
        public void setAttribute(String name, Object value) {
            throw new UnsupportedOperationException("the handler sets no attributes");
        }

        @Override
        public void setStreams(InputStream in, OutputStream out) {
            throw new UnsupportedOperationException("the handler leaves the streams alone");
        }

        @Override
        public HttpPrincipal getPrincipal() {
            return null;
        }
    }
}
