package outwind.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.flatten.LiftLimit;
import outwind.flatten.NextReading;
import outwind.flatten.ReadingsAlone;
import outwind.flatten.Simulation;
import outwind.flatten.ThicknessRange;
import outwind.numeric.plane.Plane;
import outwind.surface.MeasuredShape;
import outwind.surface.Region;
import outwind.surface.SuspectReading;

/**
 * How near the judged thickness comes to the truth, on boards that were made up and so are known everywhere.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=Accuracy}.
 */
public final class Accuracy {

    /** So many a case. */
    private static final int BOARDS = 400;

    private static final int[][] GRIDS = {{3, 3}, {4, 3}, {5, 3}, {7, 3}, {9, 5}};

    private final int boards;
    private final Calibration calibration = new Calibration();

    private Accuracy(int boards) {
        this.boards = boards;
    }

    public static void main(String[] args) throws IOException {
        Accuracy accuracy = new Accuracy(BOARDS);
        accuracy.thickness();
        accuracy.calibration.print();
        accuracy.calibration.plot(Path.of("reports/calibration.png"));
        accuracy.nextReading();
        accuracy.misreadings();
        ThinnedGrids.print();
        Levelling.print(accuracy.boards);
    }

    /** The same boards for every grid, and the same at every run. */
    private static SplittableRandom randomOf(SimulatedBoard.Family family, int i) {
        return new SplittableRandom(1_000_003L * i + 17 * family.ordinal());
    }

    /** Levelled however far that lifts the board. */
    private static LiftLimit free(Board board) {
        return new LiftLimit(new Plane(0, 0, 0), Double.POSITIVE_INFINITY, board.length(), board.width());
    }

    private static ThicknessRange judged(Board board) {
        return Simulation.of(MeasuredShape.of(board), Region.whole(board), 0, free(board), 1).levelled();
    }

    private void thickness() {
        System.out.printf(Locale.ROOT, "%d boards a case; levelled thickness, mm%n", boards);
        System.out.println("| family | grid | mean error | 95th pct of |error| | truth in range | mean width of range"
            + " | 95th pct, readings alone | ms a board |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- |");
        for (SimulatedBoard.Family family : SimulatedBoard.Family.values()) {
            for (int[] grid : GRIDS) {
                thickness(family, grid[0], grid[1]);
            }
        }
    }

    private void thickness(SimulatedBoard.Family family, int columns, int rows) {
        double[] errors = new double[boards];
        double[] flattery = new double[boards];
        double bias = 0;
        double width = 0;
        int held = 0;
        long time = 0;
        for (int i = 0; i < boards; i++) {
            SplittableRandom random = randomOf(family, i);
            SimulatedBoard simulated = SimulatedBoard.of(family, random);
            double truth = simulated.trueSlab();
            Board board = simulated.read(columns, rows, OptionalDouble.empty(), random);

            long start = System.nanoTime();
            ThicknessRange range = judged(board);
            time += System.nanoTime() - start;

            errors[i] = Math.abs(range.median() - truth);
            bias += (range.median() - truth) / boards;
            width += (range.high() - range.low()) / boards;
            held += range.low() <= truth && truth <= range.high() ? 1 : 0;
            flattery[i] = Math.abs(ReadingsAlone.of(board, MeasuredShape.of(board), 0).promise() - truth);
            // A target somewhere about the range, so that chances of every size come up.
            double target = range.median() + random.nextDouble(-0.8, 0.8) * (range.high() - range.low());
            calibration.add(family, columns, range.chanceOf(target), truth >= target);
        }
        Arrays.sort(errors);
        Arrays.sort(flattery);
        int at = (int) Math.ceil(0.95 * boards) - 1;
        System.out.printf(Locale.ROOT, "| %s | %dx%d | %+.2f | %.2f | %.0f %% | %.2f | %.2f | %.0f |%n",
            family.name().toLowerCase(Locale.ROOT), columns, rows, bias, errors[at], 100.0 * held / boards, width,
            flattery[at], time / 1e6 / boards);
    }

    /** How far one further touch-off narrows the range, where it was suggested and at random. */
    private void nextReading() {
        double suggested = 0;
        double atRandom = 0;
        double predicted = 0;
        int count = 0;
        for (SimulatedBoard.Family family : SimulatedBoard.Family.values()) {
            for (int i = 0; i < boards / 3; i++) {
                SplittableRandom random = randomOf(family, i);
                SimulatedBoard simulated = SimulatedBoard.of(family, random);
                Board board = simulated.read(5, 3, OptionalDouble.empty(), random);
                MeasuredShape shape = MeasuredShape.of(board);
                Simulation before = Simulation.of(shape, Region.whole(board), 0, free(board), 1);
                List<NextReading> next = NextReading.toTouch(before, shape.noise().deviation(), 1);
                if (next.isEmpty()) {
                    continue;
                }
                suggested += width(further(simulated, board, next.get(0).x(), next.get(0).y(), random))
                    / width(before.levelled());
                atRandom += width(further(simulated, board, random.nextDouble(10, board.length() - 10),
                    random.nextDouble(10, board.width() - 10), random)) / width(before.levelled());
                predicted += next.get(0).left();
                count++;
            }
        }
        System.out.printf(Locale.ROOT, "One further touch-off leaves of the range's width, mean of %d boards, 5x3:"
            + " suggested %.3f (predicted %.3f), at random %.3f%n", count, suggested / count, predicted / count,
            atRandom / count);
    }

    private static ThicknessRange further(SimulatedBoard simulated, Board board, double x, double y,
                                          SplittableRandom random) {
        List<Reading> readings = new ArrayList<>(board.readings());
        readings.add(simulated.touchOff(x, y, 1000, random));
        return judged(SimulatedBoard.with(board, readings));
    }

    private static double width(ThicknessRange range) {
        return range.high() - range.low();
    }

    /** How often a misread touch-off is found, and how often a sound one is called suspect. */
    private void misreadings() {
        for (SimulatedBoard.Family family : SimulatedBoard.Family.values()) {
            int alarms = 0;
            double[] sizes = {0.5, 1, 3};
            int[] found = new int[sizes.length];
            for (int i = 0; i < boards; i++) {
                SplittableRandom random = randomOf(family, i);
                Board board = SimulatedBoard.of(family, random).read(5, 3, OptionalDouble.empty(), random);
                alarms += MeasuredShape.of(board).suspects(1).isEmpty() ? 0 : 1;
                int wrong = random.nextInt(board.readings().size());
                for (int k = 0; k < sizes.length; k++) {
                    List<Reading> readings = new ArrayList<>(board.readings());
                    Reading right = readings.get(wrong);
                    readings.set(wrong, new Reading(right.x(), right.y(), right.z() + sizes[k], Face.A, "",
                        right.line()));
                    List<SuspectReading> suspects = MeasuredShape.of(SimulatedBoard.with(board, readings))
                        .suspects(1);
                    found[k] += !suspects.isEmpty() && suspects.get(0).reading().line() == right.line() ? 1 : 0;
                }
            }
            System.out.printf(Locale.ROOT, "Misread touch-offs found, %s, 5x3: of 0.5 mm %.0f %%, 1 mm %.0f %%, 3 mm"
                + " %.0f %%; sound boards with a false alarm %.1f %%%n", family.name().toLowerCase(Locale.ROOT),
                100.0 * found[0] / boards, 100.0 * found[1] / boards, 100.0 * found[2] / boards,
                100.0 * alarms / boards);
        }
    }
}
