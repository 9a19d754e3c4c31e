package outwind.surface.trend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import outwind.board.PointCloud;
import outwind.board.Reading;
import outwind.numeric.LeastSquares;
import outwind.numeric.LinearFit;
import outwind.numeric.SweptLeastSquares;

/**
 * A trend fitted to readings by least squares, given on raw x and y in mm.
 *
 * <p>The fit is computed on centred, scaled coordinates. Terms that the readings cannot tell from earlier ones are left
 * out: three readings in a row show no slope across it, four corners show no bow.
 *
 * @param model the shape asked for
 * @param terms the terms of it that the readings can see, in order
 * @param fit   coefficients of {@code terms} on raw x and y (mm), with their evidence
 */
public record TrendFit(TrendModel model, List<Term> terms, LinearFit fit) {

    /**
     * Distance of a term from the span of earlier ones, as a share of a whole term, below which the readings are said
     * not to show it. At a twentieth the coefficient comes out with twenty times the error of a reading: a row that was
     * not touched quite straight shows no slope across it.
     */
    public static final double LEAST_ANGLE = 0.05;

    public TrendFit {
        terms = List.copyOf(terms);
    }

    /**
     * Fits a trend.
     *
     * @param readings at least one
     * @param length   length of the board (mm)
     * @param width    width of the board (mm)
     */
    public static TrendFit of(TrendModel model, List<Reading> readings, double length, double width) {
        double[] x = readings.stream().mapToDouble(Reading::x).toArray();
        double[] y = readings.stream().mapToDouble(Reading::y).toArray();
        double[] z = readings.stream().mapToDouble(Reading::z).toArray();
        return of(model, x, y, z, length, width);
    }

    /** The same for heights {@code z} at places ({@code x}, {@code y}), three arrays of one length (mm). */
    public static TrendFit of(TrendModel model, double[] x, double[] y, double[] z, double length, double width) {
        Scaling scaling = Scaling.ofBoard(length, width);
        boolean[] seen = LeastSquares.independentColumns(design(model.terms(), x, y, scaling), LEAST_ANGLE);
        List<Term> terms = IntStream.range(0, seen.length).filter(j -> seen[j]).mapToObj(model.terms()::get).toList();
        return of(model, terms, LeastSquares.fit(design(terms, x, y, scaling), z), scaling);
    }

    /**
     * Fits all three trends to the points of a scan.
     *
     * @return the plane, the twisted and the curved trend; residuals are not kept
     */
    public static List<TrendFit> nested(PointCloud points, double length, double width) {
        Scaling scaling = Scaling.ofBoard(length, width);
        List<Term> all = TrendModel.CURVED.terms();
        TrendModel[] models = TrendModel.values();
        SweptLeastSquares.Nested nested = SweptLeastSquares.fit((i, row) -> {
            double u = scaling.u(points.x()[i]);
            double v = scaling.v(points.y()[i]);
            for (int j = 0; j < row.length; j++) {
                row[j] = all.get(j).at(u, v);
            }
        }, points.z(), Arrays.stream(models).mapToInt(model -> model.terms().size()).toArray(), LEAST_ANGLE);
        List<TrendFit> fits = new ArrayList<>();
        for (int m = 0; m < models.length; m++) {
            List<Term> terms = models[m].terms().stream().filter(t -> nested.independent()[all.indexOf(t)]).toList();
            fits.add(of(models[m], terms, nested.fits().get(m), scaling));
        }
        return fits;
    }

    private static TrendFit of(TrendModel model, List<Term> terms, LinearFit scaled, Scaling scaling) {
        double[][] toRaw = new double[terms.size()][terms.size()];
        for (int i = 0; i < toRaw.length; i++) {
            for (int j = 0; j < toRaw.length; j++) {
                toRaw[i][j] = terms.get(j).shareOf(terms.get(i), scaling);
            }
        }
        return new TrendFit(model, terms, scaled.inTermsOf(toRaw));
    }

    private static double[][] design(List<Term> terms, double[] x, double[] y, Scaling scaling) {
        double[][] design = new double[x.length][terms.size()];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < terms.size(); j++) {
                design[i][j] = terms.get(j).at(scaling.u(x[i]), scaling.v(y[i]));
            }
        }
        return design;
    }

    /** Height of the trend at ({@code x}, {@code y}) in mm. */
    public double at(double x, double y) {
        double sum = 0;
        for (int j = 0; j < terms.size(); j++) {
            sum += fit.coefficients()[j] * terms.get(j).at(x, y);
        }
        return sum;
    }

    /**
     * How far a reading lies from the trend through all the others, in units of what is to be expected of it.
     *
     * <pre>
     *   tᵢ = rᵢ / (s₍ᵢ₎·√(1 − hᵢ)),   s₍ᵢ₎² = (RSS − rᵢ²/(1 − hᵢ)) / (n − p − 1),   hᵢ = fᵢᵀ (XᵀX)⁻¹ fᵢ
     * </pre>
     * Externally studentised residual: R. D. Cook and S. Weisberg, Residuals and Influence in Regression, Chapman and
     * Hall 1982, section 2.2.1.
     *
     * @param i number of the reading that was fitted
     * @param x its place (mm); likewise {@code y}
     * @return tᵢ, t distributed with n − p − 1 degrees of freedom; empty where the others leave none, or fit exactly
     */
    public OptionalDouble studentised(int i, double x, double y) {
        double leverage = 0;
        for (int j = 0; j < terms.size(); j++) {
            for (int k = 0; k < terms.size(); k++) {
                leverage += terms.get(j).at(x, y) * fit.unscaledCovariance()[j][k] * terms.get(k).at(x, y);
            }
        }
        double residual = fit.residuals()[i];
        int left = fit.degreesOfFreedom() - 1;
        double others = (fit.residualSumOfSquares() - residual * residual / (1 - leverage)) / left;
        return left < 1 || !(others > 0) || leverage >= 1 ? OptionalDouble.empty()
            : OptionalDouble.of(residual / Math.sqrt(others * (1 - leverage)));
    }

    /** Coefficient of a term on raw x and y; empty if the readings cannot see it. */
    public OptionalDouble coefficient(Term term) {
        int j = terms.indexOf(term);
        return j < 0 ? OptionalDouble.empty() : OptionalDouble.of(fit.coefficients()[j]);
    }
}
