package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import outwind.flatten.Verdict;

class StackTest {

    private static PricedBoard board(String name, double chance, double area, String cost) {
        return new PricedBoard(name, name, Verdict.of(chance), OptionalDouble.of(chance), OptionalDouble.of(20), 19, 20,
            21, new BoardFeet(2000, 200, 27), 200 * 2000 * 27.0, 200 * 2000 * 20.0, area,
            OptionalDouble.of(60),
            Optional.ofNullable(cost).map(BigDecimal::new), Optional.ofNullable(cost).map(BigDecimal::new));
    }

    // Worked by hand: p = 0.5 and 0.9: mean 1.4, variance 0.25 + 0.09.
    @Test
    void expectationAndSpreadAreThoseOfThePoissonBinomial() {
        Stack stack = new Stack(List.of(board("a", 0.5, 1e6, "10"), board("b", 0.9, 1e6, "10")), "");

        assertEquals(1.4, stack.expected(), 1e-12);
        assertEquals(Math.sqrt(0.34), stack.deviation(), 1e-12);
    }

    @Test
    void theBestBuyCostsLeastForWhatItIsLikelyToYield() {
        Stack stack = new Stack(List.of(board("dear", 1, 1e6, "30"), board("doubtful", 0.3, 1e6, "10"),
            board("cheap", 1, 1e6, "20"), board("failing", 0.01, 1e6, "1")), "");

        assertEquals(List.of("cheap", "dear", "doubtful", "failing"),
            stack.boards().stream().map(PricedBoard::name).toList());
    }

    // Reference: commons-math3 binomial distribution, for boards of one size and chance.
    @Test
    void boardsNeededForAnAreaMatchTheBinomial() {
        for (double chance : new double[] {0.3, 0.6, 0.9}) {
            Stack stack = new Stack(IntStream.range(0, 40).mapToObj(i -> board("b" + i, chance, 1e6, "10")).toList(),
                "");
            for (int wanted = 1; wanted <= 8; wanted++) {
                int needed = wanted;
                while (1 - new BinomialDistribution(null, needed, chance).cumulativeProbability(wanted - 1) < 0.9) {
                    needed++;
                }
                assertEquals(OptionalInt.of(needed), stack.enoughFor(wanted * 1e6), chance + " for " + wanted);
            }
        }
    }

    // Checked by drawing: boards of unlike sizes and chances, 200 000 stacks.
    @Test
    void boardsNeededForUnlikeBoardsHoldWhenDrawn() {
        SplittableRandom random = new SplittableRandom(20260701);
        List<PricedBoard> boards = IntStream.range(0, 30)
            .mapToObj(i -> board("b" + i, random.nextDouble(0.1, 1), random.nextDouble(2e5, 9e5), "10")).toList();
        Stack stack = new Stack(boards, "");
        int enough = stack.enoughFor(4e6).orElseThrow();

        assertTrue(shareThatSuffices(stack.boards().subList(0, enough), 4e6, random) > 0.9 - 0.003);
        assertTrue(shareThatSuffices(stack.boards().subList(0, enough - 1), 4e6, random) < 0.9 + 0.003);
    }

    private static double shareThatSuffices(List<PricedBoard> boards, double wanted, SplittableRandom random) {
        int draws = 200_000;
        int suffices = 0;
        for (int draw = 0; draw < draws; draw++) {
            double area = 0;
            for (PricedBoard board : boards) {
                area += random.nextDouble() < board.makesIt() ? board.finishedArea() : 0;
            }
            suffices += area >= wanted ? 1 : 0;
        }
        return suffices / (double) draws;
    }

    @Test
    void aStackThatCannotSufficeSaysSo() {
        assertEquals(OptionalInt.empty(), new Stack(List.of(board("a", 0.8, 1e6, "1")), "").enoughFor(1e6));
    }

    // Money is decimal: a hundred costs of 0.10 are 10.00 and not a cent else.
    @Test
    void costsAddUpToTheirTotal() {
        Stack stack = new Stack(IntStream.range(0, 100).mapToObj(i -> board("b" + i, 1, 1e6, "0.10")).toList(), "EUR");

        assertEquals(new BigDecimal("10.00"), stack.cost().orElseThrow());
        assertEquals(Optional.empty(), new Stack(List.of(board("a", 1, 1e6, null)), "").cost());
        assertEquals(new BigDecimal("30"), new Stack(List.of(board("a", 1, 1e6, "20"), board("b", 1, 1e6, "40"),
            board("c", 1, 1e6, "10"), board("d", 1, 1e6, null)), "").costOfBest(2).orElseThrow());
    }
}
