package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import outwind.board.Face;
import outwind.cutting.Cut;
import outwind.cutting.Datum;
import outwind.cutting.Machining;
import outwind.cutting.Movement;
import outwind.cutting.Pass;
import outwind.shop.Cutter;
import outwind.shop.Shop;
import outwind.shop.Sled;
import outwind.surface.trend.Warp;

/**
 * How a cut is made in words, and what it did to the board.
 *
 * @param shop      what there is to cut with
 * @param machining every way to make the cuts, the quickest first; empty where no cutter is stated
 */
public record CutWords(Shop shop, List<Machining> machining, Figures figures) {

    /** What comes before every cut, whatever the sheet. */
    public static final String CAUTIONS = "Wear eye, ear and dust protection. Look for metal and loose knots."
        + " Hold the work fast. Keep clear of the cutter. Stop the spindle before you touch shims or clamps. The"
        + " machine's manual, local rules and training come first.";

    /**
     * How one face is cut: what zero is set on, where the last pass is, the passes and their minutes.
     *
     * @param highest where the highest spot of the face is likely to be, if that is known
     */
    public String cut(Cut cut, Optional<String> highest) {
        String face = "face\u00a0" + cut.face().name();
        if (cut.isEmpty()) {
            return "Nothing has to come off " + face + ".";
        }
        String depth = figures.small(cut.depth());
        String where = highest.map(place -> ", near " + place).orElse("");
        return datum(cut, face, depth, where) + " " + passes(cut) + (cut.face() == Face.B
            ? " The board is then " + height(cut) + " thick." : "");
    }

    private String datum(Cut cut, String face, String depth, String where) {
        if (shop.sled().filter(Sled.PLANER::equals).isPresent()) {
            return throughThePlaner(cut, face, depth, where);
        }
        return cut.datum() == Datum.BED
            ? "Set zero on " + bed() + ". Make the last pass of " + face + " at " + height(cut) + " above it, about "
                + depth + " below its highest spot" + where + "."
            : "Touch off on the highest spot of " + face + where + " (try around it). Make the last pass " + depth
                + " below that spot, about " + height(cut) + " above " + bed() + ".";
    }

    private String throughThePlaner(Cut cut, String face, String depth, String where) {
        return cut.face() == Face.B
            ? "Run the board through the planer without the sled, face\u00a0A down. The last pass is at " + height(cut)
                + ", about " + depth + " below the highest spot" + where + "."
            : "Run sled and board through the planer. The last pass is at " + height(cut) + " plus the thickness of the"
                + " sled, about " + depth + " below the highest spot of " + face + where + ".";
    }

    /** What the board lies on. */
    public String bed() {
        return shop.bedInWords();
    }

    private String height(Cut cut) {
        return cut.datum() == Datum.BED ? figures.setting(cut.aboveBed()) : figures.length(cut.aboveBed());
    }

    private String passes(Cut cut) {
        return machining.isEmpty() ? usualPasses(cut.depth()) : passes(machining.get(0), cut.face());
    }

    /** How many passes it takes at the depths that are usual, for those who state no cutter. */
    private String usualPasses(double depth) {
        List<String> choices = new ArrayList<>();
        int fewer = Integer.MAX_VALUE;
        for (double each : Machining.usualDepths(figures.units())) {
            int passes = Cutter.passes(depth, each);
            if (passes < fewer) {
                choices.add((choices.isEmpty() ? Figures.count(passes, "pass", "passes") : String.valueOf(passes))
                    + " of " + figures.setting(each));
            }
            fewer = passes;
        }
        if (choices.size() == 1) {
            return "Take it in one pass.";
        }
        String last = choices.remove(choices.size() - 1);
        return "That is " + String.join(", ", choices) + " or " + last + ".";
    }

    private String passes(Machining way, Face face) {
        List<Pass> passes = way.on(face);
        String with = with(way.roughing());
        long roughing = passes.stream().filter(pass -> pass.cutter().equals(way.roughing())).count();
        String first = roughing == 1 ? "one pass"
            : roughing + " passes of at most " + figures.small(way.roughing().deepest());
        Pass last = passes.get(passes.size() - 1);
        String end = last.cutter().equals(way.roughing()) ? "" : roughing == 0 ? "" : ", then the last "
            + figures.small(last.depth() - (passes.size() > 1 ? passes.get(passes.size() - 2).depth() : 0)) + " with "
            + with(last.cutter());
        String take = "Take " + (roughing == 0 ? "one pass with " + with(last.cutter()) : first + " with " + with + end);
        long parts = passes.stream().filter(pass -> !pass.areas().isEmpty()).count();
        return take + ": about " + Figures.minutes(way.minutes(face)) + "." + (parts == 0 ? ""
            : parts == 1 ? " The first pass meets only part of the board."
                : " The first " + parts + " passes meet only parts of the board.");
    }

    private static String with(Cutter cutter) {
        return "the " + cutter.name();
    }

    /** The rectangles that a layer is cut in. */
    public String areas(Pass pass) {
        return pass.areas().stream().map(area -> "x\u00a0" + figures.place(area.x1()) + " to "
            + figures.place(area.x2()) + " y\u00a0" + figures.place(area.y1()) + " to " + figures.place(area.y2()))
            .collect(Collectors.joining(" and "));
    }

    /** One other way to make the cuts, with its time. */
    public String way(Machining way) {
        return way.roughing().name() + way.finishing().map(cutter -> ", last pass with " + cutter.name()).orElse("")
            + ": " + Figures.count(way.count(), "pass", "passes") + ", " + Figures.minutes(way.minutes());
    }

    /** How high clamps may stand. */
    public String clamps(Cut cut) {
        return cut.leavesRoomForClamps() ? "Keep clamps below " + figures.atMost(cut.keepBelow()) + " above " + bed()
            + "."
            : "The cutter comes too near " + bed() + " for clamps: glue or tape it down.";
    }

    /** How the board has moved while face A was cut. */
    public String moved(Movement movement) {
        if (movement.isUnknown()) {
            return "Three readings cannot show whether the board has moved. Take more on face\u00a0B.";
        }
        if (!movement.isReal()) {
            return "The board has not moved: face\u00a0B reads what it should, to within "
                + figures.fineLength(movement.greatest()) + ".";
        }
        return "THE BOARD HAS MOVED: twist " + change(movement.change().twist()) + ", bow "
            + change(movement.change().bow()) + ", cup " + change(movement.change().cup()) + "."
            + " Face\u00a0A is out of flat by as much. Let it rest. If there is wood to spare, cut face\u00a0B, then"
            + " skim face\u00a0A again. If not, measure face\u00a0A again and start over.";
    }

    private String change(Optional<Warp.Amount> amount) {
        return amount.map(known -> figures.signed(known.value()) + "\u00a0" + figures.unit()).orElse("not seen");
    }
}
