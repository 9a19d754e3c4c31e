package outwind.report.drawing;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** Wood that stays: thin strokes that rise to the right, on white. */
public final class Hatch {

    private static final int APART = 11;

    private static final BasicStroke STROKE = new BasicStroke(1.2f);

    private Hatch() { }

    public static void paint(Graphics2D sheet, Shape wood) {
        Graphics2D pen = (Graphics2D) sheet.create();
        pen.setColor(Paper.WHITE);
        pen.fill(wood);
        pen.clip(wood);
        pen.setColor(Paper.SOFT_INK);
        pen.setStroke(STROKE);
        Rectangle2D box = wood.getBounds2D();
        double height = box.getHeight();
        for (double x = box.getMinX() - height; x < box.getMaxX(); x += APART) {
            pen.draw(new Line2D.Double(x, box.getMaxY(), x + height, box.getMinY()));
        }
        pen.dispose();
    }
}
