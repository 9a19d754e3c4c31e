package outwind.numeric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * A covering linear program that grows column by column.
 *
 * <pre>
 *   minimise    Σ_p cost_p·x_p + Σ_i penalty_i·short_i
 *   subject to  Σ_p a_ip·x_p + short_i ≥ need_i   for every need i
 *               Σ_(p in g) x_p ≤ 1                for every group g;   x, short ≥ 0
 * </pre>
 * Leaving every need short is always allowed, so there is a first basis, and a column that is added leaves the last one
 * feasible. Solved by the revised primal simplex method with an explicit inverse: for some hundred rows. The steepest
 * reduced cost enters; after a run of steps that gain nothing the lowest index does, which cannot cycle.
 *
 * <p>Sources: G. B. Dantzig, W. Orchard-Hays, Math. Tables Aids Comput. 8 (1954) 64–67 (revised simplex); R. G. Bland,
 * Math. Oper. Res. 2 (1977) 103–107 (no cycling). Authors and years from memory.
 */
public final class CoveringProgram {

    /** A pivot smaller than this, or a reduced cost against the dearest column, is rounding. */
    private static final double ROUNDING = 1e-9;

    /** Steps after which the inverse is computed again, whether one solve made them or several. */
    private static final int FRESH = 60;

    /** Steps without gain after which the rule against cycling takes over. */
    private static final int IDLE = 40;

    private static final int MOST_STEPS = 20_000;

    private final double[] need;
    private final double[] penalty;
    private final int groups;
    private double dearest;
    private final List<Column> columns = new ArrayList<>();
    private final int[] basis;
    private double[][] inverse;
    private double[] level;
    private int stepsSinceFresh;

    private record Column(double cost, double[] covers, int group) { }

    /**
     * @param value     of the optimum
     * @param prices    of the needs (multipliers), from 0 to the penalty
     * @param groupCost what the limit of each group costs (multiplier), never above zero
     * @param x         of the columns, in the order in which they were added
     * @param shortage  of the needs
     */
    public record Solution(double value, double[] prices, double[] groupCost, double[] x, double[] shortage) { }

    /**
     * @param need    what is to be covered, none below zero
     * @param penalty for one of each that is left short, above zero
     * @param groups  how many groups there are
     */
    public CoveringProgram(double[] need, double[] penalty, int groups) {
        this.need = need.clone();
        this.penalty = penalty.clone();
        this.groups = groups;
        this.basis = IntStream.range(0, need.length + groups).map(i -> i < need.length ? i : i + need.length).toArray();
        freshen();
    }

    /**
     * Adds a column.
     *
     * @param covers what it covers of each need
     * @param group  the group that it belongs to, from 0
     */
    public void add(double cost, double[] covers, int group) {
        dearest = Math.max(dearest, Math.abs(cost));
        columns.add(new Column(cost, covers.clone(), group));
    }

    /** Solves the program with the columns added so far, from the last basis on. */
    public Solution solve() {
        int idle = 0;
        for (int step = 1; step <= MOST_STEPS; step++) {
            double[] multipliers = multipliers();
            int entering = entering(multipliers, idle > IDLE);
            if (entering < 0) {
                return solution(multipliers);
            }
            double[] direction = direction(entering);
            int leaving = leaving(direction);
            double length = Math.max(0, level[leaving]) / direction[leaving];
            idle = length > ROUNDING ? 0 : idle + 1;
            pivot(leaving, entering, direction, length);
            stepsSinceFresh++;
            if (stepsSinceFresh == FRESH) {
                freshen();
            }
        }
        throw new IllegalStateException("no optimum of " + basis.length + " rows and " + columns.size()
            + " columns after " + MOST_STEPS + " steps");
    }

    // Variables by number: shortages, surpluses, slack of the groups, then the columns.

    private double cost(int variable) {
        int column = variable - 2 * need.length - groups;
        return variable < need.length ? penalty[variable] : column < 0 ? 0 : columns.get(column).cost;
    }

    private double[] row(int variable) {
        double[] row = new double[basis.length];
        int column = variable - 2 * need.length - groups;
        if (variable < need.length) {
            row[variable] = 1;
        } else if (variable < 2 * need.length) {
            row[variable - need.length] = -1;
        } else if (column < 0) {
            row[variable - need.length] = 1;
        } else {
            System.arraycopy(columns.get(column).covers, 0, row, 0, need.length);
            row[need.length + columns.get(column).group] = 1;
        }
        return row;
    }

    private double[] multipliers() {
        double[] multipliers = new double[basis.length];
        for (int r = 0; r < basis.length; r++) {
            double cost = cost(basis[r]);
            for (int i = 0; cost != 0 && i < basis.length; i++) {
                multipliers[i] += cost * inverse[r][i];
            }
        }
        return multipliers;
    }

    private double reduced(int variable, double[] multipliers) {
        int column = variable - 2 * need.length - groups;
        if (variable < need.length) {
            return penalty[variable] - multipliers[variable];
        }
        if (variable < 2 * need.length) {
            return multipliers[variable - need.length];
        }
        if (column < 0) {
            return -multipliers[variable - need.length];
        }
        Column added = columns.get(column);
        double reduced = added.cost - multipliers[need.length + added.group];
        for (int i = 0; i < need.length; i++) {
            reduced -= added.covers[i] * multipliers[i];
        }
        return reduced;
    }

    private int entering(double[] multipliers, boolean lowest) {
        int entering = -1;
        double least = -ROUNDING * (dearest > 0 ? dearest : Arrays.stream(penalty).max().orElse(1));
        for (int variable = 0; variable < 2 * need.length + groups + columns.size(); variable++) {
            double reduced = reduced(variable, multipliers);
            if (reduced < least) {
                entering = variable;
                if (lowest) {
                    break;
                }
                least = reduced;
            }
        }
        return entering;
    }

    private double[] direction(int entering) {
        double[] row = row(entering);
        double[] direction = new double[basis.length];
        for (int r = 0; r < basis.length; r++) {
            for (int i = 0; i < basis.length; i++) {
                direction[r] += inverse[r][i] * row[i];
            }
        }
        return direction;
    }

    private int leaving(double[] direction) {
        int leaving = -1;
        double shortest = Double.POSITIVE_INFINITY;
        for (int r = 0; r < basis.length; r++) {
            if (direction[r] > ROUNDING) {
                double length = Math.max(0, level[r]) / direction[r];
                if (length < shortest || length == shortest && basis[r] < basis[leaving]) {
                    leaving = r;
                    shortest = length;
                }
            }
        }
        if (leaving < 0) {
            throw new IllegalStateException("costs below zero without end");
        }
        return leaving;
    }

    private void pivot(int leaving, int entering, double[] direction, double length) {
        for (int r = 0; r < basis.length; r++) {
            level[r] -= length * direction[r];
        }
        level[leaving] = length;
        basis[leaving] = entering;
        double[] pivotRow = inverse[leaving];
        for (int i = 0; i < basis.length; i++) {
            pivotRow[i] /= direction[leaving];
        }
        for (int r = 0; r < basis.length; r++) {
            if (r != leaving && direction[r] != 0) {
                for (int i = 0; i < basis.length; i++) {
                    inverse[r][i] -= direction[r] * pivotRow[i];
                }
            }
        }
    }

    private void freshen() {
        stepsSinceFresh = 0;
        DMatrixRMaj matrix = new DMatrixRMaj(basis.length, basis.length);
        for (int r = 0; r < basis.length; r++) {
            double[] row = row(basis[r]);
            for (int i = 0; i < basis.length; i++) {
                matrix.set(i, r, row[i]);
            }
        }
        if (!CommonOps_DDRM.invert(matrix)) {
            throw new IllegalStateException("a basis of " + basis.length + " rows has lost its rank");
        }
        inverse = new double[basis.length][basis.length];
        level = new double[basis.length];
        for (int r = 0; r < basis.length; r++) {
            for (int i = 0; i < basis.length; i++) {
                inverse[r][i] = matrix.get(r, i);
                level[r] += inverse[r][i] * (i < need.length ? need[i] : 1);
            }
        }
    }

    private Solution solution(double[] multipliers) {
        double[] x = new double[columns.size()];
        double[] shortage = new double[need.length];
        double value = 0;
        for (int r = 0; r < basis.length; r++) {
            value += cost(basis[r]) * level[r];
            int column = basis[r] - 2 * need.length - groups;
            if (column >= 0) {
                x[column] = Math.max(0, level[r]);
            } else if (basis[r] < need.length) {
                shortage[basis[r]] = Math.max(0, level[r]);
            }
        }
        double[] prices = new double[need.length];
        Arrays.setAll(prices, i -> Math.max(0, Math.min(penalty[i], multipliers[i])));
        return new Solution(value, prices, Arrays.copyOfRange(multipliers, need.length, basis.length), x, shortage);
    }
}
