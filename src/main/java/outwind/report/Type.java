package outwind.report;

import java.awt.Color;
import java.awt.Font;

/** The sizes of type on the chart, in pixels of the full sheet; the smallest is still read at half that size. */
enum Type {

    NAME(Font.BOLD, 30, Paper.INK),
    VERDICT(Font.BOLD, 46, Paper.INK),
    HEADING(Font.BOLD, 26, Paper.INK),
    TEXT(Font.PLAIN, 24, Paper.INK),
    STRONG(Font.BOLD, 22, Paper.INK),
    LABEL(Font.PLAIN, 21, Paper.SOFT_INK),
    NOTE(Font.PLAIN, 19, Paper.SOFT_INK);

    private final Font font;
    private final Color colour;

    Type(int style, int pixels, Color colour) {
        this.font = new Font(Font.SANS_SERIF, style, pixels);
        this.colour = colour;
    }

    Font font() {
        return font;
    }

    /** Colour of paragraphs; what is to be read off a drawing is set in full ink. */
    Color colour() {
        return colour;
    }
}
