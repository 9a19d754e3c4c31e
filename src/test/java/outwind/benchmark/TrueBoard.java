package outwind.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Turned;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.numeric.plane.Plane;
import outwind.surface.Places;
import outwind.surface.SampledBoard;

/** A board with both faces known: heights over the bed that it was measured on, up to a constant (mm). */
record TrueBoard(double length, double width, DoubleBinaryOperator top, DoubleBinaryOperator underside) {

    static final double NOISE = 0.08;
    static final double SKIM = 0.3;
    static final int ALONG = 121;
    static final int ACROSS = 25;


    static TrueBoard of(Family family, SplittableRandom random) {
        double length = random.nextDouble(500, 2200);
        double width = random.nextDouble(110, 320);
        double thick = random.nextDouble(28, 50);
        double twist = random.nextGaussian(0, 1.5);
        double bow = random.nextGaussian(0, 1.2) * length / 1400;
        double cup = random.nextGaussian(0, 0.4) * width / 220;
        double phase = random.nextDouble(2 * Math.PI);
        double size = random.nextDouble(0.05, 0.2);
        DoubleBinaryOperator warp = (x, y) -> {
            double u = 2 * x / length - 1;
            double v = 2 * y / width - 1;
            return twist * u * v + bow * u * u + cup * v * v + size * Math.sin(4 * x / length + 2 * v + phase);
        };
        double from = length * random.nextDouble(0.3, 0.8);
        double lift = random.nextDouble(1.5, 4);
        double humpX = length * random.nextDouble();
        double humpY = width * random.nextDouble();
        double taper = random.nextDouble(-2, 2);
        DoubleBinaryOperator added = switch (family) {
            case SMOOTH, TAPERED, MISCUT -> (x, y) -> 0;
            case KINKED -> (x, y) -> lift * (x - from + Math.hypot(x - from, 50)) / 2 / (length - from);
            case HUMPED -> (x, y) -> 0.4 * Math.exp(-(Math.pow(x - humpX, 2) + Math.pow(y - humpY, 2)) / 10_000);
            case VARYING_CUP -> (x, y) -> 0.5 * Math.pow(2 * y / width - 1, 2) * x / length;
        };
        DoubleBinaryOperator top = (x, y) -> warp.applyAsDouble(x, y) + added.applyAsDouble(x, y);
        double ownPhase = random.nextDouble(2 * Math.PI);
        DoubleBinaryOperator own = (x, y) -> 0.08 * Math.sin(7 * x / length + 3 * y / width + ownPhase);
        DoubleBinaryOperator under = switch (family) {
            case TAPERED -> (x, y) -> top.applyAsDouble(x, y) - thick - taper * x / length;
            case MISCUT -> (x, y) -> 0.6 * warp.applyAsDouble(x, y) - thick;
            default -> (x, y) -> top.applyAsDouble(x, y) - thick;
        };
        return new TrueBoard(length, width, top, (x, y) -> under.applyAsDouble(x, y) + own.applyAsDouble(x, y));
    }

    double x(int k) {
        return length * (k % ALONG) / (ALONG - 1);
    }

    double y(int k) {
        return width * (k / ALONG) / (ACROSS - 1);
    }

    /** Face A on a 5 x 3 grid, and calipers at the ends and edges that they reach. */
    Board read(OptionalDouble target, SplittableRandom random) {
        List<Reading> readings = new ArrayList<>();
        List<CaliperReading> calipers = new ArrayList<>();
        for (int k = 0; k < 15; k++) {
            double x = 15 + (length - 30) * (k % 5) / 4;
            double y = 15 + (width - 30) * (k / 5) / 2;
            readings.add(new Reading(x, y, hundredths(top.applyAsDouble(x, y) + random.nextGaussian(0, NOISE)),
                Face.A, "", k + 2));
            if (k / 5 != 1) {
                calipers.add(new CaliperReading(x, y, hundredths(top.applyAsDouble(x, y)
                    - underside.applyAsDouble(x, y) + random.nextGaussian(0, NOISE)), k + 2));
            }
        }
        return board(readings, calipers, target);
    }

    Board board(List<Reading> readings, List<CaliperReading> calipers, OptionalDouble target) {
        return new Board("simulated", Units.MILLIMETRES, length, width, OptionalDouble.empty(), Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), target, OptionalDouble.of(SKIM), Trim.NONE, Underside.ALIKE,
            Optional.<Turned>empty(), List.of(), readings, calipers, List.of());
    }

    /** What it truly makes cut along these slopes, after both skims (mm). */
    double makes(Plane slopes) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < ALONG * ACROSS; k++) {
            low = Math.min(low, top.applyAsDouble(x(k), y(k)) - slopes.at(x(k), y(k)));
            high = Math.max(high, underside.applyAsDouble(x(k), y(k)) - slopes.at(x(k), y(k)));
        }
        return low - high - 2 * SKIM;
    }

    /** Both faces on a close grid. */
    SampledBoard sampled() {
        int n = ALONG * ACROSS;
        double[] x = new double[n];
        double[] y = new double[n];
        double[] weight = new double[n];
        double[] upper = new double[n];
        double[] lower = new double[n];
        for (int k = 0; k < n; k++) {
            x[k] = x(k);
            y[k] = y(k);
            weight[k] = (k % ALONG == 0 || k % ALONG == ALONG - 1 ? 0.5 : 1)
                * (k / ALONG == 0 || k / ALONG == ACROSS - 1 ? 0.5 : 1);
            upper[k] = top.applyAsDouble(x[k], y[k]);
            lower[k] = underside.applyAsDouble(x[k], y[k]);
        }
        double cell = length * width / ((ALONG - 1) * (ACROSS - 1));
        for (int k = 0; k < n; k++) {
            weight[k] *= cell;
        }
        return new SampledBoard(new Places(x, y, weight, length / (ALONG - 1), width / (ACROSS - 1)), upper, lower);
    }

    /** Gap under a place, with the bed parallel to a plane and as high as the underside lets it (mm). */
    double gap(double x, double y, Plane slopes) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int k = 0; k < ALONG * ACROSS; k++) {
            lowest = Math.min(lowest, underside.applyAsDouble(x(k), y(k)) - slopes.at(x(k), y(k)));
        }
        return underside.applyAsDouble(x, y) - slopes.at(x, y) - lowest;
    }

    static double hundredths(double mm) {
        return Math.rint(mm * 100) / 100;
    }

    /** Families unlike each other, and unlike the model. */
    enum Family {
        SMOOTH, KINKED, TAPERED, MISCUT, HUMPED, VARYING_CUP;

        /** Those named among the words of a command line; all if none is. */
        static List<Family> named(String[] words) {
            List<Family> named = Arrays.stream(values())
                .filter(family -> Arrays.stream(words).anyMatch(family.name()::equalsIgnoreCase)).toList();
            return named.isEmpty() ? List.of(values()) : named;
        }
    }
}
