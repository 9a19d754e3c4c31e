package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import outwind.numeric.plate.Compliance;
import outwind.numeric.plate.OrthotropicPlate;
import outwind.numeric.plate.Rigidity;

/** On boards of fifteen nodes, five along and three across. */
class HeldBoardTest {

    private static final Push PUSH = new Push(50, 0.1);

    /** Springs at three corners and dents over supports (mm per N), as the board is modelled. */
    private static final double FLOATING = 1000;
    private static final double DENT = 2e-6;

    /** Twice the dent under the push itself, and what rounding leaves of springs so soft (mm). */
    private static final double CLOSE = 2e-4;

    /** A board and its weight at every node. */
    private record Loaded(Compliance plate, double[] weight) {

        static Loaded random(Random random, double weight) {
            double length = 400 + 1200 * random.nextDouble();
            double width = 100 + 150 * random.nextDouble();
            double d = 1e6 + 1e7 * random.nextDouble();
            Compliance plate = OrthotropicPlate.compliance(
                new double[] {0, 0.2 * length, 0.45 * length, 0.8 * length, length},
                new double[] {0, 0.4 * width, width}, new Rigidity(20 * d, d, 0.4 * d, d));
            double[] weights = new double[plate.size()];
            Arrays.setAll(weights, i -> weight * (0.5 + random.nextDouble()) / weights.length);
            return new Loaded(plate, weights);
        }

        HeldBoard held() {
            return new HeldBoard(plate, weight, PUSH);
        }

        /** How far a push moves a node, from every choice of bearing supports tried in turn. */
        double movement(List<Integer> supports, int pushed) {
            double before = sunk(supports, MatrixUtils.createRealVector(weight)).getEntry(pushed);
            RealVector load = MatrixUtils.createRealVector(weight);
            load.addToEntry(pushed, PUSH.force());
            double moved = sunk(supports, load).getEntry(pushed) - before;
            return moved < 10 ? moved : Double.POSITIVE_INFINITY;
        }

        /** How far each node lies below where supports just touch. */
        private RealVector sunk(List<Integer> supports, RealVector load) {
            RealMatrix f = MatrixUtils.createRealMatrix(plate.onSprings(FLOATING).deflection());
            for (int mask = 0; mask < 1 << supports.size(); mask++) {
                int chosen = mask;
                List<Integer> bearing = IntStream.range(0, supports.size()).filter(k -> (chosen >> k & 1) == 1)
                    .mapToObj(supports::get).toList();
                double[] reactions = reactions(f, bearing, load);
                RealVector rest = load.copy();
                for (int k = 0; k < reactions.length; k++) {
                    rest.addToEntry(bearing.get(k), -reactions[k]);
                }
                RealVector sunk = f.operate(rest);
                if (Arrays.stream(reactions).allMatch(r -> r >= -1e-6)
                    && supports.stream().allMatch(s -> bearing.contains(s) || sunk.getEntry(s) <= 1e-7)) {
                    return sunk;
                }
            }
            throw new AssertionError("no choice of " + supports + " fits");
        }

        private static double[] reactions(RealMatrix f, List<Integer> bearing, RealVector load) {
            if (bearing.isEmpty()) {
                return new double[0];
            }
            int[] nodes = bearing.stream().mapToInt(i -> i).toArray();
            RealVector right = MatrixUtils.createRealVector(
                Arrays.stream(nodes).mapToDouble(i -> f.getRowVector(i).dotProduct(load)).toArray());
            RealMatrix dented = f.getSubMatrix(nodes, nodes)
                .add(MatrixUtils.createRealIdentityMatrix(nodes.length).scalarMultiply(DENT));
            return new LUDecomposition(dented, 1e-14).getSolver().solve(right).toArray();
        }
    }

    private static List<Integer> someNodes(Random random, int least, int most) {
        List<Integer> nodes = new ArrayList<>(IntStream.range(0, 15).boxed().toList());
        Collections.shuffle(nodes, random);
        return nodes.subList(0, least + random.nextInt(most - least + 1));
    }

    private static void assertSameMovement(double expected, double actual, String what) {
        if (Double.isInfinite(expected) || Double.isInfinite(actual)) {
            assertEquals(expected, actual, what);
        } else {
            assertEquals(expected, actual, CLOSE, what);
        }
    }

    // Independent: supports push up and never pull, so of all choices of bearing supports one fits; each is tried, by
    // the solver of another library. Light boards let go of supports and tip, heavy ones do not.
    @Test
    void movementsAreThoseOfEveryChoiceOfBearingSupportsTriedInTurn() {
        Random random = new Random(20260701);
        int tipped = 0;
        int moved = 0;
        for (int board = 0; board < 60; board++) {
            Loaded loaded = Loaded.random(random, board % 3 == 0 ? 20 : board % 3 == 1 ? 80 : 2000);
            HeldBoard held = loaded.held();
            List<Integer> supports = someNodes(random, 1, 6);

            held.restOn(supports);

            double greatest = 0;
            for (int p = 0; p < 15; p++) {
                double expected = loaded.movement(supports, p);
                assertSameMovement(expected, held.movement(p), "board " + board + " on " + supports + " at " + p);
                tipped += Double.isInfinite(expected) ? 1 : 0;
                moved += expected > 0.01 && expected < 10 ? 1 : 0;
                greatest = Math.max(greatest, expected);
            }
            assertSameMovement(greatest, held.movement(held.weakest()), "board " + board);
            assertSameMovement(greatest, held.greatest(Double.POSITIVE_INFINITY), "board " + board);
        }
        assertTrue(tipped > 100 && moved > 100, tipped + " tip, " + moved + " move");
    }

    // Identity: how the supports came to be there does not matter.
    @Test
    void supportsPutInAndTakenOutLeaveTheBoardAsIfLetDownOnTheRest() {
        Random random = new Random(20260702);
        for (int board = 0; board < 30; board++) {
            Loaded loaded = Loaded.random(random, board % 2 == 0 ? 30 : 300);
            HeldBoard held = loaded.held();
            List<Integer> supports = new ArrayList<>(someNodes(random, 3, 6));
            held.restOn(supports);
            for (int change = 0; change < 6; change++) {
                int node = random.nextInt(15);
                if (supports.remove((Integer) node)) {
                    held.remove(node);
                } else {
                    supports.add(node);
                    held.add(node);
                }
                HeldBoard fresh = loaded.held();
                fresh.restOn(supports);
                for (int p = 0; p < 15; p++) {
                    assertSameMovement(fresh.movement(p), held.movement(p), "board " + board + " on " + supports);
                }
                if (change == 3) {
                    supports = new ArrayList<>(someNodes(random, 2, 5));
                    held.restOn(supports);
                }
            }
        }
    }

    // Identity: under a weight that keeps every support bearing, all is linear, and what one support more or less does
    // is known exactly before it is put in or taken out.
    @Test
    void whatOneSupportMoreOrLessDoesToAHeavyBoardIsToldBeforehand() {
        Random random = new Random(20260703);
        for (int board = 0; board < 30; board++) {
            HeldBoard held = Loaded.random(random, 1e6).held();
            List<Integer> supports = List.of(0, 2, 7, 12, 14);
            held.restOn(supports);
            for (int p = 0; p < 15; p++) {
                double with = held.movementWith(4, p);
                held.add(4);
                double put = held.movement(p);
                held.remove(4);
                if (p != 4 && !supports.contains(p)) {
                    assertEquals(put, with, 1e-6, "pushed at " + p);
                }
            }
            double without = held.movementWithout(7);
            held.remove(7);
            assertEquals(held.movement(7), without, 1e-6);
            assertEquals(0, held.movementWithout(3));
        }
    }

    // Identity: supports that stay as they are hold no better than supports that may let go, unless one that bears
    // nothing catches the board, and then nothing is known. Once it was stated all the same, and a shim that the rest
    // held without was taken for needed.
    @Test
    void noMoreIsToldBeforehandThanOneSupportLessLetsTheBoardMove() {
        Random random = new Random(20260705);
        int stated = 0;
        for (int board = 0; board < 60; board++) {
            HeldBoard held = Loaded.random(random, board % 2 == 0 ? 40 : 400).held();
            List<Integer> supports = someNodes(random, 3, 6);
            held.restOn(supports);
            for (int support : supports) {
                double without = held.movementWithout(support);
                held.remove(support);
                assertTrue(without <= held.movement(support) + CLOSE, board + ": " + without + " without " + support);
                held.add(support);
                stated += without > 0.01 ? 1 : 0;
            }
        }
        assertTrue(stated > 50, stated + " stated");
    }

    // A limit ends the look at the first place that moves as far; that place is remembered and looked at first.
    @Test
    void theFirstPlaceThatMovesTooFarIsRemembered() {
        HeldBoard held = Loaded.random(new Random(20260704), 2000).held();
        held.restOn(List.of(0, 2, 12, 14));
        int weakest = held.weakest();
        double most = held.movement(weakest);

        assertEquals(most, held.greatest(most * 1.01), 1e-12);
        assertEquals(most, held.greatest(most), 1e-12);
        assertEquals(weakest, held.lastWeak());
        double some = held.greatest(most / 2);
        assertTrue(some >= most / 2);
        assertEquals(some, held.movement(held.lastWeak()), 1e-12);
    }

    // Places put first do not push others out: the corner at node 0, which moved least of all, tips once it is let go.
    @Test
    void everyPlaceIsStillLookedAtAfterSomeWerePutFirst() {
        HeldBoard held = Loaded.random(new Random(20260706), 2000).held();
        held.restOn(List.of(0, 2, 12, 14));
        for (double share : new double[] {0.5, 0.2, 0.9}) {
            held.greatest(share * held.movement(held.weakest()));
        }

        held.restOn(List.of(6, 8, 12, 14));

        assertEquals(0, held.weakest());
        assertEquals(held.movement(0), held.greatest(Double.POSITIVE_INFINITY));
    }
}
