package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.stream.IntStream;
import outwind.numeric.CoveringProgram;

/**
 * What boards must cost at the least that can meet a bill, whatever they are cut into.
 *
 * <pre>
 *   at any prices π ≥ 0 of the items:  Σ_j v_j(π)·y_j ≥ Σ_i π_i·d_i        y_j = 1 if board j is bought
 *   bound = min Σ c_j·y_j  over y in {0, 1} subject to these, by branch and bound
 * </pre>
 * where no pattern of board j is worth more than v_j(π). Any choice that meets the bill satisfies every such row, so
 * the bound holds for every set of prices; the more there are, the closer it is. With y between 0 and 1 it is the
 * Lagrangian bound; that boards are bought whole lifts it. Coefficients above the right-hand side are cut down to it.
 *
 * <p>Sources: A. M. Geoffrion, Mathematical Programming Study 2 (1974) 82–114 (Lagrangian bounds); J. F. Benders,
 * Numerische Mathematik 4 (1962) 238–252 (rows from multipliers). Authors and years from memory.
 */
final class BoardChoice {

    /** Share of a row by which it must be broken to be taken up. */
    private static final double BROKEN = 1e-7;

    /** What leaving a row broken costs, against all boards; only a row far dearer than any real one is left so. */
    private static final double PENALTY = 100;

    private final double[] cost;
    private final double total;
    private final List<double[]> rows = new ArrayList<>();

    /**
     * @param bound  no choice costs less
     * @param boards a choice that satisfies every row and costs no more than others that do; empty if the search ended
     *               before one was known
     */
    record Bound(double bound, List<Integer> boards) { }

    private record Relaxed(double value, double[] y) { }

    private record Node(double bound, byte[] fixed, double[] y, List<double[]> active) { }

    BoardChoice(double[] cost) {
        this.cost = cost.clone();
        this.total = Arrays.stream(cost).sum();
    }

    /**
     * Takes up a row.
     *
     * @param most   v_j, no less than the worth of any pattern of each board
     * @param needed Σ π_i·d_i
     */
    void add(double[] most, double needed) {
        if (needed > 0) {
            rows.add(Arrays.stream(most).map(v -> Math.max(0, v / needed)).toArray());
        }
    }

    /** The same where every row asks for more by a factor: choices that leave something to spare. */
    BoardChoice sparing(double factor) {
        BoardChoice sparing = new BoardChoice(cost);
        rows.forEach(row -> sparing.rows.add(Arrays.stream(row).map(v -> v / factor).toArray()));
        return sparing;
    }

    /** False if even all boards break a row: then no choice meets the bill. */
    boolean mayBeMet() {
        return rows.stream().allMatch(row -> most(row, new byte[cost.length]) >= 1 - BROKEN);
    }

    /**
     * The bound.
     *
     * @param enough a choice of this cost is known: nothing dearer is looked at, and it ends the search
     * @param nodes  most that are looked at
     */
    Bound least(double enough, int nodes) {
        PriorityQueue<Node> open = new PriorityQueue<>(Comparator.comparingDouble(Node::bound));
        push(open, new byte[cost.length], rows.isEmpty() ? List.of() : rows.subList(rows.size() - 1, rows.size()),
            enough);
        for (int looked = 0; !open.isEmpty(); looked++) {
            Node node = open.poll();
            int branch = branch(node);
            if (branch < 0) {
                return new Bound(node.bound, chosen(node.y));
            }
            if (looked == nodes) {
                return new Bound(node.bound, List.of());
            }
            for (byte side : new byte[] {1, -1}) {
                byte[] fixed = node.fixed.clone();
                fixed[branch] = side;
                push(open, fixed, node.active, enough);
            }
        }
        return new Bound(enough, List.of());
    }

    private void push(PriorityQueue<Node> open, byte[] fixed, List<double[]> from, double enough) {
        List<double[]> active = new ArrayList<>(from);
        while (rows.stream().allMatch(row -> most(row, fixed) >= 1 - BROKEN)) {
            Relaxed relaxed = relaxed(fixed, active);
            if (relaxed.value >= enough * (1 - 1e-9)) {
                return;
            }
            double[] broken = mostBroken(relaxed.y);
            if (broken == null || active.contains(broken)) {
                open.add(new Node(relaxed.value, fixed, relaxed.y, active));
                return;
            }
            active.add(broken);
        }
    }

    /** What a row holds if every board that is not ruled out is bought. */
    private static double most(double[] row, byte[] fixed) {
        double most = 0;
        for (int j = 0; j < row.length; j++) {
            most += fixed[j] < 0 ? 0 : Math.min(1, row[j]);
        }
        return most;
    }

    /** The cheapest y from 0 to 1 for some rows; where a row is dearer than its penalty, it is left broken. */
    private Relaxed relaxed(byte[] fixed, List<double[]> active) {
        double[] need = active.stream().mapToDouble(row -> {
            double covered = 0;
            for (int j = 0; j < fixed.length; j++) {
                covered += fixed[j] > 0 ? Math.min(1, row[j]) : 0;
            }
            return Math.max(0, 1 - covered);
        }).toArray();
        double[] penalty = new double[need.length];
        Arrays.fill(penalty, PENALTY * total);
        int[] free = IntStream.range(0, fixed.length).filter(j -> fixed[j] == 0).toArray();
        CoveringProgram program = new CoveringProgram(need, penalty, free.length);
        for (int f = 0; f < free.length; f++) {
            double[] covers = new double[need.length];
            for (int r = 0; r < need.length; r++) {
                covers[r] = Math.min(active.get(r)[free[f]], need[r]);
            }
            program.add(cost[free[f]], covers, f);
        }
        CoveringProgram.Solution solution = program.solve();
        double value = solution.value();
        double[] y = new double[fixed.length];
        for (int j = 0; j < fixed.length; j++) {
            y[j] = Math.max(0, fixed[j]);
            value += y[j] * cost[j];
        }
        for (int f = 0; f < free.length; f++) {
            y[free[f]] = Math.min(1, solution.x()[f]);
        }
        return new Relaxed(value, y);
    }

    private double[] mostBroken(double[] y) {
        double[] broken = null;
        double least = 1 - BROKEN;
        for (double[] row : rows) {
            double covered = 0;
            for (int j = 0; j < y.length; j++) {
                covered += Math.min(1, row[j]) * y[j];
            }
            if (covered < least) {
                least = covered;
                broken = row;
            }
        }
        return broken;
    }

    /** The board that is least decided; −1 if all are and no row is broken. */
    private int branch(Node node) {
        int branch = -1;
        double most = mostBroken(node.y) == null ? 1e-6 : -1;
        for (int j = 0; j < node.y.length; j++) {
            double undecided = node.fixed[j] == 0 ? Math.min(node.y[j], 1 - node.y[j]) : -1;
            if (undecided > most) {
                most = undecided;
                branch = j;
            }
        }
        return branch;
    }

    private static List<Integer> chosen(double[] y) {
        List<Integer> chosen = new ArrayList<>();
        for (int j = 0; j < y.length; j++) {
            if (y[j] > 0.5) {
                chosen.add(j);
            }
        }
        return chosen;
    }
}
