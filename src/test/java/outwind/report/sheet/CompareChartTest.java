package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.report.drawing.Paper;
import outwind.report.text.CompareReport;
import outwind.report.words.CompareSheet;
import outwind.report.words.Figures;
import outwind.stock.BoardFeet;
import outwind.stock.Offered;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;

/** Stacks side by side: order, figures and places on the chart. */
class CompareChartTest {

    private static PricedBoard board(double chance, String cost) {
        return new PricedBoard("b", "b", WoodKind.ANY, Verdict.of(chance), OptionalDouble.of(chance), OptionalDouble.of(20),
            new ThicknessRange(new double[] {19, 20, 21}), new BoardFeet(2000, 300, 27), 2000 * 300 * 27.0, 9e6, 0.5e6,
            OptionalDouble.of(60), Optional.ofNullable(cost).map(BigDecimal::new),
            Optional.ofNullable(cost).map(BigDecimal::new));
    }

    // Worked by hand: sure boards at 30 for 0.5 m² are 60 a m²; one sure and one that has half a chance, at 40 each, are 80
    // over 0.75 m² = 106.67 to expect, 160 at worst and 80 at best.
    private static CompareSheet sheet(String currency) {
        return new CompareSheet(List.of(new Offered("dear", new Stack(List.of(board(1, "40"), board(0.5, "40")), currency)),
            new Offered("cheap", new Stack(List.of(board(1, "30"), board(1, "30")), currency))), currency,
            new Figures(Units.MILLIMETRES));
    }

    @Test
    void theCheapestIsFirstAndEveryFigureIsInItsRow() {
        String report = CompareReport.of(sheet("EUR"));
        List<String> rows = report.lines().filter(line -> line.matches("(cheap|dear) .*")).map(row -> row.replaceAll(" +", " "))
            .toList();

        assertTrue(report.startsWith("cheap is the cheapest: expect 60.00 EUR for a finished m²."), report);
        assertEquals(List.of("cheap 2 2 83 % 83 % 60.00 60.00", "dear 2 1 to 2 63 % 42 to 83 % 106.67 80.00 to 160.00"),
            rows.subList(1, 3));
    }

    // The dot lies as far between two lines of the grid as its figure between theirs.
    @Test
    void namesAndFiguresAreOnTheChart() {
        Paper paper = CompareChart.drawn(sheet("$"));
        List<String> words = paper.written().stream().map(word -> word.text().replace('\u00a0', ' ')).toList();

        assertTrue(words.containsAll(List.of("Stacks side by side", "cheap", "dear", "2 of 2 make it, yield 83 %",
            "1 to 2 of 2 make it, yield 63 %", "cost of a finished m², $")), words.toString());
        double x60 = middle(paper, "60");
        double x160 = middle(paper, "160");
        double row = paper.written().stream().filter(word -> word.text().equals("dear")).findFirst().orElseThrow().box()
            .getCenterY();
        double dot = x60 + (106.67 - 60) / 100 * (x160 - x60);
        int y = (int) Math.round(row);
        while (paper.colourAt((int) x160 - 20, y).getRed() > 80 && y < row + 60) {
            y++;
        }
        assertTrue(paper.colourAt((int) x160 - 20, y).getRed() < 80, "no bar under " + row);
        assertTrue(paper.colourAt((int) (x160 + 20), y).getRed() > 80, "the bar ends at 160");
        assertTrue(paper.colourAt((int) dot, y + 2).getRed() > 200, "a white dot at " + dot);
    }

    private static double middle(Paper paper, String figure) {
        return paper.written().stream().filter(word -> word.text().equals(figure)).findFirst().orElseThrow(() ->
            new AssertionError(figure + " in " + paper.written())).box().getCenterX();
    }

    // Worked by hand as above; nothing is said of money.
    @Test
    void withoutCostsYieldsAreCompared() {
        CompareSheet sheet = new CompareSheet(List.of(new Offered("less", new Stack(List.of(board(0.5, null)), "")),
            new Offered("more", new Stack(List.of(board(1, "9"), board(1, null)), ""))), "", new Figures(Units.INCHES));
        String report = CompareReport.of(sheet);

        assertTrue(report.startsWith("more yields most: expect 83 % of its face."), report);
        assertTrue(report.contains("cost per ft²"), report);
        assertTrue(CompareChart.drawn(sheet).written().stream().anyMatch(word -> word.text()
            .equals("share of the face that is finished, %")));
    }
}
