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
 */
public final class Matern52 implements Covariance {

    private final double variance;
    private final double scaleX;
    private final double scaleY;

    /**
     * @param variance of the field at one place
     * @param rangeX   range along x, above zero
     * @param rangeY   range along y, above zero
     */
    public Matern52(double variance, double rangeX, double rangeY) {
        this.variance = variance;
        // A division each time would cost as much as all the rest but the exponential.
        this.scaleX = Math.sqrt(5) / rangeX;
        this.scaleY = Math.sqrt(5) / rangeY;
    }

    @Override
    public double between(double x1, double y1, double x2, double y2) {
        double u = (x1 - x2) * scaleX;
        double v = (y1 - y2) * scaleY;
        double h = Math.sqrt(u * u + v * v);
        return variance * (1 + h + h * h / 3) * Math.exp(-h);
    }
}
