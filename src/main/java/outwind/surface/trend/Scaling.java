package outwind.surface.trend;

/**
 * Coordinates in which a fit is well conditioned: the board's middle is the origin, its half-length and half-width
 * the units, so that every term lies between −1 and 1.
 *
 * @param centreX half the length (mm)
 * @param centreY half the width (mm)
 * @param unitX   half the length (mm)
 * @param unitY   half the width (mm)
 */
public record Scaling(double centreX, double centreY, double unitX, double unitY) {

    public static Scaling ofBoard(double length, double width) {
        return new Scaling(length / 2, width / 2, length / 2, width / 2);
    }

    public double u(double x) {
        return (x - centreX) / unitX;
    }

    public double v(double y) {
        return (y - centreY) / unitY;
    }
}
