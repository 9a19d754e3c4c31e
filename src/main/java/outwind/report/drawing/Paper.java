package outwind.report.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/** White paper and the pens for it; pixels from the top left corner. */
public final class Paper {

    /** Pixels per inch, written into every picture, so that it prints to size. */
    static final int DPI = 160;

    /**
     * A landscape page (px): 10 by 7.5 inches, 254 by 190.5 mm. It leaves half an inch round it on a Letter page, and
     * 21 by 10 mm on A4.
     */
    public static final int WIDTH = 1600;
    public static final int HEIGHT = 1200;

    /** Of the margins of most sheets, and between those (px). */
    public static final int MARGIN = 44;
    public static final int ROOM = WIDTH - 2 * MARGIN;

    public static final Color WHITE = Color.WHITE;
    public static final Color INK = new Color(0x21, 0x1d, 0x1a);
    public static final Color SOFT_INK = new Color(0x5a, 0x53, 0x4d);
    public static final Color FAINT = new Color(0xd9, 0xd4, 0xcd);
    /** Bars that matter less; lighter than ink in grey too. */
    public static final Color PALE = new Color(0xc4, 0xbe, 0xb6);

    /** Behind words that lie on a picture. */
    private static final Color PLATE = new Color(255, 255, 255, 225);

    private static final int PLATE_PADDING = 4;

    private static final BasicStroke HALO = new BasicStroke(5);
    private static final BasicStroke DASHES = new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10,
        new float[] {9, 6}, 0);

    /**
     * What was written somewhere on the sheet.
     *
     * @param text as written
     * @param box  that it takes (px)
     */
    public record Words(String text, Rectangle2D box) { }

    /**
     * A mark that was painted somewhere on the sheet.
     *
     * @param x its middle (px)
     * @param y its middle (px)
     */
    public record Marked(Mark mark, double x, double y) {

        /** What it covers (px). */
        public Rectangle2D box() {
            return mark.around(x, y);
        }
    }

    private final BufferedImage image;
    private final Graphics2D pen;
    private final List<Words> written = new ArrayList<>();
    private final List<Marked> marked = new ArrayList<>();

    public Paper(int width, int height) {
        image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        pen = image.createGraphics();
        pen.setColor(WHITE);
        pen.fillRect(0, 0, width, height);
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    /** The upper part of the sheet as a PNG image. */
    public byte[] png(int height) {
        return Png.of(image.getSubimage(0, 0, image.getWidth(), Math.min(height, image.getHeight())));
    }

    /** All words in the order they were written. */
    public List<Words> written() {
        return List.copyOf(written);
    }

    /** All marks in the order they were painted. */
    public List<Marked> marked() {
        return List.copyOf(marked);
    }

    public Graphics2D pen() {
        return pen;
    }

    /** Paints a mark with its middle at a place. */
    public void mark(Mark mark, double x, double y) {
        mark.paint(pen, x, y);
        marked.add(new Marked(mark, x, y));
    }

    /** Colour of a pixel. */
    public Color colourAt(int x, int y) {
        return new Color(image.getRGB(x, y));
    }

    public void line(double x1, double y1, double x2, double y2, Color colour, Stroke stroke) {
        pen.setColor(colour);
        pen.setStroke(stroke);
        pen.draw(new Line2D.Double(x1, y1, x2, y2));
    }

    public void line(double x1, double y1, double x2, double y2, Color colour, float width) {
        line(x1, y1, x2, y2, colour, new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
    }

    /** A frame round a rectangle. */
    public void box(int left, int top, int width, int height, float stroke) {
        pen.setColor(INK);
        pen.setStroke(new BasicStroke(stroke));
        pen.draw(new Rectangle2D.Double(left, top, width, height));
    }

    /** Wood of no use: a crossed box, white round it so that it stands out on light and dark alike. */
    public void defect(Rectangle2D box) {
        pen.setColor(WHITE);
        pen.setStroke(HALO);
        pen.draw(box);
        crossed(pen, box);
    }

    /** The border of what is kept of a board when it is trimmed. */
    public void trim(Rectangle2D box) {
        pen.setColor(WHITE);
        pen.setStroke(HALO);
        pen.draw(box);
        pen.setColor(INK);
        pen.setStroke(DASHES);
        pen.draw(box);
    }

    /** A piece of that border, as in a key. */
    public static void dashed(Graphics2D pen, double x, double y) {
        pen.setColor(INK);
        pen.setStroke(DASHES);
        pen.draw(new Line2D.Double(x - 20, y, x + 20, y));
    }

    /** A crossed box, as in a key. */
    public static void crossed(Graphics2D pen, Rectangle2D box) {
        pen.setColor(INK);
        pen.setStroke(new BasicStroke(2));
        pen.draw(box);
        pen.draw(new Line2D.Double(box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY()));
        pen.draw(new Line2D.Double(box.getMinX(), box.getMaxY(), box.getMaxX(), box.getMinY()));
    }

    public int width(String text, TextStyle type) {
        return pen.getFontMetrics(type.font(text)).stringWidth(text);
    }

    public int height(TextStyle type) {
        return pen.getFontMetrics(type.font()).getAscent() + pen.getFontMetrics(type.font()).getDescent();
    }

    /** Words from {@code x} on, with their middle at {@code y}. */
    public void fromLeft(String text, TextStyle type, Color colour, double x, double y) {
        pen.setFont(type.font(text));
        pen.setColor(colour);
        pen.drawString(text, (float) x, (float) (y - height(type) / 2.0 + pen.getFontMetrics().getAscent()));
        written.add(new Words(text, new Rectangle2D.Double(x, y - height(type) / 2.0, width(text, type),
            height(type))));
    }

    /** Words that end at {@code x}. */
    public void fromRight(String text, TextStyle type, Color colour, double x, double y) {
        fromLeft(text, type, colour, x - width(text, type), y);
    }

    /** Words with their middle at {@code x}. */
    public void centred(String text, TextStyle type, Color colour, double x, double y) {
        fromLeft(text, type, colour, x - width(text, type) / 2.0, y);
    }

    /** The box that {@link #plate} takes for these words, with its corner at 0, 0. */
    public Rectangle2D plateFor(String text, TextStyle type) {
        return new Rectangle2D.Double(0, 0, width(text, type) + 2.0 * PLATE_PADDING, height(type));
    }

    /** Words on a white plate, to be read on top of a picture. */
    public void plate(String text, TextStyle type, Rectangle2D box) {
        pen.setColor(PLATE);
        pen.fill(new RoundRectangle2D.Double(box.getX(), box.getY(), box.getWidth(), box.getHeight(), 8, 8));
        centred(text, type, INK, box.getCenterX(), box.getCenterY());
    }

    /**
     * Words in lines of at most {@code room} pixels; the last line that is allowed ends in dots where more would
     * follow.
     *
     * @return the y below the last line
     */
    public int paragraph(String text, TextStyle type, int left, int top, int room, int mostLines) {
        return paragraph(text, type, type.colour(), left, top, room, mostLines);
    }

    /** The same in a colour. */
    public int paragraph(String text, TextStyle type, Color colour, int left, int top, int room, int mostLines) {
        int lineHeight = height(type) + 2;
        int y = top;
        for (String line : wrap(text, type, room, mostLines)) {
            fromLeft(line, type, colour, left, y + lineHeight / 2.0);
            y += lineHeight;
        }
        return y;
    }

    /** What a paragraph takes from top to bottom (px), on any paper. */
    public static int heightOf(String text, TextStyle type, int room, int mostLines) {
        return new Paper(1, 1).paragraph(text, type, 0, 0, room, mostLines);
    }

    private List<String> wrap(String text, TextStyle type, int room, int mostLines) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            boolean fits = line.isEmpty() || width(longer, type) <= room;
            if (fits || lines.size() == mostLines - 1) {
                line = longer;
            } else {
                lines.add(line);
                line = word;
            }
        }
        lines.add(line);
        return lines.stream().map(l -> shortened(l, type, room)).toList();
    }

    private String shortened(String text, TextStyle type, int room) {
        if (width(text, type) <= room) {
            return text;
        }
        int end = text.length();
        while (end > 1 && width(text.substring(0, end) + "…", type) > room) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end).stripTrailing() + "…";
    }
}
