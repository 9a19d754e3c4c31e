package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Price;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.report.drawing.Paper;
import outwind.report.words.Figures;
import outwind.stock.BoardFeet;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;
import outwind.stock.Uses;

/** What boards are best used for, drawn: bars as long as what they bring, the best one dark, every figure in its row. */
class UsesChartTest {

    private static PricedBoard board(String name, String cost, double area, double... thicknesses) {
        return new PricedBoard(name, name, WoodKind.ANY, Verdict.NONE, OptionalDouble.empty(), OptionalDouble.empty(),
            new ThicknessRange(thicknesses), new BoardFeet(2500, 200, 30), area * 30, area * 25, area, OptionalDouble.of(20),
            Optional.of(new BigDecimal("20.00")), Optional.of(new BigDecimal(cost)));
    }

    private static Uses.Aim aim(double thickness, String price) {
        return new Uses.Aim(thickness, Optional.ofNullable(price).map(text -> Price.parse(text, false)));
    }

    private static Rectangle2D box(Paper paper, String text) {
        return paper.written().stream().filter(word -> word.text().replace('\u00a0', ' ').equals(text)).findFirst()
            .orElseThrow(() -> new AssertionError(text + " in " + paper.written())).box();
    }

    private static boolean isInRow(Paper paper, String text, double y) {
        return paper.written().stream().anyMatch(word -> word.text().replace('\u00a0', ' ').equals(text)
            && Math.abs(word.box().getCenterY() - y) < 6);
    }

    /** How dark a column of pixels is below the middle of a row: 0 is black. */
    private static int light(Paper paper, double x, double y) {
        return paper.colourAt((int) Math.round(x), (int) Math.round(y) + 6).getRed();
    }

    // Worked by hand, money: a brings 0.5 · 100 or 40 a m² of 0.5 m²: 25 or 20. b, which never makes 26, brings 40 a m² of 1 m².
    // c makes neither. All bars have one scale, whose end is 40.
    @Test
    void barsAreAsLongAsTheMoneyTheyStandFor() {
        Uses uses = new Uses(new Stack(List.of(board("a", "30.10", 0.5e6, 25, 27), board("b", "40.20", 1e6, 20, 21), board("c", "50.30", 2e6, 10, 12)), "EUR"),
            List.of(aim(26, "100 EUR per m2"), aim(19, "40 EUR per m2")));
        Paper paper = UsesChart.drawn(uses, new Figures(Units.MILLIMETRES));
        double[] zero = paper.written().stream().filter(word -> word.text().equals("0")).mapToDouble(word -> word.box()
            .getCenterX()).toArray();
        double[] forty = paper.written().stream().filter(word -> word.text().equals("40")).mapToDouble(word -> word.box()
            .getCenterX()).toArray();
        double[][] brings = {{25, 20}, {0, 40}, {0, 0}};
        String[][] figures = {{"50 %", "over 99 %", "26.0", "25.00", "30.10"},
            {"under 1 %", "over 99 %", "19.0", "40.00", "40.20"}, {"under 1 %", "none", "50.30"}};

        assertEquals(List.of(2, 2), List.of(zero.length, forty.length));
        for (int i = 0; i < 3; i++) {
            String name = "abc".substring(i, i + 1);
            int number = uses.stack().boards().stream().map(PricedBoard::name).toList().indexOf(name) + 1;
            double y = box(paper, number + " " + name).getCenterY();
            for (String figure : figures[i]) {
                assertTrue(isInRow(paper, figure, y), figure + " of " + name);
            }
            for (int column = 0; column < 2; column++) {
                double end = zero[column] + brings[i][column] / 40 * (forty[column] - zero[column]);
                assertTrue(light(paper, end + 5, y) > 210, name + column + " ends at " + brings[i][column]);
                if (brings[i][column] > 0) {
                    int light = light(paper, end - 5, y);
                    boolean best = brings[i][column] == Math.max(brings[i][0], brings[i][1]);
                    assertTrue(best ? light < 60 : light > 150 && light < 210, name + column + " is " + light);
                }
            }
        }
        assertTrue(paper.written().stream().anyMatch(word -> word.text().equals("best for 1")));
        assertTrue(paper.written().stream().anyMatch(word -> word.text().startsWith("bars: money to expect, EUR")));
    }

    @Tag("long")
    @ParameterizedTest
    @CsvSource({"1, 2, MILLIMETRES, true", "14, 3, MILLIMETRES, false", "37, 4, INCHES, false", "75, 4, MILLIMETRES, true",
        "75, 4, INCHES, true"})
    void noWordCoversAnotherOrLeavesThePage(int boards, int aims, Units units, boolean money) {
        SplittableRandom random = new SplittableRandom(5);
        Stack stack = new Stack(IntStream.range(0, boards).mapToObj(i -> board("a board with a long name, number " + i, "1234.50",
            1e5 + 8e5 * random.nextDouble(), 12 + 20 * random.nextDouble(), 34)).toList(), "EUR");
        Uses uses = new Uses(stack, List.of(aim(33.3375, money ? "400 EUR per m2" : null), aim(26.9875, money ? "350 EUR per m2"
            : null), aim(20.6375, money ? "300 EUR per m2" : null), aim(14.2875, money ? "20 EUR per m2" : null)).subList(0, aims));
        Paper paper = UsesChart.drawn(uses, new Figures(units));
        List<Paper.Words> words = paper.written().stream().filter(word -> !word.text().isBlank()).toList();

        for (int i = 0; i < words.size(); i++) {
            Rectangle2D box = inner(words.get(i).box());
            assertTrue(box.getMinX() > 10 && box.getMaxX() < Paper.WIDTH - 10, words.get(i).text());
            for (int j = 0; j < i; j++) {
                assertFalse(box.intersects(inner(words.get(j).box())), words.get(i) + " covers " + words.get(j));
            }
        }
        assertEquals(boards > 60, words.stream().anyMatch(word -> word.text().contains("The 15 boards further down")));
    }

    /** A line of type has white above and below its letters: an eighth of its height on either side. */
    private static Rectangle2D inner(Rectangle2D box) {
        return new Rectangle2D.Double(box.getX() + 1, box.getY() + box.getHeight() / 8, box.getWidth() - 2, 0.75 * box.getHeight());
    }
}
