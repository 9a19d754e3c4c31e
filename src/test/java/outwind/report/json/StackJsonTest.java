package outwind.report.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.report.text.StackReport;
import outwind.report.words.Figures;
import outwind.stock.BoardFeet;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;

/** What scripts and spreadsheets get of a stack: under every name the figure of that name, no two of them alike. */
class StackJsonTest {

    private static final PricedBoard BOARD = new PricedBoard("oak", "oak.csv", new WoodKind(Optional.of("=ash"), Optional.empty()), Verdict.DOUBTFUL, OptionalDouble.of(0.7),
        OptionalDouble.of(26), new ThicknessRange(new double[] {25, 26.5, 28}), new BoardFeet(2400, 210, 32), 15e6, 9e6, 450_000, OptionalDouble.of(17),
        Optional.of(new BigDecimal("40.25")), Optional.of(new BigDecimal("53.50")));

    private static final Stack STACK = new Stack(List.of(BOARD), "EUR");

    /** Worked by hand where it is no figure of the board itself. */
    private static Map<String, Double> figures() {
        Map<String, Double> figures = new LinkedHashMap<>();
        figures.put("chance", 0.7);
        figures.put("target", 26.0);
        // A twentieth of the way through 25, 26.5 and 28 is 25 + 0.1 · 1.5; likewise from above.
        figures.put("low", 25.15);
        figures.put("median", 26.5);
        figures.put("high", 27.85);
        figures.put("finishedArea", 450_000.0);
        figures.put("roughVolume", 15e6);
        figures.put("finishedVolume", 9e6);
        // 9 of 15 are left.
        figures.put("waste", 0.4);
        figures.put("minutes", 17.0);
        figures.put("cost", 53.5);
        figures.put("wood", 40.25);
        figures.put("labour", 13.25);
        return figures;
    }

    // By volume 2400 · 210 · 32 mm³ are 6.835 board feet of 144 · 25.4³ mm³. By tally 7 whole feet of 8.27 in make
    // 4.82, so 5 ft² of 5/4: 6.25.
    private static final double BY_VOLUME = 2400.0 * 210 * 32 / (144 * 25.4 * 25.4 * 25.4);
    private static final double BY_TALLY = 6.25;

    // Worked by hand: 15e6 mm³ over 304.8³ are 0.53 ft³.
    @Test
    void aStackInInchesIsCountedInBoardFeetAndCubicFeet() {
        String report = StackReport.of(STACK, new Figures(Units.INCHES), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty()).replace('\u00a0', ' ');
        double finished = 0.7 * BOARD.finishedVolume() / (25.4 * 25.4 * 25.4);

        assertTrue(report.matches("(?s).*rough wood by volume +6\\.8 board feet\n +0\\.53 ft³\nS*.*"), report);
        assertTrue(report.matches("(?s).*finished wood to expect +" + Figures.decimals(finished / 1728, 2) + " ft³\n +"
            + Figures.decimals(finished / 144, 1) + " board feet\n.*"), report);
        assertTrue(report.contains("Of 1 board about 1 should make it, 0 to 1 (90 %)."), report);
    }

    @Test
    void everyFigureOfABoardStandsUnderItsNameInTheJson() throws IOException {
        JsonNode board = new ObjectMapper().readTree(StackJson.of(STACK, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty())).at("/boards/0");

        figures().forEach((name, figure) -> assertEquals(figure, board.get(name).asDouble(), 1e-12, name));
        assertEquals(BY_VOLUME, board.get("boardFeet").asDouble(), 1e-12);
        assertEquals(BY_TALLY, board.get("boardFeetTallied").asDouble(), 1e-12);
        assertEquals("oak", board.get("name").asText());
        assertEquals("oak.csv", board.get("file").asText());
        assertEquals("doubtful", board.get("verdict").asText());
    }

    @Test
    void theStackItselfIsInTheJson() throws IOException {
        JsonNode json = new ObjectMapper().readTree(StackJson.of(STACK, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()));

        assertEquals(0.7, json.get("expected").asDouble(), 1e-12);
        assertEquals(Math.sqrt(0.21), json.get("expectedStandardDeviation").asDouble(), 1e-12);
        assertEquals(0, json.get("expectedLow").asInt());
        assertEquals(1, json.get("expectedHigh").asInt());
        assertEquals(53.5, json.get("cost").asDouble());
        assertEquals("EUR", json.get("currency").asText());
        assertEquals("=ash", json.at("/boards/0/species").asText());
        assertTrue(json.at("/boards/0/grade").isNull());
        assertTrue(json.get("bill").isNull());
    }

    @Test
    void everyFigureOfABoardStandsInItsColumnOfTheTable() {
        List<String> lines = StackReport.csv(STACK, Optional.empty()).lines().toList();
        List<String> names = List.of(lines.get(0).split(","));
        List<String> cells = List.of(lines.get(1).split(",", -1));
        Map<String, Double> expected = new LinkedHashMap<>();
        // Columns are named as keys are, in small letters.
        figures().forEach((name, figure) -> expected.put(name.replaceAll("([A-Z])", "_$1").toLowerCase(), figure));
        expected.put("length", 2400.0);
        expected.put("width", 210.0);
        expected.put("rough_board_feet", BY_VOLUME);
        expected.put("tallied_board_feet", BY_TALLY);

        assertEquals(names.size(), cells.size());
        expected.forEach((name, figure) -> assertEquals(figure, Double.parseDouble(cells.get(names.indexOf(name))),
            5e-5, name));
        assertEquals("EUR", cells.get(names.indexOf("currency")));
        assertEquals("'=ash", cells.get(names.indexOf("species")));
        assertEquals("", cells.get(names.indexOf("grade")));
    }
}
