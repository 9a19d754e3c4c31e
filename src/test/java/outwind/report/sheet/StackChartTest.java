package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.report.drawing.Paper;
import outwind.report.words.Figures;
import outwind.stock.BoardFeet;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;

/** The stack, drawn: bars from the low to the high end of the range, a disc at the median, a dash at the target. */
class StackChartTest {

    // Away from the lines of the chart, which are drawn at whole mm, and medians far from the middle of their range, so that no two of the figures can be taken for each other.
    private static final List<PricedBoard> BOARDS = List.of(board("a", 0.97, 24.4, 25.3, 29.5, "10"),
        board("b", 0.5, 20.5, 25.6, 27.3, "20"), board("c", 0.01, 18.4, 19.3, 23.6, "30"));

    private static final Stack STACK = new Stack(BOARDS, "EUR");

    private static PricedBoard board(String name, double chance, double low, double median, double high, String cost) {
        return new PricedBoard(name, name, WoodKind.ANY, Verdict.of(chance), OptionalDouble.of(chance), OptionalDouble.of(22.5),
            new ThicknessRange(new double[] {low, median, high}), new BoardFeet(2400, 210, 32), 15e6, 9e6, 450_000, OptionalDouble.of(17),
            Optional.of(new BigDecimal(cost)), Optional.of(new BigDecimal(cost)));
    }

    private static Paper drawn() {
        return StackChart.drawn(STACK, new Figures(Units.MILLIMETRES));
    }

    private static double middle(Paper paper, String text) {
        return paper.written().stream().filter(word -> word.text().equals(text)).findFirst().orElseThrow().box()
            .getCenterX();
    }

    /** Where a thickness stands, by the numbers along the bottom. */
    private static double px(Paper paper, double mm) {
        double at20 = middle(paper, "20.0");
        return at20 + (mm - 20) * (middle(paper, "28.0") - at20) / 8;
    }

    private static int row(Paper paper, String board) {
        String text = STACK.boards().stream().map(PricedBoard::name).toList().indexOf(board) + 1 + " " + board;
        return (int) paper.written().stream().filter(word -> word.text().equals(text)).findFirst().orElseThrow().box()
            .getCenterY();
    }

    private static boolean isWhite(Paper paper, double x, int y) {
        return paper.colourAt((int) Math.round(x), y).getRGB() == 0xffffffff;
    }

    // A bar ends with its range: ink just inside either end, white just outside.
    @ParameterizedTest
    @ValueSource(strings = {"a", "b", "c"})
    void everyBarReachesFromLowToHigh(String name) {
        Paper paper = drawn();
        PricedBoard board = BOARDS.get("abc".indexOf(name));
        int y = row(paper, name);

        assertTrue(!isWhite(paper, px(paper, board.low()) + 4, y) && !isWhite(paper, px(paper, board.high()) - 4, y));
        assertTrue(isWhite(paper, px(paper, board.low()) - 12, y) && isWhite(paper, px(paper, board.high()) + 12, y));
    }

    // The disc is higher than the bar: above the bar there is ink at the median, and none near either end.
    @ParameterizedTest
    @ValueSource(strings = {"a", "b", "c"})
    void theDiscStandsAtTheMedian(String name) {
        Paper paper = drawn();
        PricedBoard board = BOARDS.get("abc".indexOf(name));

        assertTrue(isInkedAbove(paper, name, board.median()));
        assertFalse(isInkedAbove(paper, name, board.low() + 0.2), "at the low end");
        assertFalse(isInkedAbove(paper, name, board.high() - 0.2), "at the high end");
    }

    // The dash is the highest of all: it nearly fills its row.
    @Test
    void theDashStandsAtTheTarget() {
        Paper paper = drawn();

        for (PricedBoard board : BOARDS) {
            assertTrue(isInkedAbove(paper, board.name(), board.target().orElseThrow()), board.name());
        }
    }

    private static boolean isInkedAbove(Paper paper, String name, double mm) {
        int y = row(paper, name);
        return IntStream.rangeClosed(y - 10, y - 6).anyMatch(above -> !isWhite(paper, px(paper, mm), above));
    }

    @Test
    void figuresOfABoardStandInItsRow() {
        Paper paper = drawn();

        for (PricedBoard board : BOARDS) {
            int y = row(paper, board.name());
            for (String text : List.of(Figures.chance(board.chance().orElseThrow()), board.cost().orElseThrow().toString(),
                "2400 x 210 x 32.0")) {
                assertEquals(1, paper.written().stream().filter(word -> word.text().equals(text)
                    && Math.abs(word.box().getCenterY() - y) < 6).count(), text + " of board " + board.name());
            }
        }
    }
}
