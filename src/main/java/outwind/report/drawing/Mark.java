package outwind.report.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.knowm.xchart.style.markers.Marker;

/** The marks on the board; each has its own shape and stands out on light and dark alike. */
public enum Mark {

    /** A touch-off. */
    READING(new Ellipse2D.Double(-4, -4, 8, 8), Color.WHITE),
    /** One of so many touch-offs that there is no room for more than a speck. */
    SPECK(new Ellipse2D.Double(-1, -1, 2, 2), Paper.INK),
    HIGHEST(triangle(-1), Paper.INK),
    LOWEST(triangle(1), Paper.INK),
    /** Where the board rests on the bed by itself. */
    REST(new Rectangle2D.Double(-7.5, -7.5, 15, 15), Paper.INK),
    SHIM(new Rectangle2D.Double(-13, -5, 26, 10), Color.WHITE),
    /** A touch-off that looks wrong. */
    SUSPECT(cross(), Paper.INK),
    /** Where to touch off next. */
    NEXT(diamond(), Color.WHITE);

    /** Distance of a shim's middle from the edge it stands under, so that it is seen (px). */
    public static final int SHIM_OUT = 7;

    private final Shape shape;
    private final Color fill;

    Mark(Shape shape, Color fill) {
        this.shape = shape;
        this.fill = fill;
    }

    private static Shape triangle(int tip) {
        Path2D path = new Path2D.Double();
        path.moveTo(0, tip * 11);
        path.lineTo(10, -tip * 7);
        path.lineTo(-10, -tip * 7);
        path.closePath();
        return path;
    }

    private static Shape diamond() {
        Path2D path = new Path2D.Double();
        path.moveTo(0, -12);
        path.lineTo(9, 0);
        path.lineTo(0, 12);
        path.lineTo(-9, 0);
        path.closePath();
        return path;
    }

    /** Two strokes across each other, with room in the middle for the touch-off that they mark. */
    private static Shape cross() {
        Path2D path = new Path2D.Double();
        for (int side : new int[] {-1, 1}) {
            for (int end : new int[] {-1, 1}) {
                path.moveTo(side * 6, end * 6);
                path.lineTo(side * 15, end * 15);
            }
        }
        return path;
    }

    /** Paints the mark about a place on the sheet (px). */
    public void paint(Graphics2D pen, double x, double y) {
        Shape here = AffineTransform.getTranslateInstance(x, y).createTransformedShape(shape);
        if (this != SPECK) {
            pen.setColor(Color.WHITE);
            pen.setStroke(new BasicStroke(6, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            pen.draw(here);
        }
        pen.setColor(fill);
        pen.fill(here);
        pen.setColor(Paper.INK);
        pen.setStroke(new BasicStroke(this == SPECK ? 1 : 2, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        pen.draw(here);
        if (this == REST) {
            pen.setColor(Color.WHITE);
            pen.fill(new Rectangle2D.Double(x - 2.5, y - 2.5, 5, 5));
        }
    }

    /** What the mark covers about a place on the sheet (px). */
    public Rectangle2D around(double x, double y) {
        Rectangle2D box = shape.getBounds2D();
        return new Rectangle2D.Double(x + box.getX() - 1, y + box.getY() - 1, box.getWidth() + 2,
            box.getHeight() + 2);
    }

    /** The same mark for the points of a chart. */
    public Marker marker() {
        return new Marker() {
            @Override
            public void paint(Graphics2D pen, double x, double y, int size) {
                Mark.this.paint(pen, x, y);
            }
        };
    }
}
