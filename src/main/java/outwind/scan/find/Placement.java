package outwind.scan.find;

import outwind.numeric.plane.Plane;

/**
 * How points are moved: turned, shifted and scaled.
 *
 * <pre>
 *   x' = m₀x + m₁y + m₂z + m₃,   y' = m₄x + m₅y + m₆z + m₇,   z' = m₈x + m₉y + m₁₀z + m₁₁
 * </pre>
 * Where nothing is turned or shifted the points come out to the last bit as they went in.
 *
 * @param m the twelve numbers, row by row
 */
record Placement(double[] m) {

    /** Every coordinate times a factor, as for another unit. */
    static Placement scaledBy(double factor) {
        return new Placement(new double[] {factor, 0, 0, 0, 0, factor, 0, 0, 0, 0, factor, 0});
    }

    /** Turned in the plane by −{@code angle}, so that what ran along it runs along x; then shifted. */
    static Placement turnedBack(double angle, double shiftX, double shiftY) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        return new Placement(new double[] {cos, sin, 0, shiftX, -sin, cos, 0, shiftY, 0, 0, 1, 0});
    }

    /**
     * Turned the least that makes a plane level, and shifted so that it lies at height 0.
     *
     * <pre>
     *   n = (−a, −b, 1)/√(1 + a² + b²),   R = I + [v] + [v]²/(1 + n_z),   v = n × e_z   (Rodrigues 1840)
     * </pre>
     */
    static Placement levelling(Plane plane) {
        double size = Math.sqrt(1 + plane.slopeX() * plane.slopeX() + plane.slopeY() * plane.slopeY());
        double nx = -plane.slopeX() / size;
        double ny = -plane.slopeY() / size;
        double nz = 1 / size;
        double k = 1 / (1 + nz);
        return new Placement(new double[] {1 - nx * nx * k, -nx * ny * k, -nx, 0,
            -nx * ny * k, 1 - ny * ny * k, -ny, 0,
            nx, ny, nz, -nz * plane.height()});
    }

    /** This move and then another. */
    Placement then(Placement next) {
        double[] product = new double[12];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 4; column++) {
                double sum = column == 3 ? next.m[4 * row + 3] : 0;
                for (int k = 0; k < 3; k++) {
                    sum += next.m[4 * row + k] * m[4 * k + column];
                }
                product[4 * row + column] = sum;
            }
        }
        return new Placement(product);
    }

    double x(double x, double y, double z) {
        return m[0] * x + m[1] * y + m[2] * z + m[3];
    }

    double y(double x, double y, double z) {
        return m[4] * x + m[5] * y + m[6] * z + m[7];
    }

    double z(double x, double y, double z) {
        return m[8] * x + m[9] * y + m[10] * z + m[11];
    }
}
