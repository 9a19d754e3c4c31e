package outwind.report.drawing;

import java.awt.Color;
import java.awt.Font;

/** The sizes of type on the sheets, in pixels at full size; the smallest is still read at half that size. */
public enum TextStyle {

    /** The one number that is read from across the machine. */
    GREATEST(Font.BOLD, 58, Paper.INK),
    VERDICT(Font.BOLD, 46, Paper.INK),
    /** Height of a shim. */
    HEIGHT(Font.BOLD, 34, Paper.INK),
    NAME(Font.BOLD, 30, Paper.INK),
    HEADING(Font.BOLD, 26, Paper.INK),
    TEXT(Font.PLAIN, 24, Paper.INK),
    STRONG(Font.BOLD, 22, Paper.INK),
    /** Where {@link #TEXT} would not fit. */
    BODY(Font.PLAIN, 21, Paper.INK),
    SMALL(Font.PLAIN, 18, Paper.INK),
    SMALL_STRONG(Font.BOLD, 18, Paper.INK),
    LABEL(Font.PLAIN, 21, Paper.SOFT_INK),
    NOTE(Font.PLAIN, 19, Paper.SOFT_INK);

    private final Font font;
    private final Font other;
    private final Color colour;

    TextStyle(int style, int pixels, Color colour) {
        this.font = (style == Font.BOLD ? Typeface.BOLD : Typeface.PLAIN).font(pixels);
        this.other = new Font(Font.SANS_SERIF, style, pixels);
        this.colour = colour;
    }

    public Font font() {
        return font;
    }

    /** The font for some words: the machine's own for scripts that ours does not have. */
    public Font font(String words) {
        return font.canDisplayUpTo(words) < 0 ? font : other;
    }

    /** Colour of paragraphs; what is to be read off a drawing is set in full ink. */
    Color colour() {
        return colour;
    }
}
