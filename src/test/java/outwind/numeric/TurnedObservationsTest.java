package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Turned observations against {@link Kriging}, which solves for one covariance at a time and is itself held to gstat,
 * nlme and scikit-learn.
 */
class TurnedObservationsTest {

    private static final int N = 14;
    private static final double[] DEVIATIONS = {0.4, 1.1};
    /** Places looked at. */
    private static final double[] AT_X = {-0.5, 0, 0.9};
    private static final double[] AT_Y = {0.3, -0.8, 0.9};

    private final double[] x = new double[N];
    private final double[] y = new double[N];
    private final double[] z = new double[N];
    private final double[] noise = new double[N];
    /** 1, x, y free; xy and x² normal. */
    private final double[][] columns = new double[5][N];

    TurnedObservationsTest() {
        SplittableRandom random = new SplittableRandom(20261127);
        for (int i = 0; i < N; i++) {
            x[i] = random.nextDouble(-1, 1);
            y[i] = random.nextDouble(-1, 1);
            z[i] = random.nextGaussian();
            noise[i] = random.nextDouble(0.01, 0.05);
            double[] at = at(x[i], y[i]);
            for (int j = 0; j < columns.length; j++) {
                columns[j][i] = at[j];
            }
        }
    }

    /** All columns at the places looked at, column by column. */
    private static double[][] columnsAt() {
        double[][] columns = new double[5][3];
        for (int k = 0; k < 3; k++) {
            double[] at = at(AT_X[k], AT_Y[k]);
            for (int j = 0; j < 5; j++) {
                columns[j][k] = at[j];
            }
        }
        return columns;
    }

    private static double[][] trendAt() {
        return IntStream.range(0, 3).mapToObj(k -> Arrays.copyOf(at(AT_X[k], AT_Y[k]), 3)).toArray(double[][]::new);
    }

    private static TurnedObservations.Conditioned conditioned(TurnedObservations turned) {
        return turned.conditioned(0.09, 2.25, new int[] {0, 1, 2, 3, 4},
            new double[] {0, 0, 0, Math.pow(DEVIATIONS[0], -2), Math.pow(DEVIATIONS[1], -2)});
    }

    private static double[] at(double x, double y) {
        return new double[] {1, x, y, x * y, x * x};
    }

    private Kriging reference(double spread, double factor) {
        Matern52 residual = new Matern52(spread * spread, 0.8, 0.6);
        Covariance covariance = (x1, y1, x2, y2) -> residual.between(x1, y1, x2, y2)
            + DEVIATIONS[0] * DEVIATIONS[0] * x1 * y1 * x2 * y2 + DEVIATIONS[1] * DEVIATIONS[1] * x1 * x1 * x2 * x2;
        double[][] trend = new double[N][];
        for (int i = 0; i < N; i++) {
            trend[i] = Arrays.copyOf(at(x[i], y[i]), 3);
        }
        return Kriging.of(covariance, x, y, trend, z, Arrays.stream(noise).map(v -> v * factor * factor).toArray());
    }

    private TurnedObservations turned() {
        return TurnedObservations.of(new Matern52(1, 0.8, 0.6), x, y, columns, z, noise);
    }

    private Sweep swept(double spread, double factor, int free) {
        // The last two of five columns are a pair, unless they are eliminated like the others.
        Sweep sweep = turned().sweep(spread * spread, factor * factor, Math.max(3, free), true);
        for (int j = 0; j < free; j++) {
            sweep.eliminate(j, j < 3 ? 0 : Math.pow(DEVIATIONS[j - 3], -2));
        }
        return sweep;
    }

    /** Up to a constant: differences between covariances count. */
    @Test
    void likelihoodsAreThoseOfEachCovarianceAlone() {
        double first = swept(0.3, 1, 5).logLikelihood() - reference(0.3, 1).restrictedLogLikelihood();
        double second = swept(0.7, 1.5, 5).logLikelihood() - reference(0.7, 1.5).restrictedLogLikelihood();
        double pair = swept(0.7, 1.5, 3).logLikelihoodWith(3, Math.pow(DEVIATIONS[0], -2), Math.pow(DEVIATIONS[1], -2));

        assertEquals(first, second, 1e-9);
        assertEquals(swept(0.7, 1.5, 5).logLikelihood(), pair, 1e-9);
    }

    @Test
    void leavingOutIsThatOfEachCovarianceAlone() {
        Kriging.LeftOut expected = reference(0.3, 1.5).leavingOut();
        Sweep.LeftOut alone = swept(0.3, 1.5, 5).leftOut();
        Sweep.LeftOut pair = swept(0.3, 1.5, 3).leftOutWith(3, Math.pow(DEVIATIONS[0], -2), Math.pow(DEVIATIONS[1], -2));

        assertArrayEquals(expected.residuals(), alone.residuals(), 1e-9);
        assertArrayEquals(expected.variances(), alone.variances(), 1e-9);
        assertArrayEquals(expected.residuals(), pair.residuals(), 1e-9);
        assertArrayEquals(expected.variances(), pair.variances(), 1e-9);
    }

    /** A free coefficient of its own does what taking the observation away does. */
    @Test
    void leavingOutForGoodIsNeverHavingSeenIt() {
        int gone = 4;
        int[] rest = IntStream.range(0, N).filter(i -> i != gone).toArray();
        TurnedObservations others = TurnedObservations.of(new Matern52(1, 0.8, 0.6), only(rest, x), only(rest, y),
            Arrays.stream(columns).map(column -> only(rest, column)).toArray(double[][]::new), only(rest, z),
            only(rest, noise));
        double[] apart = new double[2];
        for (int k = 0; k < 2; k++) {
            Sweep without = eliminated(turned().sweepWithout(gone, 0.09 + k, 2.25, 5));
            Sweep never = eliminated(others.sweep(0.09 + k, 2.25, 5, true));
            apart[k] = without.logLikelihood() - never.logLikelihood();

            assertArrayEquals(never.leftOut().residuals(), only(rest, without.leftOut().residuals()), 1e-9);
            assertArrayEquals(never.leftOut().variances(), only(rest, without.leftOut().variances()), 1e-9);
            assertEquals(Double.POSITIVE_INFINITY, without.leftOut().variances()[gone]);

            Sweep paired = turned().sweepWithout(gone, 0.09 + k, 2.25, 3);
            for (int j = 0; j < 3; j++) {
                paired.eliminate(j, 0);
            }
            double first = Math.pow(DEVIATIONS[0], -2);
            double second = Math.pow(DEVIATIONS[1], -2);
            assertEquals(without.logLikelihood(), paired.logLikelihoodWith(3, first, second), 1e-9);
            assertArrayEquals(without.leftOut().residuals(), paired.leftOutWith(3, first, second).residuals(), 1e-9);
        }
        assertEquals(apart[0], apart[1], 1e-9);
    }

    @Test
    void aCopyWithoutPairsHasTheSameRest() {
        Sweep all = swept(0.3, 1.5, 1);

        Sweep alone = all.from(1, false);
        Sweep paired = all.from(1, true);
        for (int j = 0; j < 2; j++) {
            alone.eliminate(j, 0);
            paired.eliminate(j, 0);
        }

        Sweep expected = swept(0.3, 1.5, 3);
        assertEquals(expected.logLikelihood(), alone.logLikelihood(), 1e-12);
        assertArrayEquals(expected.leftOut().residuals(), alone.leftOut().residuals(), 1e-12);
        assertEquals(expected.logLikelihoodWith(3, 2, 3), paired.logLikelihoodWith(2, 2, 3), 1e-12);
        assertArrayEquals(expected.leftOutWith(3, 2, 3).variances(), paired.leftOutWith(2, 2, 3).variances(), 1e-12);
    }

    private static Sweep eliminated(Sweep sweep) {
        for (int j = 0; j < 5; j++) {
            sweep.eliminate(j, j < 3 ? 0 : Math.pow(DEVIATIONS[j - 3], -2));
        }
        return sweep;
    }

    private static double[] only(int[] rest, double[] values) {
        return Arrays.stream(rest).mapToDouble(i -> values[i]).toArray();
    }

    @Test
    void theFieldIsThatOfEachCovarianceAlone() {
        Kriging.Places expected = reference(0.3, 1.5).at(AT_X, AT_Y, trendAt());
        double[][] columnsAt = columnsAt();
        TurnedObservations turned = turned();
        TurnedObservations.Conditioned conditioned = conditioned(turned);

        KrigedPlaces places = conditioned.at(turned.across(AT_X, AT_Y), columnsAt);

        assertArrayEquals(expected.means(), places.means(), 1e-9);
        assertArrayEquals(expected.variances(), places.variances(), 1e-9);
        for (int k = 0; k < 3; k++) {
            double mean = 0;
            for (int j = 0; j < 5; j++) {
                mean += conditioned.coefficients()[j] * columnsAt[j][k];
            }
            double[] correlations = turned.correlations(AT_X[k], AT_Y[k]);
            for (int i = 0; i < N; i++) {
                mean += conditioned.weights()[i] * correlations[i];
            }
            assertEquals(expected.means()[k], mean, 1e-9);
        }
    }

    /** Moments of 100,000 draws, to five standard errors. */
    @Test
    void drawsHaveTheMeansAndCovariancesOfTheField() {
        Kriging.Places expected = reference(0.3, 1.5).at(AT_X, AT_Y, trendAt());
        double[][] columnsAt = columnsAt();
        TurnedObservations turned = turned();
        TurnedObservations.Conditioned conditioned = conditioned(turned);
        FieldRoot root = turned.root(IntStream.range(0, N).map(i -> N - 1 - i).toArray(), AT_X, AT_Y, 1e-9);
        SplittableRandom random = new SplittableRandom(35);
        int count = 100_000;
        double[] means = new double[3];
        double[][] products = new double[3][3];
        for (int d = 0; d < count; d++) {
            double[] drawn = conditioned.draw(root, columnsAt, 1e-9, random);
            for (int i = 0; i < 3; i++) {
                means[i] += drawn[i] / count;
                for (int j = 0; j < 3; j++) {
                    products[i][j] += (drawn[i] - expected.means()[i]) * (drawn[j] - expected.means()[j]) / count;
                }
            }
        }

        double[] variances = expected.variances();
        for (int i = 0; i < 3; i++) {
            double[] covariances = expected.covariances()[i];
            assertEquals(expected.means()[i], means[i], 5 * Math.sqrt(variances[i] / count));
            for (int j = 0; j < 3; j++) {
                assertEquals(covariances[j], products[i][j],
                    5 * Math.sqrt((variances[i] * variances[j] + covariances[j] * covariances[j]) / count));
            }
        }
    }
}
