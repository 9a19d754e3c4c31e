package outwind.scan.find;

/**
 * What a plane of weighted least squares needs to know of its points, added up one by one.
 *
 * <pre>
 *   var(x)·a + cov(x, y)·b = cov(x, z)
 *   cov(x, y)·a + var(y)·b = cov(y, z)        a, b slopes; through the mean of the points
 * </pre>
 * Points should be measured from somewhere near their middle, so that the sums keep their digits.
 */
final class PlaneSums {

    private double w;
    private double x;
    private double y;
    private double z;
    private double xx;
    private double xy;
    private double yy;
    private double xz;
    private double yz;

    void add(double weight, double atX, double atY, double height) {
        w += weight;
        x += weight * atX;
        y += weight * atY;
        z += weight * height;
        xx += weight * atX * atX;
        xy += weight * atX * atY;
        yy += weight * atY * atY;
        xz += weight * atX * height;
        yz += weight * atY * height;
    }

    double meanX() {
        return x / w;
    }

    double meanY() {
        return y / w;
    }

    double meanZ() {
        return z / w;
    }

    private double varianceX() {
        return xx / w - meanX() * meanX();
    }

    private double varianceY() {
        return yy / w - meanY() * meanY();
    }

    private double covariance() {
        return xy / w - meanX() * meanY();
    }

    private double covarianceXz() {
        return xz / w - meanX() * meanZ();
    }

    private double covarianceYz() {
        return yz / w - meanY() * meanZ();
    }

    /** Sum of the variances of the places, whichever way the axes point. */
    double spread() {
        return varianceX() + varianceY();
    }

    /** Of the covariance of the places: zero where they lie in one line. */
    double determinant() {
        return varianceX() * varianceY() - covariance() * covariance();
    }

    /** Along x; not finite where the places lie in one line. */
    double slopeX() {
        return (covarianceXz() * varianceY() - covarianceYz() * covariance()) / determinant();
    }

    /** Along y; not finite where the places lie in one line. */
    double slopeY() {
        return (covarianceYz() * varianceX() - covarianceXz() * covariance()) / determinant();
    }
}
