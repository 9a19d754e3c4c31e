package outwind.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

class CoveringProgramTest {

    /** A random program, columns in the order in which they are added. */
    private record Case(double[] need, double[] penalty, int groups, double[] cost, double[][] covers, int[] group) {

        static Case random(SplittableRandom random) {
            return random(random, 1 + random.nextInt(8), 1 + random.nextInt(10), 1 + random.nextInt(60));
        }

        static Case random(SplittableRandom random, int needs, int groups, int columns) {
            Case c = new Case(new double[needs], new double[needs], groups, new double[columns],
                new double[columns][needs], new int[columns]);
            Arrays.setAll(c.need, i -> random.nextInt(12));
            Arrays.setAll(c.penalty, i -> 1 + 30 * random.nextDouble());
            Arrays.setAll(c.cost, p -> random.nextInt(5) == 0 ? 10 : 40 * random.nextDouble());
            Arrays.setAll(c.group, p -> random.nextInt(groups));
            for (double[] column : c.covers) {
                Arrays.setAll(column, i -> Math.max(0, random.nextInt(8) - 3));
            }
            return c;
        }

        CoveringProgram.Solution solved(int step) {
            CoveringProgram program = new CoveringProgram(need, penalty, groups);
            for (int p = 0; p < cost.length; p++) {
                program.add(cost[p], covers[p], group[p]);
                if (p % step == 0) {
                    program.solve();
                }
            }
            return program.solve();
        }
    }

    // Reference: ojAlgo, ExpressionsBasedModel.minimise, 300 random programs.
    @Test
    void anIndependentSolverFindsTheSameOptimum() {
        SplittableRandom random = new SplittableRandom(31);
        for (int run = 0; run < 300; run++) {
            Case c = Case.random(random);

            double value = c.solved(1000).value();

            assertEquals(byIndependentSolver(c), value, 1e-7 * (1 + value), "run " + run);
        }
    }

    // Solved after every few columns, so that the inverse is computed again between solves; the same reference.
    @Test
    void manyShortSolvesEndAtTheSameOptimum() {
        SplittableRandom random = new SplittableRandom(32);
        for (int run = 0; run < 5; run++) {
            Case c = Case.random(random, 30, 25, 300);

            double value = c.solved(3).value();

            assertEquals(byIndependentSolver(c), value, 1e-7 * (1 + value), "run " + run);
        }
    }

    private static double byIndependentSolver(Case c) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        List<Expression> needs = new ArrayList<>();
        for (int i = 0; i < c.need.length; i++) {
            needs.add(model.newExpression("need" + i).lower(c.need[i])
                .set(model.newVariable("short" + i).lower(0).weight(c.penalty[i]), 1));
        }
        List<Expression> groups = new ArrayList<>();
        for (int g = 0; g < c.groups; g++) {
            groups.add(model.newExpression("group" + g).upper(1));
        }
        for (int p = 0; p < c.cost.length; p++) {
            Variable x = model.newVariable("x" + p).lower(0).weight(c.cost[p]);
            groups.get(c.group[p]).set(x, 1);
            for (int i = 0; i < c.need.length; i++) {
                if (c.covers[p][i] != 0) {
                    needs.get(i).set(x, c.covers[p][i]);
                }
            }
        }
        Optimisation.Result result = model.minimise();
        assertTrue(result.getState().isOptimal(), result.toString());
        return result.getValue();
    }

    // Identity: strong duality, Σ need·price + Σ groupCost = value, with multipliers that are feasible.
    @Test
    void theMultipliersProveTheOptimum() {
        SplittableRandom random = new SplittableRandom(32);
        for (int run = 0; run < 300; run++) {
            Case c = Case.random(random);

            CoveringProgram.Solution solution = c.solved(1000);

            double dual = Arrays.stream(solution.groupCost()).sum();
            for (int i = 0; i < c.need.length; i++) {
                dual += c.need[i] * solution.prices()[i];
                assertTrue(solution.prices()[i] >= 0 && solution.prices()[i] <= c.penalty[i]);
            }
            assertEquals(solution.value(), dual, 1e-7 * (1 + dual), "run " + run);
            for (int p = 0; p < c.cost.length; p++) {
                double reduced = c.cost[p] - solution.groupCost()[c.group[p]];
                for (int i = 0; i < c.need.length; i++) {
                    reduced -= c.covers[p][i] * solution.prices()[i];
                }
                assertTrue(reduced > -1e-6, "run " + run);
            }
        }
    }

    // Identity: it does not matter when columns are added.
    @Test
    void columnsAddedOneByOneGiveTheSameOptimum() {
        SplittableRandom random = new SplittableRandom(33);
        for (int run = 0; run < 100; run++) {
            Case c = Case.random(random);

            double value = c.solved(1000).value();

            assertEquals(value, c.solved(3).value(), 1e-8 * (1 + value), "run " + run);
        }
    }

    // Worked by hand: 3 needed; the first column gives 2 for 4 and may be taken once, the second 1 for 3; the rest,
    // nothing, as one short costs more.
    @Test
    void aGroupIsTakenOnce() {
        CoveringProgram program = new CoveringProgram(new double[] {3}, new double[] {10}, 2);
        program.add(4, new double[] {2}, 0);
        program.add(3, new double[] {1}, 1);

        CoveringProgram.Solution solution = program.solve();

        assertEquals(7, solution.value(), 1e-12);
        assertEquals(0, solution.shortage()[0], 1e-12);
    }
}
