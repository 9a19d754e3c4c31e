package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.drawing.Paper;
import outwind.report.text.DetailsReport;
import outwind.report.text.TextReport;
import outwind.report.words.Figures;
import outwind.report.words.Support;
import outwind.shop.Wedge;

/** The sheet at the bed: that it can be drawn for every board, and that what it says stands within its edges. */
class BoardSheetTest {

    private static final Figures MM = new Figures(Units.MILLIMETRES);

    private static Board board(String name, double length, double width, double thickness, OptionalDouble target,
            DoubleBinaryOperator height) {
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < 15; k++) {
            double u = k % 5 / 4.0;
            double v = k / 5 / 2.0;
            readings.add(new Reading(length * u, width * v, height.applyAsDouble(u, v), Face.A, "", k + 2));
        }
        return new Board(name, Units.MILLIMETRES, length, width, OptionalDouble.of(thickness), Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), target, OptionalDouble.empty(), Trim.NONE, Underside.ALIKE,
            Optional.empty(), List.of(), readings, List.of(), List.of(), Optional.empty(),
            true);
    }

    private static Judgement judged(double length, double width, double thickness, DoubleBinaryOperator height) {
        Board board = board("board", length, width, thickness, OptionalDouble.empty(), height);
        return Judgement.of(board, JudgeOptions.usual(board));
    }

    private static BufferedImage drawn(Judgement judgement, Figures figures) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(BoardSheet.png(judgement, figures)));
    }

    /** True if nothing is drawn so near to the edge of the sheet that it may be cut off. */
    private static boolean hasCleanMargin(BufferedImage image, int margin) {
        int width = image.getWidth();
        int height = image.getHeight();
        return isWhite(image, 0, 0, width, margin) && isWhite(image, 0, height - margin, width, margin)
            && isWhite(image, 0, 0, margin, height) && isWhite(image, width - margin, 0, margin, height);
    }

    private static boolean isWhite(BufferedImage image, int x, int y, int width, int height) {
        return Arrays.stream(image.getRGB(x, y, width, height, null, 0, width)).allMatch(rgb -> rgb == 0xffffffff);
    }

    @Tag("long")
    @ParameterizedTest
    @CsvSource({
        "INCHES, long and slender, 2400, 120, 40, 5",
        "INCHES, nearly square, 380, 300, 40, 4",
        "MILLIMETRES, flat, 900, 180, 30, 0",
        "MILLIMETRES, small, 200, 60, 20, 1",
        "INCHES, a slab, 5000, 700, 80, 9",
        "MILLIMETRES, largest, 20000, 3000, 1000, 700",
        "INCHES, a mere strip, 20000, 5, 20, 4",
        "MILLIMETRES, wider than long, 300, 2900, 40, 3",
        "MILLIMETRES, more supports than there is room for, 9000, 900, 60, 30",
        "INCHES, a crumb, 0.001, 0.002, 0.01, 0",
        "INCHES, so bent that no board comes out, 2400, 120, 18, 60"})
    void everyBoardIsDrawnWithinTheMargins(Units units, String name, double length, double width, double thickness,
            double warp) throws IOException {
        Judgement judged = judged(length, width, thickness,
            (u, v) -> warp * (2 * u - 1) * (2 * u - 1) + warp / 3 * u * v);

        BufferedImage image = drawn(judged, new Figures(units));

        assertEquals(Paper.WIDTH, image.getWidth(), name);
        assertEquals(Paper.HEIGHT, image.getHeight(), name);
        assertTrue(hasCleanMargin(image, 16), name);
        BufferedImage details = ImageIO.read(new ByteArrayInputStream(DetailSheet.png(judged, new Figures(units))));
        assertEquals(Paper.WIDTH, details.getWidth(), name);
        assertEquals(Paper.HEIGHT, details.getHeight(), name);
        assertTrue(hasCleanMargin(details, 12), name + ", details");
    }

    @Test
    void manyWarningsStillFitOnOnePage() throws IOException {
        Board board = board("a name that does not end ".repeat(30), 2400, 300, 60, OptionalDouble.of(50),
            (u, v) -> 40 * (2 * u - 1) * (2 * u - 1) + u * v);
        JudgeOptions request = JudgeOptions.usual(board).withClamps(90).withWedges(new Wedge(150, 12)).cuttingAnyway();

        BufferedImage image = drawn(Judgement.of(board, request), new Figures(Units.INCHES));

        assertEquals(Paper.HEIGHT, image.getHeight());
        assertTrue(hasCleanMargin(image, 16));
    }

    @Test
    void theSameBoardGivesTheSameSheet() {
        Judgement judged = judged(1180, 212, 31.5, (u, v) -> 2 * u * v);

        assertArrayEquals(BoardSheet.png(judged, MM), BoardSheet.png(judged, MM));
    }

    // One walks along the near edge to the far end and back along the far edge.
    @Test
    void shimsAreNumberedRoundTheBoardAndWhatRestsHasNoNumber() throws Exception {
        Board rests = BoardFile.read(Path.of("sample-probes/mantel-wedge.csv"), Defaults.NOTHING);
        List<Support> supports = Support.round(Judgement.of(rests, JudgeOptions.usual(rests)));

        assertTrue(supports.stream().anyMatch(support -> !support.isShimmed()), "nothing rests");
        int next = 1;
        boolean wasFar = false;
        for (Support support : supports) {
            assertFalse(wasFar && support.where() == Support.Where.NEAR, "back to the near edge");
            wasFar |= support.where() == Support.Where.FAR;
            if (support.isShimmed()) {
                assertEquals(next++, support.number().getAsInt());
                assertFalse(MM.shim(support.shim().height()).equals("0.0"));
            }
        }
        assertTrue(next > 2, "hardly any shims");
    }

    // Once a shim of less than 1/128 in was left out of an inch report, though the board needs it to stand still.
    @Test
    void everyShimThatTheBoardNeedsIsPrintedInInchesToo() {
        Judgement judged = judged(1000, 200, 40, (u, v) -> 0.15 * u * v);
        List<Support> shimmed = Support.round(judged).stream().filter(Support::isShimmed).toList();

        assertFalse(shimmed.isEmpty(), "no shims at all");
        for (Figures figures : List.of(MM, new Figures(Units.INCHES))) {
            String report = DetailsReport.of(judged, figures).replaceAll("(?s).*(no\\.\\s+x)", "$1")
                .replaceAll("(?s)\\n\\n.*", "");
            assertEquals(shimmed.size(), report.lines().skip(1).count(), report);
            shimmed.forEach(support -> assertTrue(report.contains(" " + figures.shim(support.shim().height()) + " "),
                report));
            assertFalse(report.contains(" 0.000 ") || report.contains(" 0.0 "), report);
        }
    }

    // A board too thin for its span gets advice on a carrier, and no list of shims in text or JSON.
    // A thin twisted board needs shims at both ends and in the middle, where what comes off is written as well.
    @Test
    void aShimAwayFromTheEdgesStandsOnThePlanWithItsHeight() {
        Judgement judgement = judged(500, 150, 12, (u, v) -> 0.2 * (2 * u - 1) * (2 * v - 1)
            + 0.15 * (2 * u - 1) * (2 * u - 1));
        List<Support> inside = Support.round(judgement).stream()
            .filter(support -> support.where() == Support.Where.INSIDE && support.isShimmed()).toList();
        assertTrue(inside.stream().anyMatch(support -> Math.abs(support.shim().x() - 250) < 1), inside.toString());

        List<Paper.Words> words = BoardSheet.drawn(judgement, MM).paper().written();

        for (Support support : inside) {
            List<Paper.Words> numbers = words.stream().filter(word -> word.text().equals(support.label())).toList();
            assertEquals(1, numbers.size(), "shim " + support.label());
            assertTrue(words.stream().filter(word -> word.text().equals(support.height(MM)))
                .anyMatch(word -> Math.abs(word.box().getCenterY() - numbers.get(0).box().getCenterY()) < 10
                    && Math.abs(word.box().getCenterX() - numbers.get(0).box().getCenterX()) < 80), support.label());
        }
    }

    @Test
    void aBoardThatShimsCannotHoldGetsACarrierAndNoShims() {
        Judgement judged = judged(2000, 300, 8, (u, v) -> 3 * u * v);

        assertFalse(judged.setup().held().holds());
        assertEquals(List.of(), judged.setup().shims());
        assertEquals(List.of(), Support.round(judged));
        String report = TextReport.of(judged, MM);
        assertTrue(report.replaceAll("\\s+", " ").contains("carrier board") && !report.contains("shim (mm)"), report);
    }

    // The craftsman's way with a doubtful board: face A just clean, then measure again. One that falls short gets no
    // plan; one more word gets it all the same.
    @Test
    void whatIsPlannedFollowsTheVerdict() {
        Board sure = board("b", 1000, 200, 30, OptionalDouble.of(24), (u, v) -> 2 * u * v);
        Judgement range = Judgement.of(sure, JudgeOptions.usual(sure));
        double even = range.outlook().levelled().median();
        Board doubtful = board("b", 1000, 200, 30, OptionalDouble.of(even), (u, v) -> 2 * u * v);
        Board no = board("b", 1000, 200, 30, OptionalDouble.of(29.9), (u, v) -> 2 * u * v);

        assertEquals(Planned.BOTH_FACES, range.planned());
        assertEquals(2, range.plannedCuts().size());
        Judgement open = Judgement.of(doubtful, JudgeOptions.usual(doubtful));
        assertEquals(Planned.FACE_A, open.planned());
        assertFalse(TextReport.of(open, MM).contains("last pass of face"), TextReport.of(open, MM));
        assertTrue(TextReport.of(open, MM).contains("outwind finish"));
        Judgement shorter = Judgement.of(no, JudgeOptions.usual(no));
        assertEquals(Planned.NONE, shorter.planned());
        assertTrue(TextReport.of(shorter, MM).contains("Before you cut"));
        assertFalse(TextReport.of(shorter, MM).contains(" 1. "));
        assertEquals(Planned.BOTH_FACES, Judgement.of(no, JudgeOptions.usual(no).cuttingAnyway()).planned());
        assertEquals(Planned.BOTH_FACES, Judgement.of(no, JudgeOptions.usual(no).stoppingAt(26)).planned());
    }
}
