package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Boards cut one after the other, each case made so that one order alone is best. */
class OneByOneTest {

    private static OneByOne oneKind(int wanted, double[] cost, int... yields) {
        return new OneByOne(IntStream.of(yields).mapToObj(n -> ListedBoard.of(new int[] {n})).toList(), cost,
            new int[] {wanted}, new double[] {1});
    }

    private static Set<Integer> boards(OneByOne stack) {
        return stack.cheapest().orElseThrow().keySet();
    }

    // Worked by hand: in the order given, two boards for 81. The others begin with the board of one of each, for 111,
    // or with the one of three blanks, for 131.
    @Test
    void theOrderGivenMayBeBest() {
        OneByOne stack = new OneByOne(List.of(ListedBoard.of(new int[] {2, 0}), ListedBoard.of(new int[] {0, 2}),
            ListedBoard.of(new int[] {2, 1}), ListedBoard.of(new int[] {1, 1})), new double[] {40, 41, 90, 30},
            new int[] {2, 2}, new double[] {1, 1});

        assertEquals(Set.of(0, 1), boards(stack));
    }

    // Worked by hand: 27 + 50 beats 78 for the board that is given first and gives most. By blanks for money the second
    // and the first are taken, for 128.
    @Test
    void theCheapestFirstMayBeBest() {
        assertEquals(Set.of(1, 2), boards(oneKind(3, new double[] {78, 50, 27}, 3, 2, 1)));
    }

    // Worked by hand: every other order begins with the board of two for 50 and needs the one for 78 as well.
    @Test
    void theBoardThatGivesMostFirstMayBeBest() {
        assertEquals(Set.of(1), boards(oneKind(3, new double[] {50, 78}, 2, 3)));
    }

    // Worked by hand: the last board alone costs 60. By cost it comes after the first, for 80; given and by blanks the
    // second comes before it, for 110 and 90.
    @Test
    void theBoardThatGivesMostForMoneyFirstMayBeBest() {
        assertEquals(Set.of(2), boards(oneKind(4, new double[] {20, 90, 60}, 1, 4, 4)));
    }

    // Worked by hand: the second board can only give the dear blank, which the first takes unless it comes second.
    @Test
    void mostIsCutInTheOrderThatMissesLeast() {
        OneByOne stack = new OneByOne(List.of(ListedBoard.of(new int[] {1, 0}, new int[] {0, 1}),
            ListedBoard.of(new int[] {1, 0})), new double[] {5, 3}, new int[] {1, 2}, new double[] {20, 10});

        Map<Integer, Yield.Pattern> most = stack.most();

        assertEquals(Set.of(0, 1), most.keySet());
        assertEquals(1, most.get(0).counts()[1]);
        assertEquals(10, stack.missed(most), 1e-12);
        assertEquals(40, stack.missed(Map.of()), 1e-12);
        assertEquals(20, stack.missed(Map.of(0, ListedBoard.pattern(0, 3))), 1e-12);
        assertEquals(Optional.empty(), stack.cheapest());
    }

    // Worked by hand: a board that gives nothing is not bought, whether it stands first or last.
    @Test
    void aBoardThatGivesNothingIsLeft() {
        assertEquals(Set.of(1), boards(oneKind(2, new double[] {1, 9, 1}, 0, 2, 0)));
        assertEquals(Optional.empty(), oneKind(3, new double[] {1, 9, 1}, 0, 2, 0).cheapest());
        assertEquals(Set.of(1), oneKind(3, new double[] {1, 9, 1}, 0, 2, 0).most().keySet());
    }

    // The limit is 12 boards: beyond it, none is searched as long as a board alone.
    @Test
    void manyBoardsAreSearchedLessLong() {
        for (int count : new int[] {12, 13}) {
            AskedBoard board = new AskedBoard(ListedBoard.of(new int[] {1}), new ConcurrentLinkedQueue<>(), 1, false);

            new OneByOne(IntStream.range(0, count).mapToObj(j -> (Yield) board).toList(), new double[count],
                new int[] {count}, new double[] {1}).cheapest();

            assertEquals(Set.of(count == 12), board.alone());
        }
    }
}
