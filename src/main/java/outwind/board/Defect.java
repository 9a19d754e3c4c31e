package outwind.board;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * A rectangle of wood that is of no use: a knot, a split, wane.
 *
 * <p>Opposite corners may be given in any order; they are kept so that the first is the lower in x and in y.
 *
 * @param x1 lower end along the grain (mm)
 * @param y1 lower edge across (mm)
 * @param x2 upper end along the grain (mm), more than {@code x1}
 * @param y2 upper edge across (mm), more than {@code y1}
 */
public record Defect(double x1, double y1, double x2, double y2) {

    // A space before a fraction or a unit belongs to the number: 12 1/2, 300 mm.
    private static final String SPACE = " (?!\\d+/|[a-zA-Z\"″”])";
    private static final Pattern BETWEEN = Pattern.compile(" ?[,;] ?|" + SPACE);
    private static final Pattern BETWEEN_COMMA_NUMBERS = Pattern.compile(" ?; ?|, |" + SPACE);

    public Defect {
        if (!Double.isFinite(x1 + y1 + x2 + y2) || x1 == x2 || y1 == y2) {
            throw new IllegalArgumentException("defect needs two corners that span an area, got "
                + x1 + " " + y1 + " " + x2 + " " + y2);
        }
        double otherX = x2;
        double otherY = y2;
        x2 = Math.max(x1, otherX);
        x1 = Math.min(x1, otherX);
        y2 = Math.max(y1, otherY);
        y1 = Math.min(y1, otherY);
    }

    /** Whether the rectangle lies on a board of this size (mm). */
    boolean liesOn(double length, double width) {
        return x1 >= 0 && y1 >= 0 && x2 <= length && y2 <= width;
    }

    /** Reads {@code 300 40 420 90}, with spaces, commas or semicolons between the numbers. */
    public static Defect parse(String text, LengthReader gauge, OptionalDouble length, OptionalDouble width) {
        Pattern between = gauge.decimalComma() ? BETWEEN_COMMA_NUMBERS : BETWEEN;
        String[] corners = between.split(text.replaceAll("\\s+", " "), -1);
        if (corners.length != 4) {
            throw unreadable(text, gauge);
        }
        double x1 = gauge.readOnBoard(Quantity.X, corners[0], Quantity.LENGTH, length);
        double y1 = gauge.readOnBoard(Quantity.Y, corners[1], Quantity.WIDTH, width);
        double x2 = gauge.readOnBoard(Quantity.X, corners[2], Quantity.LENGTH, length);
        double y2 = gauge.readOnBoard(Quantity.Y, corners[3], Quantity.WIDTH, width);
        if (x1 == x2 || y1 == y2) {
            throw unreadable(text, gauge);
        }
        return new Defect(x1, y1, x2, y2);
    }

    private static BadValue unreadable(String text, LengthReader gauge) {
        return new BadValue("defect as two opposite corners x1 y1 x2 y2 in " + gauge.units().symbol(), text,
            "Write four numbers such as 300; 40; 420; 90 that span an area.");
    }
}
