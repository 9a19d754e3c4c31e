package outwind.surface.field;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import outwind.numeric.Covariance;
import outwind.numeric.FieldRoot;
import outwind.numeric.KrigedPlaces;
import outwind.numeric.LeastSquares;
import outwind.numeric.Matern52;
import outwind.numeric.Sweep;
import outwind.numeric.TurnedObservations;
import outwind.numeric.Vectors;
import outwind.surface.trend.Scaling;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.TrendModel;

/**
 * A height or a thickness everywhere on the board, from noisy readings, with how sure it is.
 *
 * <pre>
 *   z = free trend + bends + residual + noise
 *   free trend: terms that the readings can see, of any size
 *   bends:      terms of unknown size, and perhaps a hinge; see {@link Bends}
 *   residual:   Matérn 5/2 of unknown spread and ranges; see {@link Prior}
 * </pre>
 * Sizes, hinge, spread, ranges and noise are not known, and a few readings do not fix them. So they are not fixed: a
 * grid of them all is gone through, each setting weighted by its restricted likelihood times its prior, and what follows
 * is the mixture of them all. What a few readings leave open widens the answer instead of being guessed.
 *
 * <p>Given a setting, everything is normal and linear. {@link TurnedObservations} makes it cheap: one decomposition for
 * each pair of ranges serves all spreads and noises, and the columns of all bends are eliminated from the same products.
 *
 * <p>Source: restricted likelihood as a posterior over covariance parameters with the trend integrated out: D. A.
 * Harville, Biometrika 61 (1974) 383–385; mixture over a grid of parameters: P. J. Diggle and P. J. Ribeiro,
 * Model-based Geostatistics, Springer 2007, section 7.2.
 */
public final class KrigedField {

    /** Steps of the grid, in standard deviations of the prior: six spreads, four ranges along, three across. */
    private static final double[] SPREAD_STEPS = {-2, -1.2, -0.4, 0.4, 1.2, 2};
    private static final double[] ALONG_STEPS = {-2.2, -1, 0.1, 1.2};
    private static final double[] ACROSS_STEPS = {-1.8, -0.4, 0.9};
    private static final int RANGES = ALONG_STEPS.length * ACROSS_STEPS.length;

    /** Settings lighter than this share of the heaviest are left out of means, for speed. */
    private static final double LIGHTEST = 0.01;

    /** Places whose deviations are computed at once: more would not fit a cache. */
    private static final int TOGETHER = 500;

    /** Of the settings that draws are made of, every so many serves for the deviation at a place. */
    private static final int THINNED = 3;

    /** Settings so much lighter than the heaviest, as a logarithm, count only where a reading may be a slip. */
    private static final double FAINT = 8;

    /** A reading as far off as this many standard deviations may be a slip. */
    private static final double FAR = 2.5;

    /** Settings so much lighter than the heaviest, as a logarithm, weigh nothing. */
    private static final double NOTHING = 16;

    /** Share of the greatest variance that draws may lack at any place: a twentieth of its standard deviation. */
    private static final double NEGLIGIBLE = 2.5e-3;

    /** Every so many of many places show how great the variance is among them all. */
    private static final int SOME = 7;

    /** Draws are made of so many settings, taken at even steps of their summed weights. */
    private static final int DRAWN = 48;

    private static final int HINGES = Bends.HINGES.length * Bends.LIFTS.length;

    /** Precisions of lift and turn, for each size of lift. */
    private static final double[][] OF_LIFTS = Arrays.stream(Bends.LIFTS)
        .mapToObj(lift -> new double[] {Math.pow(lift, -2), Math.pow(Bends.TURN * lift, -2)}).toArray(double[][]::new);

    /**
     * What the others predict an observation to be.
     *
     * @param mean      mm
     * @param deviation standard deviation (mm), the observation's own noise in it
     * @param logSlip   logarithm of how many times likelier all readings are if this one is a slip; see {@link Slips}
     * @param logStray  the same if it is a stray
     */
    public record Predicted(double mean, double deviation, double logSlip, double logStray) { }

    private final Observations observations;
    private final Layout layout;
    private final List<TurnedObservations> turned;
    private final Covariances covariances;
    /** Logarithm of how likely each setting is after the observations, up to a constant. */
    private final double[] logWeights;
    private final double noiseFactor;
    /** Those that draws are made of, each standing for the same share of the weight. */
    private final int[] drawn;
    private final Setting[] settings;
    /** Means of all coefficients, and for each pair of ranges what each observation weighs. */
    private final double[] coefficients;
    private final double[][] weights;
    /** Whether any observation weighs anything under a pair of ranges. */
    private final boolean[] weighs;

    private KrigedField(Observations observations, Layout layout, List<TurnedObservations> turned,
                        Covariances covariances, double[] logWeights) {
        this.observations = observations;
        this.layout = layout;
        this.turned = turned;
        this.covariances = covariances;
        this.logWeights = logWeights;
        double[] shares = shares(logWeights);
        this.noiseFactor = noiseFactor(shares);
        this.drawn = drawn(shares);
        this.coefficients = new double[layout.columns()];
        this.weights = new double[turned.size()][observations.size()];
        this.weighs = new boolean[turned.size()];
        average(shares);
        this.settings = Arrays.stream(drawn).mapToObj(this::setting).toArray(Setting[]::new);
    }

    /**
     * Which columns the field has: free ones first, then unseen ones of the trend, bends group by group, two for each
     * hinge.
     */
    private static final class Layout {

        private final Viewpoint seen;
        private final Scaling scaling;
        private final List<Term> free = new ArrayList<>();
        private final List<Term> unseen = new ArrayList<>();
        private final Prior prior;
        private final int firstBend;
        private final int firstHinge;
        /** How many combinations of sizes the groups have. */
        private final int sizes;
        /** For each combination, the precisions of the columns before the hinges. */
        private final double[][] precisions;
        /** Hinges none or one, numbered from 1, within sizes: how likely each pair of them is, as logarithms. */
        private final double[] logInner;

        Layout(List<Term> terms, Observations observations, Prior prior, Viewpoint seen) {
            this.seen = seen;
            this.scaling = Scaling.ofBoard(seen.length(), seen.width());
            this.prior = prior;
            double[][] design = new double[observations.size()][terms.size()];
            for (int i = 0; i < design.length; i++) {
                for (int j = 0; j < terms.size(); j++) {
                    design[i][j] = terms.get(j).at(u(observations.x()[i]), v(observations.y()[i]));
                }
            }
            boolean[] determined = LeastSquares.independentColumns(design, TrendFit.LEAST_ANGLE);
            for (int j = 0; j < determined.length; j++) {
                (determined[j] ? free : unseen).add(terms.get(j));
            }
            this.firstBend = terms.size();
            this.firstHinge = firstBend + prior.bends().groups().stream().mapToInt(group -> group.bends().size()).sum();
            this.sizes = prior.bends().groups().stream().mapToInt(group -> group.sizes().length).reduce(1, (a, b) -> a * b);
            this.precisions = IntStream.range(0, sizes).mapToObj(this::precisionsOf).toArray(double[][]::new);
            this.logInner = IntStream.range(0, sizes * (1 + hinges()))
                .mapToDouble(i -> logShareOf(i / (1 + hinges())) + logHinge(i % (1 + hinges()))).toArray();
        }

        int columns() {
            return firstHinge + (hinges() > 0 ? 2 * Bends.HINGES.length : 0);
        }

        int hinges() {
            return prior.bends().hingeShare() > 0 ? HINGES : 0;
        }

        private double u(double x) {
            return scaling.u(seen.seenX(x));
        }

        private double v(double y) {
            return scaling.v(seen.seenY(y));
        }

        /** All columns at a place, as they come from the viewpoint: what is drawn is then mirrored with the board. */
        double[] at(double x, double y) {
            double u = u(x);
            double v = v(y);
            double[] values = new double[columns()];
            int at = 0;
            for (Term term : free) {
                values[at++] = term.at(u, v);
            }
            for (Term term : unseen) {
                values[at++] = term.at(u, v);
            }
            for (Bends.Group group : prior.bends().groups()) {
                for (Bends.Bend bend : group.bends()) {
                    values[at++] = bend.form().at(u, v);
                }
            }
            for (int k = 0; at < values.length; k++) {
                double hinge = Bends.hinge(Bends.HINGES[k], seen.seenX(x), seen.length());
                values[at++] = hinge;
                values[at++] = hinge * v;
            }
            return values;
        }

        /** All columns at many places, column by column. */
        double[][] at(double[] x, double[] y) {
            double[][] columns = new double[columns()][x.length];
            for (int i = 0; i < x.length; i++) {
                double[] values = at(x[i], y[i]);
                for (int j = 0; j < values.length; j++) {
                    columns[j][i] = values[j];
                }
            }
            return columns;
        }

        private double[] precisionsOf(int combination) {
            double[] precisions = new double[firstHinge];
            int at = free.size();
            for (Term term : unseen) {
                precisions[at++] = Math.pow(prior.unseen(term, seen.length(), seen.width()), -2);
            }
            int rest = combination;
            for (Bends.Group group : prior.bends().groups()) {
                double size = group.sizes()[rest % group.sizes().length];
                rest /= group.sizes().length;
                for (Bends.Bend bend : group.bends()) {
                    precisions[at++] = Math.pow(size * bend.deviation(), -2);
                }
            }
            return precisions;
        }

        private double logShareOf(int combination) {
            double sum = 0;
            int rest = combination;
            for (Bends.Group group : prior.bends().groups()) {
                sum += Math.log(group.shares()[rest % group.shares().length]);
                rest /= group.shares().length;
            }
            return sum;
        }

        /** The first of both columns of a hinge, counted from the first bend; hinges are numbered from 1. */
        int hingeColumn(int hinge) {
            return firstHinge - firstBend + 2 * ((hinge - 1) / Bends.LIFTS.length);
        }

        /** Logarithm of how likely a hinge is at the outset; 0 stands for none. */
        private double logHinge(int hinge) {
            double share = prior.bends().hingeShare();
            return hinge == 0 ? Math.log(1 - share) : Math.log(share / HINGES);
        }
    }

    /** Covariances of residual and noise, numbered range by range, the noise running first. */
    private static final class Covariances {

        private final double[] spreads;
        private final double[] factors;
        /** Logarithm of how likely each is at the outset, up to a constant. */
        private final double[] logPriors;

        Covariances(Prior prior, Noises noises) {
            this.spreads = Arrays.stream(SPREAD_STEPS).map(step -> prior.spread() * Math.exp(step * prior.spreadLog()))
                .toArray();
            this.factors = noises.factors();
            this.logPriors = IntStream.range(0, RANGES * spreads.length * factors.length).mapToDouble(c -> {
                double along = along(range(c));
                double across = across(range(c));
                double spread = SPREAD_STEPS[spread(c)];
                return Math.log(noises.shares()[c % factors.length])
                    - (spread * spread + along * along + across * across) / 2;
            }).toArray();
        }

        int count() {
            return logPriors.length;
        }

        int range(int c) {
            return c / factors.length / spreads.length;
        }

        private int spread(int c) {
            return c / factors.length % spreads.length;
        }

        /** s², see {@link TurnedObservations}. */
        double variance(int c) {
            return spreads[spread(c)] * spreads[spread(c)];
        }

        /** f². */
        double noise(int c) {
            return factors[c % factors.length] * factors[c % factors.length];
        }
    }

    private static double along(int range) {
        return ALONG_STEPS[range / ACROSS_STEPS.length];
    }

    private static double across(int range) {
        return ACROSS_STEPS[range % ACROSS_STEPS.length];
    }

    /** Both precisions of a hinge, lift and turn; the first is numbered 1. */
    private static double[] hingePrecisions(int hinge) {
        return OF_LIFTS[(hinge - 1) % OF_LIFTS.length];
    }


    /** Does what is to be done with each setting's sweep. */
    private interface Visitor {

        /**
         * @param inner the number of the sizes and the hinge within their covariance
         * @param sweep from the first bend on, with all columns eliminated but those of hinges
         */
        void visit(int inner, Sweep sweep, int hinge);
    }

    /**
     * Learns the field.
     *
     * @param observations places, heights and noise; at least one
     * @param model        the most that the free trend may hold
     * @param noises       how large the noise may be
     * @param seen         the board's size and the corner that it is looked at from
     */
    public static KrigedField of(Observations observations, TrendModel model, Prior prior, Noises noises,
                                 Viewpoint seen) {
        return of(observations, model.terms(), prior, noises, seen);
    }

    /**
     * Learns the field.
     *
     * @param terms of the free trend; those that the readings cannot see are believed to be of their usual size
     */
    public static KrigedField of(Observations observations, List<Term> terms, Prior prior, Noises noises,
                                 Viewpoint seen) {
        Layout layout = new Layout(terms, observations, prior, seen);
        double[][] columns = layout.at(observations.x(), observations.y());
        Covariances covariances = new Covariances(prior, noises);
        double[] logWeights = new double[covariances.count() * layout.logInner.length];
        int each = covariances.count() / RANGES;
        List<TurnedObservations> turned = IntStream.range(0, RANGES).parallel().mapToObj(range -> {
            TurnedObservations ofRange = TurnedObservations.of(correlation(prior, seen, range), observations.x(),
                observations.y(), columns, observations.z(), observations.noiseVariance());
            for (int c = range * each; c < (range + 1) * each; c++) {
                double logPrior = covariances.logPriors[c];
                int first = c * layout.logInner.length;
                sweep(layout, ofRange.sweep(covariances.variance(c), covariances.noise(c), layout.firstHinge, false), true,
                    (i, sweep, hinge) ->
                        logWeights[first + i] = logPrior + layout.logInner[i] + logLikelihood(layout, sweep, hinge));
            }
            return ofRange;
        }).toList();
        return new KrigedField(observations, layout, turned, covariances, logWeights);
    }

    private static Covariance correlation(Prior prior, Viewpoint seen, int range) {
        return new Matern52(1, seen.length() * prior.rangeAlong() * Math.exp(along(range) * prior.rangeLog()),
            seen.width() * prior.rangeAcross() * Math.exp(across(range) * prior.rangeLog()));
    }

    private static double logLikelihood(Layout layout, Sweep sweep, int hinge) {
        return hinge == 0 ? sweep.logLikelihood() : sweep.logLikelihoodWith(layout.hingeColumn(hinge),
            hingePrecisions(hinge)[0], hingePrecisions(hinge)[1]);
    }

    /**
     * Goes through sizes and hinges of one covariance.
     *
     * @param everyHinge true for hinges beside bends of every size, false for those beside the smallest alone
     */
    private static void sweep(Layout layout, Sweep all, boolean everyHinge, Visitor visitor) {
        double[] precisions = layout.precisions[0];
        for (int j = 0; j < layout.firstBend; j++) {
            all.eliminate(j, precisions[j]);
        }
        for (int g = 0; g < layout.sizes; g++) {
            double[] ofGroup = layout.precisions[g];
            boolean hinges = everyHinge || g == 0;
            Sweep sweep = all.from(layout.firstBend, hinges);
            for (int j = layout.firstBend; j < layout.firstHinge; j++) {
                sweep.eliminate(j - layout.firstBend, ofGroup[j]);
            }
            for (int h = 0; h <= (hinges ? layout.hinges() : 0); h++) {
                visitor.visit(g * (1 + layout.hinges()) + h, sweep, h);
            }
        }
    }

    private static double[] shares(double[] logWeights) {
        double best = logWeights[0];
        for (double log : logWeights) {
            best = Math.max(best, log);
        }
        double[] shares = new double[logWeights.length];
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            shares[i] = logWeights[i] < best - NOTHING ? 0 : Math.exp(logWeights[i] - best);
            sum += shares[i];
        }
        for (int i = 0; i < shares.length; i++) {
            shares[i] /= sum;
        }
        return shares;
    }

    /** None is left out for being light, and neighbours in the order stand for each other. */
    private int[] drawn(double[] shares) {
        int[] met = new int[DRAWN];
        double sum = 0;
        int steps = 0;
        for (int i = 0; i < shares.length && steps < DRAWN; i++) {
            int setting = inOrder(i);
            sum += shares[setting];
            while (steps < DRAWN && sum * DRAWN > steps + 0.5) {
                met[steps++] = setting;
            }
        }
        // Rounding may leave the sum a little below one.
        while (steps < DRAWN) {
            met[steps] = met[steps - 1];
            steps++;
        }
        return met;
    }

    /**
     * Settings are gone through as they are numbered, range by range. Without hinges they are gone through size by size of
     * the bends: where readings tell nothing of these, each then has its share of the draws, and the tails their length.
     */
    private int inOrder(int i) {
        return layout.hinges() > 0 ? i : i % covariances.count() * layout.sizes + i / covariances.count();
    }

    /** One setting, given the observations. */
    private record Setting(int range, double variance, TurnedObservations.Conditioned conditioned, int[] columns) { }

    private Setting setting(int index) {
        int hinges = 1 + layout.hinges();
        int hinge = index % hinges;
        int combination = index / hinges % layout.sizes;
        int covariance = index / hinges / layout.sizes;
        double[] before = layout.precisions[combination];
        int[] columns = new int[before.length + (hinge > 0 ? 2 : 0)];
        double[] precisions = Arrays.copyOf(before, columns.length);
        for (int j = 0; j < before.length; j++) {
            columns[j] = j;
        }
        if (hinge > 0) {
            columns[before.length] = layout.firstBend + layout.hingeColumn(hinge);
            columns[before.length + 1] = columns[before.length] + 1;
            System.arraycopy(hingePrecisions(hinge), 0, precisions, before.length, 2);
        }
        int range = covariances.range(covariance);
        double variance = covariances.variance(covariance);
        return new Setting(range, variance, turned.get(range).conditioned(variance, covariances.noise(covariance), columns,
            precisions), columns);
    }

    private void average(double[] shares) {
        double bound = LIGHTEST * Arrays.stream(shares).max().orElseThrow();
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            if (shares[i] >= bound) {
                Setting setting = setting(i);
                double[] ofSetting = setting.conditioned().coefficients();
                double[] ofEach = setting.conditioned().weights();
                weighs[setting.range()] = true;
                for (int j = 0; j < ofSetting.length; j++) {
                    coefficients[setting.columns()[j]] += shares[i] * ofSetting[j];
                }
                for (int k = 0; k < ofEach.length; k++) {
                    weights[setting.range()][k] += shares[i] * ofEach[k];
                }
                sum += shares[i];
            }
        }
        for (int j = 0; j < coefficients.length; j++) {
            coefficients[j] /= sum;
        }
        for (double[] ofRange : weights) {
            for (int k = 0; k < ofRange.length; k++) {
                ofRange[k] /= sum;
            }
        }
    }

    /** How much larger the noise is than it was put down as: root mean square over all settings. */
    public double noiseFactor() {
        return noiseFactor;
    }

    private double noiseFactor(double[] shares) {
        double sum = 0;
        for (int c = 0; c < covariances.count(); c++) {
            double share = 0;
            for (int i = c * inner(); i < (c + 1) * inner(); i++) {
                share += shares[i];
            }
            sum += share * covariances.noise(c);
        }
        return Math.sqrt(sum);
    }

    /** Mean of the field at a place (mm). */
    public double mean(double x, double y) {
        double[] columns = layout.at(x, y);
        double sum = Vectors.dot(coefficients, columns);
        for (int r = 0; r < weights.length; r++) {
            if (weighs[r]) {
                sum += Vectors.dot(weights[r], turned.get(r).correlations(x, y));
            }
        }
        return sum;
    }

    /** Standard deviation of the field at a place (mm), the noise of a reading not in it. */
    public double deviation(double x, double y) {
        return deviations(new double[] {x}, new double[] {y})[0];
    }

    /** The same at many places. */
    public double[] deviations(double[] x, double[] y) {
        double[] deviations = new double[x.length];
        for (int from = 0; from < x.length; from += TOGETHER) {
            int to = Math.min(x.length, from + TOGETHER);
            double[] variances = variances(Arrays.copyOfRange(x, from, to), Arrays.copyOfRange(y, from, to));
            for (int i = from; i < to; i++) {
                deviations[i] = Math.sqrt(variances[i - from]);
            }
        }
        return deviations;
    }

    private double[] variances(double[] x, double[] y) {
        double[][] columns = layout.at(x, y);
        double[][][] across = new double[turned.size()][][];
        double[] means = new double[x.length];
        double[] squares = new double[x.length];
        for (int s = THINNED / 2; s < DRAWN; s += THINNED) {
            KrigedPlaces there = at(settings[s], x, y, across, columns);
            double[] ofSetting = there.means();
            double[] variances = there.variances();
            for (int i = 0; i < means.length; i++) {
                means[i] += ofSetting[i] * THINNED / DRAWN;
                squares[i] += (ofSetting[i] * ofSetting[i] + Math.max(0, variances[i])) * THINNED / DRAWN;
            }
        }
        return IntStream.range(0, x.length).mapToDouble(i -> Math.max(0, squares[i] - means[i] * means[i])).toArray();
    }

    private KrigedPlaces at(Setting setting, double[] x, double[] y, double[][][] across, double[][] columns) {
        int range = setting.range();
        if (across[range] == null) {
            across[range] = turned.get(range).across(x, y);
        }
        return setting.conditioned().at(across[range], columns);
    }

    /**
     * What each observation should have been by all the others; see {@link LeavingOut}. Every setting is weighted again
     * without the observation. Hinges are tried beside the smallest bends alone.
     *
     * @return mean and standard deviation (mm, noise of the observation in it) for each, length n; the deviation is
     *     infinite where nothing predicts it
     */
    public List<Predicted> leavingOut() {
        List<Predicted> predicted = leavingOut(IntStream.range(0, logWeights.length).filter(this::isTriedWithout)
            .mapToDouble(setting -> logWeights[setting]).max().orElseThrow() - FAINT);
        boolean mayBeSlip = false;
        for (int i = 0; i < predicted.size(); i++) {
            mayBeSlip |= Math.abs(observations.z()[i] - predicted.get(i).mean()) > FAR * predicted.get(i).deviation();
        }
        return mayBeSlip ? leavingOut(Double.NEGATIVE_INFINITY) : predicted;
    }

    private boolean isTriedWithout(int setting) {
        int hinge = setting % (1 + layout.hinges());
        return hinge == 0 || setting / (1 + layout.hinges()) % layout.sizes == 0;
    }

    /** The same by settings that weigh at least so much before anything is left out, as logarithms. */
    private List<Predicted> leavingOut(double least) {
        LeavingOut leavingOut = new LeavingOut(observations);
        for (int c = 0; c < covariances.count(); c++) {
            int first = c * inner();
            if (Arrays.stream(logWeights, first, first + inner()).noneMatch(log -> log >= least)) {
                continue;
            }
            sweep(layout, turned.get(covariances.range(c)).sweep(covariances.variance(c), covariances.noise(c),
                layout.firstHinge, true), false,
                (i, sweep, hinge) -> {
                    if (logWeights[first + i] >= least) {
                        leavingOut.add(logWeights[first + i], differences(sweep, hinge));
                    }
                });
        }
        return leavingOut.predicted();
    }

    /** The same where one observation is left out already; nothing is said of that. */
    public List<Predicted> leavingOutBeside(int one) {
        LeavingOut leavingOut = new LeavingOut(observations);
        for (int c = 0; c < covariances.count(); c++) {
            double logPrior = covariances.logPriors[c];
            sweep(layout, turned.get(covariances.range(c)).sweepWithout(one, covariances.variance(c), covariances.noise(c),
                layout.firstHinge), false,
                (i, sweep, hinge) -> leavingOut.add(logPrior + layout.logInner[i] + logLikelihood(layout, sweep, hinge),
                    differences(sweep, hinge)));
        }
        return leavingOut.predicted();
    }

    private Sweep.LeftOut differences(Sweep sweep, int hinge) {
        return hinge == 0 ? sweep.leftOut() : sweep.leftOutWith(layout.hingeColumn(hinge), hingePrecisions(hinge)[0],
            hingePrecisions(hinge)[1]);
    }

    /** Settings of one covariance. */
    private int inner() {
        return layout.logInner.length;
    }

    /**
     * Fields that the readings leave possible, each as likely as the next.
     *
     * @param x     places, length m, as they come from the viewpoint; see {@link Viewpoint#order}
     * @param y     places, length m
     * @param count how many
     * @return count × m (mm)
     */
    public double[][] draws(double[] x, double[] y, int count, SplittableRandom random) {
        double[][] columns = layout.at(x, y);
        int[] order = layout.seen.order(observations.x(), observations.y());
        double negligible = NEGLIGIBLE * greatestVariance(x, y);
        FieldRoot[] roots = new FieldRoot[RANGES];
        Arrays.stream(settings).mapToInt(Setting::range).distinct().parallel()
            .forEach(range -> roots[range] = turned.get(range).root(order, x, y, negligible / most(range)));
        double[][] draws = new double[count][];
        SplittableRandom[] randoms = Stream.generate(random::split).limit(DRAWN).toArray(SplittableRandom[]::new);
        IntStream.range(0, DRAWN).parallel().forEach(s -> {
            // Shares are rounded so that they add up.
            for (int d = s * count / DRAWN; d < (s + 1) * count / DRAWN; d++) {
                draws[d] = settings[s].conditioned().draw(roots[settings[s].range()], columns, negligible, randoms[s]);
            }
        });
        shuffle(draws, random);
        return draws;
    }

    /** The greatest variance s² among settings of one range that are drawn from. */
    private double most(int range) {
        return Arrays.stream(settings).filter(setting -> setting.range() == range).mapToDouble(Setting::variance).max()
            .orElseThrow();
    }

    /** About the greatest variance of the field at many places: at some of them. */
    private double greatestVariance(double[] x, double[] y) {
        int[] some = IntStream.iterate(0, i -> i < x.length, i -> i + SOME).toArray();
        double[] variances = variances(Arrays.stream(some).mapToDouble(i -> x[i]).toArray(),
            Arrays.stream(some).mapToDouble(i -> y[i]).toArray());
        return Arrays.stream(variances).max().orElseThrow();
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
}
