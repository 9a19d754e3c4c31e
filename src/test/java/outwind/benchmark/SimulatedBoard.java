package outwind.benchmark;

import java.util.ArrayList;
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
import outwind.board.Underside;
import outwind.board.Units;
import outwind.numeric.plane.WidestGap;

/**
 * A board whose two faces are known everywhere, because it was made up, and what a person would read off it.
 *
 * @param length    mm
 * @param width     mm
 * @param top       height of face A (mm)
 * @param thickness thickness (mm)
 * @param wedge     true if its thickness varies, so that a person would put a caliper to it
 */
public record SimulatedBoard(double length, double width, DoubleBinaryOperator top, DoubleBinaryOperator thickness,
                      boolean wedge) {

    /** Standard deviation of one touch-off, and of one caliper reading (mm). */
    static final double TOUCH_OFF = 0.08;
    static final double CALIPER = 0.08;

    /** How far in from ends and edges a person touches off (mm). */
    private static final double INSET = 15;

    /** Three families, unlike each other and unlike the model that is to be tested. */
    public enum Family {
        /** Twist, bow and cup, with two or three long waves over them. */
        SMOOTH,
        /** Flat but for a twist, with an end that bends up over a hand's breadth, or springs up in a cubic. */
        KINKED,
        /** A little warp, sawn thicker at one end and edge, with saw marks across the whole face. */
        SAWN
    }

    public static SimulatedBoard of(Family family, SplittableRandom random) {
        double length = random.nextDouble(500, 2400);
        double width = random.nextDouble(120, 320);
        return switch (family) {
            case SMOOTH -> smooth(length, width, random);
            case KINKED -> kinked(length, width, random);
            case SAWN -> sawn(length, width, random);
        };
    }

    private static SimulatedBoard smooth(double length, double width, SplittableRandom random) {
        DoubleBinaryOperator warp = warp(length, width, random, 1);
        List<DoubleBinaryOperator> waves = new ArrayList<>();
        int count = 2 + random.nextInt(2);
        for (int i = 0; i < count; i++) {
            double alongWave = length * random.nextDouble(0.9, 2);
            double acrossWave = width * random.nextDouble(2, 8);
            double phase = random.nextDouble(2 * Math.PI);
            double turn = random.nextBoolean() ? 1 : -1;
            double height = random.nextDouble(0.025, 0.15);
            waves.add((x, y) -> height * Math.sin(2 * Math.PI * (x / alongWave + turn * y / acrossWave) + phase));
        }
        double thick = random.nextDouble(25, 55);
        return new SimulatedBoard(length, width, (x, y) -> warp.applyAsDouble(x, y)
            + waves.stream().mapToDouble(wave -> wave.applyAsDouble(x, y)).sum(), (x, y) -> thick, false);
    }

    private static SimulatedBoard kinked(double length, double width, SplittableRandom random) {
        DoubleBinaryOperator warp = warp(length, width, random, 0.5);
        double lift = random.nextDouble(1.5, 6) * (random.nextBoolean() ? 1 : -1);
        boolean sprung = random.nextBoolean();
        double from = length * (sprung ? random.nextDouble(0.4, 0.65) : random.nextDouble(0.3, 0.7));
        double bend = 60;
        double slant = random.nextDouble(-0.3, 0.3);
        double thick = random.nextDouble(25, 55);
        return new SimulatedBoard(length, width, (x, y) -> {
            double beyond = (x - from - slant * (y - width / 2)) / (length - from);
            double raised = sprung
                ? Math.pow(Math.max(0, beyond), 3)
                // A ramp whose corner is rounded over a hand's breadth.
                : (beyond + Math.sqrt(beyond * beyond + Math.pow(bend / (length - from), 2))) / 2;
            return warp.applyAsDouble(x, y) + lift * raised;
        }, (x, y) -> thick, false);
    }

    private static SimulatedBoard sawn(double length, double width, SplittableRandom random) {
        DoubleBinaryOperator warp = warp(length, width, random, 0.7);
        double pitch = random.nextDouble(4, 25);
        double marks = random.nextDouble(0.02, 0.06);
        double slant = random.nextDouble(-0.5, 0.5);
        double thick = random.nextDouble(25, 55);
        double alongWedge = random.nextDouble(-1.5, 1.5);
        double acrossWedge = random.nextDouble(-0.8, 0.8);
        double wander = random.nextDouble(0, 0.15);
        double phase = random.nextDouble(2 * Math.PI);
        return new SimulatedBoard(length, width,
            (x, y) -> warp.applyAsDouble(x, y) + marks * Math.sin(2 * Math.PI * (x + slant * y) / pitch),
            (x, y) -> thick + alongWedge * (x / length - 0.5) + acrossWedge * (y / width - 0.5)
                + wander * Math.sin(2 * Math.PI * x / length + phase), true);
    }

    /** Twist, bow and cup: bow grows with the square of the length, twist with the length. */
    private static DoubleBinaryOperator warp(double length, double width, SplittableRandom random, double share) {
        double twist = share * random.nextGaussian(0, 3.2) * Math.sqrt(length * width / (1400 * 220));
        double bow = share * random.nextGaussian(0, 2.4) * Math.pow(length / 1400, 2);
        double cup = share * random.nextGaussian(0, 0.6) * Math.pow(width / 220, 2);
        double tiltX = random.nextGaussian(0, 1);
        double tiltY = random.nextGaussian(0, 0.5);
        return (x, y) -> {
            double u = 2 * x / length - 1;
            double v = 2 * y / width - 1;
            return twist * u * v + bow * u * u + cup * v * v + tiltX * u + tiltY * v;
        };
    }

    /** Thickness of the thickest slab that truly lies in it (mm), no skim taken. */
    public double trueSlab() {
        int along = 241;
        int across = 33;
        double[] x = new double[along * across];
        double[] y = new double[x.length];
        double[] z = new double[x.length];
        double[] under = new double[x.length];
        for (int k = 0; k < x.length; k++) {
            x[k] = length * (k % along) / (along - 1);
            y[k] = width * (k / along) / (across - 1);
            z[k] = top.applyAsDouble(x[k], y[k]);
            under[k] = z[k] - thickness.applyAsDouble(x[k], y[k]);
        }
        return WidestGap.thickestSlab(x, y, z, under).width();
    }

    /** What a person reads off it on a grid of columns × rows, inset from the edges. */
    public Board read(int columns, int rows, OptionalDouble target, SplittableRandom random) {
        List<Reading> readings = new ArrayList<>();
        List<CaliperReading> calipers = new ArrayList<>();
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                double x = INSET + (length - 2 * INSET) * i / (columns - 1);
                double y = INSET + (width - 2 * INSET) * j / (rows - 1);
                readings.add(touchOff(x, y, readings.size() + 2, random));
                // A caliper reaches in from the edges only.
                if (wedge && (j == 0 || j == rows - 1)) {
                    double t = thickness.applyAsDouble(x, y) + random.nextGaussian(0, CALIPER);
                    calipers.add(new CaliperReading(x, y, Math.rint(t * 10) / 10, readings.size() + 1));
                }
            }
        }
        OptionalDouble stated = wedge ? OptionalDouble.empty() : OptionalDouble.of(thickness.applyAsDouble(0, 0));
        return new Board("simulated", Units.MILLIMETRES, length, width, stated, Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), target, OptionalDouble.of(0), Trim.NONE, Underside.ALIKE,
            Optional.empty(), List.of(), readings, calipers, List.of(), Optional.empty(),
            stated.isPresent());
    }

    /** One touch-off, written down to a hundredth of a mm. */
    Reading touchOff(double x, double y, int line, SplittableRandom random) {
        double z = top.applyAsDouble(x, y) + random.nextGaussian(0, TOUCH_OFF);
        return new Reading(x, y, Math.rint(z * 100) / 100, Face.A, "", line);
    }

    /** The board with its readings exchanged for others. */
    static Board with(Board board, List<Reading> readings) {
        return new Board(board.name(), board.units(), board.length(), board.width(), board.thickness(),
            board.species(), board.repeatability(), board.price(), board.target(), board.skim(), board.trim(),
            board.underside(), board.turned(), board.defects(), readings, board.calipers(), board.remarks(), Optional.empty(),
            board.thickness().isPresent());
    }
}
