package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Variable;

/** The cheapest choices of a few boards, against all choices there are. */
class BoardChoiceTest {

    private static final int NODES = 10_000;

    private record Case(double[] cost, List<double[]> most, List<Double> needed) {

        static Case random(SplittableRandom random) {
            double[] cost = random.ints(6, 5, 30).asDoubleStream().toArray();
            List<double[]> most = new ArrayList<>();
            List<Double> needed = new ArrayList<>();
            for (int r = 0; r < 4; r++) {
                most.add(random.ints(6, -2, 12).asDoubleStream().toArray());
                needed.add(random.nextDouble(8, 30));
            }
            return new Case(cost, most, needed);
        }

        BoardChoice choice() {
            BoardChoice choice = new BoardChoice(cost);
            for (int r = 0; r < most.size(); r++) {
                choice.add(most.get(r), needed.get(r));
            }
            return choice;
        }

        boolean satisfies(List<Integer> boards, double factor) {
            return IntStream.range(0, most.size()).allMatch(r -> boards.stream()
                .mapToDouble(j -> Math.max(0, most.get(r)[j])).sum() >= factor * needed.get(r) - 1e-9);
        }

        double cost(List<Integer> boards) {
            return boards.stream().mapToDouble(j -> cost[j]).sum();
        }

        /** By looking at all choices; infinite if none satisfies every row. */
        double least(double factor) {
            return IntStream.range(0, 1 << cost.length).mapToObj(bits -> IntStream.range(0, cost.length)
                .filter(j -> (bits >> j & 1) == 1).boxed().toList())
                .filter(some -> satisfies(some, factor)).mapToDouble(this::cost).min().orElse(Double.POSITIVE_INFINITY);
        }

        /** With shares of boards, and no board counting for more than a whole row. */
        double relaxed() {
            ExpressionsBasedModel model = new ExpressionsBasedModel();
            Variable[] y = Arrays.stream(cost).mapToObj(c -> model.newVariable("y").lower(0).upper(1).weight(c))
                .toArray(Variable[]::new);
            for (int r = 0; r < most.size(); r++) {
                Expression row = model.newExpression("row" + r).lower(1);
                for (int j = 0; j < y.length; j++) {
                    row.set(y[j], Math.max(0, Math.min(1, most.get(r)[j] / needed.get(r))));
                }
            }
            return model.minimise().getValue();
        }
    }

    // Reference: all 64 choices of six boards, under four random rows.
    @Test
    void theBoundIsTheCostOfTheCheapestChoice() {
        SplittableRandom random = new SplittableRandom(1);
        int met = 0;
        for (int run = 0; run < 60; run++) {
            Case c = Case.random(random);
            for (double factor : new double[] {1, 1.15}) {
                double least = c.least(factor);
                BoardChoice choice = factor == 1 ? c.choice() : c.choice().sparing(factor);

                BoardChoice.Bound bound = choice.least(1000, NODES);

                assertEquals(least < 1000, choice.mayBeMet(), "run " + run);
                assertEquals(Math.min(1000, least), bound.bound(), 1e-6, "run " + run);
                if (least < 1000) {
                    met++;
                    assertEquals(least, c.cost(bound.boards()), 1e-9, "run " + run);
                    assertTrue(c.satisfies(bound.boards(), factor), "run " + run + " " + bound);
                }
            }
        }
        assertTrue(met > 40 && met < 110, met + " met");
    }

    // Reference: ojAlgo, the same linear programme.
    @Test
    void withoutBranchingTheBoundIsThatOfTheLinearProgramme() {
        SplittableRandom random = new SplittableRandom(2);
        int open = 0;
        for (int run = 0; run < 40; run++) {
            Case c = Case.random(random);
            if (c.least(1) < 1000) {
                BoardChoice.Bound bound = c.choice().least(1000, 0);

                assertEquals(c.relaxed(), bound.bound(), 1e-6, "run " + run);
                open += bound.boards().isEmpty() ? 1 : 0;
            }
        }
        assertTrue(open > 15, open + " to branch on");
    }

    // Worked by hand: of boards at 7, 5 and 4 that hold 6, 4 and 3 of 7, the cheapest choice is the last two for 9.
    @Test
    void aChoiceThatIsKnownEndsTheSearchAtItsCost() {
        BoardChoice choice = new BoardChoice(new double[] {7, 5, 4});
        choice.add(new double[] {6, 4, 3}, 7);

        assertEquals(new BoardChoice.Bound(9, List.of(1, 2)), choice.least(9.01, NODES));
        assertEquals(new BoardChoice.Bound(9, List.of()), choice.least(9, NODES));
        assertEquals(new BoardChoice.Bound(3, List.of()), choice.least(3, NODES));
    }

    @Test
    void whereNothingIsNeededNothingIsBought() {
        BoardChoice choice = new BoardChoice(new double[] {7, 5});
        assertEquals(new BoardChoice.Bound(0, List.of()), choice.least(100, NODES));

        choice.add(new double[] {0, 0}, 0);
        choice.add(new double[] {0, 0}, -1);

        assertTrue(choice.mayBeMet());
        assertEquals(new BoardChoice.Bound(0, List.of()), choice.least(100, NODES));
    }

    // Worked by hand: 3 + 4 hold 7 to the last bit, and 7.001 is more than both have.
    @Test
    void allBoardsMayJustDo() {
        BoardChoice enough = new BoardChoice(new double[] {1, 1});
        BoardChoice tooLittle = new BoardChoice(new double[] {1, 1});
        enough.add(new double[] {3, 4}, 7);
        tooLittle.add(new double[] {3, 4}, 7.001);

        assertTrue(enough.mayBeMet());
        assertFalse(enough.sparing(1.001).mayBeMet());
        assertFalse(tooLittle.mayBeMet());
        assertEquals(new BoardChoice.Bound(50, List.of()), tooLittle.least(50, NODES));
    }
}
