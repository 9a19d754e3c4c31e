package outwind.scan.file;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.PointCloud;
import outwind.board.text.Cell;
import outwind.board.text.KeyLine;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.scan.find.ScannedBoard;

/**
 * A made-up scan of a face, to be turned, spoiled and read.
 *
 * @param points in mm
 */
public record MadeScan(PointCloud points) {

    /**
     * Points at random places of a face.
     *
     * @param noise of one point (mm)
     */
    public static MadeScan of(DoubleBinaryOperator face, double length, double width, int count, double noise,
            long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] x = new double[count];
        double[] y = new double[count];
        double[] z = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = random.nextDouble(0, length);
            y[i] = random.nextDouble(0, width);
            z[i] = face.applyAsDouble(x[i], y[i]) + random.nextGaussian(0, noise);
        }
        return new MadeScan(new PointCloud(x, y, z));
    }

    /** Turned by an angle (radians) in the plane, then shifted (mm). */
    public MadeScan moved(double angle, double dx, double dy, double dz) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        return new MadeScan(new PointCloud(
            IntStream.range(0, points.size()).mapToDouble(i -> cos * points.x()[i] - sin * points.y()[i] + dx)
                .toArray(),
            IntStream.range(0, points.size()).mapToDouble(i -> sin * points.x()[i] + cos * points.y()[i] + dy)
                .toArray(),
            IntStream.range(0, points.size()).mapToDouble(i -> points.z()[i] + dz).toArray()));
    }

    /** With a share of the points thrown up or down by as much as {@code reach} (mm). */
    public MadeScan withFlying(double share, double reach, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] z = points.z().clone();
        for (int i = 0; i < z.length; i++) {
            if (random.nextDouble() < share) {
                z[i] += random.nextDouble(-reach, reach);
            }
        }
        return new MadeScan(new PointCloud(points.x(), points.y(), z));
    }

    /** With other points behind these. */
    public MadeScan and(MadeScan other) {
        return new MadeScan(new PointCloud(joined(points.x(), other.points.x()),
            joined(points.y(), other.points.y()), joined(points.z(), other.points.z())));
    }

    private static double[] joined(double[] one, double[] other) {
        return DoubleStream.concat(Arrays.stream(one), Arrays.stream(other))
            .toArray();
    }

    /** Read with what lines of a header state. */
    public Board read(String... header) {
        List<HeaderLine> lines = IntStream.range(0, header.length)
            .mapToObj(i -> said("made.xyz", i + 1, 1, header[i].split(": ")[0], header[i].split(": ")[1]))
            .toList();
        try {
            return ScannedBoard.in(new Scan(lines, points, 0), "made.xyz", Defaults.NOTHING);
        } catch (BadBoardFile e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }

    /** Read as a board of these sizes (mm). */
    public Board sized(double length, double width, double thickness) {
        return read("length: " + length, "width: " + width, "thickness: " + thickness, "skim: 0", "units: mm");
    }

    /** A line {@code # key: value} of which the value begins at a column. */
    public static HeaderLine said(String file, int line, int column, String key, String value) {
        return new HeaderLine(file, new KeyLine(new Cell(key, line, 3), new Cell(value, line, column)));
    }
}
