package outwind.surface;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.ScannedFace;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;

/** Boards of a known shape for tests: readings on a grid, without noise. */
public record ShapeOf(double length, double width, double thickness, Underside underside, OptionalDouble target,
                      Trim trim) {

    /** 900 x 180 x 30 mm, underside alike, no target. */
    public static ShapeOf board() {
        return new ShapeOf(900, 180, 30, Underside.ALIKE, OptionalDouble.empty(), Trim.NONE);
    }

    public ShapeOf lyingFlat() {
        return new ShapeOf(length, width, thickness, Underside.FLAT, target, trim);
    }

    public ShapeOf wanted(double thick) {
        return new ShapeOf(length, width, thickness, underside, OptionalDouble.of(thick), trim);
    }

    public ShapeOf trimmed(double along, double across) {
        return new ShapeOf(length, width, thickness, underside, target, new Trim(along, across));
    }

    /** The board with this height read at columns × rows places, ends and edges included. */
    public Board read(int columns, int rows, DoubleBinaryOperator height) {
        return read(columns, rows, height, List.of());
    }

    public Board read(int columns, int rows, DoubleBinaryOperator height, List<CaliperReading> calipers) {
        List<Reading> readings = new ArrayList<>();
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                double x = columns == 1 ? length / 2 : length * i / (columns - 1);
                double y = rows == 1 ? width / 2 : width * j / (rows - 1);
                readings.add(new Reading(x, y, height.applyAsDouble(x, y), Face.A, "", readings.size() + 2));
            }
        }
        OptionalDouble stated = calipers.isEmpty() ? OptionalDouble.of(thickness) : OptionalDouble.empty();
        return new Board("test board", Units.MILLIMETRES, length, width, stated, Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), target, OptionalDouble.of(0), trim, underside,
            Optional.empty(), List.of(), readings, calipers, List.of(), Optional.empty(),
            stated.isPresent());
    }

    /** The same board as it was scanned. */
    public static Board scanned(Board read, ScannedFace scan) {
        return new Board(read.name(), read.units(), read.length(), read.width(), read.thickness(), read.species(),
            read.repeatability(), read.price(), read.target(), read.skim(), read.trim(), read.underside(),
            read.turned(), read.defects(), read.readings(), read.calipers(), read.remarks(), Optional.of(scan),
            read.thickness().isPresent());
    }

    /** Both faces as they are, at these places. */
    public static SampledBoard sampled(Places places, DoubleBinaryOperator top, DoubleBinaryOperator underside) {
        return new SampledBoard(places, heights(places, top), heights(places, underside));
    }

    private static double[] heights(Places places, DoubleBinaryOperator face) {
        return IntStream.range(0, places.size())
            .mapToDouble(i -> face.applyAsDouble(places.x()[i], places.y()[i])).toArray();
    }

    /** Corners {@code q} up and down in turn off the mean plane, straight along every edge. */
    public DoubleBinaryOperator twist(double q) {
        return (x, y) -> q * (2 * x / length - 1) * (2 * y / width - 1);
    }

    /** Ends {@code rise} above the middle. */
    public DoubleBinaryOperator bow(double rise) {
        return (x, y) -> rise * Math.pow(2 * x / length - 1, 2);
    }

    /** Edges {@code rise} above the middle. */
    public DoubleBinaryOperator cup(double rise) {
        return (x, y) -> rise * Math.pow(2 * y / width - 1, 2);
    }
}
