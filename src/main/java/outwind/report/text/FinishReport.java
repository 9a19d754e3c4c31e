package outwind.report.text;

import java.util.Optional;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.flatten.ThicknessRange;
import outwind.judge.SecondCut;
import outwind.report.words.CutWords;
import outwind.report.words.Figures;
import outwind.report.words.Page;
import outwind.surface.SuspectReading;

/** What is left to do once face A is cut, and what comes out: 80 columns of text. */
public final class FinishReport {

    private FinishReport() { }

    /** Writes the report. */
    public static String of(SecondCut second, Figures figures) {
        CutWords words = new CutWords(second.request().shop(), second.machining(), figures);
        Page page = new Page();
        page.line(second.board().name());
        page.paragraph(figures.place(second.board().length()) + " x " + figures.placeLength(second.board().width())
            + ", face\u00a0A cut, " + Figures.count(second.board().pointsOnFaceA(), "reading", "readings")
            + " on face\u00a0B");
        page.gap();
        page.paragraph(verdict(second, figures));
        page.paragraph(range(second, figures));
        second.suspects().forEach(suspect -> page.paragraph(suspect(suspect, figures)));
        page.heading("What is left to do");
        if (!(second.cut().aboveBed() > 0)) {
            page.paragraph("There is nothing left to cut to: face\u00a0B cannot be cleaned.");
            return page.toString();
        }
        page.paragraph(words.moved(second.movement()));
        page.gap();
        page.item("1.", "Let the board rest, then lay it on " + words.bed() + " with face\u00a0A down. It needs no shims. Press on"
            + " each corner: it must not move. " + words.clamps(second.cut()));
        page.item("2.", words.cut(second.cut(), Optional.of(highest(second, figures))));
        page.heading("Take care");
        page.paragraph(CutWords.CAUTIONS);
        return page.toString();
    }

    static String verdict(SecondCut second, Figures figures) {
        String wanted = second.board().target().stream().mapToObj(figures::setting).findFirst().orElse("");
        return switch (second.verdict()) {
            case YES -> "YES: it finishes at " + wanted + ".";
            case DOUBTFUL -> "DOUBTFUL: it may or may not finish at " + wanted + ".";
            case NO -> "NO: it does not finish at " + wanted + ".";
            case NONE -> "It should finish at about " + figures.length(second.range().median()) + ".";
        };
    }

    private static String range(SecondCut second, Figures figures) {
        ThicknessRange range = second.range();
        return "With " + figures.small(second.request().skim()) + " skimmed off face\u00a0B it gives "
            + figures.precise(range.median()) + " (" + figures.precise(range.low()) + " to "
            + figures.precise(range.high()) + ", 90\u00a0%)."
            + second.chance().stream().mapToObj(chance -> " The chance of "
                + figures.setting(second.board().target().getAsDouble()) + " is " + Figures.chance(chance) + ".")
                .findFirst().orElse("");
    }

    private static String suspect(SuspectReading suspect, Figures figures) {
        Reading reading = suspect.reading();
        return "LOOK AGAIN at line " + reading.line() + " of the file: " + figures.fineLength(reading.z())
            + ". The other readings point to " + figures.fineLength(suspect.expected()) + " there.";
    }

    private static String highest(SecondCut second, Figures figures) {
        int i = second.faces().whole().highestOver(second.cut().plane());
        return "x\u00a0" + figures.place(second.faces().whole().x()[i]) + " y\u00a0"
            + figures.place(second.faces().whole().y()[i]) + " with face\u00a0" + Face.B + " up";
    }
}
