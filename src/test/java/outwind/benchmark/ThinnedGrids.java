package outwind.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.numeric.ReferenceTable;
import outwind.surface.MeasuredShape;

/**
 * Measured height grids (src/test/resources/grids) thinned to a few readings and predicted at the rest.
 *
 * <p>None of them is wood. Heights are scaled to a spread of 3 mm and places to a board of 1000 x 200 mm, so that they
 * are what a board's readings might be; hills are rougher than boards.
 */
final class ThinnedGrids {

    private static final double LENGTH = 1000;
    private static final double WIDTH = 200;
    private static final double SPREAD = 3;

    /** Half the width of a range that holds nine in ten, in standard deviations. */
    private static final double NINE_IN_TEN = 1.645;

    private ThinnedGrids() { }

    static void print() {
        System.out.println("| grid | readings kept | predicted | rms error, mm | within 90 % range |");
        System.out.println("| --- | --- | --- | --- | --- |");
        print("probe_plate_a", 3, 3);
        print("probe_plate_b_tilted", 3, 3);
        print("volcano", 5, 3);
        print("volcano", 9, 5);
        print("dem_coarse", 5, 3);
        print("dem_coarse", 9, 5);
    }

    private static void print(String name, int columns, int rows) {
        ReferenceTable table = ReferenceTable.read("/grids/" + name + ".csv");
        double[] x = scaled(table.column("x"), LENGTH);
        double[] y = scaled(table.column("y"), WIDTH);
        double[] z = scaled(table.column("z"), SPREAD);
        double[] xs = Arrays.stream(x).distinct().sorted().toArray();
        double[] ys = Arrays.stream(y).distinct().sorted().toArray();
        List<Reading> kept = new ArrayList<>();
        List<Integer> rest = new ArrayList<>();
        for (int i = 0; i < z.length; i++) {
            if (isKept(x[i], xs, columns) && isKept(y[i], ys, rows)) {
                kept.add(new Reading(x[i], y[i], z[i], Face.A, "", i + 2));
            } else {
                rest.add(i);
            }
        }
        MeasuredShape shape = MeasuredShape.of(new Board(name, Units.MILLIMETRES, LENGTH, WIDTH,
            OptionalDouble.of(30), Optional.empty(), OptionalDouble.of(0.01), Optional.empty(),
            OptionalDouble.empty(), OptionalDouble.empty(), Trim.NONE, Underside.ALIKE, Optional.empty(), List.of(),
            kept, List.of(), List.of(), Optional.empty(),
            true));
        double squares = 0;
        int within = 0;
        for (int i : rest) {
            double error = Math.abs(shape.topAt(x[i], y[i]) - z[i]);
            squares += error * error;
            within += error <= NINE_IN_TEN * shape.topDeviationAt(x[i], y[i]) ? 1 : 0;
        }
        System.out.printf(Locale.ROOT, "| %s | %d | %d | %.2f | %.0f %% |%n", name.replace('_', ' '), kept.size(),
            rest.size(), Math.sqrt(squares / rest.size()), 100.0 * within / rest.size());
    }

    private static boolean isKept(double place, double[] lines, int count) {
        int line = Arrays.binarySearch(lines, place);
        for (int k = 0; k < count; k++) {
            if (line == Math.round((lines.length - 1) * k / (double) (count - 1))) {
                return true;
            }
        }
        return false;
    }

    private static double[] scaled(double[] values, double extent) {
        double least = Arrays.stream(values).min().orElseThrow();
        double most = Arrays.stream(values).max().orElseThrow();
        return Arrays.stream(values).map(value -> (value - least) / (most - least) * extent).toArray();
    }
}
