package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import outwind.board.Board;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.flatten.GridPromise;
import outwind.flatten.TouchPlan;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Paper;
import outwind.report.words.Figures;
import outwind.report.words.TouchSheet;

/** Where to touch off, drawn: every number, place and box where the board has it. */
class TouchChartTest {

    // Unlike along and across, and no row lies in the middle of the width.
    private static final TouchGrid GRID = new TouchGrid(1000, 300, 5, 4, 15);

    private static final TouchSheet SHEET = sheet();

    private static TouchSheet sheet() {
        GridPromise promise = new GridPromise(GRID, 0.3);
        return new TouchSheet(Board.untouched("rail", Units.MILLIMETRES, 1000, 300, OptionalDouble.empty(),
            OptionalDouble.empty()), new TouchPlan(List.of(promise), promise, TouchPlan.Reason.ASKED,
                TouchPlan.Pace.USUAL));
    }

    private static boolean isAt(List<Paper.Words> words, String text, double x, double y, double reach) {
        return words.stream().anyMatch(word -> word.text().equals(text) && Math.abs(word.box().getCenterX() - x) < reach
            && Math.abs(word.box().getCenterY() - y) < reach);
    }

    /** Middle of the drawing's words for a place, by what stands under the first and the last column. */
    private static Frame frame(List<Paper.Words> words) {
        double bottom = words.stream().filter(word -> word.text().startsWith("near edge;")).findFirst().orElseThrow()
            .box().getCenterY();
        Frame frame = TouchChart.frame(GRID, 0);
        // The words below the near edge stand as far under it as those above the far edge stand over it, and a line more.
        double top = words.stream().filter(word -> word.text().equals("far edge")).findFirst().orElseThrow().box()
            .getCenterY();
        double clear = (bottom - top - frame.height() - 32) / 2;
        return TouchChart.frame(GRID, (int) Math.round(top + clear));
    }

    @ParameterizedTest
    @EnumSource(Units.class)
    void everyNumberStandsAtItsPlaceOnTheBoard(Units units) {
        List<Paper.Words> words = TouchChart.drawn(SHEET, new Figures(units)).written();
        Frame frame = frame(words);

        for (int i = 0; i < SHEET.tour().size(); i++) {
            TouchGrid.Spot spot = SHEET.tour().get(i);
            assertTrue(isAt(words, String.valueOf(i + 1), frame.px(spot.x()), frame.py(spot.y()), 3), (i + 1) + " at "
                + spot);
        }
    }

    @ParameterizedTest
    @EnumSource(Units.class)
    void rowsAndColumnsAreNamedByTheirPlaces(Units units) {
        Figures figures = new Figures(units);
        List<Paper.Words> words = TouchChart.drawn(SHEET, figures).written();
        Frame frame = frame(words);

        for (int row = 0; row < 4; row++) {
            double y = frame.py(GRID.spot(0, row).y());
            String place = figures.place(GRID.spot(0, row).y());
            assertTrue(words.stream().anyMatch(word -> word.text().equals(place) && word.box().getMaxX() < frame.left()
                && Math.abs(word.box().getCenterY() - y) < 3), "y " + place + " beside row " + row);
        }
        for (int column = 0; column < 5; column++) {
            double x = frame.px(GRID.spot(column, 0).x());
            String place = figures.place(GRID.spot(column, 0).x());
            assertTrue(words.stream().anyMatch(word -> word.text().equals(place) && word.box().getMinY() > frame.bottom()
                && Math.abs(word.box().getCenterX() - x) < 3), "x " + place + " below column " + column);
        }
    }

    // In the list a number, its x and its y stand in one line, and in the order of the tour.
    @ParameterizedTest
    @EnumSource(Units.class)
    void theListHasEveryPlaceBesideItsNumber(Units units) {
        Figures figures = new Figures(units);
        List<Paper.Words> words = TouchChart.drawn(SHEET, figures).written();
        double below = frame(words).bottom() + 80.0;

        List<Paper.Words> listed = words.stream().filter(word -> word.box().getMinY() > below).toList();

        for (int i = 0; i < SHEET.tour().size(); i++) {
            String number = String.valueOf(i + 1);
            TouchGrid.Spot spot = SHEET.tour().get(i);
            boolean found = listed.stream().filter(word -> word.text().equals(number)).anyMatch(word ->
                Stream.of(figures.place(spot.x()), figures.place(spot.y())).toList().equals(listed.stream()
                    .filter(other -> Math.abs(other.box().getCenterY() - word.box().getCenterY()) < 3
                        && other.box().getMinX() > word.box().getMaxX() && other.box().getMinX() < word.box().getX() + 240)
                    .map(Paper.Words::text).toList()));
            assertTrue(found, number + " at " + spot);
        }
        assertEquals(1, listed.stream().filter(word -> word.text().equals("again")).count());
    }
}
