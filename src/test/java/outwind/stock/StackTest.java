package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;

class StackTest {

    private static PricedBoard board(String name, double chance, double area, String cost) {
        return new PricedBoard(name, name, WoodKind.ANY, Verdict.of(chance), OptionalDouble.of(chance), OptionalDouble.of(20),
            new ThicknessRange(new double[] {19, 20, 21}), new BoardFeet(2000, 200, 27), 200 * 2000 * 27.0, 200 * 2000 * 20.0, area,
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

    // Reference: commons-math3 binomial distribution, whose percentile is the least number that reaches the share.
    @Test
    void theRangeIsThatOfTheBinomialForEqualBoards() {
        for (int count : new int[] {1, 7, 40}) {
            for (double chance : new double[] {0, 0.03, 0.5, 0.9, 1}) {
                Stack stack = new Stack(IntStream.range(0, count).mapToObj(i -> board("b" + i, chance, 1e6, "10"))
                    .toList(), "");
                BinomialDistribution number = new BinomialDistribution(null, count, chance);

                assertEquals(number.inverseCumulativeProbability(0.05), stack.fewest(), count + " at " + chance);
                assertEquals(number.inverseCumulativeProbability(0.95), stack.most(), count + " at " + chance);
            }
        }
    }

    // By enumeration of all 2^10 outcomes of ten unlike boards.
    @Test
    void theRangeOfUnlikeBoardsIsThatOfAllOutcomes() {
        double[] chances = new SplittableRandom(5).doubles(10).toArray();
        Stack stack = new Stack(IntStream.range(0, 10).mapToObj(i -> board("b" + i, chances[i], 1e6, "10")).toList(), "");
        double[] odds = new double[11];
        for (int outcome = 0; outcome < 1024; outcome++) {
            double odd = 1;
            for (int i = 0; i < 10; i++) {
                odd *= (outcome >> i & 1) == 1 ? chances[i] : 1 - chances[i];
            }
            odds[Integer.bitCount(outcome)] += odd;
        }
        double below = IntStream.range(0, stack.fewest()).mapToDouble(k -> odds[k]).sum();
        double upTo = IntStream.rangeClosed(0, stack.most()).mapToDouble(k -> odds[k]).sum();

        assertTrue(below < 0.05 && below + odds[stack.fewest()] >= 0.05, "" + below);
        assertTrue(upTo >= 0.95 && upTo - odds[stack.most()] < 0.95, "" + upTo);
    }

    @Test
    void theBestBuyCostsLeastForWhatItIsLikelyToYield() {
        Stack stack = new Stack(List.of(board("dear", 1, 1e6, "30"), board("doubtful", 0.3, 1e6, "10"),
            board("cheap", 1, 1e6, "20"), board("failing", 0.01, 1e6, "1")), "");

        assertEquals(List.of("cheap", "dear", "doubtful", "failing"),
            stack.boards().stream().map(PricedBoard::name).toList());
    }

    // Worked by hand: what an area costs comes first, whatever is left of the wood; then what is left; then the file.
    @Test
    void boardsStandByCostThenByWoodThenByFile() {
        PricedBoard b = board("b", 1, 1e6, "20");
        PricedBoard thrifty = new PricedBoard("a", "a", b.kind(), b.verdict(), b.chance(), b.target(), b.finished(),
            b.feet(), b.roughVolume(), b.roughVolume(), 1e6, b.minutes(), b.wood(), Optional.of(new BigDecimal("30")));

        assertEquals(List.of("b", "c", "a"), new Stack(List.of(board("c", 1, 1e6, "20"), thrifty, b), "")
            .boards().stream().map(PricedBoard::name).toList());
    }

    // Worked by hand: none of one board makes it with exactly 5 %, and one of two at most with 9.75 %.
    @Test
    void aPercentileIsReachedWhereTheShareIsMetExactly() {
        assertEquals(0, Stack.percentile(new double[] {0.95}, 0.05));
        assertEquals(1, Stack.percentile(new double[] {0.951}, 0.05));
        assertEquals(1, Stack.percentile(new double[] {0.95, 0.95}, 0.0975));
    }

    @Test
    void whereNoBoardHasATargetAllThatCanBeFlattenedCount() {
        PricedBoard aimed = board("a", 0.5, 1e6, "20");
        PricedBoard aimless = new PricedBoard("a", "a", WoodKind.ANY, Verdict.NONE, OptionalDouble.empty(),
            OptionalDouble.empty(), aimed.finished(), aimed.feet(), 1, 1, 1, aimed.minutes(), aimed.wood(),
            aimed.cost());

        assertEquals(2, new Stack(List.of(aimless, aimless), "").expected(), 0);
        assertEquals(0.5, new Stack(List.of(aimless, aimed), "").expected(), 0);
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
                Purchase bought = stack.cheapestFor(wanted * 1e6).orElseThrow();
                assertEquals(needed, bought.boards().size(), chance + " for " + wanted);
                assertEquals(1 - new BinomialDistribution(null, needed, chance).cumulativeProbability(wanted - 1),
                    bought.chance(), 1e-9);
            }
        }
    }

    // Reference: every choice of boards and every outcome, enumerated. A prefix of the list cost 11 % more on average.
    @Test
    void noChoiceOfBoardsThatIsAsSureCostsLess() {
        SplittableRandom random = new SplittableRandom(20261127);
        for (int run = 0; run < 60; run++) {
            List<PricedBoard> boards = IntStream.range(0, 9).mapToObj(i -> board("b" + i,
                random.nextInt(3) == 0 ? random.nextDouble(0.1, 0.9) : random.nextDouble(0.9, 1),
                random.nextInt(2, 10) * 1e5, "" + random.nextInt(5, 40))).toList();
            double wanted = random.nextInt(5, 30) * 1e5;
            double least = cheapestOfAll(boards, wanted);

            Optional<Purchase> bought = new Stack(boards, "").cheapestFor(wanted);

            assertEquals(least < Double.POSITIVE_INFINITY, bought.isPresent(), "run " + run);
            bought.ifPresent(found -> {
                assertEquals(least, Stack.costOf(found.boards()).orElseThrow().doubleValue(), 1e-9);
                assertEquals(0, found.gap(), 1e-6);
            });
        }
    }

    private static double cheapestOfAll(List<PricedBoard> boards, double wanted) {
        double least = Double.POSITIVE_INFINITY;
        for (int some = 1; some < 1 << boards.size(); some++) {
            double cost = 0;
            for (int j = 0; j < boards.size(); j++) {
                cost += (some >> j & 1) * boards.get(j).cost().orElseThrow().doubleValue();
            }
            double enough = 0;
            for (int made = some; made > 0; made = made - 1 & some) {
                double odds = 1;
                double area = 0;
                for (int j = 0; j < boards.size(); j++) {
                    boolean makes = (made >> j & 1) == 1;
                    odds *= (some >> j & 1) == 0 ? 1 : makes ? boards.get(j).makesIt() : 1 - boards.get(j).makesIt();
                    area += makes ? boards.get(j).finishedArea() : 0;
                }
                enough += area >= wanted - 1e-6 ? odds : 0;
            }
            least = enough >= Stack.CONFIDENCE ? Math.min(least, cost) : least;
        }
        return least;
    }

    // Checked by drawing: 40 boards of unlike sizes, chances and costs; none of those bought can be left out.
    @Test
    void whatIsBoughtOfUnlikeBoardsIsEnoughWhenDrawnAndNoMore() {
        SplittableRandom random = new SplittableRandom(20260701);
        List<PricedBoard> boards = IntStream.range(0, 40).mapToObj(i -> board("b" + i, random.nextDouble(0.5, 1),
            random.nextDouble(2e5, 9e5), "" + random.nextInt(10, 40))).toList();
        Purchase bought = new Stack(boards, "").cheapestFor(4e6).orElseThrow();

        assertTrue(shareThatSuffices(bought.boards(), 4e6, random) > 0.9 - 0.003);
        for (PricedBoard board : bought.boards()) {
            List<PricedBoard> fewer = new ArrayList<>(bought.boards());
            fewer.remove(board);
            assertTrue(shareThatSuffices(fewer, 4e6, random) < 0.9 + 0.003, board.name());
        }
        assertTrue(bought.least() <= bought.cost());
    }

    // Worked by hand: an area of exactly 4 ft² is 371 612.16 mm²; rounded down, two of them were less than 8 ft².
    @Test
    void twoBoardsOfFourSquareFeetAreEight() {
        Stack stack = new Stack(List.of(board("a", 1, 371_612.16, "10"), board("b", 1, 371_612.16, "10")), "");

        assertEquals(2, stack.cheapestFor(2 * 371_612.16).orElseThrow().boards().size());
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
        assertEquals(Optional.empty(), new Stack(List.of(board("a", 0.8, 1e6, "1")), "").cheapestFor(1e6));
    }

    // Money is decimal: a hundred costs of 0.10 are 10.00 and not a cent else.
    @Test
    void costsAddUpToTheirTotal() {
        Stack stack = new Stack(IntStream.range(0, 100).mapToObj(i -> board("b" + i, 1, 1e6, "0.10")).toList(), "EUR");

        assertEquals(new BigDecimal("10.00"), stack.cost().orElseThrow());
        assertEquals(Optional.empty(), new Stack(List.of(board("a", 1, 1e6, null)), "").cost());
    }

    // Without prices the board of which more is left stands first, then the surer one.
    @Test
    void withoutPricesTheLeastWasteIsTheBestBuy() {
        PricedBoard wasteful = finishing("wasteful", 0.9, 4e6);
        PricedBoard thrifty = finishing("thrifty", 0.9, 9e6);
        PricedBoard unsure = finishing("unsure", 0.3, 9e6);

        assertEquals(List.of("thrifty", "wasteful", "unsure"), new Stack(List.of(unsure, wasteful, thrifty), "").boards()
            .stream().map(PricedBoard::name).toList());
    }

    private static PricedBoard finishing(String name, double chance, double volume) {
        return new PricedBoard(name, name, WoodKind.ANY, Verdict.of(chance), OptionalDouble.of(chance), OptionalDouble.of(20),
            new ThicknessRange(new double[] {19, 20, 21}), new BoardFeet(2000, 200, 27), 200 * 2000 * 27.0, volume, 4e5, OptionalDouble.of(60), Optional.empty(),
            Optional.empty());
    }
}
