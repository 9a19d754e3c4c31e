package outwind.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.blanks.BlankPlan;
import outwind.blanks.Layout;
import outwind.blanks.Saw;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;

/**
 * What planning the blanks of a long board costs, warm: 3 m x 300 mm, twisted and bowed, ten sizes, two defects.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=BlanksSpeed}.
 */
public final class BlanksSpeed {

    private static final int RUNS = 5;

    private BlanksSpeed() { }

    public static void main(String[] args) {
        report("plenty wanted, thickness easily made", bill(8, 22));
        report("few wanted, thickness easily made", bill(2, 22));
        report("few wanted, thickness hard to make", bill(2, 29.6));
        report("plenty wanted, thickness hard to make", bill(8, 29.6));
    }

    private static void report(String name, CuttingBill bill) {
        double[] seconds = new double[RUNS];
        BlankPlan plan = null;
        for (int run = -1; run < RUNS; run++) {
            long start = System.nanoTime();
            Board board = board();
            plan = BlankPlan.of(board, bill, Saw.usual(board), 0.95, 0.3, 1);
            if (run >= 0) {
                seconds[run] = (System.nanoTime() - start) / 1e9;
            }
        }
        Arrays.sort(seconds);
        System.out.printf(Locale.ROOT, "%-40s median %.2f s, slowest %.2f s; %d blanks of %d", name, seconds[RUNS / 2],
            seconds[RUNS - 1], plan.chosen().blanks().size(), plan.bill().wanted());
        for (Layout layout : List.of(plan.chosen(), plan.other())) {
            System.out.printf(Locale.ROOT, "; %s worth %.0f, at most %.2f %% more", layout.order().words(),
                layout.value(), 100 * (layout.bound() / layout.value() - 1));
        }
        System.out.println();
    }

    private static Board board() {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 21; i++) {
            double u = (i % 7) / 6.0;
            double v = (i / 7) / 2.0;
            double height = 4 * (2 * u - 1) * (2 * v - 1) + 3 * (2 * u - 1) * (2 * u - 1) + 0.05 * (i * 7 % 5);
            readings.add(new Reading(15 + 2970 * u, 15 + 270 * v, height, Face.A, "", i + 2));
        }
        return new Board("long board", Units.MILLIMETRES, 3000, 300, OptionalDouble.of(32), Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Trim.NONE,
            Underside.ALIKE, Optional.empty(), List.of(new Defect(820, 40, 900, 110), new Defect(2100, 200, 2180, 260)),
            readings, List.of(), List.of(), Optional.empty(),
            true);
    }

    private static CuttingBill bill(int quantity, double thickness) {
        double[][] sizes = {{900, 140}, {760, 95}, {620, 70}, {560, 95}, {520, 48}, {430, 120}, {400, 70}, {330, 60},
            {270, 70}, {180, 90}};
        List<BillItem> items = new ArrayList<>();
        for (double[] size : sizes) {
            items.add(new BillItem("size " + (items.size() + 1), size[0], size[1], thickness + items.size() * 0.2,
                quantity, OptionalDouble.empty(), items.size() > 7));
        }
        return new CuttingBill(items);
    }
}
