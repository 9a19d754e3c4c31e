package outwind.benchmark;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import outwind.blanks.Saw;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Price;
import outwind.forecast.JudgeOptions;
import outwind.stock.PricedBoard;
import outwind.stock.Rates;
import outwind.stock.StackPlan;

/**
 * What cutting a bill from a stack costs in time, and how near to the least it is proven to come: 40 made-up boards of
 * 0.5 to 2.4 m, twelve sizes, judging and pricing the boards not counted.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=BillSpeed}.
 */
public final class BillSpeed {

    private static final int BOARDS = 40;

    /** Length, width and thickness (mm) and number of each size. */
    private static final double[][] SIZES = {{1250, 150, 20, 4}, {900, 140, 22, 6}, {760, 95, 24, 8},
        {620, 110, 26, 6}, {560, 95, 20, 10}, {520, 48, 22, 12}, {430, 120, 24, 8}, {400, 70, 26, 12},
        {330, 60, 20, 12}, {270, 70, 22, 12}, {180, 90, 24, 12}, {120, 60, 26, 16}};

    private BillSpeed() { }

    public static void main(String[] args) {
        for (long seed = 1; seed <= 6; seed++) {
            report("once", seed, 1);
        }
        for (long seed = 1; seed <= 2; seed++) {
            report("twice", seed, 2);
        }
    }

    private static void report(String name, long seed, int times) {
        List<StackPlan.Candidate> stack = stack(seed);
        long start = System.nanoTime();
        StackPlan plan = StackPlan.of(stack, bill(times), 0.95, 1);
        System.out.printf(Locale.ROOT, "bill %-5s stack %d: %.1f s; %d of %d blanks from %d boards for %s,"
            + " at least %s: gap %.2f %%%n", name, seed, (System.nanoTime() - start) / 1e9, plan.cut(),
            plan.bill().wanted(), plan.cuts().size(), plan.cost(), plan.least(), 100 * plan.gap());
    }

    private static List<StackPlan.Candidate> stack(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Rates rates = new Rates(Optional.of(Price.parse("2600 EUR per m3", false)),
            Optional.of(BigDecimal.valueOf(48)));
        List<StackPlan.Candidate> stack = new ArrayList<>();
        for (int j = 0; j < BOARDS; j++) {
            Board board = SimulatedBoard.of(SimulatedBoard.Family.values()[j % 3], random)
                .read(5, 3, OptionalDouble.empty(), random);
            stack.add(new StackPlan.Candidate(board, PricedBoard.of(board, board, JudgeOptions.usual(board), "board " + j,
                rates), Saw.usual(board), 0.3));
        }
        return stack;
    }

    private static CuttingBill bill(int times) {
        List<BillItem> items = new ArrayList<>();
        for (double[] size : SIZES) {
            items.add(new BillItem("size " + (items.size() + 1), size[0], size[1], size[2], times * (int) size[3],
                OptionalDouble.empty(), items.size() > 8));
        }
        return new CuttingBill(items);
    }
}
