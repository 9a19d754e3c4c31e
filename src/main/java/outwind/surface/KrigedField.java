package outwind.surface;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
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

    /** Weight as a share of all, or as a logarithm up to a constant. */
    private record Setting(Kriging kriging, double weight) { }

    private final Observations observations;
    private final List<Term> terms;
    private final Scaling scaling;
    /** Every setting of the grid with the logarithm of its weight. */
    private final List<Setting> all;
    /** Those that count, the heaviest first, with their shares. */
    private final List<Setting> settings;

    private KrigedField(Observations observations, List<Term> terms, Scaling scaling, List<Setting> all) {
        this.observations = observations;
        this.terms = terms;
        this.scaling = scaling;
        this.all = all;
        this.settings = heaviest(all);
    }

    /**
     * Learns the field.
     *
     * @param observations places, heights and noise; at least one
     * @param model        the most that the trend may hold
     */
    static KrigedField of(Observations observations, TrendModel model, Prior prior, double length, double width) {
        Scaling scaling = Scaling.ofBoard(length, width);
        boolean[] seen = LeastSquares.independentColumns(design(model.terms(), observations, scaling),
            TrendFit.LEAST_ANGLE);
        List<Term> terms = new ArrayList<>();
        List<Term> unseen = new ArrayList<>();
        for (int j = 0; j < seen.length; j++) {
            (seen[j] ? terms : unseen).add(model.terms().get(j));
        }
        double[][] trend = design(terms, observations, scaling);
        List<Setting> all = new ArrayList<>();
        for (double s : SPREAD_STEPS) {
            double spread = prior.spread() * Math.exp(s * prior.spreadLog());
            for (double along : ALONG_STEPS) {
                for (double across : ACROSS_STEPS) {
                    Covariance residual = new Matern52(spread * spread,
                        length * prior.rangeAlong() * Math.exp(along * prior.rangeLog()),
                        width * prior.rangeAcross() * Math.exp(across * prior.rangeLog()));
                    Kriging kriging = Kriging.of(plusUnseen(residual, unseen, scaling, prior),
                        observations.x(), observations.y(), trend, observations.z(), observations.noiseVariance());
                    double weight = kriging.restrictedLogLikelihood()
                        - (s * s + along * along + across * across) / 2;
                    all.add(new Setting(kriging, weight));
                }
            }
        }
        return new KrigedField(observations, List.copyOf(terms), scaling, all);
    }

    private static Covariance plusUnseen(Covariance residual, List<Term> unseen, Scaling scaling, Prior prior) {
        if (unseen.isEmpty()) {
            return residual;
        }
        double[] deviations = unseen.stream()
            .mapToDouble(term -> prior.unseen(term, 2 * scaling.unitX(), 2 * scaling.unitY())).toArray();
        return (x1, y1, x2, y2) -> {
            double sum = residual.between(x1, y1, x2, y2);
            for (int j = 0; j < deviations.length; j++) {
                sum += deviations[j] * deviations[j] * unseen.get(j).at(scaling.u(x1), scaling.v(y1))
                    * unseen.get(j).at(scaling.u(x2), scaling.v(y2));
            }
            return sum;
        };
    }

    private static List<Setting> heaviest(List<Setting> logged) {
        double best = logged.stream().mapToDouble(Setting::weight).max().orElseThrow();
        List<Setting> kept = new ArrayList<>();
        double sum = 0;
        for (Setting setting : logged) {
            double weight = Math.exp(setting.weight() - best);
            if (weight >= LIGHTEST) {
                kept.add(new Setting(setting.kriging(), weight));
                sum += weight;
            }
        }
        double total = sum;
        return kept.stream().map(s -> new Setting(s.kriging(), s.weight() / total))
            .sorted(Comparator.comparingDouble(s -> -s.weight())).toList();
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
     * <p>Every setting is weighted anew without the observation: its restricted likelihood of the others is that of all
     * divided by the density it foretold the observation with. So a misreading cannot hide behind the roughness that
     * it makes the whole field seem to have.
     *
     * @return mean and standard deviation (mm, noise of the observation in it) for each, length n; the deviation is
     *     infinite where nothing foretells it
     */
    @Override
    public List<Foretold> leavingOut() {
        int n = observations.size();
        List<Kriging.LeftOut> leftOut = all.stream().map(s -> s.kriging().leavingOut()).toList();
        List<Foretold> foretold = new ArrayList<>();
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
            foretold.add(new Foretold(observations.z()[i] - mean, Math.sqrt(square / sum - mean * mean)));
        }
        return foretold;
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
        for (Setting setting : settings) {
            weight += setting.weight();
            // Each setting's share of the draws, rounded so that the shares add up.
            int upTo = setting == settings.get(settings.size() - 1) ? count : (int) Math.round(weight * count);
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
