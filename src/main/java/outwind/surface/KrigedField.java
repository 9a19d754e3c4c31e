package outwind.surface;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import outwind.numeric.Covariance;
import outwind.numeric.KrigedPlaces;
import outwind.numeric.Kriging;
import outwind.numeric.LeastSquares;
import outwind.numeric.LowRankRoot;
import outwind.numeric.Matern52;
import outwind.surface.trend.Scaling;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.TrendModel;

/**
 * A height or a thickness everywhere on the board, from noisy readings, with how sure it is.
 *
 * <p>Universal kriging about the trend terms that the readings can see. How rough the field is and how far one reading
 * tells of its surroundings is not known; a few readings do not fix it. So it is not fixed: a small grid of spreads and
 * ranges is gone through, each weighted by its restricted likelihood times its {@link Prior}, and what follows is the
 * mixture of them all. Settings that a few readings leave open widen the answer instead of being guessed.
 *
 * <p>Source: restricted likelihood as a posterior over covariance parameters with the trend integrated out: D. A.
 * Harville, Biometrika 61 (1974) 383–385; mixture over a grid of parameters: P. J. Diggle and P. J. Ribeiro,
 * Model-based Geostatistics, Springer 2007, section 7.2.
 */
final class KrigedField implements TopFace {

    /** Steps of the grid, in standard deviations of the prior: six spreads, four ranges along, three across. */
    private static final double[] SPREAD_STEPS = {-2, -1.2, -0.4, 0.4, 1.2, 2};
    private static final double[] ALONG_STEPS = {-2.2, -1, 0.1, 1.2};
    private static final double[] ACROSS_STEPS = {-1.8, -0.4, 0.9};

    /**
     * Settings lighter than this share of the heaviest are left out of means and draws, for speed. Together they hold
     * about a tenth of the weight; with a fiftieth as the bound the accuracy benchmark came out the same.
     */
    private static final double LIGHTEST = 0.1;

    /** Share of the greatest variance that draws may lack at any place: a hundredth of its standard deviation. */
    private static final double NEGLIGIBLE = 1e-4;

    /** The same for draws of a field with shrunk terms, which few readings leave as open as their prior does. */
    private static final double LIGHTEST_DRAWN = 0.002;

    /** From more settings than this draws are made of so many, taken at even steps of their summed weights. */
    private static final int MOST_DRAWN = 24;

    /** Nodes and weights of Gauss and Hermite's rule for a normal variable, exact for polynomials of degree 5. */
    private static final double[] SIZE_STEPS = {-Math.sqrt(3), 0, Math.sqrt(3)};
    private static final double[] SIZE_WEIGHTS = {1.0 / 6, 2.0 / 3, 1.0 / 6};

    /** Standard deviation of the logarithm of the size that all shrunk terms share. */
    private static final double SIZE_LOG = 0.7;

    /**
     * A term of the trend whose coefficient is believed to be small.
     *
     * @param term      one that is 1 at the board's corner
     * @param deviation standard deviation of its coefficient (mm) on a board of the usual size of such terms
     */
    record Shrunk(Term term, double deviation) { }

    /** Weight as a share of all, or as a logarithm up to a constant. */
    private record Setting(Kriging kriging, double weight) { }

    private final Observations observations;
    private final List<Term> terms;
    private final Scaling scaling;
    /** Every setting of the grid with the logarithm of its weight. */
    private final List<Setting> all;
    /** Those that count for means, the heaviest first, with their shares. */
    private final List<Setting> settings;
    /** Those that draws are made of, with their shares. */
    private final List<Setting> drawn;

    private KrigedField(Observations observations, List<Term> terms, Scaling scaling, List<Setting> all,
                        List<Setting> drawn) {
        this.observations = observations;
        this.terms = terms;
        this.scaling = scaling;
        this.all = all;
        this.settings = heaviest(all, LIGHTEST);
        this.drawn = drawn.isEmpty() ? settings : drawn;
    }

    /**
     * Learns the field.
     *
     * @param observations places, heights and noise; at least one
     * @param model        the most that the trend may hold
     */
    static KrigedField of(Observations observations, TrendModel model, Prior prior, double length, double width) {
        return of(observations, model.terms(), List.of(), prior, length, width);
    }

    /**
     * Learns a field some of whose trend is believed to be small.
     *
     * @param free   terms of any size; those that the readings cannot see are believed to be of their usual one
     * @param shrunk further terms
     */
    static KrigedField of(Observations observations, List<Term> free, List<Shrunk> shrunk, Prior prior, double length,
                          double width) {
        Scaling scaling = Scaling.ofBoard(length, width);
        boolean[] seen = LeastSquares.independentColumns(design(free, observations, scaling), TrendFit.LEAST_ANGLE);
        List<Term> terms = new ArrayList<>();
        List<Shrunk> unseen = new ArrayList<>();
        for (int j = 0; j < seen.length; j++) {
            if (seen[j]) {
                terms.add(free.get(j));
            } else {
                unseen.add(new Shrunk(free.get(j), prior.unseen(free.get(j), length, width)));
            }
        }
        double[][] trend = design(terms, observations, scaling);
        double[] sizes = shrunk.isEmpty() ? new double[] {1}
            : DoubleStream.of(SIZE_STEPS).map(step -> Math.exp(SIZE_LOG * step)).toArray();
        double[] shares = shrunk.isEmpty() ? new double[] {1} : SIZE_WEIGHTS;
        List<Setting> all = new ArrayList<>();
        for (double s : SPREAD_STEPS) {
            double spread = prior.spread() * Math.exp(s * prior.spreadLog());
            for (double along : ALONG_STEPS) {
                for (double across : ACROSS_STEPS) {
                    Covariance residual = plus(new Matern52(spread * spread,
                        length * prior.rangeAlong() * Math.exp(along * prior.rangeLog()),
                        width * prior.rangeAcross() * Math.exp(across * prior.rangeLog())), unseen, 1, scaling);
                    double logPrior = -(s * s + along * along + across * across) / 2;
                    for (int k = 0; k < sizes.length; k++) {
                        Kriging kriging = Kriging.of(
                            plus(residual, shrunk, sizes[k], scaling), observations.x(),
                            observations.y(), trend, observations.z(), observations.noiseVariance());
                        all.add(new Setting(kriging, kriging.restrictedLogLikelihood() + logPrior
                            + Math.log(shares[k])));
                    }
                }
            }
        }
        return new KrigedField(observations, List.copyOf(terms), scaling, all,
            shrunk.isEmpty() ? List.of() : stepped(inOrder(all, LIGHTEST_DRAWN)));
    }

    private static Covariance plus(Covariance residual, List<Shrunk> more, double size, Scaling scaling) {
        if (more.isEmpty()) {
            return residual;
        }
        double[] variances = more.stream().mapToDouble(term -> Math.pow(size * term.deviation(), 2)).toArray();
        return (x1, y1, x2, y2) -> {
            double sum = residual.between(x1, y1, x2, y2);
            for (int j = 0; j < variances.length; j++) {
                sum += variances[j] * more.get(j).term().at(scaling.u(x1), scaling.v(y1))
                    * more.get(j).term().at(scaling.u(x2), scaling.v(y2));
            }
            return sum;
        };
    }

    /**
     * At most {@link #MOST_DRAWN} settings, each standing for as much of the weight as it was met at even steps of the
     * sum of all: none is left out for being light, and neighbours on the grid stand for each other.
     */
    private static List<Setting> stepped(List<Setting> shares) {
        if (shares.size() <= MOST_DRAWN) {
            return shares;
        }
        List<Setting> met = new ArrayList<>();
        double sum = 0;
        int steps = 0;
        for (Setting setting : shares) {
            sum += setting.weight();
            int upTo = (int) Math.min(MOST_DRAWN, Math.floor(sum * MOST_DRAWN + 0.5));
            if (upTo > steps) {
                met.add(new Setting(setting.kriging(), (upTo - steps) / (double) MOST_DRAWN));
                steps = upTo;
            }
        }
        return met;
    }

    /** Settings above a share of the heaviest, the heaviest first. */
    private static List<Setting> heaviest(List<Setting> logged, double lightest) {
        return inOrder(logged, lightest).stream().sorted(Comparator.comparingDouble(s -> -s.weight())).toList();
    }

    private static List<Setting> inOrder(List<Setting> logged, double lightest) {
        double best = logged.stream().mapToDouble(Setting::weight).max().orElseThrow();
        List<Setting> kept = new ArrayList<>();
        double sum = 0;
        for (Setting setting : logged) {
            double weight = Math.exp(setting.weight() - best);
            if (weight >= lightest) {
                kept.add(new Setting(setting.kriging(), weight));
                sum += weight;
            }
        }
        double total = sum;
        return kept.stream().map(s -> new Setting(s.kriging(), s.weight() / total)).toList();
    }

    private static double[][] design(List<Term> terms, Observations observations, Scaling scaling) {
        double[][] design = new double[observations.size()][];
        for (int i = 0; i < design.length; i++) {
            design[i] = termsAt(terms, scaling, observations.x()[i], observations.y()[i]);
        }
        return design;
    }

    private static double[] termsAt(List<Term> terms, Scaling scaling, double x, double y) {
        double[] values = new double[terms.size()];
        for (int j = 0; j < values.length; j++) {
            values[j] = terms.get(j).at(scaling.u(x), scaling.v(y));
        }
        return values;
    }

    /** Mean of the field at a place (mm). */
    @Override
    public double mean(double x, double y) {
        double[] trendAt = termsAt(terms, scaling, x, y);
        double sum = 0;
        for (Setting setting : settings) {
            sum += setting.weight() * setting.kriging().mean(x, y, trendAt);
        }
        return sum;
    }

    /** A few touch-offs show nothing narrower than the board is thick. */
    @Override
    public double shared(double x, double y, double mean) {
        return mean;
    }

    /** Standard deviation of the field at a place (mm), the noise of a reading not in it. */
    @Override
    public double deviation(double x, double y) {
        double[] trendAt = termsAt(terms, scaling, x, y);
        double mean = 0;
        double square = 0;
        for (Setting setting : settings) {
            double m = setting.kriging().mean(x, y, trendAt);
            mean += setting.weight() * m;
            square += setting.weight() * (m * m + setting.kriging().variance(x, y, trendAt));
        }
        return Math.sqrt(Math.max(0, square - mean * mean));
    }

    /**
     * What each observation should have been by all the others.
     *
     * <p>Every setting is weighted again without the observation: its restricted likelihood of the others is that of all
     * divided by the density it predicted the observation with. So a misreading cannot hide behind the roughness that
     * it makes the whole field seem to have.
     *
     * @return mean and standard deviation (mm, noise of the observation in it) for each, length n; the deviation is
     *     infinite where nothing predicts it
     */
    @Override
    public List<Predicted> leavingOut() {
        int n = observations.size();
        List<Kriging.LeftOut> leftOut = all.stream().map(s -> s.kriging().leavingOut()).toList();
        List<Predicted> predicted = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double[] logWeights = new double[all.size()];
            double best = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < logWeights.length; k++) {
                double residual = leftOut.get(k).residuals()[i];
                double variance = leftOut.get(k).variances()[i];
                logWeights[k] = all.get(k).weight()
                    + (Double.isInfinite(variance) ? 0 : (residual * residual / variance + Math.log(variance)) / 2);
                best = Math.max(best, logWeights[k]);
            }
            double sum = 0;
            double mean = 0;
            double square = 0;
            for (int k = 0; k < logWeights.length; k++) {
                double weight = Math.exp(logWeights[k] - best);
                if (weight == 0) {
                    // No part of an infinite variance either.
                    continue;
                }
                double residual = leftOut.get(k).residuals()[i];
                sum += weight;
                mean += weight * residual;
                square += weight * (residual * residual + leftOut.get(k).variances()[i]);
            }
            mean /= sum;
            predicted.add(new Predicted(observations.z()[i] - mean, Math.sqrt(square / sum - mean * mean)));
        }
        return predicted;
    }

    @Override
    public Drawn draws(Places places, double[][] anchors, int count, SplittableRandom random) {
        double[][] all = places.and(anchors);
        double[][] draws = draws(all[0], all[1], count, random);
        return new Drawn(draws, draws);
    }

    /**
     * Fields that the readings leave possible, each as likely as the next.
     *
     * @param x     places, length m
     * @param y     places, length m
     * @param count how many
     * @return count × m (mm)
     */
    double[][] draws(double[] x, double[] y, int count, SplittableRandom random) {
        int m = x.length;
        double[][] trendAt = new double[m][];
        for (int i = 0; i < m; i++) {
            trendAt[i] = termsAt(terms, scaling, x[i], y[i]);
        }
        double[][] draws = new double[count][];
        int done = 0;
        double weight = 0;
        for (Setting setting : drawn) {
            weight += setting.weight();
            // Each setting's share of the draws, rounded so that the shares add up.
            int upTo = setting == drawn.get(drawn.size() - 1) ? count : (int) Math.round(weight * count);
            if (upTo > done) {
                KrigedPlaces places = setting.kriging().at(x, y, trendAt);
                double[] mean = places.means();
                LowRankRoot root = LowRankRoot.of(places.variances(), places::covariances, NEGLIGIBLE);
                for (; done < upTo; done++) {
                    draws[done] = drawn(mean, root, random);
                }
            }
        }
        shuffle(draws, random);
        return draws;
    }

    /** Draws of one setting come one after another; two fields drawn side by side must not meet in that order. */
    private static void shuffle(double[][] draws, SplittableRandom random) {
        for (int i = draws.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            double[] swapped = draws[i];
            draws[i] = draws[j];
            draws[j] = swapped;
        }
    }

    private static double[] drawn(double[] mean, LowRankRoot root, SplittableRandom random) {
        double[] white = new double[root.rank()];
        for (int i = 0; i < white.length; i++) {
            white[i] = random.nextGaussian();
        }
        double[] drawn = mean.clone();
        root.addTimes(white, drawn);
        return drawn;
    }
}
