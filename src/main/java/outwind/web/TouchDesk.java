package outwind.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Place;
import outwind.board.Quantity;
import outwind.board.file.Recording;
import outwind.board.text.BadBoardFile;
import outwind.judge.HeightCheck;
import outwind.judge.Prospect;
import outwind.report.files.RecordingFile;
import outwind.report.files.RecordingLock;
import outwind.report.words.Figures;
import outwind.report.words.RecordingWords;
import outwind.surface.PredictedHeight;
import outwind.surface.ImpossibleBoard;
import outwind.surface.MeasuredShape;
import outwind.surface.SuspectReading;

/**
 * One board that is being touched off, from any number of devices. The file is read afresh for every request, so that
 * nothing is known that is not on the disk; a reading is answered for once it is there, and the verdict so far comes
 * with the answer or soon after it.
 *
 * <p>A reading names the revision that its device last saw. If rows came since, it is kept all the same, unless its
 * place was read meanwhile: the same height there is this very reading, sent again because its answer was lost; another
 * height is a conflict, which the person sees and decides.
 *
 * <p>Whatever else is sent again for want of an answer is done once, too. A caliper reading or a note that is there
 * already, and a place that is left out already, are left as they are. What would undo another device's work is refused.
 */
final class TouchDesk {

    /** Places nearer than this are one: files keep them to whole mm (mm). */
    private static final double SAME_PLACE = 0.6;

    /**
     * Longest that an answer waits for the verdict (ms). A reading is kept by then: with many devices at once the verdict
     * follows, and none of them waits for the others' boards.
     */
    private static final long PATIENCE = 150;

    private final Path file;
    private final Workload workload;
    private Look look = new Look("", CompletableFuture.completedFuture(Optional.empty()));
    private volatile List<SuspectReading> suspects = List.of();

    /** @param workload judges the board so far */
    TouchDesk(Path file, Workload workload) {
        this.file = file;
        this.workload = workload;
    }

    /** What is being found out of one revision; empty if no verdict can be given of it. */
    private record Look(String revision, CompletableFuture<Optional<Outlook>> known) {

        boolean isDone() {
            return known.isDone() && !known.isCompletedExceptionally();
        }

        /** What is known of it within some time (ms). */
        Optional<Outlook> within(long patience) {
            try {
                return known.get(patience, TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return Optional.empty();
            } catch (TimeoutException | CancellationException e) {
                // It follows, or that of a later revision does.
                return Optional.empty();
            } catch (ExecutionException e) {
                throw new IllegalStateException(e.getCause());
            }
        }
    }

    /**
     * What a prospect says, without the thousand possible boards behind it: those of fifty boards would fill memory.
     *
     * @param said     for the page
     * @param suspects readings that look wrong
     */
    private record Outlook(ObjectNode said, List<SuspectReading> suspects) {

        static Outlook of(Prospect known, Figures figures, boolean planDone) {
            ObjectNode said = JsonNodeFactory.instance.objectNode();
            said.put("soFar", new RecordingWords(figures).soFar(known)).put("verdict", known.verdict().word())
                .put("settled", known.isSettled());
            said.put("low", known.thickness().low()).put("median", known.thickness().median())
                .put("high", known.thickness().high());
            ArrayNode suspects = said.putArray("suspects");
            known.suspects().forEach(suspect -> TouchDesk.put(suspects.addObject(), new Place(suspect.reading().x(),
                suspect.reading().y()), figures).put("expected", figures.fineLength(suspect.expected())));
            if (planDone && !known.isSettled()) {
                known.next().ifPresent(more -> TouchDesk.put(said.putObject("worthwhile"), new Place(more.x(),
                    more.y()), figures));
            }
            return new Outlook(said, known.suspects());
        }
    }

    /** A reading as it was typed. */
    record Touch(String base, double x, double y, String height, boolean insists) { }

    private Recording read() throws IOException, BadBoardFile {
        return Recording.read(file);
    }

    /**
     * What there is, unless the device knows it already.
     *
     * @param judged true if the device knows the verdict of that revision, too
     */
    Optional<ObjectNode> state(String known, boolean judged) throws IOException, BadBoardFile {
        Recording recording = read();
        boolean hasNews = !Revision.of(recording.text()).equals(known) || !judged && look(recording).isDone();
        return hasNews ? Optional.of(describe(recording)) : Optional.empty();
    }

    /** What became of a reading. */
    private record Outcome(Recording now, String key, String words) {

        static Outcome kept(Recording now) {
            return new Outcome(now, "", "");
        }
    }

    /** Keeps a reading; where it is doubted or in conflict, says so and keeps nothing. */
    ObjectNode touch(Touch touch) throws IOException, BadBoardFile {
        Outcome outcome = outcome(touch);
        ObjectNode node = describe(outcome.now());
        return outcome.key().isEmpty() ? node.put("kept", true) : node.put(outcome.key(), outcome.words());
    }

    private synchronized Outcome outcome(Touch touch) throws IOException, BadBoardFile {
        try (RecordingLock lock = RecordingLock.of(file)) {
            return outcome(lock.recording(), touch);
        }
    }

    private Outcome outcome(RecordingFile kept, Touch touch) throws IOException, BadBoardFile {
        Recording recording = read();
        String height = touch.height().strip().replace('−', '-').replace(',', '.');
        double z = recording.gauge().read(Quantity.Z, height);
        Place place = new Place(touch.x(), touch.y());
        if (!Revision.of(recording.text()).equals(touch.base())) {
            Optional<Recording.Entry> meanwhile = since(recording, touch.base(), place);
            if (meanwhile.isPresent()) {
                boolean same = meanwhile.get().height().isPresent() && meanwhile.get().height().getAsDouble() == z;
                return same ? Outcome.kept(recording) : new Outcome(recording, "conflict", "Another device read "
                        + figures(recording).fineLength(meanwhile.get().height().orElse(0))
                        + " here meanwhile. Look at both, then type yours again if it is right.");
            }
        }
        Optional<HeightCheck> check = touch.insists() ? Optional.empty() : Optional.of(check(recording, place));
        Optional<PredictedHeight> against = check.flatMap(known -> known.contradicts(z));
        if (against.isPresent()) {
            double off = check.get().bound() * against.get().deviation();
            Figures figures = figures(recording);
            return new Outcome(recording, "doubt", "The others point to between "
                + figures.fine(against.get().mean() - off) + " and " + figures.fineLength(against.get().mean() + off)
                + " here. Touch it again. If it reads the same, press Keep once more.");
        }
        Recording next = recording.touched(place, height);
        kept.keep(next.text());
        return Outcome.kept(next);
    }

    /** What was entered at a place after a revision; empty too if nothing tells when it was entered. */
    private static Optional<Recording.Entry> since(Recording recording, String base, Place place) {
        OptionalInt lines = Revision.linesAt(recording.text(), base);
        return recording.entries().stream().filter(entry -> entry.height().isPresent())
            .filter(entry -> near(entry.place(), place.x(), place.y()))
            .filter(entry -> lines.isEmpty() || entry.line() > lines.getAsInt())
            .reduce((first, second) -> second);
    }

    /** One order, on the recording as it is on the disk. */
    @FunctionalInterface
    private interface Change {

        /** The recording after it; the same one where there is nothing to do. */
        Recording of(Recording before) throws IOException, BadBoardFile, Refused;
    }

    private ObjectNode changed(Change change) throws IOException, BadBoardFile, Refused {
        return describe(next(change));
    }

    private synchronized Recording next(Change change) throws IOException, BadBoardFile, Refused {
        try (RecordingLock lock = RecordingLock.of(file)) {
            Recording before = read();
            Recording next = change.of(before);
            if (next != before) {
                lock.recording().keep(next.text());
            }
            return next;
        }
    }

    /** Takes back what was entered last. */
    ObjectNode undo(String base) throws IOException, BadBoardFile, Refused {
        return changed(before -> requireBase(before, base).undone().orElseThrow(() -> new Refused(409,
            "There is nothing to take back.")));
    }

    /** Leaves a planned place out; once is enough. */
    ObjectNode skip(double x, double y) throws IOException, BadBoardFile, Refused {
        return changed(before -> {
            Recording.Planned planned = before.plan().stream().filter(one -> near(one.place(), x, y))
                .reduce((first, again) -> first.entry().isEmpty() ? first : again)
                .orElseThrow(() -> new Refused(409, "This place is not planned."));
            if (planned.entry().isEmpty()) {
                return before.skipped(new Place(x, y));
            }
            if (planned.entry().get().height().isPresent()) {
                throw new Refused(409, "This place was read meanwhile.");
            }
            return before;
        });
    }

    /** Keeps a caliper reading of the rough thickness. */
    ObjectNode caliper(String base, double x, double y, String thickness)
            throws IOException, BadBoardFile, Refused {
        return changed(before -> {
            Recording next = before.calipered(new Place(x, y), thickness.strip().replace(',', '.'));
            CaliperReading sent = next.board().calipers().get(next.board().calipers().size() - 1);
            boolean known = !Revision.of(before.text()).equals(base) && before.board().calipers().stream()
                .anyMatch(one -> near(new Place(one.x(), one.y()), x, y) && one.thickness() == sent.thickness());
            return known ? before : next;
        });
    }

    /** Takes the last caliper reading back. */
    ObjectNode withoutLastCaliper(String base) throws IOException, BadBoardFile, Refused {
        return changed(before -> requireBase(before, base).withoutLastCaliper().orElseThrow(() -> new Refused(409,
            "There is no caliper reading to take back.")));
    }

    /** Writes a note beside the last reading. */
    ObjectNode note(String base, String note) throws IOException, BadBoardFile, Refused {
        return changed(before -> {
            List<Recording.Entry> entries = before.entries();
            boolean known = !entries.isEmpty() && entries.get(entries.size() - 1).note().equals(note);
            return known ? before : requireBase(before, base).noted(note).orElseThrow(() -> new Refused(409,
                "A note goes beside the last reading, and there is none yet."));
        });
    }

    private static boolean near(Place place, double x, double y) {
        return Math.hypot(place.x() - x, place.y() - y) < SAME_PLACE;
    }

    private static Recording requireBase(Recording recording, String base) throws Refused {
        if (!Revision.of(recording.text()).equals(base)) {
            throw new Refused(409, "The board's readings changed meanwhile. Look at them, then try again.");
        }
        return recording;
    }

    private static Figures figures(Recording recording) {
        return new Figures(recording.board().units());
    }

    /** The last verdict may be of fewer readings: what looked wrong in it and is still there, looks wrong. */
    private HeightCheck check(Recording recording, Place place) {
        List<SuspectReading> wrong = suspects.stream()
            .filter(suspect -> recording.board().readings().contains(suspect.reading())).toList();
        return HeightCheck.at(place, recording, () -> MeasuredShape.of(recording.board()), wrong);
    }

    private synchronized Look look(Recording recording) {
        String revision = Revision.of(recording.text());
        if (!revision.equals(look.revision())) {
            look.known().cancel(false);
            look = new Look(revision, recording.board().readingsOf(Face.A).size() < Prospect.FEWEST
                ? CompletableFuture.completedFuture(Optional.empty()) : workload.later(() -> outlook(recording)));
        }
        return look;
    }

    private Optional<Outlook> outlook(Recording recording) {
        try {
            Outlook known = Outlook.of(Prospect.of(recording.board()), figures(recording), recording.next().isEmpty());
            suspects = known.suspects();
            return Optional.of(known);
        } catch (ImpossibleBoard e) {
            // Said by its absence; the judgement says it in full.
            return Optional.empty();
        }
    }

    private ObjectNode describe(Recording recording) {
        Board board = recording.board();
        Figures figures = figures(recording);
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("revision", Revision.of(recording.text())).put("name", board.name()).put("units", figures.unit())
            .put("length", board.length()).put("width", board.width())
            .put("size", figures.place(board.length()) + " × " + figures.placeLength(board.width()));
        board.target().ifPresent(target -> node.put("target", figures.setting(target)).put("targetLength", target));
        ArrayNode calipers = node.putArray("calipers");
        board.calipers().forEach(caliper -> put(calipers.addObject(), new Place(caliper.x(), caliper.y()), figures)
            .put("thickness", figures.fineLength(caliper.thickness())));
        ArrayNode plan = node.putArray("plan");
        for (Recording.Planned planned : recording.plan()) {
            ObjectNode spot = plan.addObject();
            put(spot, planned.place(), figures).put("again", planned.again()).put("done", planned.entry().isPresent());
            planned.entry().flatMap(entry -> entry.height().isPresent()
                ? Optional.of(figures.fine(entry.height().getAsDouble())) : Optional.empty())
                .ifPresent(height -> spot.put("height", height));
        }
        ArrayNode entries = node.putArray("entries");
        for (Recording.Entry entry : recording.entries()) {
            ObjectNode row = put(entries.addObject(), entry.place(), figures).put("note", entry.note());
            entry.height().ifPresent(height -> row.put("height", figures.fine(height)));
        }
        recording.next().ifPresent(next -> node.put("next", next));
        Look looked = look(recording);
        looked.within(PATIENCE).ifPresent(known -> node.setAll(known.said()));
        return node.put("judged", looked.isDone());
    }

    private static ObjectNode put(ObjectNode node, Place place, Figures figures) {
        return node.put("x", place.x()).put("y", place.y())
            .put("at", "x " + figures.place(place.x()) + ", y " + figures.placeLength(place.y()));
    }
}
