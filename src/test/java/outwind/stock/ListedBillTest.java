package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bills searched over boards whose ways to be cut are listed: quick, and every answer is known by trying all. */
class ListedBillTest {

    private record Case(List<ListedBoard> boards, double[] cost, int[] wanted, double[] areas) {

        static Case random(SplittableRandom random, int boards, int items, int ways, int most, int wanted) {
            List<ListedBoard> all = IntStream.range(0, boards)
                .mapToObj(j -> ListedBoard.random(random, items, ways, most)).toList();
            return new Case(all, random.ints(boards, 5, 25).asDoubleStream().toArray(),
                random.ints(items, 1, wanted + 1).toArray(), random.ints(items, 2, 9).asDoubleStream().toArray());
        }

        double costOf(Map<Integer, Yield.Pattern> patterns) {
            return patterns.keySet().stream().mapToDouble(j -> cost[j]).sum();
        }

        double missed(Map<Integer, Yield.Pattern> patterns) {
            int[] left = ListedBoard.left(boards, wanted, patterns);
            return IntStream.range(0, left.length).mapToDouble(i -> left[i] * areas[i]).sum();
        }
    }

    private static List<AskedBoard> asked(List<ListedBoard> boards, Queue<double[]> asked, double loose) {
        return boards.stream().map(board -> new AskedBoard(board, asked, loose, false)).toList();
    }

    private static ListedBoard giving(int blanks) {
        return ListedBoard.of(new int[] {blanks});
    }

    // Reference: every way of every board after every other, for stacks of four kinds. How often
    // a board is asked on average is a snapshot, and is not to grow; two parts of an answer are tried at a time.
    @ParameterizedTest
    @CsvSource({"5, 3, 3, 3, 13, 5.63", "6, 3, 3, 2, 10, 5.69", "7, 4, 5, 1, 6, 5.64", "8, 4, 10, 2, 9, 7.07"})
    void billsAreCutAtLeastCostWithinAFewQuestions(int boards, int items, int ways, int most, int wanted,
            double questions) {
        Queue<double[]> asked = new ConcurrentLinkedQueue<>();
        int met = 0;
        int proven = 0;
        for (int seed = 1; seed <= (ways > 5 ? 12 : 70); seed++) {
            Case c = Case.random(new SplittableRandom(seed), boards, items, ways, most, wanted);
            OptionalDouble least = ListedBoard.leastCost(c.boards, c.cost, c.wanted);
            if (least.isEmpty()) {
                continue;
            }
            met++;

            BillSearch.Answer answer = BillSearch.cheapest(asked(c.boards, asked, 1), c.cost, c.wanted, c.areas,
                Optional.empty()).orElseThrow();

            assertEquals(0, c.missed(answer.patterns()), "seed " + seed);
            assertEquals(least.getAsDouble(), c.costOf(answer.patterns()), 1e-9, "seed " + seed);
            assertTrue(answer.bound() <= least.getAsDouble() + 1e-9, "seed " + seed);
            proven += answer.bound() >= least.getAsDouble() * (1 - 5e-4) ? 1 : 0;
        }
        assertTrue(met > (ways > 5 ? 8 : 40), met + " met");
        assertTrue(proven >= met - 1, proven + " of " + met + " are proven");
        double each = asked.size() / (double) (met * boards);
        assertTrue(each <= questions, each + " questions to each board");
    }

    // Reference: as above. A board that says it might yield more than it does leaves the bound lower, never too high.
    // How many bounds are closed and how often boards are asked are snapshots.
    @ParameterizedTest
    @CsvSource({"1.02, 25, 24, 931", "1.1, 6, 2, 29412"})
    void looseBoundsOfBoardsLeaveTheBoundBelowTheLeast(double loose, int seeds, int closed, int questions) {
        Queue<double[]> asked = new ConcurrentLinkedQueue<>();
        int proven = 0;
        for (int seed = 1; seed <= seeds; seed++) {
            Case c = Case.random(new SplittableRandom(seed), 7, 4, 5, 1, 6);
            double least = ListedBoard.leastCost(c.boards, c.cost, c.wanted).orElse(0);
            if (least > 0) {
                BillSearch.Answer answer = BillSearch.cheapest(asked(c.boards, asked, loose), c.cost,
                    c.wanted, c.areas, Optional.empty()).orElseThrow();

                assertEquals(least, c.costOf(answer.patterns()), 1e-9, "seed " + seed);
                assertTrue(answer.bound() <= least + 1e-9, "seed " + seed);
                proven += answer.bound() >= least * (1 - 5e-4) ? 1 : 0;
            }
        }
        assertTrue(proven >= closed, proven + " proven");
        assertTrue(asked.size() <= questions, asked.size() + " questions");
    }

    // Worked by hand: two boards of three do. Shares of boards would do with one and a half, for 15.
    @Test
    void thatBoardsAreBoughtWholeLiftsTheBound() {
        BillSearch.Answer answer = BillSearch.cheapest(List.of(giving(2), giving(2), giving(2)),
            new double[] {10, 10, 11}, new int[] {3}, new double[] {7}, Optional.empty()).orElseThrow();

        assertEquals(Set.of(0, 1), answer.patterns().keySet());
        assertEquals(20, answer.bound(), 1e-9);
    }

    // Worked by hand: the second board and the third do, and the third gives its blanks for 2 each: the first prices
    // say so already. Each board is asked for them, twice for the bound, and once where an answer is made.
    @Test
    void whereTheFirstPricesAreRightNoMoreIsAsked() {
        Queue<double[]> asked = new ConcurrentLinkedQueue<>();
        BillSearch.Answer answer = BillSearch.cheapest(asked(List.of(giving(1), giving(2), giving(2)), asked, 1),
            new double[] {5, 2, 4}, new int[] {4}, new double[] {100}, Optional.empty()).orElseThrow();

        assertEquals(Set.of(1, 2), answer.patterns().keySet());
        assertEquals(6, answer.bound(), 1e-9);
        assertEquals(4 * 3, asked.size());
    }

    // Identity: money and areas have no scale.
    @Test
    void scalesOfCostAndAreaDoNotMatter() {
        for (int seed = 1; seed <= 20; seed++) {
            Case c = Case.random(new SplittableRandom(seed), 6, 3, 3, 2, 10);
            double least = ListedBoard.leastCost(c.boards, c.cost, c.wanted).orElse(0);
            for (double scale : new double[] {1e-4, 1e4}) {
                Optional<BillSearch.Answer> answer = BillSearch.cheapest(c.boards,
                    Arrays.stream(c.cost).map(x -> scale * x).toArray(), c.wanted,
                    Arrays.stream(c.areas).map(a -> a / scale).toArray(), Optional.empty());

                assertEquals(least > 0, answer.isPresent(), "seed " + seed);
                answer.ifPresent(found -> {
                    assertEquals(least, c.costOf(found.patterns()), 1e-9);
                    assertEquals(least, found.bound() / scale, 5e-4 * least);
                });
            }
        }
    }

    // Worked by hand: boards that show no way to be cut leave the way that is known, if it is better than none.
    @Test
    void aWayThatIsKnownIsNeverLost() {
        List<ListedBoard> boards = List.of(giving(2), giving(1), giving(2));
        List<AskedBoard> blind = blind(boards);
        double[] cost = {10, 4, 9};
        Map<Integer, Yield.Pattern> known = Map.of(0, ListedBoard.pattern(2), 1, ListedBoard.pattern(1));

        BillSearch.Answer kept = BillSearch.cheapest(blind, cost, new int[] {3}, new double[] {1}, Optional.of(known))
            .orElseThrow();
        BillSearch.Answer bettered = BillSearch.cheapest(boards, cost, new int[] {3}, new double[] {1},
            Optional.of(known)).orElseThrow();

        assertEquals(Set.of(0, 1), kept.patterns().keySet());
        assertTrue(kept.bound() <= 13, "bound " + kept.bound());
        assertEquals(Set.of(1, 2), bettered.patterns().keySet());
        assertEquals(13, bettered.bound(), 1e-9);
        assertEquals(Optional.empty(), BillSearch.cheapest(blind, cost, new int[] {3}, new double[] {1},
            Optional.empty()));
    }

    private static List<AskedBoard> blind(List<ListedBoard> boards) {
        return boards.stream().map(board -> new AskedBoard(board, new ConcurrentLinkedQueue<>(), 1, true)).toList();
    }

    // Worked by hand: prices show no way, but what is left comes out of one board. The cheapest that holds it is taken.
    @Test
    void whatOneBoardHoldsIsCutFromTheCheapest() {
        List<AskedBoard> boards = blind(List.of(giving(1), giving(1), giving(2), giving(3)));
        double[] cost = {10, 4, 9, 8.5};

        assertEquals(Set.of(1), BillSearch.cheapest(boards, cost, new int[] {1}, new double[] {1}, Optional.empty())
            .orElseThrow().patterns().keySet());
        assertEquals(Set.of(3), BillSearch.cheapest(boards, cost, new int[] {2}, new double[] {1}, Optional.empty())
            .orElseThrow().patterns().keySet());
    }

    // Worked by hand: of boards that give their blanks for 2, 1 and 5 each, four come out of the first two: 2 a blank.
    // Prices that are tried are that by six parts, and the programme's by four. An area alone is asked for before.
    @Test
    void theFirstPricesAreThoseOfTheLastBoardThatIsNeeded() {
        double[][] prices = prices(new double[] {4, 2, 5}, 4, 2, 2, 1);

        assertEquals(0.5, prices[0][0], 0);
        assertEquals(0.6 * 2 + 0.4 * prices[2][0], prices[1][0], 1e-12);
        assertTrue(prices[2][0] >= 2 && prices[2][0] <= 5, "price " + prices[2][0]);
    }

    // Worked by hand: with a blank missing the programme's price is what it costs to leave it out: ten times 5, for
    // three.
    @Test
    void aBlankThatIsMissingCostsMoreThanTheStack() {
        double[][] prices = prices(new double[] {4, 1}, 3, 2, 0);

        assertEquals(0.6 * 2 + 0.4 * 50 / 3, prices[1][0], 1e-12);
    }

    private static double[][] prices(double[] cost, int wanted, int... yields) {
        Queue<double[]> asked = new ConcurrentLinkedQueue<>();
        List<AskedBoard> boards = IntStream.range(0, yields.length).mapToObj(j -> new AskedBoard(giving(yields[j]),
            j == 0 ? asked : new ConcurrentLinkedQueue<>(), 1, false)).toList();
        BillSearch.cheapest(boards, cost, new int[] {wanted}, new double[] {0.5}, Optional.empty());
        return asked.toArray(double[][]::new);
    }

    // Another choice of the same cost is no better.
    @Test
    void aWayThatIsKnownIsKeptBesideOneThatCostsAsMuch() {
        Map<Integer, Yield.Pattern> known = Map.of(1, ListedBoard.pattern(2));

        BillSearch.Answer answer = BillSearch.cheapest(List.of(giving(2), giving(2)), new double[] {5, 5}, new int[] {2},
            new double[] {1}, Optional.of(known)).orElseThrow();

        assertEquals(Set.of(1), answer.patterns().keySet());
    }

    // Worked by hand: six blanks are all there are, so that prices show at once that seven cannot be met.
    @Test
    void aBillThatCannotBeMetIsFoundOutAtOnce() {
        Queue<double[]> asked = new ConcurrentLinkedQueue<>();

        assertEquals(Optional.empty(), BillSearch.cheapest(asked(List.of(giving(2), giving(1), giving(3)), asked, 1),
            new double[] {10, 4, 9}, new int[] {7}, new double[] {1}, Optional.empty()));
        assertTrue(asked.size() <= 4 * 3, asked.size() + " questions");
    }

    // Reference: every way of every board after every other.
    @Test
    void asMuchIsCutAsComesOut() {
        Queue<double[]> asked = new ConcurrentLinkedQueue<>();
        for (int seed = 1; seed <= 6; seed++) {
            Case c = Case.random(new SplittableRandom(seed), 9, 3, 3, 2, 24);
            double least = ListedBoard.leastMissed(c.boards, c.wanted, c.areas);

            BillSearch.Answer answer = BillSearch.most(asked(c.boards, asked, 1), c.wanted, c.areas);

            assertEquals(least, c.missed(answer.patterns()), 1e-9, "seed " + seed);
            assertEquals(least, answer.bound(), 1e-9, "seed " + seed);
        }
        // A snapshot, as above.
        assertTrue(asked.size() <= 234, asked.size() + " questions");
    }
}
