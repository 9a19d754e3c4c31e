package outwind.report;

import java.util.Optional;
import outwind.board.Face;
import outwind.cutting.Cut;
import outwind.cutting.Cutter;
import outwind.cutting.Datum;
import outwind.cutting.Movement;
import outwind.surface.Warp;

/**
 * How a cut is made in words, and what it did to the board.
 *
 * @param cutter how the machine cuts
 */
record CutWords(Cutter cutter, Figures figures) {

    /** What comes before every cut, whatever the sheet. */
    static final String CAUTIONS = "Wear eye, ear and dust protection. Look for metal and loose knots first. The work"
        + " must be held before the spindle starts, and nothing may stand within reach of the cutter. Switch off and"
        + " wait for the spindle to stop before you touch shims or clamps. The machine maker's manual, local rules and"
        + " trained practice come before this sheet.";

    /**
     * How one face is cut: what zero is set on, where the last pass is, the passes and their minutes.
     *
     * @param highest where the highest spot of the face is likely to be, if that is known
     */
    String cut(Cut cut, Optional<String> highest) {
        String face = "face\u00a0" + cut.face().name();
        if (cut.passes().isEmpty()) {
            return "Nothing has to come off " + face + ".";
        }
        String depth = figures.small(cut.depth());
        String where = highest.map(place -> ", near " + place).orElse("");
        String datum = cut.datum() == Datum.BED
            ? "Set zero on the bed. Put the last pass of " + face + " at " + height(cut) + " above the bed. That should"
                + " be about " + depth + " below the highest spot of " + face + where + "."
            : "Touch off on the highest spot of " + face + where + ". Try around it, and start from the highest you"
                + " find. Put the last pass " + depth + " below that spot, about " + height(cut) + " above the bed.";
        return datum + " " + passes(cut) + minutes(cut) + (cut.face() == Face.B
            ? " The board is then " + height(cut) + " thick all over." : "");
    }

    private String height(Cut cut) {
        return cut.datum() == Datum.BED ? figures.setting(cut.aboveBed()) : figures.length(cut.aboveBed());
    }

    private String passes(Cut cut) {
        int roughing = cutter.roughingPasses(cut.depth());
        String passes = roughing == 0 ? "" : Figures.count(roughing, "roughing pass", "roughing passes")
            + " of at most " + figures.small(cutter.stepDown());
        String last = roughing < cut.passes().size() ? (roughing == 0 ? "" : " and ") + "a finishing pass of "
            + figures.small(Math.min(cutter.finishing(), cut.depth())) : "";
        return "Take " + passes + last + ".";
    }

    private String minutes(Cut cut) {
        String all = Figures.minutes(cut.minutes());
        String inWood = Figures.minutes(cut.woodMinutes());
        return " Allow about " + all + " of cutting" + (inWood.equals(all) ? "." : ", " + inWood
            + " if you skip the air.");
    }

    /** How high clamps may stand. */
    String clamps(Cut cut) {
        return cut.leavesRoomForClamps() ? "Keep clamps below " + figures.atMost(cut.keepBelow()) + " above the bed."
            : "No clamp may stand beside it, the cutter comes too near to the bed: glue or tape it down.";
    }

    /** How the board has moved while face A was cut. */
    String moved(Movement movement) {
        if (movement.isUnknown()) {
            return "Three readings cannot show whether the board has moved. Take more on face\u00a0B.";
        }
        if (!movement.isReal()) {
            return "The board has not moved while face A was cut: face\u00a0B reads what it should, to within "
                + figures.fineLength(movement.greatest()) + ".";
        }
        return "THE BOARD HAS MOVED while face A was cut: twist " + change(movement.change().twist()) + ", bow "
            + change(movement.change().bow()) + ", cup " + change(movement.change().cup()) + " since then."
            + " Face\u00a0A is no longer flat by as much. Let it rest. If there is wood to spare, cut face\u00a0B, then"
            + " skim face\u00a0A again. If not, measure it from face\u00a0A again.";
    }

    private String change(Optional<Warp.Amount> amount) {
        return amount.map(known -> figures.signed(known.value()) + "\u00a0" + figures.unit()).orElse("not seen");
    }
}
