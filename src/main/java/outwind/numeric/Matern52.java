package outwind.numeric;

/**
 * Matérn covariance of smoothness 5/2, with a range of its own in each direction.
 *
 * <pre>
 *   h² = (Δx/rangeX)² + (Δy/rangeY)²,   C = variance · (1 + √5·h + 5/3·h²) · exp(−√5·h)
 * </pre>
 * Fields of it have two derivatives: smooth as bent wood, yet not so smooth as to know everything from a few readings.
 *
 * <p>Source: C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning, MIT Press 2006, equation
 * 4.17.
 *
 * @param variance of the field at one place
 * @param rangeX   range along x, above zero
 * @param rangeY   range along y, above zero
 */
public record Matern52(double variance, double rangeX, double rangeY) implements Covariance {

    @Override
    public double between(double x1, double y1, double x2, double y2) {
        double u = (x1 - x2) / rangeX;
        double v = (y1 - y2) / rangeY;
        double h = Math.sqrt(5 * (u * u + v * v));
        return variance * (1 + h + h * h / 3) * Math.exp(-h);
    }
}
