package outwind.cutting;

/**
 * A rectangle of the board that is cut alone.
 *
 * @param x1 from here along the grain (mm)
 * @param x2 to here
 * @param y1 from here across (mm)
 * @param y2 to here
 */
public record Area(double x1, double x2, double y1, double y2) {

    double length() {
        return x2 - x1;
    }

    double width() {
        return y2 - y1;
    }
}
