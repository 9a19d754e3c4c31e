package outwind.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.report.words.Figures;
import outwind.stock.BoardFeet;
import outwind.stock.PricedBoard;
import outwind.stock.Purchase;
import outwind.stock.Stack;

/** The boards to buy: under every name the figure of that name, in the user's units, and sums below. */
class BuyListTest {

    private static final String HEADER = "number,board,file,species,grade,unit,length,width,thickness,area_unit,finished_area,"
        + "volume_unit,rough_volume,rough_board_feet,chance,wood,labour,cost,currency";

    /** A foot or a cubic foot is 304.8 mm, or that to the third (international foot, 1959). */
    private static final double FOOT = 304.8;

    private static PricedBoard board(String name, String wood, String cost, double chance) {
        return new PricedBoard(name, name + ".csv", new WoodKind(Optional.of("white oak"), Optional.of("prime, wide")),
            Verdict.of(chance), OptionalDouble.of(chance), OptionalDouble.of(20), new ThicknessRange(new double[] {19, 20, 21}),
            new BoardFeet(8 * FOOT, FOOT / 2, FOOT / 12), FOOT * FOOT * FOOT / 3, 5e6, 3 * FOOT * FOOT, OptionalDouble.of(17),
            Optional.ofNullable(wood).map(BigDecimal::new), Optional.ofNullable(cost).map(BigDecimal::new));
    }

    private static List<String> list(Figures figures, PricedBoard... boards) {
        Stack stack = new Stack(List.of(boards), "-EUR");
        List<PricedBoard> bought = stack.boards().stream().filter(board -> !board.name().equals("left")).toList();
        return BuyList.of(stack, new Purchase(bought, 0.9375, 1, 1), figures).lines().toList();
    }

    // Worked by hand: 8 ft by 6 in by 1 in are 4 board feet; 3 ft² are 0.2787 m², 1/3 ft³ is 0.00944 m³.
    @Test
    void everyFigureStandsUnderItsNameAndTheSumsBelow() {
        PricedBoard cheap = board("=cheap", "20.10", "30.20", 0.9);
        PricedBoard left = board("left", "40.00", "50.00", 0.95);
        PricedBoard dear = board("dear, wide", "50.05", "70.00", 0.97);

        assertEquals(List.of(HEADER,
            "1,'=cheap,'=cheap.csv,white oak,\"prime, wide\",mm,2438.40,152.40,25.40,m2,0.2787,m3,0.00944,4.000,0.900,20.10,10.10,"
                + "30.20,'-EUR",
            "3,\"dear, wide\",\"dear, wide.csv\",white oak,\"prime, wide\",mm,2438.40,152.40,25.40,m2,0.2787,m3,0.00944,4.000,0.970,"
                + "50.05,19.95,70.00,'-EUR",
            "total,,,,,,,,,m2,0.5574,m3,0.01888,8.000,0.938,70.15,30.05,100.20,'-EUR"),
            list(new Figures(Units.MILLIMETRES), left, dear, cheap));
        assertEquals("1,'=cheap,'=cheap.csv,white oak,\"prime, wide\",in,96.000,6.000,1.000,ft2,3.0000,ft3,0.33333,4.000,0.900,20.10,"
            + "10.10,30.20,'-EUR", list(new Figures(Units.INCHES), left, dear, cheap).get(1));
    }

    @Test
    void aSumIsLeftOpenWhereAPartIsNotKnown() {
        List<String> lines = list(new Figures(Units.INCHES), board("a", "20", "30", 0.9), board("b", null, null, 0.9));

        assertEquals(",,,,'-EUR", lines.get(2).substring(lines.get(2).indexOf("0.900") + 5));
        assertEquals("total,,,,,,,,,ft2,6.0000,ft3,0.66667,8.000,0.938,,,,'-EUR", lines.get(3));
    }
}
