package outwind.report.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.flatten.GridPromise;
import outwind.flatten.TouchPlan;
import outwind.flatten.Verdict;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.drawing.Frame;
import outwind.report.sheet.TouchChart;
import outwind.report.text.TouchForm;
import outwind.report.text.TouchReport;

/** Where to touch off, on the sheet and in the file to fill in. */
class TouchSheetTest {

    private static final double EIGHTH = 25.4 / 8;

    private static TouchSheet sheet(TouchGrid grid, OptionalDouble thickness, OptionalDouble target) {
        return sheet("hall table, left", Units.MILLIMETRES, grid, thickness, target);
    }

    private static TouchSheet sheet(String name, Units units, TouchGrid grid, OptionalDouble thickness,
            OptionalDouble target) {
        GridPromise promise = new GridPromise(grid, 0.3);
        return new TouchSheet(Board.untouched(name, units, grid.length(), grid.width(), thickness, target),
            new TouchPlan(List.of(promise), promise, TouchPlan.Reason.ASKED, TouchPlan.Pace.USUAL));
    }

    private static Board read(String text) throws BadBoardFile {
        return BoardFile.parse("table.csv", text, Defaults.NOTHING);
    }

    /** Fills in heights of a twisted board; every {@code forgotten}th row is left empty. */
    private static String filled(String form, int forgotten) {
        StringBuilder text = new StringBuilder();
        int row = 0;
        for (String line : form.lines().toList()) {
            boolean isRow = line.matches("[0-9].*,");
            row += isRow ? 1 : 0;
            // The last cell is the caliper's.
            text.append(isRow && row % forgotten != 0 ? line.replaceAll(",$", "0.1" + row % 10 + ",") : line).append('\n');
        }
        return text.toString();
    }

    @ParameterizedTest
    @CsvSource({"MILLIMETRES, 1180, 212, 1, 31.5, 26", "INCHES, 1181.1, 234.95, 3.175, 31.75, 25.4",
        "INCHES, 1000, 200, 3.175, 30, 20"})
    void aFormThatIsFilledInIsReadBack(Units units, double length, double width, double step, double thickness,
            double target) throws BadBoardFile {
        TouchGrid grid = new TouchGrid(length, width, 5, 3, 15, step);
        String form = TouchForm.of(sheet("hall table, left", units, grid, OptionalDouble.of(thickness),
            OptionalDouble.of(target)));

        Board board = read(filled(form, 100));

        assertEquals("hall table, left", board.name());
        assertEquals(units, board.units());
        // Lengths are written to 0.0001 of their unit.
        assertEquals(length, board.length(), 0.0013);
        assertEquals(width, board.width(), 0.0013);
        assertEquals(thickness, board.thickness().getAsDouble(), 0.0013);
        assertEquals(target, board.target().getAsDouble(), 0.0013);
        assertEquals(16, board.readings().size());
        for (int i = 0; i < 16; i++) {
            TouchGrid.Spot spot = grid.tour().get(i % 15);
            assertEquals(spot.x(), board.readings().get(i).x(), 1e-9);
            assertEquals(spot.y(), board.readings().get(i).y(), 1e-9);
        }
    }

    @Test
    void spotsThatWereForgottenAreNotTouchedAndTheRestIsJudged() throws BadBoardFile {
        TouchGrid grid = new TouchGrid(1180, 212, 5, 3, 15);
        String form = TouchForm.of(sheet(grid, OptionalDouble.of(31.5), OptionalDouble.of(26)));

        Board board = read(filled(form, 4));

        assertEquals(12, board.readings().size());
        assertEquals(Verdict.YES, Judgement.of(board, JudgeOptions.usual(board)).verdict());
    }

    @Test
    void anEmptyFormIsToldToBeEmpty() {
        TouchGrid grid = new TouchGrid(1180, 212, 5, 3, 15);
        String form = TouchForm.of(sheet(grid, OptionalDouble.of(31.5), OptionalDouble.empty()));

        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> read(form));

        assertTrue(refused.getMessage().contains("expected at least 3 touch-offs on face A"), refused.getMessage());
    }

    @Test
    void withoutAThicknessTheFormHasAColumnForTheCaliper() throws BadBoardFile {
        TouchGrid grid = new TouchGrid(1180, 212, 3, 2, 15);
        String form = TouchForm.of(sheet(grid, OptionalDouble.empty(), OptionalDouble.empty()));

        Board board = read(form.replaceAll(",,\n", ",0.2,31.4\n"));

        assertTrue(form.contains("\nx,y,z,thickness\n15,15,,\n"), form);
        assertEquals(7, board.calipers().size());
    }

    @Tag("long")
    @ParameterizedTest
    @CsvSource({"300, 100, 9, 5, 1", "3000, 400, 9, 5, 1", "3000, 60, 25, 3, 1", "400, 390, 9, 9, 1",
        "118, 2900, 3, 25, 1", "2997.2, 301.625, 24, 4, 3.175", "60, 60, 2, 2, 1"})
    void spotsNeverOverlapAndAllStaysWithinTheMargins(double length, double width, int columns, int rows, double step)
            throws IOException {
        double inset = TouchGrid.insetFor(length, width, 15);
        TouchGrid grid = new TouchGrid(length, width, columns, rows, inset, step);
        Frame frame = TouchChart.frame(grid, 300);
        for (int i = 1; i < columns; i++) {
            assertTrue(frame.px(grid.spot(i, 0).x()) - frame.px(grid.spot(i - 1, 0).x()) > 2 * TouchChart.SPOT + 2);
        }
        for (int j = 1; j < rows; j++) {
            assertTrue(frame.py(grid.spot(0, j - 1).y()) - frame.py(grid.spot(0, j).y()) > 2 * TouchChart.SPOT + 2);
        }

        BufferedImage image = ImageIO.read(new ByteArrayInputStream(TouchChart.png(
            sheet(grid, OptionalDouble.empty(), OptionalDouble.empty()),
            new Figures(step == 1 ? Units.MILLIMETRES : Units.INCHES))));

        assertTrue(isWhite(image, 0, 0, 30, image.getHeight()));
        assertTrue(isWhite(image, image.getWidth() - 30, 0, 30, image.getHeight()));
        assertTrue(isWhite(image, 0, image.getHeight() - 20, image.getWidth(), 20));
    }

    private static boolean isWhite(BufferedImage image, int x, int y, int width, int height) {
        return Arrays.stream(image.getRGB(x, y, width, height, null, 0, width)).allMatch(rgb -> rgb == 0xffffffff);
    }

    @ParameterizedTest
    @CsvSource({"5, 3", "17, 2", "25, 3", "2, 25"})
    void theReportIsEightyColumnsWide(int columns, int rows) {
        TouchGrid grid = new TouchGrid(3000, 900, columns, rows, 15, EIGHTH);

        String report = TouchReport.of(sheet(grid, OptionalDouble.empty(), OptionalDouble.of(20)),
            new Figures(Units.INCHES));

        assertTrue(report.lines().allMatch(line -> line.length() <= 80), report);
    }

    @ParameterizedTest
    @CsvSource({"'Hall table, left', hall-table-left", "Tür 3, tür-3", "../../etc, etc", "'***', board"})
    void filesAreNamedAfterTheBoard(String name, String fileName) {
        assertEquals(fileName, sheet(name, Units.MILLIMETRES, new TouchGrid(1180, 212, 5, 3, 15),
            OptionalDouble.empty(), OptionalDouble.empty()).fileName());
    }
}
