package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;

/** What comes out of a stack that is offered, against all outcomes and arithmetic by hand. */
class OfferedTest {

    private static PricedBoard board(double chance, double area, String cost) {
        return new PricedBoard("b", "b", WoodKind.ANY, Verdict.of(chance), OptionalDouble.of(chance), OptionalDouble.of(20),
            new ThicknessRange(new double[] {19, 20, 21}), new BoardFeet(2000, 300, 27), 2000 * 300 * 27.0, 9e6, area,
            OptionalDouble.of(60), Optional.ofNullable(cost).map(BigDecimal::new),
            Optional.ofNullable(cost).map(BigDecimal::new));
    }

    // Worked by hand: 0.5 m² surely and 0.5 m² with half a chance are 0.75 m² to expect, for 60 and so 80 a m²; 0.5 m² or 120
    // a m² is sure, 1 m² comes out half the time. Bought were 1.2 m² of face.
    @Test
    void theAreaToExpectAndTheSureOneAreWorkedByHand() {
        Offered offered = new Offered("two", new Stack(List.of(board(1, 0.5e6, "30"), board(0.5, 0.5e6, "30")), ""));

        assertEquals(0.75e6, offered.area(), 1e-6);
        assertEquals(0.5e6, offered.area(0.95), 1);
        assertEquals(1e6, offered.area(0.05), 1);
        assertEquals(80e-6, offered.cost(offered.area()).orElseThrow(), 1e-12);
        assertEquals(120e-6, offered.cost(offered.area(0.95)).orElseThrow(), 1e-9);
        assertEquals(0.625, offered.yield(offered.area()), 1e-12);
        assertEquals(Optional.empty(), offered.cost(0));
    }

    // Reference: enumeration of all 2^9 outcomes of nine unlike boards.
    @Test
    void theAreaReachedWithAChanceIsThatOfAllOutcomes() {
        SplittableRandom random = new SplittableRandom(6);
        for (int run = 0; run < 20; run++) {
            List<PricedBoard> boards = new ArrayList<>();
            for (int i = 0; i < 9; i++) {
                boards.add(board(random.nextDouble(), 1e5 * (1 + random.nextInt(9)), "10"));
            }
            Offered offered = new Offered("nine", new Stack(boards, ""));
            for (double chance : new double[] {0.05, 0.5, 0.95}) {
                double area = offered.area(chance);
                assertTrue(chanceOf(offered, area * (1 - 1e-6)) >= chance, run + " at " + chance);
                assertTrue(chanceOf(offered, area * (1 + 1e-6) + 1) < chance, run + " at " + chance);
            }
        }
    }

    private static double chanceOf(Offered offered, double area) {
        List<PricedBoard> boards = offered.stack().boards();
        double chance = 0;
        for (int outcome = 0; outcome < 1 << boards.size(); outcome++) {
            double odd = 1;
            double sum = 0;
            for (int i = 0; i < boards.size(); i++) {
                boolean makes = (outcome >> i & 1) == 1;
                odd *= makes ? boards.get(i).makesIt() : 1 - boards.get(i).makesIt();
                sum += makes ? boards.get(i).finishedArea() : 0;
            }
            chance += sum >= area ? odd : 0;
        }
        return chance;
    }

    @Test
    void withoutACostOfEveryBoardThereIsNone() {
        Offered offered = new Offered("two", new Stack(List.of(board(1, 0.5e6, "30"), board(1, 0.5e6, null)), ""));

        assertEquals(Optional.empty(), offered.cost(offered.area()));
    }
}
