package outwind.report.text;

import java.util.Locale;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.report.words.Figures;
import outwind.report.words.TouchSheet;

/**
 * A board file ready to be filled in: all that is known of the board, every spot in the order to touch them, heights
 * left empty. The first spot stands at the end once more: read twice, it tells whether zero has moved, and how well
 * touch-offs repeat. A board that was not planed gets a column for caliper readings.
 */
public final class TouchForm {

    private TouchForm() { }

    /** Writes the file, lengths in the board's unit. */
    public static String of(TouchSheet sheet) {
        Units units = sheet.board().units();
        TouchGrid grid = sheet.grid();
        StringBuilder text = new StringBuilder();
        key(text, "board", sheet.board().name());
        key(text, "units", units.symbol());
        key(text, "length", number(grid.length(), units));
        key(text, "width", number(grid.width(), units));
        sheet.board().thickness().ifPresent(thickness -> key(text, "thickness", number(thickness, units)
            + (sheet.board().evenThickness() ? " everywhere" : "")));
        sheet.board().target().ifPresent(target -> key(text, "target", number(target, units)));
        boolean calipers = !sheet.calipers().isEmpty();
        text.append("x,y,z").append(calipers ? ",thickness" : "").append('\n');
        sheet.tour().forEach(spot -> row(text, spot, units, calipers));
        row(text, sheet.tour().get(0), units, calipers);
        return text.toString();
    }

    private static void key(StringBuilder text, String key, String value) {
        text.append("# ").append(key).append(": ").append(value).append('\n');
    }

    private static void row(StringBuilder text, TouchGrid.Spot spot, Units units, boolean calipers) {
        text.append(number(spot.x(), units)).append(',').append(number(spot.y(), units)).append(calipers ? ",," : ",")
            .append('\n');
    }

    /** As exact as it was typed: a fraction where it is one of 64ths, else decimals. */
    private static String number(double mm, Units units) {
        double value = units.fromMillimetres(mm);
        double parts = value * 64;
        // A millionth of a 64th is the rounding of an inch to mm and back.
        if (units == Units.INCHES && Math.abs(parts - Math.rint(parts)) < 1e-6) {
            return Figures.fraction(value, 64);
        }
        return String.format(Locale.ROOT, "%.4f", value).replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
