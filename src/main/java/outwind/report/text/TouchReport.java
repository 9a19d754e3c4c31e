package outwind.report.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.flatten.GridPromise;
import outwind.report.words.Figures;
import outwind.report.words.Page;
import outwind.report.words.TouchSheet;

/** Where to touch a board off, as text: how many spots and why, the board in letters, and a list to write in. */
public final class TouchReport {

    /** Columns of letters between the board's ends, and between its two outermost columns of spots. */
    private static final int INSIDE = 72;
    private static final int SPAN = 66;

    /** More columns of spots than this cannot be distinguished in letters. */
    private static final int MOST_COLUMNS = 17;

    private static final String BOX = "[__________]";

    private final TouchSheet sheet;
    private final List<Place> calipers;
    private final Figures figures;
    private final Page page = new Page();

    private TouchReport(TouchSheet sheet, Figures figures) {
        this.sheet = sheet;
        this.calipers = sheet.calipers();
        this.figures = figures;
    }

    /** Writes the report. */
    public static String of(TouchSheet sheet, Figures figures) {
        return new TouchReport(sheet, figures).written();
    }

    private String written() {
        page.paragraph(sheet.board().name());
        page.paragraph(sheet.size(figures));
        page.gap();
        page.paragraph(sheet.headline());
        page.paragraph(sheet.promise(figures));
        sheet.warnings().forEach(page::paragraph);
        picture();
        list();
        reasons();
        cautions();
        return page.toString();
    }

    private void picture() {
        if (sheet.grid().columns() > MOST_COLUMNS) {
            return;
        }
        page.heading("The board from above");
        page.line(" far edge, y " + figures.place(sheet.grid().width()));
        String edge = " +" + "-".repeat(INSIDE) + "+";
        page.line(edge);
        for (int row = sheet.grid().rows() - 1; row >= 0; row--) {
            page.line(" |" + row(row) + "|");
            if (row > 0) {
                page.line(" |" + " ".repeat(INSIDE) + "|");
            }
        }
        page.line(edge);
        page.line(" near edge, y 0. You stand here; the end you measure from is on the left.");
    }

    /** The numbers of one row of spots at their places, not to scale across. */
    private String row(int row) {
        char[] letters = " ".repeat(INSIDE).toCharArray();
        List<TouchGrid.Spot> tour = sheet.tour();
        for (int i = 0; i < tour.size(); i++) {
            if (tour.get(i).row() == row) {
                String number = String.valueOf(i + 1);
                int at = 3 + (int) Math.round(SPAN * tour.get(i).column() / (sheet.grid().columns() - 1.0));
                number.getChars(0, number.length(), letters, at - (number.length() - 1));
            }
        }
        return new String(letters);
    }

    private void list() {
        page.heading("In this order");
        page.paragraph("Places in " + figures.unitInFull() + ": x from the end you measure from, y from the near edge."
            + " Write down the height of the cutter; higher is more. Zero may be anywhere. The way round is "
            + figures.placeLength(TouchGrid.travel(sheet.tour())) + " and ends where it began.");
        page.gap();
        List<List<String>> rows = new ArrayList<>();
        List<TouchGrid.Spot> tour = sheet.tour();
        for (int i = 0; i < tour.size(); i++) {
            rows.add(cells(String.valueOf(i + 1), tour.get(i), calipers.contains(tour.get(i).place()) ? BOX : ""));
        }
        rows.add(cells("1 again", tour.get(0), ""));
        page.table("  ", calipers.isEmpty() ? List.of("place", "x", "y", "height")
            : List.of("place", "x", "y", "height", "thickness"), rows);
        page.gap();
        page.paragraph("Read the first place again at the end. If it is off by more than one reading should be, the board or"
            + " zero has moved: start over.");
        sheet.caliperAdvice("with a second box").ifPresent(page::paragraph);
    }

    private List<String> cells(String number, TouchGrid.Spot spot, String caliper) {
        List<String> cells = List.of(number, figures.place(spot.x()), figures.place(spot.y()), BOX);
        return calipers.isEmpty() ? cells : Stream.concat(cells.stream(), Stream.of(caliper)).toList();
    }

    private void reasons() {
        page.heading("Why this grid");
        page.paragraph(sheet.reason(figures));
        page.gap();
        List<List<String>> rows = new ArrayList<>();
        for (GridPromise promise : sheet.plan().promises()) {
            boolean chosen = promise.equals(sheet.plan().chosen());
            rows.add(Arrays.asList(promise.grid().columns() + " x " + promise.grid().rows() + (chosen ? " *" : ""),
                String.valueOf(promise.grid().columns() * promise.grid().rows()),
                Figures.decimals(sheet.plan().pace().minutes(promise.grid()), 0),
                figures.fine(promise.range()), TouchSheet.blindness(promise)));
        }
        page.table("  ", List.of("grid", "readings", "minutes", "range, " + figures.unit(), "does not show"), rows);
        page.gap();
        page.paragraph("Minutes: " + Figures.plain(sheet.plan().pace().seconds()) + " s for each reading, plus the"
            + " way between. The range comes from simulated rough boards of this size; yours may be a fifth better or"
            + " worse. None of them has a sharp kink. No grid shows what lies between its places. They have one"
            + " thickness all over: a sawn board needs the caliper.");
    }

    private void cautions() {
        page.heading("Take care");
        page.paragraph("Lock the spindle before you measure. Shim the board so that it cannot rock, and leave it there."
            + " Look for metal and loose knots. The machine's manual, local rules and training come first.");
    }
}
