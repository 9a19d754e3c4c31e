package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.flatten.GridPromise;
import outwind.flatten.TouchPlan;

/**
 * A board that is to be touched off, and where: what text, sheet and board file are written from.
 *
 * @param board what is known of it; no readings yet
 * @param plan  where to touch it off
 */
public record TouchSheet(Board board, TouchPlan plan) {

    /** With fewer columns nothing shows of a kink that is not bow as well. */
    private static final int COLUMNS_FOR_A_KINK = 4;

    public TouchGrid grid() {
        return plan.chosen().grid();
    }

    public List<TouchGrid.Spot> tour() {
        return grid().tour();
    }

    /** Where the thickness should be measured by caliper; nowhere on a board that was planed. */
    public List<Place> calipers() {
        return board.evenThickness() ? List.of() : TouchGrid.byCaliper(tour().stream()
            .map(TouchGrid.Spot::place).toList(), grid().length(), grid().width());
    }

    /** What to do with the caliper; empty for a board that was planed. */
    public Optional<String> caliperAdvice(String how) {
        int count = calipers().size();
        return count == 0 ? Optional.empty() : Optional.of("Measure the thickness with a caliper too, at the " + count + " places " + how + ". Without it the range of a sawn board is about three times as wide.");
    }

    /** Its size, and what it is to become. */
    public String size(Figures figures) {
        String sides = figures.place(grid().length()) + " x " + figures.place(grid().width());
        return sides + (board.thickness().isPresent() ? " x " + figures.length(board.thickness().getAsDouble())
            : "\u00a0" + figures.unit())
            + (board.target().isPresent() ? ", to finish at " + figures.length(board.target().getAsDouble()) : "");
    }

    /** How many spots, and how long that takes. */
    public String headline() {
        return "Take " + tour().size() + " readings, " + grid().columns() + " along by " + grid().rows()
            + " across: about " + Figures.minutes(plan.minutes()) + ".";
    }

    /** What will be known afterwards. */
    public String promise(Figures figures) {
        return "Expect to know the finished thickness within a range of " + figures.fineLength(plan.chosen().range())
            + " (90\u00a0%).";
    }

    /** Why this grid. */
    public String reason(Figures figures) {
        return switch (plan.reason()) {
            case ASKED -> "This is the grid that you asked for.";
            case NARROW_ENOUGH -> "It is the smallest of these grids that should keep the range as narrow as you asked.";
            case NEAREST -> "None of these grids should keep the range as narrow as you asked. This one comes nearest.";
            case LITTLE_MORE -> "A larger grid gains little: each " + figures.small(0.1) + " off the range would take"
                + " more than " + TouchPlan.MINUTES_FOR_A_TENTH + " minutes.";
        };
    }

    /** What a grid cannot show, in few words; empty if it shows all. */
    public static String blindness(GridPromise promise) {
        String kink = promise.seesKinks() ? "" : isBlindToKinks(promise) ? "kink" : "kink well";
        String cup = promise.seesCup() ? "" : "cup";
        return kink + (kink.isEmpty() || cup.isEmpty() ? "" : ", ") + cup;
    }

    private static boolean isBlindToKinks(GridPromise promise) {
        return promise.grid().columns() < COLUMNS_FOR_A_KINK;
    }

    /** What the chosen grid cannot show, in sentences. */
    public List<String> warnings() {
        String kinkRough = "Four columns show a kink only roughly. On a board that bends sharply, as at a knot, the range may be"
            + " too narrow. Five show it better.";
        String kinkUnseen = "Fewer than four columns cannot tell a kink from a bow. On a board that bends sharply, as at a knot,"
            + " the range would be too narrow and the thickness too great.";
        String cupUnseen = "Two rows cannot show cup: it is guessed from the width.";
        List<String> warnings = new ArrayList<>();
        if (!plan.chosen().seesKinks()) {
            warnings.add(isBlindToKinks(plan.chosen()) ? kinkUnseen : kinkRough);
        }
        if (!plan.chosen().seesCup()) {
            warnings.add(cupUnseen);
        }
        return warnings;
    }

    /** The name as that of a file: letters and digits of any script, joined by hyphens. */
    public String fileName() {
        String bare = board.name().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
        return bare.isEmpty() ? "board" : bare;
    }
}
