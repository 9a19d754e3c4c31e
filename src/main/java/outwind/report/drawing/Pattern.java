package outwind.report.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** Fills that are distinguished without colour, one for each size of blank in turn; the letter beside it is the surer sign. */
public enum Pattern {

    PLAIN, RISING, LEVEL, CROSSED, UPRIGHT, DOTTED, FALLING, CHECKED;

    private static final Color SOFT = new Color(0x9a, 0x93, 0x8b);

    private static final BasicStroke STROKE = new BasicStroke(1.5f);

    /** Between strokes, and between dots (px). */
    private static final int APART = 13;

    /** The pattern of a row of the bill, from 0; after eight they begin again. */
    public static Pattern of(int item) {
        return values()[Math.max(0, item) % values().length];
    }

    /** Fills a rectangle (px). Strokes of all rectangles on a sheet are in line with each other. */
    public void paint(Graphics2D sheet, Rectangle2D box) {
        Graphics2D pen = (Graphics2D) sheet.create();
        pen.setColor(Paper.WHITE);
        pen.fill(box);
        pen.clip(box);
        pen.setColor(SOFT);
        pen.setStroke(STROKE);
        if (this == RISING || this == CROSSED) {
            slanted(pen, box, 1);
        }
        if (this == FALLING || this == CROSSED) {
            slanted(pen, box, -1);
        }
        if (this == LEVEL || this == CHECKED) {
            for (double y = first(box.getMinY()); y < box.getMaxY(); y += APART) {
                pen.draw(new Line2D.Double(box.getMinX(), y, box.getMaxX(), y));
            }
        }
        if (this == UPRIGHT || this == CHECKED) {
            for (double x = first(box.getMinX()); x < box.getMaxX(); x += APART) {
                pen.draw(new Line2D.Double(x, box.getMinY(), x, box.getMaxY()));
            }
        }
        if (this == DOTTED) {
            for (double x = first(box.getMinX()); x < box.getMaxX(); x += APART) {
                for (double y = first(box.getMinY()); y < box.getMaxY(); y += APART) {
                    pen.fill(new Ellipse2D.Double(x - 2.5, y - 2.5, 5, 5));
                }
            }
        }
        pen.dispose();
    }

    /** The first place on the grid at or after this one (px). */
    private static double first(double from) {
        return Math.ceil(from / APART) * APART;
    }

    private static void slanted(Graphics2D pen, Rectangle2D box, int rise) {
        double height = box.getHeight();
        double across = rise * box.getMaxY() + box.getMinX();
        for (double c = first(across - height); c < across + box.getWidth() + height; c += APART) {
            double x = c - rise * box.getMaxY();
            pen.draw(new Line2D.Double(x, box.getMaxY(), x + rise * height, box.getMinY()));
        }
    }
}
