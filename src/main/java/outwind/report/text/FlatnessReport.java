package outwind.report.text;

import com.fasterxml.jackson.databind.node.ObjectNode;
import outwind.flatten.Flatness;
import outwind.flatten.Verdict;
import outwind.report.json.JsonText;
import outwind.report.words.Figures;
import outwind.report.words.Page;
import outwind.surface.Faces;
import outwind.surface.trend.Fits;
import outwind.surface.trend.Warp;

/** Whether a finished face is flat, in a few lines. */
public final class FlatnessReport {

    private FlatnessReport() { }

    /**
     * Writes the report.
     *
     * @param amount within which the face should be flat (mm)
     */
    public static String of(Faces faces, Flatness flatness, double amount, Figures figures) {
        Page page = new Page();
        String wanted = figures.fineLength(amount);
        page.line(faces.board().name());
        page.paragraph(figures.place(faces.board().length()) + " x " + figures.placeLength(faces.board().width())
            + ", " + Figures.count(faces.board().pointsOnFaceA(), "reading", "readings") + " on a finished face");
        page.gap();
        double chance = flatness.chanceWithin(amount);
        page.paragraph(switch (Verdict.of(chance)) {
            case YES -> "YES: it is flat to " + wanted + ".";
            case NO -> "NO: it is not flat to " + wanted + ". The board has moved, or it was not cut flat.";
            default -> "DOUBTFUL: it may or may not be flat to " + wanted + ".";
        });
        page.paragraph("Two parallel planes " + figures.fineLength(flatness.median()) + " apart ("
            + figures.fine(flatness.low()) + " to " + figures.fineLength(flatness.high()) + ", 90\u00a0%) hold the"
            + " whole face. The chance that " + wanted + " is enough is " + Figures.chance(chance) + ".");
        double noise = faces.shape().noise().deviation();
        if (Verdict.of(chance) == Verdict.DOUBTFUL) {
            page.paragraph("One reading is good to a standard deviation of " + figures.fineLength(noise)
                + ". State repeatability in the file if yours are better, or take more readings.");
        }
        if (Verdict.of(chance) == Verdict.NO) {
            page.paragraph("Let it rest, then measure it again. If there is wood to spare, skim the face that is"
                + " further out first.");
        }
        return page.toString();
    }

    /** The same for scripts: lengths in mm, shares from 0 to 1. */
    public static String json(Faces faces, Flatness flatness, double amount) {
        ObjectNode root = JsonText.root("check");
        root.putObject("board").put("name", faces.board().name()).put("length", faces.board().length())
            .put("width", faces.board().width()).put("readings", faces.board().pointsOnFaceA());
        Warp warp = Warp.of(faces.board(), Fits.of(faces.board()));
        ObjectNode bent = root.putObject("warp");
        bent.putNull("twist").putNull("bow").putNull("cup");
        warp.twist().ifPresent(twist -> bent.put("twist", twist.value()));
        warp.bow().ifPresent(bow -> bent.put("bow", bow.value()));
        warp.cup().ifPresent(cup -> bent.put("cup", cup.value()));
        root.putObject("flatness").put("median", flatness.median()).put("low", flatness.low())
            .put("high", flatness.high()).put("within", amount).put("chance", flatness.chanceWithin(amount));
        root.put("verdict", Verdict.of(flatness.chanceWithin(amount)).word());
        return JsonText.of(root);
    }
}
