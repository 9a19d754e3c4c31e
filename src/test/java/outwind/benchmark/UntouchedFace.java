package outwind.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.flatten.LiftLimit;
import outwind.flatten.Simulation;
import outwind.flatten.ThicknessRange;
import outwind.numeric.plane.Plane;
import outwind.numeric.plane.WidestGap;
import outwind.surface.MeasuredShape;
import outwind.surface.Region;

/**
 * How often the truth lies in the range, how wide the range is and how far the answer is off, over families of boards
 * that are unlike each other and unlike what the model believes: sines, hinges, bells and steps, no random fields.
 *
 * <p>Arguments: boards in each case (300), and families to look at (all).
 */
final class UntouchedFace {

    private static final double INSET = 15;
    private static final int ALONG = 161;
    private static final int ACROSS = 25;

    /** How the thickness becomes known. */
    private enum Knowledge { EVERYWHERE, ONE_FIGURE, SIX_CALIPERS }

    private enum Family {
        SMOOTH, ROUGHER, S_BOW, HALF_TWIST, KINK_2, KINK_4, KINK_8, HUMP, VARYING_CUP, DIPS, NOISE_0_2, HEAVY_NOISE,
        WEDGE, WANDER, MISCUT, SAPWOOD, STATED_OFF, SHOP_MIX;

        boolean isUneven() {
            return ordinal() >= WEDGE.ordinal();
        }
    }

    /** One made board and the deviation of its readings. */
    private record Made(double length, double width, DoubleBinaryOperator top, DoubleBinaryOperator thickness,
                        double noise, boolean heavy, double statedOff) {

        double truth() {
            double[] x = new double[ALONG * ACROSS];
            double[] y = new double[x.length];
            double[] z = new double[x.length];
            double[] under = new double[x.length];
            for (int k = 0; k < x.length; k++) {
                x[k] = length * (k % ALONG) / (ALONG - 1);
                y[k] = width * (k / ALONG) / (ACROSS - 1);
                z[k] = top.applyAsDouble(x[k], y[k]);
                under[k] = z[k] - thickness.applyAsDouble(x[k], y[k]);
            }
            return WidestGap.thickestSlab(x, y, z, under).width();
        }

        Board read(int columns, int rows, Knowledge known, SplittableRandom random) {
            List<Reading> readings = new ArrayList<>();
            for (int k = 0; k < columns * rows; k++) {
                double x = INSET + (length - 2 * INSET) * (k % columns) / (columns - 1);
                double y = INSET + (width - 2 * INSET) * (k / columns) / (rows - 1);
                readings.add(new Reading(x, y, hundredths(top.applyAsDouble(x, y) + error(random)), Face.A, "",
                    k + 2));
            }
            List<CaliperReading> calipers = new ArrayList<>();
            if (known == Knowledge.SIX_CALIPERS) {
                for (int k = 0; k < 6; k++) {
                    double x = 20 + (length - 40) * (k % 3) / 2;
                    double y = k < 3 ? 8 : width - 8;
                    calipers.add(new CaliperReading(x, y,
                        tenths(thickness.applyAsDouble(x, y) + random.nextGaussian(0, 0.1)), k + 2));
                }
            }
            OptionalDouble stated = calipers.isEmpty() ? OptionalDouble.of(stated(known, random))
                : OptionalDouble.empty();
            return new Board("made", Units.MILLIMETRES, length, width, stated, Optional.empty(),
                OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), OptionalDouble.of(0), Trim.NONE,
                Underside.ALIKE, Optional.empty(), List.of(), readings, calipers, List.of(), Optional.empty(),
                known == Knowledge.EVERYWHERE);
        }

        /** Read where the caliper first reaches: somewhere on an end or edge. */
        private double stated(Knowledge known, SplittableRandom random) {
            if (known == Knowledge.EVERYWHERE) {
                return thickness.applyAsDouble(0, 0);
            }
            double way = random.nextDouble(2 * (length + width));
            double x = way < 2 * length ? way % length : way < 2 * length + width ? 0 : length;
            double y = way < length ? 0 : way < 2 * length ? width : (way - 2 * length) % width;
            return tenths(thickness.applyAsDouble(x, y) + random.nextGaussian(0, 0.1) + statedOff);
        }

        private double error(SplittableRandom random) {
            if (!heavy) {
                return random.nextGaussian(0, noise);
            }
            // t with three degrees of freedom, of this spread in its middle.
            double chi = 0;
            for (int i = 0; i < 3; i++) {
                chi += Math.pow(random.nextGaussian(), 2);
            }
            return noise * random.nextGaussian() / Math.sqrt(chi / 3);
        }
    }

    private record Outcome(double truth, ThicknessRange range, double target, boolean alarmed) {

        boolean holds() {
            return range.low() <= truth && truth <= range.high();
        }
    }

    private UntouchedFace() { }

    public static void main(String[] args) {
        int boards = args.length > 0 ? Integer.parseInt(args[0]) : 300;
        Set<Family> families = args.length > 1 ? EnumSet.copyOf(Arrays.stream(args).skip(1)
            .map(name -> Family.valueOf(name.toUpperCase(Locale.ROOT))).toList()) : EnumSet.allOf(Family.class);
        System.out.println("| family | grid | thickness | in range | width | 95 % of errors | false alarms | false yes |");
        System.out.println("|---|---|---|---|---|---|---|---|");
        List<Outcome> all = new ArrayList<>();
        for (Family family : families) {
            for (int[] grid : new int[][] {{3, 3}, {5, 3}, {9, 5}}) {
                for (Knowledge known : Knowledge.values()) {
                    boolean fits = family == Family.SHOP_MIX ? known != Knowledge.EVERYWHERE && grid[0] != 3
                        : family.isUneven() ? known != Knowledge.EVERYWHERE && grid[0] == 5 : known == Knowledge.EVERYWHERE;
                    if (fits) {
                        all.addAll(judge(family, grid, known, boards));
                    }
                }
            }
        }
        calibration(all);
    }

    private static List<Outcome> judge(Family family, int[] grid, Knowledge known, int boards) {
        List<Outcome> outcomes = IntStream.range(0, boards).parallel().mapToObj(i -> {
            SplittableRandom random = new SplittableRandom(7919L * i + family.ordinal());
            Made made = make(family, random);
            Board board = made.read(grid[0], grid[1], known, random);
            MeasuredShape shape = MeasuredShape.of(board);
            double truth = made.truth();
            ThicknessRange range = Simulation.of(shape, Region.whole(board), 0, new LiftLimit(new Plane(0, 0, 0),
                Double.POSITIVE_INFINITY, board.length(), board.width()), 1).levelled();
            return new Outcome(truth, range, Math.rint(2 * (truth + random.nextDouble(-1, 1))) / 2,
                !shape.suspects(1).isEmpty());
        }).toList();
        double[] errors = outcomes.stream().mapToDouble(o -> Math.abs(o.range().median() - o.truth())).sorted()
            .toArray();
        long yes = outcomes.stream().filter(o -> o.range().chanceOf(o.target()) >= 0.95).count();
        long wrong = outcomes.stream().filter(o -> o.range().chanceOf(o.target()) >= 0.95 && o.truth() < o.target())
            .count();
        System.out.printf(Locale.ROOT, "| %s | %d x %d | %s | %.0f %% | %.2f mm | %.2f mm | %.0f %% | %d of %d |%n",
            family.name().toLowerCase(Locale.ROOT).replace('_', ' '), grid[0], grid[1],
            known.name().toLowerCase(Locale.ROOT).replace('_', ' '),
            100.0 * outcomes.stream().filter(Outcome::holds).count() / boards,
            outcomes.stream().mapToDouble(o -> o.range().high() - o.range().low()).average().orElseThrow(),
            errors[(int) (0.95 * boards)], 100.0 * outcomes.stream().filter(Outcome::alarmed).count() / boards, wrong,
            yes);
        return outcomes;
    }

    /** Of the chances that were stated, fifth by fifth, how many came true. */
    private static void calibration(List<Outcome> outcomes) {
        System.out.println("\n| stated chance | boards | mean stated | came true |");
        System.out.println("|---|---|---|---|");
        for (int fifth = 0; fifth < 5; fifth++) {
            double from = fifth / 5.0;
            List<Outcome> some = outcomes.stream().filter(o -> {
                double chance = o.range().chanceOf(o.target());
                return chance >= from && (chance < from + 0.2 || from > 0.7);
            }).toList();
            System.out.printf(Locale.ROOT, "| %.0f to %.0f %% | %d | %.0f %% | %.0f %% |%n", 100 * from,
                100 * from + 20, some.size(),
                100 * some.stream().mapToDouble(o -> o.range().chanceOf(o.target())).average().orElse(0),
                100.0 * some.stream().filter(o -> o.truth() >= o.target()).count() / Math.max(1, some.size()));
        }
    }

    private static Made make(Family family, SplittableRandom random) {
        double length = random.nextDouble(500, 2300);
        double width = random.nextDouble(100, 330);
        double thick = random.nextDouble(25, 55);
        boolean mixed = family == Family.SHOP_MIX;
        DoubleBinaryOperator warp = warp(length, width, random);
        List<DoubleBinaryOperator> added = new ArrayList<>();
        added.add(ripple(length, width, family == Family.ROUGHER || mixed && random.nextInt(2) == 0 ? 0.15 : 0.05,
            random));
        if (is(family, Family.S_BOW, random)) {
            double size = random.nextDouble(0.6, 2) * (random.nextBoolean() ? 1 : -1);
            double shift = random.nextDouble(-0.4, 0.4);
            added.add((x, y) -> size * Math.sin(2 * Math.PI * x / length + shift));
        }
        if (is(family, Family.HALF_TWIST, random)) {
            double lift = random.nextDouble(1, 3);
            double from = length * random.nextDouble(0.35, 0.65);
            added.add((x, y) -> lift * (2 * y / width - 1) * Math.max(0, x - from) / (length - from));
        }
        double kink = family == Family.KINK_2 ? 2 : family == Family.KINK_4 ? 4 : family == Family.KINK_8 ? 8
            : mixed && random.nextInt(4) == 0 ? random.nextDouble(1, 5) : 0;
        if (kink > 0) {
            double from = length * random.nextDouble(0.2, 0.92);
            double round = random.nextDouble(20, 90);
            double turn = random.nextDouble(-0.6, 0.6);
            double end = (length - from + Math.hypot(length - from, round)) / 2;
            added.add((x, y) -> kink * (1 + turn * (2 * y / width - 1)) * (x - from + Math.hypot(x - from, round)) / 2
                / end);
        }
        if (is(family, Family.HUMP, random)) {
            added.add(bell(length, width, random.nextDouble(0.3, 0.8), random.nextDouble(50, 100), random));
        }
        if (family == Family.DIPS) {
            for (int i = 0; i < 5; i++) {
                added.add(bell(length, width, -random.nextDouble(0.1, 0.3), random.nextDouble(15, 40), random));
            }
        }
        if (is(family, Family.VARYING_CUP, random)) {
            double size = random.nextDouble(0.3, 0.8) * width / 220;
            added.add((x, y) -> size * Math.pow(2 * y / width - 1, 2) * Math.cos(2.5 * x / length));
        }
        DoubleBinaryOperator top = (x, y) -> warp.applyAsDouble(x, y)
            + added.stream().mapToDouble(each -> each.applyAsDouble(x, y)).sum();
        boolean noisy = family == Family.NOISE_0_2 || mixed && random.nextInt(5) == 0;
        return new Made(length, width, top, thickness(family, length, width, thick, warp, random), noisy ? 0.2 : 0.08,
            family == Family.HEAVY_NOISE || mixed && random.nextInt(5) == 0,
            family == Family.STATED_OFF ? random.nextBoolean() ? 0.2 : -0.2 : 0);
    }

    /** True of its own family, and of one board in four of the shop mix. */
    private static boolean is(Family family, Family wanted, SplittableRandom random) {
        return family == wanted || family == Family.SHOP_MIX && random.nextInt(4) == 0;
    }

    private static DoubleBinaryOperator thickness(Family family, double length, double width, double thick,
            DoubleBinaryOperator warp, SplittableRandom random) {
        List<DoubleBinaryOperator> added = new ArrayList<>();
        if (family == Family.WEDGE || family == Family.SHOP_MIX && random.nextInt(3) == 0) {
            double along = family == Family.WEDGE ? random.nextDouble(1, 3) : random.nextDouble(0, 1.5);
            double sign = random.nextBoolean() ? 1 : -1;
            added.add((x, y) -> sign * along * (x / length - 0.5));
        }
        if (family == Family.WANDER || family == Family.STATED_OFF || family == Family.SHOP_MIX) {
            double size = family == Family.STATED_OFF ? 0.05 : random.nextDouble(0.1, 0.4);
            double waves = random.nextDouble(0.6, 2.5);
            double phase = random.nextDouble(2 * Math.PI);
            double lean = random.nextDouble(-1, 1);
            added.add((x, y) -> size * Math.sin(2 * Math.PI * waves * x / length + lean * y / width + phase));
        }
        if (family == Family.MISCUT || family == Family.SHOP_MIX && random.nextInt(5) == 0) {
            double share = random.nextDouble(0.1, 0.35);
            added.add((x, y) -> share * warp.applyAsDouble(x, y));
        }
        if (family == Family.SAPWOOD || family == Family.SHOP_MIX && random.nextInt(5) == 0) {
            double lost = random.nextDouble(0.2, 0.7);
            double edge = random.nextDouble(20, 60);
            added.add((x, y) -> -lost / (1 + Math.exp((y - edge) / 6)));
        }
        return (x, y) -> thick + added.stream().mapToDouble(each -> each.applyAsDouble(x, y)).sum();
    }

    private static DoubleBinaryOperator warp(double length, double width, SplittableRandom random) {
        double twist = random.nextGaussian(0, 2) * Math.sqrt(length * width / (1400 * 220));
        double bow = random.nextGaussian(0, 1.8) * Math.pow(length / 1400, 2);
        double cup = random.nextGaussian(0, 0.5) * Math.pow(width / 220, 2);
        double tilt = random.nextGaussian(0, 1);
        return (x, y) -> {
            double u = 2 * x / length - 1;
            double v = 2 * y / width - 1;
            return twist * u * v + bow * u * u + cup * v * v + tilt * u;
        };
    }

    /** Three long waves of this root mean square in all (mm). */
    private static DoubleBinaryOperator ripple(double length, double width, double rms, SplittableRandom random) {
        double[][] waves = new double[3][];
        for (int k = 0; k < waves.length; k++) {
            waves[k] = new double[] {random.nextDouble(2, 8) / length, random.nextDouble(-3, 3) / width,
                random.nextDouble(2 * Math.PI)};
        }
        return (x, y) -> {
            double sum = 0;
            for (double[] wave : waves) {
                sum += Math.sin(wave[0] * x + wave[1] * y + wave[2]);
            }
            return rms * Math.sqrt(2.0 / waves.length) * sum;
        };
    }

    private static DoubleBinaryOperator bell(double length, double width, double height, double radius,
            SplittableRandom random) {
        double cx = random.nextDouble(length);
        double cy = random.nextDouble(width);
        return (x, y) -> height * Math.exp(-(Math.pow(x - cx, 2) + Math.pow(y - cy, 2)) / (2 * radius * radius));
    }

    private static double hundredths(double mm) {
        return Math.rint(mm * 100) / 100;
    }

    private static double tenths(double mm) {
        return Math.rint(mm * 10) / 10;
    }
}
