package outwind.benchmark;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.Face;
import outwind.flatten.LiftLimit;
import outwind.flatten.Simulation;
import outwind.flatten.ThicknessRange;
import outwind.numeric.plane.Plane;
import outwind.scan.file.MadeScan;
import outwind.surface.MeasuredShape;
import outwind.surface.Region;

/**
 * How near the judged thickness comes to the truth where a board was scanned, and whether touch-offs on the same board
 * agree with that.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=ScanAccuracy}.
 */
public final class ScanAccuracy {

    /** Noise of one scanned point (mm). */
    private static final double NOISE = 0.05;

    /** Boards a case. */
    private static final int BOARDS = 30;

    private ScanAccuracy() { }

    public static void main(String[] args) {
        System.out.println("| family | points | mean error | 95 % of errors under | truth in range | mean width of"
            + " range | in the range of 5x3 touch-offs |");
        for (SimulatedBoard.Family family : SimulatedBoard.Family.values()) {
            for (int points : new int[] {10_000, 100_000}) {
                print(family, points);
            }
        }
    }

    private static void print(SimulatedBoard.Family family, int points) {
        double[] errors = new double[BOARDS];
        double bias = 0;
        double width = 0;
        int held = 0;
        int agreeing = 0;
        for (int i = 0; i < BOARDS; i++) {
            SplittableRandom random = new SplittableRandom(1_000_003L * i + 17 * family.ordinal());
            SimulatedBoard made = SimulatedBoard.of(family, random);
            Board touched = made.read(5, 3, OptionalDouble.empty(), random);
            ThicknessRange sparse = judged(touched);
            ThicknessRange dense = judged(scanned(made, touched, points, i));
            double truth = made.trueSlab();
            errors[i] = Math.abs(dense.median() - truth);
            bias += (dense.median() - truth) / BOARDS;
            width += (dense.high() - dense.low()) / BOARDS;
            held += truth >= dense.low() && truth <= dense.high() ? 1 : 0;
            agreeing += dense.median() >= sparse.low() && dense.median() <= sparse.high() ? 1 : 0;
        }
        Arrays.sort(errors);
        System.out.printf(Locale.ROOT, "| %s | %d | %+.3f | %.3f | %.0f %% | %.3f | %.0f %% |%n",
            family.name().toLowerCase(Locale.ROOT), points, bias, errors[(int) (0.95 * BOARDS)],
            100.0 * held / BOARDS, width, 100.0 * agreeing / BOARDS);
    }

    /** The board scanned, with the thickness as a person measured it by caliper. */
    static Board scanned(SimulatedBoard made, Board touched, int points, long seed) {
        Board read = MadeScan.of(made.top(), made.length(), made.width(), points, NOISE, seed)
            .sized(made.length(), made.width(), touched.thickness().orElse(30));
        return new Board(read.name(), read.units(), read.length(), read.width(), touched.thickness(), Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), read.skim(), read.trim(),
            read.underside(), Optional.empty(), read.defects(), read.readingsOf(Face.A), touched.calipers(),
            read.remarks(), read.scan(),
            touched.thickness().isPresent());
    }

    private static ThicknessRange judged(Board board) {
        return Simulation.of(MeasuredShape.of(board), Region.whole(board), 0, new LiftLimit(new Plane(0, 0, 0),
            Double.POSITIVE_INFINITY, board.length(), board.width()), 1).levelled();
    }
}
