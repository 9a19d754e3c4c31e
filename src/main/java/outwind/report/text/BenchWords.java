package outwind.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.judge.SecondCut;
import outwind.report.words.BlankSheet;
import outwind.report.words.BuySheet;
import outwind.report.words.CutWords;
import outwind.report.words.Figures;
import outwind.report.words.SawWords;
import outwind.report.words.Sentences;
import outwind.report.words.Support;
import outwind.setup.Shim;
import outwind.stock.StackPlan;

/** What is said on the page at the bench: the same sentences as in the text, one thing to do in each. */
public final class BenchWords {

    /**
     * One thing to do.
     *
     * @param id   names it in the file that says what is done
     * @param text what to do, in words
     * @param size the one length that is set by hand, to be read from afar; empty if there is none
     */
    public record Step(String id, String text, String size) {

        Step(String id, String text) {
            this(id, text, "");
        }
    }

    private BenchWords() { }

    /** The verdict, then what it rests on. */
    public static List<String> verdict(Judgement judgement, Figures figures) {
        Sentences sentences = Sentences.onAPage(judgement, figures);
        List<String> said = new ArrayList<>(List.of(sentences.verdict(), sentences.thickness()));
        if (judgement.planned() == Planned.NONE) {
            said.addAll(sentences.beforeCutting());
        }
        return List.copyOf(said);
    }

    /** What levelling on shims gains over cutting the board as it was measured. */
    public static String gain(Judgement judgement, Figures figures) {
        double measured = Math.max(0, judgement.outlook().asMeasured().median());
        double levelled = judgement.outlook().levelled().median();
        if (levelled <= 0) {
            return "Levelling does not help: the two cuts would still meet.";
        }
        String sizes = figures.precise(measured) + " as measured, " + figures.precise(levelled)
            + " levelled.";
        return (figures.precise(levelled).equals(figures.precise(measured)) ? "Levelling gains nothing: "
            : "Levelling gains " + figures.gain(measured, levelled) + " of thickness: ") + sizes;
    }

    /** How both faces are cut, one sentence or two each; none where no cut is planned. */
    public static List<String> cuts(Judgement judgement, Figures figures) {
        Sentences sentences = new Sentences(judgement, figures);
        return judgement.planned() == Planned.NONE ? List.of()
            : judgement.plannedCuts().stream().map(sentences::cut).toList();
    }

    /** Which boards to buy for a cutting bill, and what to cut each into. */
    public static List<String> buying(StackPlan plan, String currency, Figures figures) {
        BuySheet sheet = BuySheet.of(plan, currency, figures);
        List<String> said = new ArrayList<>(List.of(sheet.verdict()));
        said.addAll(sheet.details());
        said.addAll(sheet.missing());
        said.addAll(sheet.boards());
        return List.copyOf(said);
    }

    /**
     * How a board is cut to a bill.
     *
     * @param said   what is done before the first cut, and what the settings are measured from, one paragraph each
     * @param header of the cuts
     * @param rows   a cut each, in order; none if no cut is needed
     */
    public record Sawing(List<String> said, List<String> header, List<List<String>> rows) { }

    /** How a board of a stack is cut into blanks. */
    public static Sawing sawing(StackPlan.BoardCut cut, Figures figures) {
        SawWords words = new SawWords(cut.layout(), figures);
        List<List<String>> rows = words.rows();
        return new Sawing(Stream.concat(BlankSheet.of(cut, figures).details().stream(), rows.isEmpty()
            ? Stream.of("No cut is needed.") : words.explanation().stream()).toList(), SawWords.HEADER, rows);
    }

    /** How to cut it, one step after the other; none where no cut is planned. */
    public static List<Step> steps(Judgement judgement, Figures figures) {
        if (judgement.planned() == Planned.NONE) {
            return List.of();
        }
        Sentences sentences = new Sentences(judgement, figures);
        List<Step> steps = new ArrayList<>();
        steps.add(new Step("care", CutWords.CAUTIONS));
        if (!judgement.setup().held().holds()) {
            steps.add(new Step("lay", sentences.carrier()));
        } else {
            steps.add(new Step("lay", "Lay the board on " + sentences.bed() + " with face A up."
                + (judgement.setup().shims().isEmpty() ? " It needs no shims." : "")));
            for (Support support : Support.round(judgement)) {
                Shim shim = support.shim();
                String place = "x\u00a0" + figures.place(shim.x()) + " y\u00a0" + figures.place(shim.y()) + " ("
                    + figures.unit() + ").";
                steps.add(support.isShimmed() ? new Step("shim-" + support.label(), "Shim " + support.label() + ": "
                    + figures.shim(shim.height()) + "\u00a0" + figures.unit() + " at " + place,
                    figures.shim(shim.height()) + "\u00a0" + figures.unit())
                    : new Step("touches-" + figures.place(shim.x()) + "-" + figures.place(shim.y()),
                        "Check with a slip of paper that the board touches at " + place));
            }
        }
        steps.add(new Step("hold", "Press on each corner. It must not move. " + sentences.holding()));
        steps.add(new Step("face-a", sentences.cut(judgement.cuts().faceA())));
        steps.add(new Step("turn", "Mark the near edge. Turn the board over along its length on to face\u00a0A."
            + " The marked edge is now the far one. Set zero on the bed."));
        return List.copyOf(steps);
    }

    /** Whether it has moved, and the cut that is left now. */
    public static List<String> faceB(SecondCut second, Figures figures) {
        CutWords words = new CutWords(second.request().shop(), second.machining(), figures);
        List<String> said = new ArrayList<>(List.of(words.moved(second.movement()),
            FinishReport.verdict(second, figures)));
        if (second.cut().aboveBed() > 0) {
            said.add(words.clamps(second.cut()));
            said.add(words.cut(second.cut(), Optional.empty()));
        } else {
            said.add("There is nothing left to cut to: face\u00a0B cannot be cleaned.");
        }
        return List.copyOf(said);
    }
}
