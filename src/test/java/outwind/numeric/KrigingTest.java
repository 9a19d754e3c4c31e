package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against gstat, nlme and scikit-learn (src/test/resources/kriging/README.md), and identities. */
class KrigingTest {

    private static final Map<String, Field> FIELDS = new HashMap<>();

    private record Field(double[] x, double[] y, double[] z) {

        static Field named(String name) {
            ReferenceTable table = ReferenceTable.read("/grids/" + name + ".csv");
            return new Field(table.column("x"), table.column("y"), table.column("z"));
        }
    }

    /** Terms of a trend on coordinates near one, as the solver asks for; predictions do not depend on that. */
    private static double[] terms(String trend, double x, double y, double scale) {
        double u = x / scale - 0.5;
        double v = y / scale - 0.5;
        double[] all = {1, u, v, u * v, u * u, v * v};
        return Arrays.copyOf(all, Map.of("ordinary", 1, "linear", 3, "bilinear", 4, "quadratic", 6).get(trend));
    }

    private static Covariance covariance(String model, double sill, double range) {
        return (x1, y1, x2, y2) -> {
            double h = Math.hypot(x1 - x2, y1 - y2) / range;
            return sill * switch (model) {
                case "Exp" -> Math.exp(-h);
                case "Gau" -> Math.exp(-h * h);
                case "Sph" -> h >= 1 ? 0 : 1 - 1.5 * h + 0.5 * h * h * h;
                case "Mat1.5" -> (1 + h) * Math.exp(-h);
                default -> throw new IllegalArgumentException(model);
            };
        };
    }

    @Test
    void meanAndVarianceMatchGstat() {
        ReferenceTable gstat = ReferenceTable.read("/kriging/kriging_gstat.csv");
        int checked = 0;
        int matern = 0;
        for (String[] row : gstat.rows()) {
            if (row[5].equals("Nug")) {
                continue; // A nugget that is part of the field; ours is touch-off noise.
            }
            Field field = FIELDS.computeIfAbsent(row[0], Field::named);
            double sill = Double.parseDouble(row[3]);
            double range = Double.parseDouble(row[4]);
            double noise = Double.parseDouble(row[6]);
            double atX = Double.parseDouble(row[7]);
            double atY = Double.parseDouble(row[8]);
            double scale = Arrays.stream(field.x).max().orElseThrow();
            double[] noises = new double[field.z.length];
            Arrays.fill(noises, noise);
            double[][] trend = new double[field.z.length][];
            for (int i = 0; i < trend.length; i++) {
                trend[i] = terms(row[1], field.x[i], field.y[i], scale);
            }
            // gstat writes Matérn 5/2 in h/r, ours is in √5·h/range.
            Covariance covariance = row[2].equals("Mat2.5")
                ? new Matern52(sill, range * Math.sqrt(5), range * Math.sqrt(5))
                : covariance(row[2], sill, range);

            Kriging kriging = Kriging.of(covariance, field.x, field.y, trend, field.z, noises);

            double[] at = terms(row[1], atX, atY, scale);
            double spread = Math.sqrt(sill);
            String what = String.join(",", row);
            assertEquals(Double.parseDouble(row[9]), kriging.mean(atX, atY, at), 1e-8 * spread, what);
            assertEquals(Double.parseDouble(row[10]), kriging.variance(atX, atY, at), 1e-8 * sill, what);
            checked++;
            matern += row[2].equals("Mat2.5") ? 1 : 0;
        }
        assertTrue(checked > 600 && matern > 100, checked + " rows, " + matern + " of them Matérn 5/2");
    }

    @Test
    void restrictedLikelihoodAndTrendMatchNlme() {
        ReferenceTable nlme = ReferenceTable.read("/kriging/gls_nlme.csv");
        int checked = 0;
        for (String dataset : new String[] {"probe_plate_a", "probe_plate_b_tilted", "volcano_coarse"}) {
            for (String trendName : new String[] {"linear", "bilinear"}) {
                for (String fit : new String[] {"exponential_fixed_REML", "gaussian_fixed_REML"}) {
                    Field field = FIELDS.computeIfAbsent(dataset, Field::named);
                    double sigma = nlme.value(dataset, trendName, fit, "sigma");
                    double share = nlme.value(dataset, trendName, fit, "nugget_fraction");
                    double range = nlme.value(dataset, trendName, fit, "range");
                    double[][] trend = new double[field.z.length][];
                    double[] noises = new double[field.z.length];
                    for (int i = 0; i < trend.length; i++) {
                        // Raw coordinates, as nlme's: the restricted likelihood depends on the trend's scale.
                        double x = field.x[i];
                        double y = field.y[i];
                        trend[i] = Arrays.copyOf(new double[] {1, x, y, x * y}, trendName.equals("linear") ? 3 : 4);
                        noises[i] = sigma * sigma * share;
                    }
                    Covariance covariance = covariance(fit.startsWith("exp") ? "Exp" : "Gau",
                        sigma * sigma * (1 - share), range);

                    Kriging kriging = Kriging.of(covariance, field.x, field.y, trend, field.z, noises);

                    assertEquals(nlme.value(dataset, trendName, fit, "logLik"), kriging.restrictedLogLikelihood(),
                        1e-8, dataset + " " + trendName + " " + fit);
                    for (int j = 0; j < trend[0].length; j++) {
                        String letter = "abcd".substring(j, j + 1);
                        double error = nlme.value(dataset, trendName, fit, "se_" + letter);
                        assertEquals(nlme.value(dataset, trendName, fit, letter), kriging.coefficients()[j],
                            1e-8 * error);
                    }
                    checked++;
                }
            }
        }
        assertEquals(12, checked);
    }

    // scikit-learn has no trend. Kriging asks for one column at least: it is given one that is zero but at a place so
    // far away that it tells nothing of the others; what that adds to log|K| comes off again with log|A|.
    @Test
    void matern52MatchesScikitLearn() {
        ReferenceTable sklearn = ReferenceTable.read("/kriging/gpr_sklearn.csv");
        int checked = 0;
        for (String[] row : sklearn.rows()) {
            if (!row[1].equals("Matern2.5")) {
                continue;
            }
            Field field = FIELDS.computeIfAbsent(row[0], Field::named);
            double variance = Double.parseDouble(row[2]);
            double range = Double.parseDouble(row[3]);
            double noise = Double.parseDouble(row[4]);
            double mean = Arrays.stream(field.z).average().orElseThrow();
            int n = field.z.length;
            double[] x = Arrays.copyOf(field.x, n + 1);
            double[] y = Arrays.copyOf(field.y, n + 1);
            double[] z = Arrays.copyOf(Arrays.stream(field.z).map(value -> value - mean).toArray(), n + 1);
            x[n] = 1e9;
            double[] noises = new double[n + 1];
            Arrays.fill(noises, noise);
            double[][] trend = new double[n + 1][1];
            trend[n][0] = 1;

            Kriging kriging = Kriging.of(new Matern52(variance, range, range), x, y, trend, z, noises);

            double atX = Double.parseDouble(row[5]);
            double atY = Double.parseDouble(row[6]);
            double spread = Math.sqrt(variance);
            assertEquals(Double.parseDouble(row[7]), kriging.mean(atX, atY, new double[1]) + mean, 1e-8 * spread);
            assertEquals(Double.parseDouble(row[8]),
                Math.sqrt(kriging.variance(atX, atY, new double[1]) + noise), 1e-8 * spread);
            assertEquals(Double.parseDouble(row[9]), kriging.restrictedLogLikelihood(), 1e-8);
            checked++;
        }
        assertEquals(18, checked);
    }

    @Test
    void leavingOutEqualsConditioningOnTheRest() {
        Field field = Field.named("probe_plate_a");
        int n = field.z.length;
        Covariance covariance = new Matern52(0.0012, 200, 120);
        double[] noises = new double[n];
        Arrays.fill(noises, 2e-5);
        double[][] trend = new double[n][];
        for (int i = 0; i < n; i++) {
            trend[i] = terms("quadratic", field.x[i], field.y[i], 300);
        }

        Kriging.LeftOut leftOut = Kriging.of(covariance, field.x, field.y, trend, field.z, noises)
            .leavingOut();

        for (int i = 0; i < n; i++) {
            Kriging rest = Kriging.of(covariance, without(field.x, i), without(field.y, i), without(trend, i),
                without(field.z, i), without(noises, i));
            assertEquals(field.z[i] - rest.mean(field.x[i], field.y[i], trend[i]), leftOut.residuals()[i], 1e-10);
            assertEquals(rest.variance(field.x[i], field.y[i], trend[i]) + noises[i], leftOut.variances()[i], 1e-10);
        }
    }

    // Worked by hand: three places on a line and one beside it, all that a trend 1, x, y has to tell the slope across
    // by. Left out, nothing predicts it, in any unit of height; each of the others is predicted by the rest.
    @ParameterizedTest
    @ValueSource(doubles = {1e-5, 1, 1e5})
    void whatTheTrendLeansOnAloneIsPredictedByNothing(double unit) {
        double[] x = {0, 100, 200, 100};
        double[] y = {0, 0, 0, 90};
        double[] z = {0, 2 * unit, unit, 5 * unit};
        double[][] trend = {{1, 0, 0}, {1, 1, 0}, {1, 2, 0}, {1, 1, 1}};
        double[] noises = new double[4];
        Arrays.fill(noises, 0.01 * unit * unit);

        Kriging.LeftOut left = Kriging.of(new Matern52(unit * unit, 90, 90), x, y, trend, z, noises).leavingOut();

        assertEquals(Double.POSITIVE_INFINITY, left.variances()[3]);
        assertEquals(0, left.residuals()[3]);
        for (int i = 0; i < 3; i++) {
            assertTrue(left.variances()[i] < 100 * unit * unit, left.variances()[i] + " at " + i);
        }
    }

    @Test
    void withoutNoiseTheFieldPassesThroughItsObservations() {
        Field field = Field.named("probe_plate_a");
        double[][] trend = new double[field.z.length][];
        for (int i = 0; i < trend.length; i++) {
            trend[i] = terms("linear", field.x[i], field.y[i], 300);
        }

        Kriging kriging = Kriging.of(new Matern52(0.001, 90, 90), field.x, field.y, trend, field.z,
            new double[field.z.length]);

        for (int i = 0; i < field.z.length; i++) {
            assertEquals(field.z[i], kriging.mean(field.x[i], field.y[i], trend[i]), 1e-12);
            assertEquals(0, kriging.variance(field.x[i], field.y[i], trend[i]), 1e-12);
        }
    }

    @Test
    void covarianceIsSymmetricAndItsDiagonalTheVariance() {
        Field field = Field.named("probe_plate_a");
        double[][] trend = new double[field.z.length][];
        double[] noises = new double[field.z.length];
        Arrays.fill(noises, 1e-4);
        for (int i = 0; i < trend.length; i++) {
            trend[i] = terms("quadratic", field.x[i], field.y[i], 300);
        }
        Kriging kriging = Kriging.of(new Matern52(0.001, 150, 90), field.x, field.y, trend, field.z, noises);
        SplittableRandom random = new SplittableRandom(20260401);
        double[] x = random.doubles(12, 0, 300).toArray();
        double[] y = random.doubles(12, 0, 300).toArray();
        double[][] at = new double[12][];
        for (int i = 0; i < 12; i++) {
            at[i] = terms("quadratic", x[i], y[i], 300);
        }

        Kriging.Places places = kriging.at(x, y, at);

        double[] variances = places.variances();
        for (int i = 0; i < 12; i++) {
            assertEquals(kriging.variance(x[i], y[i], at[i]), variances[i], 1e-15);
            assertEquals(kriging.mean(x[i], y[i], at[i]), places.means()[i], 1e-15);
            double[] column = places.covariances()[i];
            assertEquals(variances[i], column[i], 1e-18);
            for (int j = 0; j < i; j++) {
                assertEquals(places.covariances()[j][i], column[j], 1e-18);
                assertTrue(column[j] * column[j] <= variances[i] * variances[j] * 1.000001);
            }
        }
    }

    @Test
    void twoPlacesAlikeWithoutNoiseAreRefused() {
        double[] x = {0, 100, 100};
        double[] y = {0, 0, 0};
        double[][] trend = {{1}, {1}, {1}};

        assertThrows(IllegalArgumentException.class,
            () -> Kriging.of(new Matern52(1, 50, 50), x, y, trend, new double[] {0, 1, 1.1}, new double[3]));
    }

    private static double[] without(double[] values, int i) {
        double[] rest = new double[values.length - 1];
        for (int k = 0; k < rest.length; k++) {
            rest[k] = values[k < i ? k : k + 1];
        }
        return rest;
    }

    private static double[][] without(double[][] values, int i) {
        double[][] rest = new double[values.length - 1][];
        for (int k = 0; k < rest.length; k++) {
            rest[k] = values[k < i ? k : k + 1];
        }
        return rest;
    }
}
