package outwind.benchmark;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.forecast.JudgeOptions;
import outwind.stock.Pack;
import outwind.stock.PricedBoard;
import outwind.stock.Rates;

/**
 * How often the number of boards of a pack that truly make it lies in the range that a sample gives: made-up packs of 60
 * boards of one size, 12 of them touched off at 15 places, of three kinds unlike each other and unlike the model.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=PackCoverage}: prints the table of {@code packs.md}.
 */
public final class PackCoverage {

    private static final int PACKS = 200;
    private static final int SIZE = 60;
    private static final int MEASURED = 12;

    /** Packs of these seeds had no part in making the model. */
    private static final int FIRST_SEED = 70_000;

    /** Saw and log: boards of a pack differ by so much in thickness (mm). */
    private static final double THICKNESS_SPREAD = 0.3;

    private PackCoverage() { }

    private record Found(int truth, Pack pack) {

        boolean isHeld() {
            return truth >= pack.low() && truth <= pack.high();
        }
    }

    public static void main(String[] args) {
        System.out.println("| packs | the truth lies in the range | the range is wide | expected, less the truth |");
        System.out.println("| --- | --- | --- | --- |");
        for (SimulatedBoard.Family family : SimulatedBoard.Family.values()) {
            List<Found> found = IntStream.range(0, PACKS).parallel().mapToObj(seed -> found(family, seed)).toList();
            System.out.printf(Locale.ROOT, "| %s | %.1f %% | %.1f boards | %+.1f boards |%n",
                family.name().toLowerCase(Locale.ROOT), 100 * found.stream().filter(Found::isHeld).count() / (double) PACKS,
                found.stream().mapToInt(f -> f.pack.high() - f.pack.low()).average().orElseThrow(),
                found.stream().mapToDouble(f -> f.pack.expected() - f.truth).average().orElseThrow());
        }
    }

    private static Found found(SimulatedBoard.Family family, int seed) {
        SplittableRandom random = new SplittableRandom(FIRST_SEED + seed);
        double length = random.nextDouble(1000, 2200);
        double width = random.nextDouble(120, 260);
        double thick = random.nextDouble(27, 45);
        List<SimulatedBoard> boards = IntStream.range(0, SIZE).mapToObj(i -> board(family, length, width,
            thick + THICKNESS_SPREAD * random.nextGaussian(), random)).toList();
        double[] slabs = boards.stream().mapToDouble(SimulatedBoard::trueSlab).toArray();
        double[] sorted = slabs.clone();
        Arrays.sort(sorted);
        // A target that from a fifth to nine tenths of the pack make.
        int fail = random.nextInt(SIZE / 10, SIZE - SIZE / 5);
        double target = sorted[fail - 1] + random.nextDouble() * (sorted[fail] - sorted[fail - 1]);
        Rates rates = new Rates(Optional.empty(), Optional.empty());
        List<PricedBoard> measured = boards.subList(0, MEASURED).stream().map(made -> {
            Board board = made.read(5, 3, OptionalDouble.of(target), random);
            return PricedBoard.of(board, board, JudgeOptions.usual(board), "board", rates);
        }).toList();
        return new Found(SIZE - fail, Pack.of(measured, SIZE, Optional.empty(), 1));
    }

    /** A board of a family, brought to the size of the pack. */
    private static SimulatedBoard board(SimulatedBoard.Family family, double length, double width, double thick,
            SplittableRandom random) {
        SimulatedBoard made = SimulatedBoard.of(family, random);
        double x = made.length() / length;
        double y = made.width() / width;
        double more = thick - made.thickness().applyAsDouble(0, 0);
        return new SimulatedBoard(length, width, (u, v) -> made.top().applyAsDouble(u * x, v * y),
            (u, v) -> made.thickness().applyAsDouble(u * x, v * y) + more, made.wedge());
    }
}
