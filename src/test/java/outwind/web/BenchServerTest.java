package outwind.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.file.Recording;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.files.RecordingLock;
import outwind.report.json.JsonReport;

/** What the bench answers, and whom. */
class BenchServerTest {

    @TempDir
    private Path folder;

    private String raw(Bench bench, String request) throws IOException {
        URI at = URI.create(bench.base);
        try (Socket socket = new Socket(at.getHost(), at.getPort())) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void aNameThatIsNotOursIsRefusedSoThatNoRebindingHelps() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            assertTrue(raw(bench, "GET / HTTP/1.0\r\nHost: evil.example\r\n\r\n").startsWith("HTTP/1.1 421"));
        }
    }

    @Test
    void anotherSitesPageIsRefused() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String host = "Host: " + URI.create(bench.base).getAuthority() + "\r\n";
            assertTrue(raw(bench, "GET /api/boards HTTP/1.0\r\n" + host + "Origin: http://evil.example\r\n\r\n")
                .startsWith("HTTP/1.1 403"));
            assertTrue(raw(bench, "GET /api/boards HTTP/1.0\r\n" + host + "Sec-Fetch-Site: cross-site\r\n\r\n")
                .startsWith("HTTP/1.1 403"));
        }
    }

    @Test
    void whoHoldsNoTokenSeesNothingAndTheKeyWorksOnce() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            HttpClient stranger = HttpClient.newHttpClient();
            for (String path : List.of("/api/boards", "/bench.js", "/api/stack")) {
                assertEquals(401, stranger.send(HttpRequest.newBuilder(URI.create(bench.base + path)).build(),
                    HttpResponse.BodyHandlers.ofString()).statusCode(), path);
            }
            String key = bench.server.opening();
            HttpRequest opening = HttpRequest.newBuilder(URI.create(key)).build();
            assertEquals(303, stranger.send(opening, HttpResponse.BodyHandlers.ofString()).statusCode());
            assertEquals(200, stranger.send(opening, HttpResponse.BodyHandlers.ofString()).statusCode());
            assertTrue(stranger.send(opening, HttpResponse.BodyHandlers.ofString()).body().contains("Type the code"));
        }
    }

    @Test
    void everyAnswerForbidsForeignScriptsAndFrames() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            for (String path : List.of("/", "/api/boards", "/api/nothing")) {
                String policy = bench.get(path).headers().firstValue("Content-Security-Policy").orElse("");
                assertTrue(policy.contains("default-src 'none'") && policy.contains("script-src 'self';")
                    && policy.contains("frame-ancestors 'none'"), path + ": " + policy);
            }
            String page = bench.get("/").body();
            assertFalse(page.contains("<script>") || page.contains("style="), page);
        }
    }

    @Test
    void thePageComesPackedToWhoUnpacksIt() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            HttpResponse<String> plain = bench.get("/bench.css");
            assertTrue(plain.headers().firstValue("Content-Encoding").isEmpty());
            HttpResponse<byte[]> packed = bench.packed("/bench.css", "br, gzip;q=0.5");
            assertEquals("gzip", packed.headers().firstValue("Content-Encoding").orElseThrow());
            assertEquals("Accept-Encoding", packed.headers().firstValue("Vary").orElseThrow());
            assertTrue(packed.body().length < plain.body().length() / 2, packed.body().length + " bytes");
            assertEquals(plain.body(), new String(new GZIPInputStream(new ByteArrayInputStream(packed.body()))
                .readAllBytes(), StandardCharsets.UTF_8));
            // RFC 9110, section 12.4.2: a weight of 0 means "not acceptable".
            assertTrue(bench.packed("/bench.css", "gzip;q=0").headers().firstValue("Content-Encoding").isEmpty());
            assertTrue(bench.packed("/api/boards", "gzip").headers().firstValue("Content-Encoding").isEmpty());
        }
    }

    // The board is 31.5 mm thick.
    @ParameterizedTest
    @CsvSource({"skim=15.75, no wood between the faces", "skim=-1, ", "target=0, above zero", "target=1000, below a metre"})
    void whatNoBoardCanHaveIsRefusedInWords(String asked, String words) throws Exception {
        Files.copy(Path.of("sample-probes/hall-table.csv"), folder.resolve("hall-table.csv"));
        try (Bench bench = new Bench(folder, false)) {
            HttpResponse<String> answer = bench.get("/api/see?board=hall-table.csv&" + asked);

            assertEquals(400, answer.statusCode(), answer.body());
            assertTrue(answer.body().contains(words == null ? "" : words), answer.body());
        }
    }

    @Test
    void thePageWeighsLittle() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            int weight = 0;
            for (String file : PageFiles.NAMES) {
                weight += bench.packed("/" + file, "gzip").body().length;
            }
            assertTrue(weight < 150_000, weight + " bytes");
        }
    }

    @Test
    void memoryIsGivenBackOnceAfterWorkAndOnlyInTheQuiet() throws Exception {
        AtomicLong released = new AtomicLong();
        try (Workload workload = new Workload(released::incrementAndGet)) {
            workload.look();
            workload.look();
            assertEquals(0, released.get(), "nothing was judged yet");
            workload.turn().close();
            workload.look();
            assertEquals(0, released.get(), "work goes on");
            workload.look();
            workload.look();
            assertEquals(1, released.get());
        }
    }

    @Test
    void noMoreBoardsAreJudgedAtOnceThanThereAreCores() throws Exception {
        int cores = Runtime.getRuntime().availableProcessors();
        try (Workload workload = new Workload(() -> { })) {
            List<Workload.Turn> turns = new ArrayList<>();
            for (int i = 0; i < cores; i++) {
                turns.add(workload.turn());
            }
            CompletableFuture<String> waiting = workload.later(() -> "judged");
            assertThrows(TimeoutException.class, () -> waiting.get(50, TimeUnit.MILLISECONDS));
            turns.get(0).close();
            assertEquals("judged", waiting.get(10, TimeUnit.SECONDS));
        }
    }

    @Test
    void whatIsWrongWithAFileIsSaidWithoutTheWayToIt() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            Files.writeString(folder.resolve("torn.csv"), "# length: 600\nx,y,z\n1,2,three\n");
            for (String asked : List.of("see?board=torn.csv", "boards", "stack")) {
                String answer = bench.get("/api/" + asked).body();
                assertTrue(answer.contains("torn.csv"), answer);
                assertFalse(answer.contains(folder.toRealPath().toString()), answer);
            }
        }
    }

    @Test
    void aVerdictThatIsLateFollows() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            JsonNode state = bench.asked("measure?board=" + board);
            for (int i = 0; i < 6; i++) {
                state = bench.touch(board, state, i, "0.1");
                assertTrue(state.path("kept").asBoolean());
            }
            long end = System.nanoTime() + 10_000_000_000L;
            String asked = "measure?board=" + board + "&known=" + state.path("revision").asText();
            while (!state.path("judged").asBoolean() && System.nanoTime() < end) {
                HttpResponse<String> more = bench.get("/api/" + asked + "&judged=false");
                state = more.statusCode() == 204 ? state : Bench.MAPPER.readTree(more.body());
            }
            assertTrue(state.path("soFar").asText().startsWith("So far"), state.toString());
            assertEquals(204, bench.get("/api/" + asked + "&judged=true").statusCode());
        }
    }

    // The rules of recording hold on the page too: while a recording has the file, nothing is written past it.
    @Test
    void aBoardThatIsBeingRecordedElsewhereIsLeftAlone() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("shared");
            JsonNode state = bench.asked("measure?board=" + board);
            String before = Files.readString(folder.resolve(board));

            try (RecordingLock lock = RecordingLock.of(folder.resolve(board))) {
                assertTrue(bench.touch(board, state, 0, "0.4").path("trouble").asText().contains("Try again"));
                lock.recording().keep(before);
            }
            assertEquals(before, Files.readString(folder.resolve(board)));

            assertTrue(bench.touch(board, state, 0, "0.4").path("kept").asBoolean());
        }
    }

    @Test
    void aCodeLetsOneDeviceInAndFiveWrongOnesAreFollowedByAPause() throws Exception {
        AtomicLong now = new AtomicLong();
        Gate gate = new Gate(Set.of("127.0.0.1:1"), true, now::get);
        String code = gate.code();
        assertTrue(gate.admits(code.toLowerCase()));
        assertFalse(gate.admits(code));
        for (int i = 0; i < 4; i++) {
            assertFalse(gate.admits("AAAAAAAA"));
        }
        String next = gate.code();
        assertRefused(429, () -> gate.admits(next));
        now.set(59_999_999_999L);
        assertRefused(429, () -> gate.admits(next));
        now.set(60_000_000_000L);
        assertTrue(gate.admits(next));
    }

    private static void assertRefused(int status, Callable<Boolean> asked) throws Exception {
        try {
            asked.call();
        } catch (Refused e) {
            assertEquals(status, e.status());
            return;
        }
        throw new AssertionError("was not refused");
    }

    @Test
    void withoutSharingOnlyThisMachineIsListenedTo() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            assertTrue(InetAddress.getByName(URI.create(bench.base).getHost()).isLoopbackAddress());
            assertTrue(bench.server.addresses().isEmpty());
            assertEquals(403, bench.get("/enter?code=" + bench.server.code()).statusCode());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"..%2Fsecret.csv", "%2Fetc%2Fpasswd", "..", "sub%2Fother.csv", ".hidden.csv", "a.csv%00",
        "link.csv", "secret.key", ""})
    void noNameLeadsOutOfTheFolder(String name) throws Exception {
        Path inside = Files.createDirectories(folder.resolve("boards/sub"));
        Files.writeString(folder.resolve("secret.csv"), "secret");
        Files.writeString(inside.resolve("other.csv"), "secret");
        Files.writeString(folder.resolve("boards/secret.key"), "secret");
        Files.writeString(folder.resolve("boards/.hidden.csv"), "secret");
        Files.createSymbolicLink(folder.resolve("boards/link.csv"), folder.resolve("secret.csv"));
        try (Bench bench = new Bench(folder.resolve("boards"), false)) {
            for (String question : List.of("file", "see", "measure", "cut")) {
                HttpResponse<String> answer = bench.get("/api/" + question + "?board=" + name);
                assertEquals(404, answer.statusCode(), question);
                assertFalse(answer.body().contains("secret"), question);
            }
            assertTrue(bench.troubles.isEmpty());
        }
    }

    @Test
    void theJudgementIsTheOneThatScriptsGet() throws Exception {
        Path sample = Path.of("sample-probes/hall-table.csv");
        Files.copy(sample, folder.resolve("hall-table.csv"));
        try (Bench bench = new Bench(folder, false)) {
            JsonNode seen = bench.asked("see?board=hall-table.csv");
            Board board = BoardFile.read(sample, Defaults.NOTHING);
            assertEquals(Bench.MAPPER.readTree(JsonReport.of(Judgement.of(board, JudgeOptions.usual(board)))),
                seen.path("judgement"));
        }
    }

    @Test
    void aReadingIsOnTheDiskWhenItIsSaidToBeKept() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            JsonNode answer = bench.touch(board, bench.asked("measure?board=" + board), 0, "-0,30");
            assertTrue(answer.path("kept").asBoolean(), answer.toString());
            assertEquals(-0.30, Recording.read(folder.resolve(board)).entries().get(0).height().orElseThrow());
        }
    }

    @Test
    void aReadingSentTwiceIsKeptOnceAlsoByAServerThatWasStartedAnew() throws Exception {
        String board;
        JsonNode before;
        try (Bench bench = new Bench(folder, false)) {
            board = bench.begin("side table");
            before = bench.asked("measure?board=" + board);
            bench.touch(board, before, 0, "0.5");
        }
        try (Bench bench = new Bench(folder, false)) {
            bench.touch(board, bench.asked("measure?board=" + board), 1, "0.4");
            JsonNode again = bench.touch(board, before, 0, "0.50");
            assertTrue(again.path("kept").asBoolean(), again.toString());
            assertEquals(2, Recording.read(folder.resolve(board)).entries().size());
        }
    }

    @Test
    void twoDevicesLoseNothingAndAConflictIsShown() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            JsonNode seenByBoth = bench.asked("measure?board=" + board);
            bench.touch(board, seenByBoth, 0, "0.5");
            JsonNode elsewhere = bench.touch(board, seenByBoth, 3, "0.2");
            assertTrue(elsewhere.path("kept").asBoolean(), elsewhere.toString());
            JsonNode conflict = bench.touch(board, seenByBoth, 0, "0.9");
            assertTrue(conflict.path("conflict").asText().contains("0.50"), conflict.toString());
            assertEquals(2, Recording.read(folder.resolve(board)).entries().size());
            assertEquals(409, bench.post("/api/undo", Bench.MAPPER.createObjectNode().put("board", board)
                .put("base", seenByBoth.path("revision").asText()).toString()).statusCode());
        }
    }

    @Test
    void manyDevicesAtOnceLoseNothing() throws Exception {
        ExecutorService devices = Executors.newFixedThreadPool(8);
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            JsonNode before = bench.asked("measure?board=" + board);
            List<Future<JsonNode>> answers = devices.invokeAll(IntStream.range(0, 5)
                .<Callable<JsonNode>>mapToObj(place -> () -> bench.touch(board, before, place, "0." + place)).toList());
            for (Future<JsonNode> answer : answers) {
                assertTrue(answer.get().path("kept").asBoolean(), answer.get().toString());
            }
            assertEquals(5, Recording.read(folder.resolve(board)).entries().size());
        } finally {
            devices.shutdownNow();
        }
    }

    @Test
    void aSlipIsDoubtedAndKeptIfItIsInsistedOn() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            JsonNode state = bench.asked("measure?board=" + board);
            for (int i = 0; i < 8; i++) {
                state = bench.touch(board, state, i, "0.0");
            }
            JsonNode doubted = bench.touch(board, state, 8, "-6.2");
            assertTrue(doubted.path("doubt").asText().startsWith("The others point to"), doubted.toString());
            assertEquals(8, Recording.read(folder.resolve(board)).entries().size());
            JsonNode spot = state.path("plan").path(8);
            JsonNode kept = bench.post("touch", Bench.MAPPER.createObjectNode().put("board", board)
                .put("base", state.path("revision").asText()).put("x", spot.path("x").asDouble())
                .put("y", spot.path("y").asDouble()).put("height", "-6.2").put("insists", true));
            assertTrue(kept.path("kept").asBoolean(), kept.toString());
        }
    }

    @Test
    void stepsAndFaceBAreKeptBesideTheBoardForAnotherDay() throws Exception {
        Files.copy(Path.of("sample-probes/hall-table.csv"), folder.resolve("hall-table.csv"));
        JsonNode plan;
        try (Bench bench = new Bench(folder, false)) {
            bench.post("tick", Bench.MAPPER.createObjectNode().put("board", "hall-table.csv").put("step", "shim-1")
                .put("done", true));
            plan = bench.asked("cut?board=hall-table.csv");
        }
        try (Bench bench = new Bench(folder, false)) {
            JsonNode state = bench.asked("cut?board=hall-table.csv");
            assertEquals(plan, state);
            for (JsonNode step : state.path("steps")) {
                assertEquals(step.path("id").asText().equals("shim-1"), step.path("done").asBoolean());
            }
            // What is expected, typed back, is as expected; one end 2 mm up at one edge is a board that has moved.
            assertFalse(checked(bench, state, 0).path("moved").asBoolean(true));
            JsonNode moved = checked(bench, state, 2);
            assertTrue(moved.path("moved").asBoolean(), moved.toString());
            assertTrue(moved.path("faceB").path(0).asText().startsWith("THE BOARD HAS MOVED"), moved.toString());
        }
    }

    private static JsonNode checked(Bench bench, JsonNode state, double lift) throws Exception {
        JsonNode answer = state;
        for (int i = 0; i < state.path("checks").size(); i++) {
            double height = state.path("checks").path(i).path("expected").asDouble() + (i == 0 ? lift : 0);
            answer = bench.post("face-b", Bench.MAPPER.createObjectNode().put("board", "hall-table.csv")
                .put("place", i).put("height", String.valueOf(height)));
        }
        return answer;
    }

    @Test
    void whoSendsSlowlyLeavesTheOthersServed() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            URI at = URI.create(bench.base);
            List<Socket> slow = new ArrayList<>();
            for (int i = 0; i < 40; i++) {
                slow.add(new Socket(at.getHost(), at.getPort()));
                slow.get(i).getOutputStream().write("GET / HT".getBytes(StandardCharsets.ISO_8859_1));
            }
            assertEquals(200, bench.get("/api/boards").statusCode());
            for (Socket socket : slow) {
                socket.close();
            }
        }
    }

    @Test
    void aCaliperReadingIsKeptInItsColumnAndCanBeTakenBack() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            JsonNode state = bench.touch(board, bench.asked("measure?board=" + board), 0, "0.5");
            JsonNode measured = caliper(bench, board, state, "31,4");
            assertEquals(31.4, Recording.read(folder.resolve(board)).board().calipers().get(0).thickness());
            assertEquals(1, measured.path("calipers").size());
            assertEquals(0, bench.post("caliper-back", order(board, measured)).path("calipers").size());
        }
    }

    private static ObjectNode order(String board, JsonNode state) {
        return Bench.MAPPER.createObjectNode().put("board", board).put("base", state.path("revision").asText());
    }

    private static JsonNode caliper(Bench bench, String board, JsonNode state, String thickness) throws Exception {
        return bench.post("caliper", order(board, state).put("x", 15).put("y", 15).put("thickness", thickness));
    }

    /** As a device does whose answer was lost: every order comes twice, and is done once. */
    @Test
    void whatIsSentAgainForWantOfAnAnswerIsDoneOnce() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            JsonNode begun = bench.asked("measure?board=" + board);
            bench.touch(board, begun, 0, "0.5");
            JsonNode state = bench.touch(board, begun, 0, "0.5");
            caliper(bench, board, state, "31,4");
            JsonNode measured = caliper(bench, board, state, "31,4");
            ObjectNode noting = order(board, measured).put("note", "by the knot");
            bench.post("note", noting);
            JsonNode noted = bench.post("note", noting);
            JsonNode spot = noted.path("plan").path(1);
            ObjectNode skipping = order(board, noted).put("x", spot.path("x").asDouble()).put("y", spot.path("y").asDouble());
            bench.post("skip", skipping);
            JsonNode skipped = bench.post("skip", skipping);
            assertEquals("by the knot", skipped.path("entries").path(0).path("note").asText());
            Recording kept = Recording.read(folder.resolve(board));
            assertEquals(2, kept.entries().size());
            assertEquals(1, kept.board().readings().size());
            assertEquals(1, kept.board().calipers().size());
            assertEquals(13, kept.plan().stream().filter(planned -> planned.entry().isEmpty()).count());
            ObjectNode undoing = order(board, skipped);
            assertEquals(200, bench.post("/api/undo", undoing.toString()).statusCode());
            assertEquals(409, bench.post("/api/undo", undoing.toString()).statusCode());
            assertEquals(1, Recording.read(folder.resolve(board)).entries().size());
        }
    }

    @Test
    void theStackSaysWhatToBuyAndIsTakenAlong() throws Exception {
        Files.copy(Path.of("sample-probes/hall-table.csv"), folder.resolve("hall-table.csv"));
        try (Bench bench = new Bench(folder, false)) {
            assertEquals(200, bench.post("/api/take?name=bill.csv",
                "name,length,width,thickness,quantity\nrail,300,60,20,2\n").statusCode());
            assertEquals("bill.csv", bench.asked("stack").path("bills").path(0).asText());
            JsonNode stack = bench.asked("stack?bill=bill.csv");
            assertTrue(stack.path("buying").path(0).asText().startsWith("The bill is met"), stack.toString());
            assertEquals(2, stack.path("stack").path("bill").path("items").path(0).path("cut").asInt());
            for (String kind : List.of("csv", "report", "sheet")) {
                assertEquals(200, bench.get("/api/stack-file?bill=bill.csv&kind=" + kind).statusCode(), kind);
            }
            assertEquals(200, bench.get("/api/sheet?board=hall-table.csv").statusCode());
        }
    }

    // Worked by hand: two rails of 300 x 60 mm are cut to 320 x 65 mm, behind a near edge of 4 mm. Whichever way they are
    // laid out, some cut is set to a length and some to a width.
    @Test
    void blanksObeyTheShopsSawAndTheirSettingsAreShown() throws Exception {
        Files.copy(Path.of("sample-probes/hall-table.csv"), folder.resolve("hall-table.csv"));
        Files.writeString(folder.resolve("bill.csv"), "name,length,width,thickness,quantity\nrail,300,60,20,2\n");
        Files.writeString(folder.resolve("outwind-shop.txt"), "first edge: 4mm\nover length: 20mm\nover width: 5mm\n");
        try (Bench bench = new Bench(folder, false)) {
            JsonNode stack = bench.asked("stack?bill=bill.csv");
            JsonNode blanks = stack.at("/stack/bill/boards/0/layout/sections");
            List<JsonNode> all = new ArrayList<>();
            blanks.forEach(section -> section.forEach(all::add));
            assertEquals(2, all.size());
            for (JsonNode blank : all) {
                assertTrue(blank.get("y1").asDouble() >= 4 - 1e-9, blank.toString());
                assertEquals(320, blank.get("x2").asDouble() - blank.get("x1").asDouble(), 1e-9);
                assertEquals(65, blank.get("y2").asDouble() - blank.get("y1").asDouble(), 1e-9);
            }
            JsonNode sawing = stack.at("/sawing/0");
            assertEquals("[\"cut\",\"of\",\"set to\",\"comes off\",\"at\"]", sawing.get("header").toString());
            List<String> set = new ArrayList<>();
            sawing.get("rows").forEach(row -> set.add(row.get(0).asText().replaceAll("\\d+\\. ", "") + " "
                + row.get(2).asText()));
            assertTrue(set.containsAll(List.of("rip 65.0", "crosscut 320.0")), set.toString());
            assertEquals(stack.at("/stack/bill/boards/0/layout/cuts").size(), set.size());
            String said = sawing.get("said").toString().replace('\u00a0', ' ');
            assertTrue(said.contains("First straighten the near edge, 4.0 mm off."), said);
            assertTrue(said.contains("20.0 mm longer and 5.0 mm wider than finished."), said);
            assertTrue(stack.get("care").asText().contains("bind the blade"), stack.get("care").asText());

            Files.writeString(folder.resolve("outwind-shop.txt"), "shortest: 350mm\n");
            JsonNode refused = bench.asked("stack?bill=bill.csv");
            assertEquals(0, refused.at("/stack/bill/boards").size());
            assertTrue(refused.get("buying").toString().contains("Too short to rip or too wide for the machine: 2 x rail."),
                refused.get("buying").toString());
        }
    }

    @Test
    void whatIsNoOrderIsAnsweredWithASentence() throws Exception {
        Files.copy(Path.of("sample-probes/hall-table.csv"), folder.resolve("hall-table.csv"));
        try (Bench bench = new Bench(folder, false)) {
            for (String body : List.of("", "[]", "{", "{\"board\":\"hall-table.csv\",\"height\":\"1e999\"}",
                    "{\"board\":\"hall-table.csv\",\"x\":1e300,\"y\":0,\"height\":\"1\"}",
                    "{\"board\":\"hall-table.csv\",\"height\":\"1\"}", "{\"board\":7,\"place\":-3}")) {
                for (String order : List.of("touch", "undo", "skip", "note", "tick", "face-b", "begin", "other")) {
                    HttpResponse<String> answer = bench.post("/api/" + order, body);
                    assertTrue(answer.statusCode() < 500, order + " " + body + ": " + answer.body());
                }
            }
            assertEquals(413, bench.post("/api/take?name=a.csv", "x".repeat(Limits.LARGEST_BODY + 1)).statusCode());
            assertTrue(bench.troubles.isEmpty(), bench.troubles.toString());
        }
    }
}
