package outwind.setup;

import java.util.Arrays;
import outwind.numeric.plate.Compliance;

/**
 * A board on point supports that push up and never pull, held down by its own weight.
 *
 * <pre>
 *   u = F·λ − F·(q + P·e),   u ≥ 0,   λ ≥ 0,   u·λ = 0     at the chosen nodes
 * </pre>
 * F is the plate's compliance, q its weight, P the push at one node, λ the reactions and u the height above where each
 * support just touches the unloaded board. F is positive definite, so there is one answer, and switching one support
 * at a time on or off leads to it: the worst first, the first wrong one if that should go on for long.
 *
 * <p>All nodes share one table that is kept swept over the supports which bear under weight alone. Its entries are
 * then the answers themselves: reactions per push at supports, and movement per push everywhere else. Only where a
 * push would lift a support or drive the board onto another are the few switched ones solved for beside it.
 *
 * <p>Source: K. G. Murty, Opsearch 11 (1974) 123–130 (least-index scheme, finite for every P-matrix); A. P. Dempster,
 * Elements of Continuous Multivariate Analysis, 1969 (sweeping); R. J. Vanderbei, SIAM Journal on Optimization 5 (1995)
 * 100–113 (quasi-definite matrices).
 */
final class HeldBoard {

    /** Springs at three corners that stand for floating (mm per N): a give of 0.1 mm puts 0.0001 N on them. */
    private static final double FLOATING = 1000;

    /**
     * How far wood dents over a support (mm per N): 0.0001 mm under 50 N, nothing beside the give. It keeps contacts
     * that lie close together from being one and the same to rounding.
     */
    private static final double DENT = 2e-6;

    /** Rounding in the table, as a share of the push and of the give. */
    private static final double ROUNDING = 1e-8;

    /** Movements beyond this are a board that tips (mm); the springs would let it go some metres. */
    private static final double TIPPED = 10;

    private final double[][] fresh;
    private final Push push;
    private final int n;
    private final double[][] table;
    private final boolean[] bears;
    private final boolean[] chosen;
    /** Places in the order they are tried; those that lately moved too far come first, to find the next soon. */
    private final int[] order;
    private int[] supports = new int[0];
    /** For each node the supports that its last push switched: as a rule nearly those that its next one will. */
    private final int[][] lastSwitched;

    /**
     * @param weight of the board at each node (N)
     */
    HeldBoard(Compliance compliance, double[] weight, Push push) {
        this.push = push;
        this.n = compliance.size();
        this.fresh = withWeight(compliance.onSprings(FLOATING).deflection(), weight);
        this.table = new double[n][n + 1];
        this.bears = new boolean[n];
        this.chosen = new boolean[n];
        this.order = new int[n];
        Arrays.setAll(order, i -> i);
        this.lastSwitched = new int[n][0];
    }

    private static double[][] withWeight(double[][] f, double[] weight) {
        int n = f.length;
        double[][] table = new double[n][];
        for (int i = 0; i < n; i++) {
            table[i] = Arrays.copyOf(f[i], n + 1);
            table[i][i] += DENT;
            for (int j = 0; j < n; j++) {
                table[i][n] += f[i][j] * weight[j];
            }
        }
        return table;
    }

    /** Lets the board down on these nodes and no others, computed afresh. */
    void restOn(Iterable<Integer> nodes) {
        for (int i = 0; i < n; i++) {
            System.arraycopy(fresh[i], 0, table[i], 0, n + 1);
        }
        Arrays.fill(bears, false);
        Arrays.fill(chosen, false);
        for (int node : nodes) {
            chosen[node] = true;
            switchOver(node);
        }
        settle();
    }

    /** Puts a support in; it must not be there yet. */
    void add(int node) {
        chosen[node] = true;
        settle();
    }

    /** Takes a support out again. */
    void remove(int node) {
        chosen[node] = false;
        if (bears[node]) {
            switchOver(node);
        }
        settle();
    }

    /** The node that a push moves furthest, among all. */
    int weakest() {
        int weakest = 0;
        double most = -1;
        for (int p = 0; p < n; p++) {
            double movement = movement(p);
            if (movement > most) {
                most = movement;
                weakest = p;
            }
        }
        return weakest;
    }

    /** Greatest movement of any pushed node (mm), or anything not under {@code limit} once one is not. */
    double greatest(double limit) {
        double greatest = 0;
        for (int k = 0; k < n; k++) {
            int p = order[k];
            greatest = Math.max(greatest, movement(p));
            if (greatest >= limit) {
                System.arraycopy(order, 0, order, 1, k);
                order[0] = p;
                return greatest;
            }
        }
        return greatest;
    }

    /** The node that a push was last seen to move too far. */
    int lastWeak() {
        return order[0];
    }

    /** How far a push at node {@code p} moves it (mm); infinite if the board tips. */
    double movement(int p) {
        if (bears[p]) {
            return 0;
        }
        double[] row = table[p];
        for (int s : supports) {
            double value = table[s][n] + push.force() * row[s];
            if (wrong(value, bears[s]) > 0) {
                return movementWithSwitches(p);
            }
        }
        return orTipped(push.force() * row[p]);
    }

    /**
     * At least how far a push would move the board at one of its supports, were that taken away (mm): the others hold
     * it no better than by staying as they are. Enough to rule a shim needed, not to rule it needless. Nothing is
     * known, 0, where a support bears nothing under weight alone: it may yet catch the board.
     */
    double movementWithout(int support) {
        boolean allBear = Arrays.stream(supports).allMatch(s -> bears[s]);
        return allBear && bears[support] ? -push.force() / table[support][support] : 0;
    }

    /** How far a push would move node {@code p} with one more support (mm), as if the others stayed as they are. */
    double movementWith(int support, int p) {
        double[] row = table[p];
        return push.force() * (row[p] - row[support] * row[support] / table[support][support]);
    }

    /** By what share of the push a support pulls, or of the give it is passed through; not above 0 if it does not. */
    private double wrong(double value, boolean bearing) {
        return (bearing ? -value / push.force() : value / push.give()) - ROUNDING;
    }

    private static double orTipped(double movement) {
        return movement < TIPPED ? movement : Double.POSITIVE_INFINITY;
    }

    /** The supports under weight alone, one at a time on or off until none is wrong. */
    private void settle() {
        supports = chosenNodes();
        for (int step = 0; ; step++) {
            double[] value = new double[supports.length];
            boolean[] bearing = new boolean[supports.length];
            for (int k = 0; k < value.length; k++) {
                value[k] = table[supports[k]][n];
                bearing[k] = bears[supports[k]];
            }
            int k = wrongSupport(value, bearing, step);
            if (k < 0) {
                return;
            }
            switchOver(supports[k]);
        }
    }

    private int[] chosenNodes() {
        int count = 0;
        int[] nodes = new int[n];
        for (int i = 0; i < n; i++) {
            if (chosen[i]) {
                nodes[count++] = i;
            }
        }
        return Arrays.copyOf(nodes, count);
    }

    /**
     * Switches supports under weight and push. Those that stay as under weight alone stay eliminated; with b what the
     * table tells and C the switched ones,
     * <pre>
     *   y = T_CC⁻¹·b_C,   elsewhere b − T_·C·y,   at C itself y (now bearing) or −y (now let go)
     * </pre>
     */
    private double movementWithSwitches(int p) {
        int m = supports.length;
        double[] unswitched = new double[m];
        boolean[] bearing = new boolean[m];
        for (int i = 0; i < m; i++) {
            unswitched[i] = table[supports[i]][n] + push.force() * table[p][supports[i]];
            bearing[i] = bears[supports[i]];
        }
        int[] switched = positions(lastSwitched[p]);
        for (int k : switched) {
            bearing[k] = !bearing[k];
        }
        double[] value = new double[m];
        for (int step = 0; ; step++) {
            double[] y = solve(switched, unswitched);
            for (int i = 0; i < m; i++) {
                value[i] = unswitched[i] - dot(table[supports[i]], switched, y);
            }
            for (int c = 0; c < switched.length; c++) {
                value[switched[c]] = bearing[switched[c]] ? y[c] : -y[c];
            }
            int wrong = wrongSupport(value, bearing, step);
            if (wrong < 0) {
                lastSwitched[p] = new int[switched.length];
                for (int c = 0; c < switched.length; c++) {
                    lastSwitched[p][c] = supports[switched[c]];
                }
                // Where the push drives the board onto an idle support at its own place, this is the gap that was left there.
                return orTipped(push.force() * table[p][p] - dot(table[p], switched, y));
            }
            bearing[wrong] = !bearing[wrong];
            switched = toggled(switched, wrong);
        }
    }

    /** Where nodes stand among the supports; those that are none any more are left out. */
    private int[] positions(int[] nodes) {
        int[] positions = new int[nodes.length];
        int count = 0;
        for (int node : nodes) {
            int at = Arrays.binarySearch(supports, node);
            if (at >= 0) {
                positions[count++] = at;
            }
        }
        return Arrays.copyOf(positions, count);
    }

    private static int[] toggled(int[] switched, int k) {
        for (int c = 0; c < switched.length; c++) {
            if (switched[c] == k) {
                int[] without = Arrays.copyOf(switched, switched.length - 1);
                System.arraycopy(switched, c + 1, without, c, without.length - c);
                return without;
            }
        }
        int[] with = Arrays.copyOf(switched, switched.length + 1);
        with[switched.length] = k;
        return with;
    }

    private double dot(double[] row, int[] switched, double[] y) {
        double sum = 0;
        for (int c = 0; c < switched.length; c++) {
            sum += row[supports[switched[c]]] * y[c];
        }
        return sum;
    }

    /** Elimination without exchange of rows: a table partly swept is quasi-definite, any order of pivots will do. */
    private double[] solve(int[] switched, double[] unswitched) {
        int size = switched.length;
        double[][] rows = new double[size][size + 1];
        for (int c = 0; c < size; c++) {
            for (int d = 0; d < size; d++) {
                rows[c][d] = table[supports[switched[c]]][supports[switched[d]]];
            }
            rows[c][size] = unswitched[switched[c]];
        }
        for (int c = 0; c < size; c++) {
            for (int i = c + 1; i < size; i++) {
                double factor = rows[i][c] / rows[c][c];
                for (int d = c; d <= size; d++) {
                    rows[i][d] -= factor * rows[c][d];
                }
            }
        }
        double[] y = new double[size];
        for (int c = size - 1; c >= 0; c--) {
            double sum = rows[c][size];
            for (int d = c + 1; d < size; d++) {
                sum -= rows[c][d] * y[d];
            }
            y[c] = sum / rows[c][c];
        }
        return y;
    }

    /** Which support to switch, as a position in {@code supports}; −1 if all are right. */
    private int wrongSupport(double[] value, boolean[] bearing, int step) {
        int patience = 2 * value.length + 8;
        if (step > 400 * patience) {
            throw new IllegalStateException("supports do not settle after " + step + " switches: "
                + Arrays.toString(supports));
        }
        int worst = -1;
        double most = 0;
        for (int k = 0; k < value.length; k++) {
            double wrong = wrong(value[k], bearing[k]);
            if (wrong > most) {
                worst = k;
                most = wrong;
                if (step > patience) {
                    return worst;
                }
            }
        }
        return worst;
    }

    /** Sweeps one row and column in, or out again. */
    private void switchOver(int k) {
        double[] pivotRow = table[k];
        double pivot = pivotRow[k];
        double sign = bears[k] ? -1 : 1;
        for (int i = 0; i < n; i++) {
            if (i == k) {
                continue;
            }
            double[] row = table[i];
            double factor = row[k] / pivot;
            for (int j = 0; j < row.length; j++) {
                row[j] -= factor * pivotRow[j];
            }
            row[k] = sign * factor;
        }
        for (int j = 0; j < pivotRow.length; j++) {
            pivotRow[j] *= sign / pivot;
        }
        pivotRow[k] = -1 / pivot;
        bears[k] = !bears[k];
    }
}
