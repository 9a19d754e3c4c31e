package outwind.report.drawing;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;

/**
 * The letters of all sheets, which come with the program, so that a sheet looks alike everywhere: Liberation Sans, under
 * the SIL Open Font License 1.1, which lies beside it.
 */
enum Typeface {

    PLAIN(Font.PLAIN, "liberation/LiberationSans-Regular.ttf"),
    BOLD(Font.BOLD, "liberation/LiberationSans-Bold.ttf");

    private final Font font;

    Typeface(int style, String file) {
        this.font = read(style, file);
    }

    /** Where it cannot be unpacked, as on a machine without a folder for temporary files, the machine's own serves. */
    private static Font read(int style, String file) {
        try (InputStream letters = Typeface.class.getResourceAsStream("/" + file)) {
            if (letters == null) {
                throw new IllegalStateException(file + " is not in the program");
            }
            return Font.createFont(Font.TRUETYPE_FONT, letters);
        } catch (IOException | FontFormatException e) {
            return new Font(Font.SANS_SERIF, style, 1);
        }
    }

    /** In a size (px). */
    Font font(int pixels) {
        return font.deriveFont((float) pixels);
    }
}
