package outwind.board.file;

import java.util.Locale;
import outwind.board.BadValue;
import outwind.board.LengthReader;
import outwind.board.Quantity;

/**
 * What a person states of the whole board's thickness: {@code 31.5}, read by caliper somewhere, or {@code 31.5
 * everywhere} where it was planed.
 *
 * @param figure     mm
 * @param everywhere true if it is the same all over
 */
public record StatedThickness(double figure, boolean everywhere) {

    private static final String EVERYWHERE = " everywhere";

    /**
     * Reads what was written.
     *
     * @throws BadValue if it is no thickness
     */
    public static StatedThickness parse(String text, LengthReader gauge) {
        boolean everywhere = text.strip().toLowerCase(Locale.ROOT).endsWith(EVERYWHERE);
        String figure = everywhere ? text.strip().substring(0, text.strip().length() - EVERYWHERE.length()) : text;
        return new StatedThickness(gauge.read(Quantity.THICKNESS, figure), everywhere);
    }
}
