package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SmallStackTest {

    private static final double[] AREAS = {3, 2, 5};

    // Reference: every way of every board after every other.
    @Test
    void theCheapestChoiceAndTheMostAreThoseOfAllWays() {
        SplittableRandom random = new SplittableRandom(1);
        int met = 0;
        for (int run = 0; run < 60; run++) {
            List<ListedBoard> boards = IntStream.range(0, 4).mapToObj(j ->
                ListedBoard.random(random, 3, 4, 3)).toList();
            double[] cost = random.ints(4, 5, 25).asDoubleStream().toArray();
            int[] wanted = random.ints(3, 4, 12).toArray();
            OptionalDouble least = ListedBoard.leastCost(boards, cost, wanted);
            SmallStack small = SmallStack.of(boards, wanted, AREAS).orElseThrow();

            Map<Integer, Yield.Pattern> cheapest = small.cheapest(wanted, cost).orElseThrow();
            SmallStack.Best most = small.most(AREAS).orElseThrow();

            assertEquals(least.isPresent(), !cheapest.isEmpty(), "run " + run);
            if (least.isPresent()) {
                met++;
                assertEquals(0, Arrays.stream(ListedBoard.left(boards, wanted, cheapest)).sum(), "run " + run);
                assertEquals(least.getAsDouble(), cheapest.keySet().stream().mapToDouble(j -> cost[j]).sum(), 1e-9,
                    "run " + run);
            }
            int[] left = ListedBoard.left(boards, wanted, most.patterns());
            assertEquals(Arrays.toString(left), Arrays.toString(most.left()), "run " + run);
            assertEquals(ListedBoard.leastMissed(boards, wanted, AREAS), IntStream.range(0, 3)
                .mapToDouble(i -> left[i] * AREAS[i]).sum(), 1e-9, "run " + run);
        }
        assertTrue(met > 20 && met < 40, met + " met");
    }

    // Worked by hand: free boards cost nothing, so fewer of them are taken.
    @Test
    void ofChoicesThatCostTheSameTheOneOfFewerBoardsIsTaken() {
        SmallStack small = SmallStack.of(List.of(ListedBoard.of(new int[] {1}), ListedBoard.of(new int[] {1}),
            ListedBoard.of(new int[] {2})), new int[] {2}, new double[] {1}).orElseThrow();

        assertEquals(Set.of(2), small.cheapest(new int[] {2}, new double[] {0, 0, 0}).orElseThrow().keySet());
        assertEquals(Set.of(2), small.cheapest(new int[] {2}, new double[] {4, 4, 8}).orElseThrow().keySet());
        assertEquals(Set.of(0), small.cheapest(new int[] {1}, new double[] {4, 4, 8}).orElseThrow().keySet());
    }

    @Test
    void moreBoardsThanSevenAreTooMany() {
        ListedBoard one = ListedBoard.of(new int[] {1});

        assertTrue(SmallStack.of(Collections.nCopies(7, one), new int[] {1}, new double[] {1}).isPresent());
        assertEquals(Optional.empty(), SmallStack.of(Collections.nCopies(8, one), new int[] {1}, new double[] {1}));
    }

    // Worked by hand: of boards with every way to cut n blanks of three items, (n + 1)(n + 2)/2 things may be left
    // after one: 3 916 for 87 and 4 005 for 88, where 4 000 are looked at. It takes both boards: one alone gives the
    // fourth item.
    @Test
    void aSearchThatGrowsTooLongIsGivenUp() {
        for (int n : new int[] {87, 88}) {
            List<int[]> ways = new ArrayList<>();
            for (int a = 0; a <= n; a++) {
                for (int b = 0; a + b <= n; b++) {
                    ways.add(new int[] {a, b, n - a - b, 1});
                }
            }
            List<ListedBoard> boards = List.of(new ListedBoard(ways), ListedBoard.of(new int[] {n, n, n, 0}));
            double[] worth = {1, 1, 1, 1};
            int[] wanted = {n, n, n, 1};
            SmallStack small = SmallStack.of(boards, wanted, worth).orElseThrow();

            assertEquals(n == 87, small.most(worth).isPresent(), n + " blanks");
            assertEquals(n == 87, small.cheapest(wanted, new double[] {5, 6}).isPresent(), n + " blanks");
        }
    }

    // Worked by hand: of 4 005 ways to cut 88 blanks of three items, 89 cut none of the first. As the other board gives
    // 88 of the 89 that are wanted, these are let go at once, and 3 916 are few enough. For the most of a bill all are
    // kept.
    @Test
    void whatBoardsToComeCannotMakeGoodIsLetGo() {
        List<int[]> ways = new ArrayList<>();
        for (int a = 0; a <= 88; a++) {
            for (int b = 0; a + b <= 88; b++) {
                ways.add(new int[] {a, b, 88 - a - b});
            }
        }
        int[] wanted = {89, 88, 88};
        SmallStack small = SmallStack.of(List.of(new ListedBoard(ways), ListedBoard.of(new int[] {88, 88, 88})), wanted,
            new double[] {1, 1, 1}).orElseThrow();

        assertEquals(Set.of(0, 1), small.cheapest(wanted, new double[] {5, 6}).orElseThrow().keySet());
        assertEquals(Optional.empty(), small.most(new double[] {1, 1, 1}));
    }

    // Worked by hand: 70 ways to cut 69 blanks of two items from each of two boards leave 139 things, not 4 900.
    @Test
    void whatIsLeftAlikeIsKeptOnce() {
        List<int[]> ways = IntStream.rangeClosed(0, 69).mapToObj(a -> new int[] {a, 69 - a}).toList();
        int[] wanted = {200, 200};
        SmallStack small = SmallStack.of(List.of(new ListedBoard(ways), new ListedBoard(ways)), wanted,
            new double[] {1, 2}).orElseThrow();

        assertEquals("[200, 62]", Arrays.toString(small.most(new double[] {1, 2}).orElseThrow().left()));
    }
}
