package outwind.surface.field;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import outwind.numeric.Covariance;
import outwind.numeric.KrigedPlaces;
import outwind.numeric.LeastSquares;
import outwind.numeric.LowRankRoot;
import outwind.numeric.Matern52;
import outwind.numeric.Sweep;
import outwind.numeric.TurnedObservations;
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

    /** Settings lighter than this share of the heaviest are left out of means, for speed. */
    private static final double LIGHTEST = 0.01;

    /** Of the settings that draws are made of, every so many serves for the deviation at a place. */
    private static final int THINNED = 3;

    /** Settings so much lighter than the heaviest, as a logarithm, count only where a reading may be a slip. */
    private static final double FAINT = 8;

    /** A reading as far off as this many standard deviations may be a slip. */
    private static final double FAR = 2.5;

    /** Settings so much lighter than the heaviest, as a logarithm, weigh nothing. */
    private static final double NOTHING = 25;

    /** Share of the greatest variance that draws may lack at any place: a fiftieth of its standard deviation. */
    private static final double NEGLIGIBLE = 4e-4;

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
    private final double[] spreads;
    private final double[] factors;
    /** Logarithm of the weight of each setting, up to a constant. */
    private final double[] logWeights;
    /** Those that draws are made of, each standing for the same share of the weight. */
    private final int[] drawn;
    private final Setting[] settings;
    /** Means of all coefficients, and for each pair of ranges what each observation weighs. */
    private final double[] coefficients;
    private final double[][] weights;

    private KrigedField(Observations observations, Layout layout, List<TurnedObservations> turned, double[] spreads,
                        double[] factors, double[] logWeights) {
        this.observations = observations;
        this.layout = layout;
        this.turned = turned;
        this.spreads = spreads;
        this.factors = factors;
        this.logWeights = logWeights;
        double[] shares = shares(logWeights);
        this.drawn = drawn(shares);
        this.coefficients = new double[layout.columns()];
        this.weights = new double[turned.size()][observations.size()];
        average(shares);
        this.settings = Arrays.stream(drawn).mapToObj(this::setting).toArray(Setting[]::new);
    }

    /**
     * Which columns the field has: free ones first, then unseen ones of the trend, bends group by group, two for each
     * hinge.
     */
    private static final class Layout {

        private final Viewpoint seen;
        /** Places of hinges as shares of the length, as they come from the viewpoint. */
        private final double[] hingePlaces;
        private final Scaling scaling;
        private final List<Term> free = new ArrayList<>();
        private final List<Term> unseen = new ArrayList<>();
        private final Prior prior;
        private final int firstBend;
        private final int firstHinge;
        /** How many combinations of sizes the groups have. */
        private final int sizes;
        /** For each combination, the precisions of the columns before the hinges, and the logarithm of its share. */
        private final double[][] precisions;
        private final double[] logShares;

        Layout(List<Term> terms, Observations observations, Prior prior, Viewpoint seen) {
            this.seen = seen;
            this.hingePlaces = Arrays.stream(Bends.HINGES).map(place -> seen.farEnd() ? 1 - place : place).toArray();
            this.scaling = Scaling.ofBoard(seen.length(), seen.width());
            this.prior = prior;
            double[][] design = new double[observations.size()][terms.size()];
            for (int i = 0; i < design.length; i++) {
                for (int j = 0; j < terms.size(); j++) {
                    design[i][j] = terms.get(j).at(scaling.u(observations.x()[i]), scaling.v(observations.y()[i]));
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
            this.logShares = IntStream.range(0, sizes).mapToDouble(this::logShareOf).toArray();
        }

        int columns() {
            return firstHinge + (hinges() > 0 ? 2 * Bends.HINGES.length : 0);
        }

        int hinges() {
            return prior.bends().hingeShare() > 0 ? HINGES : 0;
        }

        /** All columns at a place. */
        double[] at(double x, double y) {
            double u = scaling.u(x);
            double v = scaling.v(y);
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
                double hinge = Bends.hinge(hingePlaces[k], x, seen.length());
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

        /** Logarithm of how likely a hinge is at the outset; 0 stands for none. */
        double logHinge(int hinge) {
            double share = prior.bends().hingeShare();
            return hinge == 0 ? Math.log(1 - share) : Math.log(share / HINGES);
        }
    }

    /** Both precisions of a hinge, lift and turn; the first is numbered 1. */
    private static double[] hingePrecisions(int hinge) {
        return OF_LIFTS[(hinge - 1) % OF_LIFTS.length];
    }

    private static int hingeColumn(int hinge) {
        return 2 * ((hinge - 1) / Bends.LIFTS.length);
    }

    /** Does what is to be done with each setting's sweep. */
    private interface Visitor {

        /** @param sweep with all columns eliminated but those of hinges, which begin at column 0 */
        void visit(int setting, Sweep sweep, int hinge);
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
        double[] spreads = new double[SPREAD_STEPS.length];
        for (int s = 0; s < spreads.length; s++) {
            spreads[s] = prior.spread() * Math.exp(SPREAD_STEPS[s] * prior.spreadLog());
        }
        List<TurnedObservations> turned = new ArrayList<>();
        for (double along : ALONG_STEPS) {
            for (double across : ACROSS_STEPS) {
                Covariance correlation = new Matern52(1, seen.length() * prior.rangeAlong() * Math.exp(along * prior.rangeLog()),
                    seen.width() * prior.rangeAcross() * Math.exp(across * prior.rangeLog()));
                turned.add(TurnedObservations.of(correlation, observations.x(), observations.y(), columns,
                    observations.z(), observations.noiseVariance()));
            }
        }
        double[] logWeights = new double[turned.size() * spreads.length * noises.factors().length * layout.sizes
            * (1 + layout.hinges())];
        double logOfNone = layout.logHinge(0);
        double logOfHinge = layout.logHinge(1);
        for (int r = 0; r < turned.size(); r++) {
            double along = ALONG_STEPS[r / ACROSS_STEPS.length];
            double across = ACROSS_STEPS[r % ACROSS_STEPS.length];
            for (int s = 0; s < spreads.length; s++) {
                double logPrior = -(SPREAD_STEPS[s] * SPREAD_STEPS[s] + along * along + across * across) / 2;
                for (int f = 0; f < noises.factors().length; f++) {
                    double logOfNoise = logPrior + Math.log(noises.shares()[f]);
                    int first = ((r * spreads.length + s) * noises.factors().length + f) * layout.sizes
                        * (1 + layout.hinges());
                    sweep(layout, turned.get(r).sweep(spreads[s] * spreads[s], Math.pow(noises.factors()[f], 2), false),
                        first, (setting, sweep, hinge) -> logWeights[setting] = logOfNoise + (hinge == 0
                            ? sweep.logLikelihood() : sweep.logLikelihoodWith(hingeColumn(hinge),
                            hingePrecisions(hinge)[0], hingePrecisions(hinge)[1])));
                    for (int k = 0; k < layout.sizes * (1 + layout.hinges()); k++) {
                        logWeights[first + k] += layout.logShares[k / (1 + layout.hinges())]
                            + (k % (1 + layout.hinges()) == 0 ? logOfNone : logOfHinge);
                    }
                }
            }
        }
        return new KrigedField(observations, layout, turned, spreads, noises.factors(), logWeights);
    }

    /** Goes through sizes and hinges of one covariance, whose settings begin at a number. */
    private static void sweep(Layout layout, Sweep all, int first, Visitor visitor) {
        double[] precisions = layout.precisions[0];
        for (int j = 0; j < layout.firstBend; j++) {
            all.eliminate(j, precisions[j]);
        }
        for (int g = 0; g < layout.sizes; g++) {
            double[] ofGroup = layout.precisions[g];
            Sweep sweep = all.from(layout.firstBend);
            for (int j = layout.firstBend; j < layout.firstHinge; j++) {
                sweep.eliminate(j - layout.firstBend, ofGroup[j]);
            }
            Sweep ofHinges = sweep.from(layout.firstHinge - layout.firstBend);
            for (int h = 0; h <= layout.hinges(); h++) {
                visitor.visit(first + g * (1 + layout.hinges()) + h, ofHinges, h);
            }
        }
    }

    private static double[] shares(double[] logWeights) {
        double best = Arrays.stream(logWeights).max().orElseThrow();
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

    /** None is left out for being light, and neighbours on the grid stand for each other. */
    private static int[] drawn(double[] shares) {
        int[] met = new int[DRAWN];
        double sum = 0;
        int steps = 0;
        for (int i = 0; i < shares.length && steps < DRAWN; i++) {
            sum += shares[i];
            while (steps < DRAWN && sum * DRAWN > steps + 0.5) {
                met[steps++] = i;
            }
        }
        // Rounding may leave the sum a little below one.
        while (steps < DRAWN) {
            met[steps] = met[steps - 1];
            steps++;
        }
        return met;
    }

    /** One setting, given the observations. */
    private record Setting(int range, double variance, TurnedObservations.Conditioned conditioned, int[] columns) { }

    private Setting setting(int index) {
        int hinges = 1 + layout.hinges();
        int hinge = index % hinges;
        int combination = index / hinges % layout.sizes;
        int covariance = index / hinges / layout.sizes;
        int range = covariance / factors.length / spreads.length;
        double spread = spreads[covariance / factors.length % spreads.length];
        double factor = factors[covariance % factors.length];
        double[] before = layout.precisions[combination];
        int[] columns = new int[before.length + (hinge > 0 ? 2 : 0)];
        double[] precisions = Arrays.copyOf(before, columns.length);
        for (int j = 0; j < before.length; j++) {
            columns[j] = j;
        }
        if (hinge > 0) {
            columns[before.length] = layout.firstHinge + hingeColumn(hinge);
            columns[before.length + 1] = columns[before.length] + 1;
            System.arraycopy(hingePrecisions(hinge), 0, precisions, before.length, 2);
        }
        return new Setting(range, spread * spread, turned.get(range).conditioned(spread * spread, factor * factor, columns,
            precisions), columns);
    }

    private void average(double[] shares) {
        double bound = LIGHTEST * Arrays.stream(shares).max().orElseThrow();
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            if (shares[i] >= bound) {
                Setting setting = setting(i);
                double[] ofSetting = setting.conditioned().coefficients();
                double[] weighs = setting.conditioned().weights();
                for (int j = 0; j < ofSetting.length; j++) {
                    coefficients[setting.columns()[j]] += shares[i] * ofSetting[j];
                }
                for (int k = 0; k < weighs.length; k++) {
                    weights[setting.range()][k] += shares[i] * weighs[k];
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
        double[] shares = shares(logWeights);
        int inner = layout.sizes * (1 + layout.hinges());
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            sum += shares[i] * Math.pow(factors[i / inner % factors.length], 2);
        }
        return Math.sqrt(sum);
    }

    /** Mean of the field at a place (mm). */
    public double mean(double x, double y) {
        double[] columns = layout.at(x, y);
        double sum = dot(coefficients, columns);
        for (int r = 0; r < weights.length; r++) {
            sum += dot(weights[r], turned.get(r).correlations(x, y));
        }
        return sum;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** Standard deviation of the field at a place (mm), the noise of a reading not in it. */
    public double deviation(double x, double y) {
        double[] atX = {x};
        double[] atY = {y};
        double[][] columns = layout.at(atX, atY);
        double[][][] across = new double[turned.size()][][];
        double mean = 0;
        double square = 0;
        for (int s = THINNED / 2; s < DRAWN; s += THINNED) {
            KrigedPlaces there = at(settings[s], atX, atY, across, columns);
            double m = there.means()[0];
            mean += m * THINNED / DRAWN;
            square += (m * m + Math.max(0, there.variances()[0])) * THINNED / DRAWN;
        }
        return Math.sqrt(Math.max(0, square - mean * mean));
    }

    private KrigedPlaces at(Setting setting, double[] x, double[] y, double[][][] across, double[][] columns) {
        int range = setting.range();
        if (across[range] == null) {
            across[range] = turned.get(range).across(x, y);
        }
        return setting.conditioned().at(x, y, across[range], columns);
    }

    /**
     * What each observation should have been by all the others.
     *
     * <p>Every setting is weighted again without the observation: its restricted likelihood of the others is that of all
     * divided by the density it predicted the observation with. So a misreading cannot hide behind the roughness that
     * it makes the whole field seem to have. Hinges are tried beside the smallest bends alone.
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
        int n = observations.size();
        List<Sweep.LeftOut> leftOut = new ArrayList<>();
        List<Double> logs = new ArrayList<>();
        int inner = layout.sizes * (1 + layout.hinges());
        for (int c = 0; c < turned.size() * spreads.length * factors.length; c++) {
            if (Arrays.stream(logWeights, c * inner, (c + 1) * inner).noneMatch(log -> log >= least)) {
                continue;
            }
            double variance = Math.pow(spreads[c / factors.length % spreads.length], 2);
            sweep(layout, turned.get(c / factors.length / spreads.length).sweep(variance,
                Math.pow(factors[c % factors.length], 2), true), c * inner, (setting, sweep, hinge) -> {
                if (logWeights[setting] >= least && isTriedWithout(setting)) {
                    leftOut.add(hinge == 0 ? sweep.leftOut() : sweep.leftOutWith(hingeColumn(hinge),
                        hingePrecisions(hinge)[0], hingePrecisions(hinge)[1]));
                    logs.add(logWeights[setting]);
                }
            });
        }
        double heaviest = logs.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        double sound = heaviest + Math.log(logs.stream().mapToDouble(log -> Math.exp(log - heaviest)).sum());
        List<Predicted> predicted = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            predicted.add(leavingOut(i, leftOut, logs, sound));
        }
        return predicted;
    }

    /** @param sound logarithm of the weight of all settings together */
    private Predicted leavingOut(int i, List<Sweep.LeftOut> leftOut, List<Double> logs, double sound) {
        double[] without = new double[logs.size()];
        double best = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < without.length; k++) {
            double residual = leftOut.get(k).residuals()[i];
            double variance = leftOut.get(k).variances()[i];
            without[k] = logs.get(k)
                + (Double.isInfinite(variance) ? 0 : (residual * residual / variance + Math.log(variance)) / 2);
            best = Math.max(best, without[k]);
        }
        double sum = 0;
        double mean = 0;
        double square = 0;
        double slip = 0;
        double stray = 0;
        for (int k = 0; k < without.length; k++) {
            // What weighs nothing has no part of an infinite variance either.
            if (without[k] > best - NOTHING) {
                double weight = Math.exp(without[k] - best);
                double residual = leftOut.get(k).residuals()[i];
                double variance = leftOut.get(k).variances()[i];
                sum += weight;
                mean += weight * residual;
                square += weight * (residual * residual + variance);
                slip += Double.isInfinite(variance) ? 0 : weight * Slips.slip(residual, variance);
                stray += Double.isInfinite(variance) ? 0
                    : weight * Slips.stray(residual, variance, observations.noiseVariance()[i]);
            }
        }
        mean /= sum;
        double deviation = Math.sqrt(square / sum - mean * mean);
        boolean isPredicted = Double.isFinite(deviation);
        return new Predicted(observations.z()[i] - mean, deviation, isPredicted ? best + Math.log(slip) - sound : 0,
            isPredicted ? best + Math.log(stray) - sound : 0);
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
        double[][][] across = new double[turned.size()][][];
        double[][] draws = new double[count][];
        int done = 0;
        for (int s = 0; s < DRAWN; s++) {
            int last = s;
            while (last + 1 < DRAWN && drawn[last + 1] == drawn[s]) {
                last++;
            }
            // A setting's share of the draws, rounded so that the shares add up.
            int upTo = (int) ((last + 1L) * count / DRAWN);
            if (upTo > done) {
                KrigedPlaces places = at(settings[s], x, y, across, columns);
                double[] mean = places.means();
                LowRankRoot root = LowRankRoot.of(places.variances(), places::covariances, NEGLIGIBLE);
                for (; done < upTo; done++) {
                    draws[done] = drawn(mean, root, random);
                }
            }
            s = last;
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
