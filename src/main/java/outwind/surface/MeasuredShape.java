package outwind.surface;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Underside;
import outwind.surface.field.KrigedField;
import outwind.surface.field.Observations;
import outwind.surface.field.Prior;
import outwind.surface.field.Slips;
import outwind.surface.field.Viewpoint;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.TrendModel;

/**
 * Both faces as the readings tell them: face A by kriging or from a scan's cells, the underside from what is known of
 * it.
 *
 * <ul>
 * <li>Readings on face B: the underside is kriged through them and tied to face A by caliper readings.
 * <li>{@code underside: flat}: the underside lies on the bed; where the bed was touched off, on that, else as far below
 *     face A as the caliper readings tell, or the thickness stated below the mean of the readings.
 * <li>{@code underside: alike}: the underside lies the thickness below face A: see {@link
 *     Thickness}. Warp goes through the board; a dip or a knot that is narrower than the board is thick does not,
 *     where a scan shows one.
 * </ul>
 */
public final class MeasuredShape implements BoardShape {

    /** The six terms of the curved trend fit any six readings; with one more they begin to predict each other. */
    private static final int FEWEST_TO_PREDICT = 7;

    /** Less than these odds that any reading is a slip are not looked into further. */
    private static final double WORTH_A_LOOK = 0.3;

    /** So many readings are tried as the first of two slips. */
    private static final int CANDIDATES = 6;

    /** A reading among very many that is nearer the face than so many standard deviations of its noise is sound. */
    private static final double FAR_OFF = 5;

    /** A scanned face has dips; between lines so much closer they are put no more than a finger's breadth off. */
    private static final int FINE = 3;

    /** As it was read, and with the heights measured from the bed. */
    private final Board measured;
    private final Board board;
    private final ReadingNoise noise;
    private final Viewpoint seen;
    private final TopFace top;
    private final UndersideShape underside;

    private MeasuredShape(Board measured, Board board, ReadingNoise noise, Viewpoint seen, TopFace top,
                          UndersideShape underside) {
        this.measured = measured;
        this.board = board;
        this.noise = noise;
        this.seen = seen;
        this.top = top;
        this.underside = underside;
    }

    /**
     * Learns both faces.
     *
     * @param measured with readings on face A, a thickness or thickness readings, and whatever readings on face B need
     *                 to be tied to them; heights are measured from the bed where that was touched (see {@link Bed})
     */
    public static MeasuredShape of(Board measured) {
        Board board = Bed.measuredFrom(measured);
        List<Reading> readings = board.readingsOf(Face.A);
        double[] x = readings.stream().mapToDouble(Reading::x).toArray();
        double[] y = readings.stream().mapToDouble(Reading::y).toArray();
        double[] z = readings.stream().mapToDouble(Reading::z).toArray();
        Viewpoint seen = Viewpoint.of(x, y, z, board.length(), board.width());
        if (board.scan().isPresent()) {
            ScannedTop scanned = ScannedTop.of(board, board.scan().get().cells(), seen);
            return new MeasuredShape(measured, board, ReadingNoise.usual(), seen, scanned,
                underside(board, scanned, seen));
        }
        ReadingNoise noise = ReadingNoise.of(measured, measured.readingsOf(Face.A));
        KrigedField top = KrigedField.of(Observations.of(x, y, z, noise.deviation(), board.length(),
            board.width()), TrendModel.CURVED, Prior.FACE, noise.factors(), seen);
        TouchedTop touched = new TouchedTop(top);
        return new MeasuredShape(measured, board, noise.times(top.noiseFactor()), seen, touched,
            underside(board, touched, seen));
    }

    private static UndersideShape underside(Board board, TopFace top, Viewpoint seen) {
        if (!board.readingsOf(Face.B).isEmpty()) {
            return TouchedUnderside.of(board, top, seen);
        }
        if (board.underside() == Underside.ALIKE) {
            return new UndersideByThickness(Thickness.of(board, seen));
        }
        if (board.isToldFromBed()) {
            return new FlatUnderside(0, 0);
        }
        return board.calipers().isEmpty() ? FlatUnderside.under(board) : FlatUnderside.under(board.calipers(), top);
    }

    /** True if face A is known well enough at a place that touching it off there would tell little. */
    public boolean isScannedAt(double x, double y) {
        return board.scan().isPresent() && board.scan().get().cells().isMeasured(board.scan().get().cells().at(x, y));
    }

    @Override
    public Viewpoint seen() {
        return seen;
    }

    @Override
    public int fineness() {
        return board.scan().isPresent() ? FINE : 1;
    }

    /** True if there were so many touch-offs that they were averaged in cells, and smaller dips are not seen. */
    public boolean isAveraged() {
        return board.scan().isEmpty() && Observations.isAveraged(board.readingsOf(Face.A).size());
    }

    /**
     * What the readings predict one more touch-off to read at a place on the board (mm). Where a place was touched
     * already, that tells most.
     */
    public PredictedHeight predict(double x, double y) {
        return new PredictedHeight(top.mean(x, y) + Bed.heightUnder(measured, x, y),
            Math.hypot(top.deviation(x, y), noise.deviation()));
    }

    /** How far one touch-off may be from the face. */
    public ReadingNoise noise() {
        return noise;
    }

    /**
     * The reading on face A that goes least with the others, if one goes so little with them that it looks wrong; see
     * {@link SuspectReading}.
     */
    Optional<SuspectReading> suspect() {
        List<Reading> readings = measured.readingsOf(Face.A);
        List<Reading> overBed = board.readingsOf(Face.A);
        if (readings.isEmpty() || board.scan().isPresent()) {
            return Optional.empty();
        }
        List<KrigedField.Predicted> predicted = leavingOut();
        double[] slips = predicted.stream().mapToDouble(one -> Slips.LOG_ODDS + one.logSlip()).toArray();
        double most = Math.max(0, Arrays.stream(slips).max().orElseThrow());
        double sound = Math.exp(-most) + predicted.stream()
            .mapToDouble(one -> Math.exp(Slips.LOG_STRAY_ODDS + one.logStray() - most)).sum();
        double[] chances = Arrays.stream(slips).map(log -> Math.exp(log - most)).toArray();
        double all = Arrays.stream(chances).sum();
        if (all < WORTH_A_LOOK * sound) {
            return Optional.empty();
        }
        int[] likeliest = IntStream.range(0, slips.length).boxed().sorted(Comparator.comparingDouble(i -> -slips[i]))
            .limit(CANDIDATES).mapToInt(Integer::intValue).toArray();
        for (int first : likeliest) {
            List<KrigedField.Predicted> others = leavingOutBeside(first);
            for (int second = 0; second < slips.length; second++) {
                if (second != first) {
                    int other = second;
                    boolean isMetTwice = Arrays.stream(likeliest).anyMatch(k -> k == other);
                    double both = Math.exp(slips[first] + Slips.LOG_ODDS - most
                        + others.get(second).logSlip()) / (isMetTwice ? 2 : 1);
                    all += both;
                    chances[first] += both;
                    chances[second] += both;
                }
            }
        }
        int worst = IntStream.range(0, chances.length).boxed().max(Comparator.comparingDouble(i -> chances[i])).orElseThrow();
        if (!(chances[worst] > SuspectReading.SURE * (all + sound))) {
            return Optional.empty();
        }
        TrendFit curved = TrendFit.of(TrendModel.CURVED, overBed, board.length(), board.width());
        return Optional.of(new SuspectReading(readings.get(worst),
            predicted.get(worst).mean() + readings.get(worst).z() - overBed.get(worst).z(),
            predicted.get(worst).deviation(), curved.studentised(worst, overBed.get(worst).x(), overBed.get(worst).y())));
    }

    /** The same with one reading left out already, at whose place in the list is nothing of use. */
    private List<KrigedField.Predicted> leavingOutBeside(int reading) {
        if (!isAveraged()) {
            return top.leavingOutBeside(reading);
        }
        List<KrigedField.Predicted> others = new ArrayList<>(of(measured.without(
            measured.readingsOf(Face.A).get(reading))).leavingOut());
        others.add(reading, null);
        return others;
    }

    /** What each reading should have been by all the others; where they are averaged, only those far off are looked at. */
    private List<KrigedField.Predicted> leavingOut() {
        if (!isAveraged()) {
            return top.leavingOut();
        }
        List<Reading> readings = board.readingsOf(Face.A);
        double[] off = readings.stream().mapToDouble(r -> Math.abs(r.z() - top.mean(r.x(), r.y()))).toArray();
        double bound = Math.max(FAR_OFF * noise.deviation(), Arrays.stream(off).sorted().skip(off.length - 2L).min()
            .orElseThrow());
        return IntStream.range(0, off.length).mapToObj(i -> {
            Reading reading = readings.get(i);
            if (off[i] < bound) {
                return new KrigedField.Predicted(reading.z(), noise.deviation(), Double.NEGATIVE_INFINITY,
                    Double.NEGATIVE_INFINITY);
            }
            MeasuredShape rest = of(measured.without(measured.readingsOf(Face.A).get(i)));
            double mean = rest.top.mean(reading.x(), reading.y());
            double variance = Math.pow(rest.top.deviation(reading.x(), reading.y()), 2) + Math.pow(noise.deviation(), 2);
            double sound = Slips.logDensity(reading.z() - mean, variance);
            return new KrigedField.Predicted(mean, Math.sqrt(variance), Math.log(Slips.slip(reading.z() - mean, variance)) - sound,
                Math.log(Slips.stray(reading.z() - mean, variance, Math.pow(noise.deviation(), 2))) - sound);
        }).toList();
    }

    /**
     * Readings on face A that look wrong, the worst first. Each is found with those before it left out, because one
     * misreading makes its neighbours look wrong as well.
     *
     * @param most how many at most
     */
    public List<SuspectReading> suspects(int most) {
        List<SuspectReading> suspects = new ArrayList<>();
        MeasuredShape rest = this;
        while (suspects.size() < most && rest.measured.readingsOf(Face.A).size() >= FEWEST_TO_PREDICT) {
            Optional<SuspectReading> worst = rest.suspect();
            if (worst.isEmpty()) {
                break;
            }
            suspects.add(worst.get());
            rest = of(rest.measured.without(worst.get().reading()));
        }
        return suspects;
    }

    @Override
    public double topAt(double x, double y) {
        return top.mean(x, y);
    }

    @Override
    public double undersideAt(double x, double y) {
        return undersideAt(x, y, topAt(x, y));
    }

    private double undersideAt(double x, double y, double mean) {
        return underside.at(x, y, top.shared(x, y, mean));
    }

    @Override
    public SampledBoard at(Places places) {
        int n = places.size();
        double[] tops = new double[n];
        double[] undersides = new double[n];
        for (int i = 0; i < n; i++) {
            tops[i] = topAt(places.x()[i], places.y()[i]);
            undersides[i] = undersideAt(places.x()[i], places.y()[i], tops[i]);
        }
        return new SampledBoard(places, tops, undersides);
    }

    @Override
    public double topDeviationAt(double x, double y) {
        return top.deviation(x, y);
    }

    @Override
    public double[] topDeviationsAt(double[] x, double[] y) {
        return top.deviations(x, y);
    }

    @Override
    public List<SampledBoard> draws(Places places, int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] order = seen.order(places.x(), places.y());
        Places ordered = places.inOrder(order);
        double[][] anchors = underside.anchors();
        TopFace.Drawn tops = top.draws(ordered, anchors, count, random);
        double[][] all = ordered.and(anchors);
        double[][] undersides = underside.draws(all[0], all[1], tops.highs(), random);
        return IntStream.range(0, count).mapToObj(d ->
            new SampledBoard(places, asGiven(tops.lows()[d], order), asGiven(undersides[d], order))).toList();
    }

    /** Values at places in the order that they were given in; those of anchors are left off. */
    private static double[] asGiven(double[] ordered, int[] order) {
        double[] values = new double[order.length];
        for (int k = 0; k < order.length; k++) {
            values[order[k]] = ordered[k];
        }
        return values;
    }
}
