package outwind.numeric.plane;

/**
 * A plane that is nowhere vertical: {@code z = height + slopeX·x + slopeY·y}.
 *
 * @param height z where the plane crosses the z axis (mm)
 * @param slopeX rise along +x (mm per mm)
 * @param slopeY rise along +y (mm per mm)
 */
public record Plane(double height, double slopeX, double slopeY) {

    public Plane {
        if (!Double.isFinite(height + slopeX + slopeY)) {
            throw new IllegalArgumentException("plane needs three finite coefficients, got height=" + height
                + ", slopeX=" + slopeX + ", slopeY=" + slopeY);
        }
    }

    /** The plane through ({@code x}, {@code y}, {@code z}) with the given slopes. */
    public static Plane through(double x, double y, double z, double slopeX, double slopeY) {
        return new Plane(z - slopeX * x - slopeY * y, slopeX, slopeY);
    }

    /** Height of this plane at ({@code x}, {@code y}), all in mm. */
    public double at(double x, double y) {
        return height + slopeX * x + slopeY * y;
    }

    /** This plane moved {@code dz} mm along z; its slopes stay as they are. */
    public Plane raisedBy(double dz) {
        return new Plane(height + dz, slopeX, slopeY);
    }
}
