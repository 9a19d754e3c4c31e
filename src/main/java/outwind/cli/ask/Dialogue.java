package outwind.cli.ask;

import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import outwind.board.BadValue;
import outwind.board.LengthReader;
import outwind.board.Face;
import outwind.board.Place;
import outwind.board.Quantity;
import outwind.board.Reading;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.board.file.Recording;
import outwind.flatten.NextReading;
import outwind.judge.HeightCheck;
import outwind.judge.Prospect;
import outwind.report.files.RecordingFile;
import outwind.report.words.Figures;
import outwind.report.words.RecordingWords;
import outwind.surface.PredictedHeight;
import outwind.surface.ImpossibleBoard;
import outwind.surface.MeasuredShape;
import outwind.surface.SuspectReading;
import outwind.surface.ReadingNoise;

/**
 * Takes a board's touch-offs one by one: asks for each, holds it against what the others predict, keeps it, and says
 * what the board looks like so far. Every answer is kept in the file before the next question is asked.
 */
public final class Dialogue {

    /** Decimals of a sum of heights: a 64th of an inch has six, and no height is read finer. */
    private static final int DECIMALS = 6;

    private final Asker asker;
    private final PrintWriter out;
    private final PrintWriter complaints;
    private final RecordingFile file;
    private final String fileName;
    private final RecordingWords words;

    private Recording recording;
    /** Where the person wants to touch instead of the next place of the plan. */
    private Optional<Place> chosen = Optional.empty();
    /** A height that was doubted and is believed if it is typed again. */
    private OptionalDouble doubted = OptionalDouble.empty();
    private Optional<Prospect> prospect = Optional.empty();
    private List<Reading> saidSuspects = List.of();
    /** True if rows were taken that nothing was said of yet. */
    private boolean unlooked;
    private int refused;
    private boolean saidSettled;
    private boolean saidOver;
    private boolean saidCalipers;

    /** @param complaints where it is said what was not taken */
    public Dialogue(Asker asker, PrintWriter out, PrintWriter complaints, RecordingFile file, String fileName,
            Recording recording) {
        this.asker = asker;
        this.out = out;
        this.complaints = complaints;
        this.file = file;
        this.fileName = fileName;
        this.recording = recording;
        this.words = new RecordingWords(new Figures(recording.board().units()));
    }

    /**
     * Runs until the person is done or nothing more is typed.
     *
     * @return true if all that was typed was taken; a person has typed again what was not
     */
    public boolean run() throws IOException {
        file.keep(recording.text());
        out.println(words.beginning(recording, fileName));
        look();
        boolean going = true;
        while (going) {
            if (unlooked && !asker.hasMore()) {
                look();
            }
            Optional<String> line = asker.ask(question());
            going = line.isPresent() && heed(TypedCommand.of(line.get()));
        }
        if (unlooked) {
            look();
        }
        out.println(words.ending(recording, fileName));
        leaveDoubted();
        return refused == 0;
    }

    /** Says what was not taken; where nobody types it again, it stays so. */
    private void refuse(String why) {
        refused++;
        complaints.println(why);
    }

    /** Does what a line says; false if it says that the person is done. */
    private boolean heed(TypedCommand said) throws IOException {
        try {
            if (said.word().isEmpty()) {
                takeNumbers(said);
                return true;
            }
            switch (said.word().get()) {
                case UNDO -> undo();
                case SKIP -> skip();
                case AGAIN -> choose(said.rest().isEmpty() ? lastPlace() : planned(said.rest()));
                case GO -> choose(planned(said.rest()));
                case CALIPER -> caliper(said.rest());
                case NOTE -> note(said.rest());
                case LIST -> out.println(words.list(recording));
                case WHY -> out.println(words.why(prospect,
                    place().flatMap(place -> check(place).pointed().stream().findFirst())));
                case HELP -> out.print(RecordingWords.help());
                case BY -> {
                    if (recording.lastTouch().isPresent()) {
                        touchHere(sum(said.rest()));
                    } else {
                        refuse("There is no reading to add to: type the height itself.");
                    }
                }
                case DONE -> {
                    finish();
                    return false;
                }
            }
        } catch (BadValue e) {
            refuse(capital(e.getMessage()) + ". " + e.mend());
        }
        return true;
    }

    private void takeNumbers(TypedCommand said) throws IOException {
        Optional<List<String>> row = said.row().filter(cells -> !isHeight(said.rest()));
        if (row.isPresent()) {
            Place place = new Place(typed().read(Quantity.X, row.get().get(0)),
                typed().read(Quantity.Y, row.get().get(1)));
            // A log does not answer back: its rows are kept as they are, and looked at when no more of them come.
            keep(recording.touched(place, withPoint(row.get().get(2))));
            unlooked = true;
        } else if (!said.isBlank()) {
            touchHere(withPoint(said.rest()));
        }
    }

    /** At a prompt a comma parts nothing: it can only be a decimal mark, or one of thousands, which is refused. */
    private LengthReader typed() {
        return new LengthReader(recording.gauge().units(), true);
    }

    /** As it is kept in any table. */
    private static String withPoint(String height) {
        return height.replace(',', '.');
    }

    private boolean isHeight(String text) {
        try {
            typed().read(Quantity.Z, text);
            return true;
        } catch (BadValue e) {
            return false;
        }
    }

    /** Takes a height at the place that was asked for, unless it has to be typed again. */
    private void touchHere(String height) throws IOException {
        double z = typed().read(Quantity.Z, height);
        Optional<Place> place = place();
        if (place.isEmpty()) {
            refuse("Type x and y before the height: no place is left to touch.");
            return;
        }
        boolean insisted = doubted.isPresent() && doubted.getAsDouble() == z;
        Optional<HeightCheck> check = insisted ? Optional.empty() : Optional.of(check(place.get()));
        Optional<PredictedHeight> against = check.flatMap(known -> known.contradicts(z));
        if (against.isPresent()) {
            doubted = OptionalDouble.of(z);
            complaints.println(words.unexpected(against.get(), check.get().bound(), recording.touchedAt(place.get())
                .map(Recording.Entry::height).orElse(OptionalDouble.empty())));
            return;
        }
        keep(recording.touched(place.get(), height));
        look();
    }

    private HeightCheck check(Place place) {
        return HeightCheck.at(place, recording,
            () -> prospect.map(Prospect::shape).orElseGet(() -> MeasuredShape.of(recording.board())),
            prospect.map(Prospect::suspects).orElse(List.of()));
    }

    /** The height of the last touch-off and a difference, as one would type it. */
    private String sum(String difference) {
        double step = typed().read(Quantity.Z, difference);
        Units units = recording.gauge().units();
        double last = recording.lastTouch().orElseThrow().height().getAsDouble();
        return BigDecimal.valueOf(units.fromMillimetres(last + step)).setScale(DECIMALS, RoundingMode.HALF_EVEN)
            .stripTrailingZeros().toPlainString();
    }

    private void keep(Recording next) throws IOException {
        try {
            file.keep(next.text());
        } catch (IOException e) {
            throw new NotKept(e);
        }
        recording = next;
        chosen = Optional.empty();
        doubted = OptionalDouble.empty();
        prospect = Optional.empty();
    }

    /** Says what the board looks like so far, once it looks like anything. */
    private void look() {
        unlooked = false;
        if (recording.board().readingsOf(Face.A).size() < Prospect.FEWEST) {
            return;
        }
        try {
            Prospect now = Prospect.of(recording.board());
            prospect = Optional.of(now);
            out.println(words.soFar(now));
            List<Reading> suspected = now.suspects().stream().map(SuspectReading::reading).toList();
            if (!saidSuspects.containsAll(suspected)) {
                words.suspects(now).ifPresent(out::println);
            }
            saidSuspects = suspected;
            boolean settled = now.isSettled();
            if (settled && !saidSettled && recording.next().isPresent()) {
                out.println(words.settled());
            }
            saidSettled = settled;
            suggest(now);
        } catch (ImpossibleBoard e) {
            out.println(capital(e.getMessage()) + ".");
        }
    }

    /** Once the plan is done, goes where one more touch-off tells most; but first where one was taken back. */
    private void suggest(Prospect now) {
        if (recording.next().isPresent() || chosen.isPresent()) {
            return;
        }
        if (!saidCalipers) {
            nextCaliper().map(words::askCaliper).ifPresent(out::println);
            saidCalipers = true;
        }
        Optional<NextReading> next = now.isSettled() ? Optional.empty() : now.next();
        next.ifPresent(worthwhile -> {
            chosen = Optional.of(new Place(worthwhile.x(), worthwhile.y()));
            out.println(words.worthwhile(worthwhile));
        });
        if (next.isEmpty() && !saidOver) {
            out.println(words.nothingMore());
            saidOver = true;
        }
    }

    private Optional<Place> place() {
        return chosen.or(() -> {
            OptionalInt next = recording.next();
            return next.isPresent() ? Optional.of(recording.plan().get(next.getAsInt()).place()) : Optional.empty();
        });
    }

    private String question() {
        OptionalInt next = recording.next();
        if (chosen.isEmpty() && next.isPresent()) {
            Recording.Planned planned = recording.plan().get(next.getAsInt());
            return words.question(next.getAsInt() + 1, recording.plan().size(), planned.place(), planned.again());
        }
        return chosen.map(place -> words.question(place, recording.touchedAt(place).isPresent()))
            .orElse("x y height, or done: ");
    }

    private void undo() throws IOException {
        Optional<Recording> before = recording.undone();
        if (before.isEmpty()) {
            out.println("There is nothing to take back.");
            return;
        }
        Recording.Entry taken = recording.entries().get(recording.entries().size() - 1);
        keep(before.get());
        saidOver = false;
        chosen = place().filter(taken.place()::equals).isPresent() ? Optional.empty() : Optional.of(taken.place());
        out.println(words.takenBack(taken));
        look();
    }

    private void skip() throws IOException {
        leaveDoubted();
        OptionalInt next = recording.next();
        if (chosen.isPresent() || next.isEmpty()) {
            chosen = Optional.empty();
            return;
        }
        keep(recording.skipped(recording.plan().get(next.getAsInt()).place()));
    }

    /** Keeps a thickness at the next place for the caliper or at one that is typed, or takes the last one back. */
    private void caliper(String rest) throws IOException {
        String[] cells = rest.split("[\\s;]+");
        Optional<Place> place = nextCaliper();
        if (rest.equals("back")) {
            Optional<Recording> before = recording.withoutLastCaliper();
            if (before.isEmpty()) {
                out.println("There is no caliper reading to take back.");
                return;
            }
            keepBeside(before.get());
        } else if (cells.length == 3) {
            keepBeside(recording.calipered(new Place(recording.gauge().read(Quantity.X, cells[0]),
                recording.gauge().read(Quantity.Y, cells[1])), cells[2]));
        } else if (rest.isEmpty() || place.isEmpty()) {
            out.println(place.map(words::askCaliper).orElse(RecordingWords.CALIPERS_DONE));
            return;
        } else {
            keepBeside(recording.calipered(place.get(), rest));
        }
        out.println(nextCaliper().map(words::askCaliper).orElse(RecordingWords.CALIPERS_DONE));
        look();
    }

    /** Where the caliper has not measured yet; empty on a board that was planed. */
    private Optional<Place> nextCaliper() {
        if (recording.board().evenThickness()) {
            return Optional.empty();
        }
        return TouchGrid.byCaliper(recording.plan().stream().map(Recording.Planned::place).toList(),
            recording.board().length(), recording.board().width()).stream()
            .filter(place -> recording.board().calipers().stream().noneMatch(caliper ->
                place.isAt(new Place(caliper.x(), caliper.y())))).findFirst();
    }

    /** Keeps what changes nothing of where the cutter goes. */
    private void keepBeside(Recording next) throws IOException {
        Optional<Place> where = chosen;
        keep(next);
        chosen = where;
    }

    private void note(String text) throws IOException {
        Optional<Recording> noted = text.isEmpty() ? Optional.empty() : recording.noted(text);
        if (noted.isEmpty()) {
            out.println("A note goes with the last reading: type note and the text.");
            return;
        }
        Optional<Prospect> same = prospect;
        keepBeside(noted.get());
        prospect = same;
    }

    /** A height that was doubted and not typed again is not taken. */
    private void leaveDoubted() {
        refused += doubted.isPresent() ? 1 : 0;
        doubted = OptionalDouble.empty();
    }

    private void choose(Optional<Place> place) {
        leaveDoubted();
        chosen = place.or(() -> chosen);
        if (place.isEmpty()) {
            out.println("There is no such place; list shows their numbers.");
        }
    }

    private Optional<Place> lastPlace() {
        return recording.lastTouch().map(Recording.Entry::place);
    }

    /** The place of a number in the list. */
    private Optional<Place> planned(String number) {
        return number.matches("\\d{1,4}") && Integer.parseInt(number) >= 1
            && Integer.parseInt(number) <= recording.plan().size()
            ? Optional.of(recording.plan().get(Integer.parseInt(number) - 1).place()) : Optional.empty();
    }

    /** Leaves a file without the rows of the plan that are done, and with what the repeats have shown. */
    private void finish() throws IOException {
        keep(recording.tidied());
        OptionalDouble deviation = recording.board().repeatability().isPresent() ? OptionalDouble.empty()
            : ReadingNoise.repeatability(recording.board());
        if (deviation.isPresent()) {
            keep(recording.stating(words.repeatabilityLine(deviation.getAsDouble())));
            out.println(words.repeatability(deviation.getAsDouble()));
        }
    }

    private static String capital(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
