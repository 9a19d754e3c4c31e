package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.Place;
import outwind.board.Reading;
import outwind.board.file.Recording;
import outwind.flatten.NextReading;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.judge.Prospect;
import outwind.surface.PredictedHeight;
import outwind.surface.SuspectReading;

/** What is said while a board is touched off. */
public final class RecordingWords {

    private static final String HELP = """
        Type the height that the cutter reads where it just touches, higher is more:
          -0.30, 5/64, 3/64in      the height
          by 0.3, by -0.12         that much above or below the touch-off before it
          305 15 -0.30             x, y and height: a touch-off anywhere; rows may be
                                   pasted, with blanks or commas between
        or a word, or its first letter:
          undo      take back what was entered last
          skip      leave this place out
          again     touch the last place again; again 4: the fourth of the list
          go 4      go to the fourth place of the list
          caliper 31.4          the thickness at the next place for the caliper;
                                caliper 305 15 31.4 anywhere; caliper back
          note ...  write something beside the last touch-off
          list      the places and what was read there
          why       where the verdict and the doubts come from
          done      finish
        Every height is in the file as soon as the next question is asked.
        """;

    /** That the caliper has been everywhere it should. */
    public static final String CALIPERS_DONE = "The caliper has been everywhere it should.";

    private final Figures figures;

    public RecordingWords(Figures figures) {
        this.figures = figures;
    }

    /** What can be typed. */
    public static String help() {
        return HELP;
    }

    /** The question for a planned place, with its number from 1. */
    public String question(int number, int of, Place place, boolean again) {
        return number + " of " + of + ", " + question(place, again);
    }

    /** The question for a place that is not in the plan. */
    public String question(Place place, boolean again) {
        return at(place) + (again ? " again" : "") + ": ";
    }

    /** How far a recording is when it is taken up. */
    public String beginning(Recording recording, String file) {
        int touched = touches(recording);
        int left = (int) recording.plan().stream().filter(planned -> planned.entry().isEmpty()).count();
        String plan = left == 0 ? "" : Figures.count(left, "place", "places") + " to measure";
        String begun = touched == 0 ? plan : Figures.count(touched, "reading is", "readings are") + " in " + file
            + (left == 0 ? "" : ", " + plan);
        return paragraph((begun.isEmpty() ? "" : begun + ". ") + "Heights in " + figures.unitInFull()
            + ". Type help for what else you can type.");
    }

    /** The verdict so far, in one line. */
    public String soFar(Prospect prospect) {
        ThicknessRange range = prospect.thickness();
        if (range.median() <= 0) {
            return "So far it cannot be flattened.";
        }
        String thickness = "about " + figures.precise(range.median()) + " (" + number(Math.max(0, range.low())) + " to "
            + number(range.high()) + ")";
        OptionalDouble chance = prospect.chance();
        return Page.plain(chance.isEmpty() ? "So far it finishes at " + thickness + "."
            : "So far " + word(prospect.verdict()) + ", chance of " + figures.length(wanted(prospect)) + " "
                + Figures.chance(chance.getAsDouble()) + "; " + thickness + ".");
    }

    private String number(double mm) {
        String precise = figures.precise(mm);
        return precise.substring(0, precise.length() - figures.unit().length() - 1);
    }

    private static String word(Verdict verdict) {
        return verdict == Verdict.DOUBTFUL ? verdict.word() : verdict.word().toUpperCase(Locale.ROOT);
    }

    private static double wanted(Prospect prospect) {
        return prospect.board().target().orElseThrow();
    }

    /** That it is settled. */
    public String settled() {
        return paragraph("That settles it: more readings would hardly change the verdict. Type done, or go on.");
    }

    /** Where one more touch-off would tell most. */
    public String worthwhile(NextReading next) {
        return paragraph("All places are done. The best one to add is x " + figures.place(next.x()) + " y "
            + figures.place(next.y()) + ". It narrows the range to about " + Figures.percent(next.left())
            + ". Measure it, or type done.");
    }

    /** Where to take the caliper next. */
    public String askCaliper(Place place) {
        return paragraph("Now the caliper, at " + at(place) + ": type caliper and the thickness. It narrows the range of"
            + " a sawn board most.");
    }

    /** That nothing more is planned. */
    public String nothingMore() {
        return paragraph("All places are measured. Type done, or x, y and height of another place.");
    }

    /**
     * That a height is far from what the others predict.
     *
     * @param bound how many standard deviations are still believed
     * @param before what was read at the same place before, if it was touched
     */
    public String unexpected(PredictedHeight predicted, double bound, OptionalDouble before) {
        double off = bound * predicted.deviation();
        return paragraph((before.isPresent() ? "You read " + figures.fineLength(before.getAsDouble())
            + " here before. " : "")
            + "I expected between " + figures.fine(predicted.mean() - off) + " and "
            + figures.fineLength(predicted.mean() + off) + ". If it is right, type it again; then an earlier one may be wrong.");
    }

    /** Touch-offs that do not go with the others. */
    public Optional<String> suspects(Prospect prospect) {
        List<String> sentences = new ArrayList<>();
        for (SuspectReading suspect : prospect.suspects()) {
            Reading reading = suspect.reading();
            sentences.add(figures.fineLength(reading.z()) + " at x " + figures.place(reading.x()) + " y "
                + figures.place(reading.y()) + " looks wrong: the other readings point to "
                + figures.fineLength(suspect.expected()) + ".");
        }
        return sentences.isEmpty() ? Optional.empty()
            : Optional.of(paragraph(String.join(" ", sentences) + " Measure it again. Take a wrong one back with undo"
                + " if it was the last, or leave it out with judge --ignore "
                + figures.typed(prospect.suspects().get(0).reading().x()) + "x"
                + figures.typed(prospect.suspects().get(0).reading().y()) + "."));
    }

    /** Where the verdict comes from. */
    public String why(Optional<Prospect> prospect, Optional<PredictedHeight> here) {
        Page page = new Page();
        if (prospect.isEmpty()) {
            page.paragraph("The verdict starts at reading " + Prospect.FEWEST + ".");
        }
        prospect.ifPresent(known -> {
            page.paragraph("It tries " + known.outlook().slabs().length + " boards that these readings allow, and cuts"
                + " each. Half of them end up thicker than " + figures.precise(known.thickness().median())
                + ", and 5 % thinner than " + figures.precise(known.thickness().low()) + "."
                + (known.chance().isEmpty() ? "" : " The chance is the share that makes "
                    + figures.length(wanted(known)) + ": yes from 95 %, no up to 5 %."));
            page.paragraph("One reading is good to ±"
                + figures.fineLength(2 * known.shape().noise().deviation()) + " (95\u00a0%).");
            suspects(known).ifPresent(page::paragraph);
        });
        here.filter(predicted -> Double.isFinite(predicted.deviation())).ifPresent(predicted ->
            page.paragraph("Here the other readings point to " + figures.fine(predicted.mean()) + " ± "
                + figures.fineLength(2 * predicted.deviation()) + "."));
        return page.toString().stripTrailing();
    }

    /** The places with what was read there. */
    public String list(Recording recording) {
        List<List<String>> rows = new ArrayList<>();
        List<Recording.Planned> plan = recording.plan();
        for (int i = 0; i < plan.size(); i++) {
            rows.add(row(String.valueOf(i + 1), plan.get(i).place(), plan.get(i).entry()));
        }
        recording.entries().stream()
            .filter(entry -> plan.stream().noneMatch(planned -> planned.entry().filter(entry::equals).isPresent()))
            .forEach(entry -> rows.add(row("-", entry.place(), Optional.of(entry))));
        Page page = new Page();
        page.table("", List.of("no.", "x", "y", "height (" + figures.unit() + ")", "note"), rows);
        return page.toString().stripTrailing();
    }

    private List<String> row(String number, Place place, Optional<Recording.Entry> entry) {
        return List.of(number, figures.place(place.x()), figures.place(place.y()),
            entry.map(done -> done.height().isPresent() ? figures.fine(done.height().getAsDouble()) : "-").orElse(""),
            entry.map(Recording.Entry::note).orElse(""));
    }

    /** That an entry was taken back. */
    public String takenBack(Recording.Entry entry) {
        return entry.height().isPresent()
            ? Page.plain("Taken back: " + figures.fineLength(entry.height().getAsDouble()) + " at "
                + at(entry.place()) + ".")
            : "Back in the plan: " + at(entry.place()) + ".";
    }

    /** How good a touch-off is, as its repeats show. */
    public String repeatability(double deviation) {
        return paragraph("The repeats show a repeatability of " + figures.fineLength(deviation)
            + " (standard deviation). It is now in the file.");
    }

    /** The key line for that. */
    public String repeatabilityLine(double deviation) {
        return "repeatability: " + figures.typed(deviation);
    }

    /** How to go on. */
    public String ending(Recording recording, String file) {
        int touched = touches(recording);
        boolean judgeable = touched >= 3;
        return Figures.count(touched, "reading is", "readings are") + " in " + file + ".\n"
            + (judgeable ? "Judge it: outwind judge " + file + "\n" : "") + "Go on: outwind record " + file;
    }

    private static int touches(Recording recording) {
        return (int) recording.entries().stream().filter(entry -> entry.height().isPresent()).count();
    }

    private String at(Place place) {
        return Page.plain("x " + figures.place(place.x()) + " y " + figures.place(place.y()));
    }

    private static String paragraph(String words) {
        Page page = new Page();
        page.paragraph(words);
        return page.toString().stripTrailing();
    }
}
