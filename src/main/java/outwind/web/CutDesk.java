package outwind.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.LengthReader;
import outwind.board.Quantity;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.cutting.FaceBCheck;
import outwind.judge.Judgement;
import outwind.judge.SecondCut;
import outwind.report.files.RecordingFile;
import outwind.report.text.BenchWords;
import outwind.report.words.Figures;
import outwind.surface.ImpossibleBoard;

/**
 * How far the cutting of one board is, kept in a file beside it: the steps that are done and what face B read at the
 * places of the check. The file names the revision of the board that the steps were made for.
 */
final class CutDesk {

    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String FACE_B = "face-b";
    private static final long LARGEST = 64 * 1024;

    private final Path file;

    /** @param board the board's file */
    CutDesk(Path board) {
        this.file = board.resolveSibling(board.getFileName() + ".cut.json");
    }

    /** Where the work is, with every step in words. */
    synchronized ObjectNode state(Judgement judgement, String revision) throws IOException {
        return describe(judgement, revision, kept(revision));
    }

    /** Ticks a step off, or takes the tick back. */
    synchronized ObjectNode tick(Judgement judgement, String revision, String step, boolean done)
            throws IOException, Refused {
        Figures figures = new Figures(judgement.board().units());
        boolean known = step.equals(FACE_B)
            || BenchWords.steps(judgement, figures).stream().anyMatch(one -> one.id().equals(step));
        if (!known) {
            throw new Refused(400, "There is no such step on this board.");
        }
        ObjectNode state = kept(revision);
        ArrayNode ticked = JsonNodeFactory.instance.arrayNode();
        state.withArray("/done").forEach(one -> {
            if (!one.asText().equals(step)) {
                ticked.add(one.asText());
            }
        });
        if (done) {
            ticked.add(step);
        }
        state.set("done", ticked);
        keep(state, revision);
        return describe(judgement, revision, state);
    }

    /** Keeps what face B reads at one place of the check, counted from 0; blank takes it back. */
    synchronized ObjectNode read(Judgement judgement, String revision, int place, String height)
            throws IOException, Refused {
        if (place < 0 || place >= judgement.checks().size()) {
            throw new Refused(400, "There is no such place on face B.");
        }
        String typed = height.strip().replace(',', '.');
        if (!typed.isEmpty()) {
            new LengthReader(judgement.board().units(), false).read(Quantity.Z, typed);
        }
        ObjectNode state = kept(revision);
        ObjectNode faceB = state.withObject("/faceB");
        faceB.put(String.valueOf(place), typed);
        keep(state, revision);
        return describe(judgement, revision, state);
    }

    private ObjectNode kept(String revision) throws IOException {
        ObjectNode fresh = JsonNodeFactory.instance.objectNode();
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) || Files.size(file) > LARGEST) {
            return fresh;
        }
        try {
            JsonNode read = MAPPER.readTree(Files.readString(file));
            boolean fits = read instanceof ObjectNode && read.path("revision").asText().equals(revision)
                && (read.path("done").isMissingNode() || read.path("done").isArray())
                && (read.path("faceB").isMissingNode() || read.path("faceB").isObject());
            return fits ? (ObjectNode) read : fresh.put("stale", true);
        } catch (JsonProcessingException e) {
            return fresh.put("stale", true);
        }
    }

    private void keep(ObjectNode state, String revision) throws IOException {
        state.put("revision", revision).remove("stale");
        RecordingFile.at(file).keep(MAPPER.writeValueAsString(state) + "\n");
    }

    private ObjectNode describe(Judgement judgement, String revision, ObjectNode state) {
        Figures figures = new Figures(judgement.board().units());
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("revision", revision).put("units", figures.unit()).put("stale", state.path("stale").asBoolean());
        List<String> done = state.path("done").isArray() ? MAPPER.convertValue(state.get("done"),
            MAPPER.getTypeFactory().constructCollectionType(List.class, String.class)) : List.of();
        ArrayNode steps = node.putArray("steps");
        List<BenchWords.Step> planned = BenchWords.steps(judgement, figures);
        planned.forEach(step -> steps.addObject().put("id", step.id()).put("text", step.text()).put("size", step.size())
            .put("done", done.contains(step.id())));
        if (planned.isEmpty()) {
            ArrayNode why = node.putArray("why");
            BenchWords.verdict(judgement, figures).forEach(why::add);
            return node;
        }
        ArrayNode checks = node.putArray("checks");
        for (int i = 0; i < judgement.checks().size(); i++) {
            FaceBCheck check = judgement.checks().get(i);
            checks.addObject().put("at", "x " + figures.place(check.x()) + ", y " + figures.placeLength(check.y()))
                .put("expected", figures.fine(check.height())).put("limit", figures.fine(check.tolerance()))
                .put("read", state.path("faceB").path(String.valueOf(i)).asText(""));
        }
        node.put("faceBDone", done.contains(FACE_B));
        faceB(judgement, state).ifPresent(node::setAll);
        return node;
    }

    /** Once every place of the check is read: whether the board has moved, and the cut that is left. */
    private static Optional<ObjectNode> faceB(Judgement judgement, ObjectNode state) {
        Figures figures = new Figures(judgement.board().units());
        StringBuilder text = new StringBuilder("# units: mm\n# repeatability: " + judgement.shape().noise().deviation()
            + "\nx,y,z\n");
        for (int i = 0; i < judgement.checks().size(); i++) {
            String height = state.path("faceB").path(String.valueOf(i)).asText("");
            if (height.isEmpty()) {
                return Optional.empty();
            }
            FaceBCheck check = judgement.checks().get(i);
            double z = new LengthReader(judgement.board().units(), false).read(Quantity.Z, height);
            text.append(check.x()).append(',').append(check.y()).append(',').append(z).append('\n');
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode words = node.putArray("faceB");
        try {
            Board before = judgement.board();
            Board read = BoardFile.parse(before.name(), text.toString(), Defaults.ofFaceB(before));
            SecondCut second = SecondCut.of(judgement, read);
            boolean moved = !second.movement().isUnknown() && second.movement().isReal();
            node.put("moved", moved);
            BenchWords.faceB(second, figures).forEach(words::add);
        } catch (ImpossibleBoard | BadBoardFile e) {
            node.put("moved", true);
            words.add(e.getMessage());
        }
        return Optional.of(node);
    }
}
