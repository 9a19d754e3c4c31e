package outwind.surface.trend;

/** One term of a trend over the board; x along the grain, y across. */
public enum Term {
    CONSTANT("1", 0, 0),
    X("x", 1, 0),
    Y("y", 0, 1),
    XY("xy", 1, 1),
    XX("xx", 2, 0),
    YY("yy", 0, 2);

    private final String symbol;
    private final int powerX;
    private final int powerY;

    Term(String symbol, int powerX, int powerY) {
        this.symbol = symbol;
        this.powerX = powerX;
        this.powerY = powerY;
    }

    /** The term as written in a formula: 1, x, y, xy, xx or yy. */
    public String symbol() {
        return symbol;
    }

    /** Value of the term at ({@code x}, {@code y}). */
    public double at(double x, double y) {
        return power(x, powerX) * power(y, powerY);
    }

    /**
     * What one unit of this term in centred, scaled coordinates is worth of {@code other} in raw ones.
     *
     * <pre>
     *   ((x − cx)/sx)ⁱ ((y − cy)/sy)ʲ  =  Σ  share(xᵏ yˡ) · xᵏ yˡ
     * </pre>
     */
    double shareOf(Term other, Scaling scaling) {
        return binomial(powerX, other.powerX, scaling.centreX(), scaling.unitX())
            * binomial(powerY, other.powerY, scaling.centreY(), scaling.unitY());
    }

    /** Coefficient of tᵏ in ((t − c)/s)ⁱ for i up to 2. */
    private static double binomial(int i, int k, double c, double s) {
        if (k > i) {
            return 0;
        }
        double choose = i == 2 && k == 1 ? 2 : 1;
        return choose * power(-c, i - k) / power(s, i);
    }

    private static double power(double base, int exponent) {
        return exponent == 0 ? 1 : exponent == 1 ? base : base * base;
    }
}
