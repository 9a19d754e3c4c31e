package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.Defect;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Mark;
import outwind.report.drawing.Paper;
import outwind.report.drawing.SmoothGrid;
import outwind.report.words.Figures;

/** What sheets are drawn with, and what may be read off their pixels. */
class DrawingTest {

    private static final Figures MM = new Figures(Units.MILLIMETRES);

    private static Board board(String name, double length, double width, double thickness, OptionalDouble target,
            Trim trim, List<Defect> defects, List<Reading> readings) {
        return new Board(name, Units.MILLIMETRES, length, width, OptionalDouble.of(thickness), Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), target, OptionalDouble.empty(), trim, Underside.ALIKE,
            Optional.empty(), defects, readings, List.of(), List.of(), Optional.empty(),
            true);
    }

    private static Board board(double length, double width, double thickness, DoubleBinaryOperator height) {
        return board("board", length, width, thickness, OptionalDouble.empty(), Trim.NONE, List.of(),
            grid(5, 3, length, width, height));
    }

    /** Readings on columns × rows places, ends and edges included; heights over x and y as shares of the board. */
    private static List<Reading> grid(int columns, int rows, double length, double width,
            DoubleBinaryOperator height) {
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < columns * rows; k++) {
            double u = (double) (k % columns) / (columns - 1);
            double v = (double) (k / columns) / (rows - 1);
            readings.add(new Reading(length * u, width * v, height.applyAsDouble(u, v), Face.A, "", k + 2));
        }
        return readings;
    }

    private static Judgement judged(Board board) {
        return Judgement.of(board, JudgeOptions.usual(board));
    }

    private static BufferedImage drawn(Board board, Figures figures) throws IOException {
        byte[] png = BoardSheet.png(judged(board), figures);
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    @Test
    void trimDefectsTargetLongNamesAndManyReadingsAreDrawn() throws IOException {
        String name = "a name that does not end ".repeat(30);
        List<Defect> defects = List.of(new Defect(0, 0, 1, 1), new Defect(200, 50, 400, 200));
        List<Reading> scan = grid(13, 10, 1200, 200, (u, v) -> u < 0.05 ? -9 : Math.sin(9 * u) * Math.cos(4 * v));

        BufferedImage image = drawn(board(name, 1200, 200, 30, OptionalDouble.of(22), new Trim(80, 10), defects, scan),
            MM);

        assertEquals(Paper.WIDTH, image.getWidth());
    }

    // The darkest colour of the scale is used nowhere else: it lies where most comes off.
    @Test
    void mostComesOffTheCornerThatStandsUp() throws IOException {
        // Thick enough to be cut as it lies.
        List<Reading> readings = grid(5, 3, 1000, 200, (u, v) -> 6 * u * v);
        BufferedImage image = drawn(board("board", 1000, 200, 40, OptionalDouble.of(25), Trim.NONE, List.of(),
            readings), MM);
        Set<Integer> columns = new HashSet<>();
        int darkest = 0x623a34;

        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                // The scale itself lies above the board.
                if (y > 330 && (image.getRGB(x, y) & 0xffffff) == darkest) {
                    columns.add(x);
                }
            }
        }

        assertTrue(columns.size() > 20, "no darkest wood");
        assertTrue(columns.stream().allMatch(x -> x > Paper.WIDTH / 2), "darkest wood at the wrong end");
    }

    @Test
    void boardIsToScaleUnlessItWouldBeAMereLine() {
        SplittableRandom random = new SplittableRandom(7);
        for (int run = 0; run < 200; run++) {
            double length = 1 + 5000 * random.nextDouble();
            double width = length * (0.05 + 1.5 * random.nextDouble());
            Board board = board(length, Math.min(width, 3000), 30, (u, v) -> u * v);

            Frame frame = Frame.ofBoard(board, 100, 200, 1200, 500);

            assertTrue(frame.width() <= 1200 && frame.height() <= 500, frame.toString());
            // Sides are whole pixels: half a pixel at most is lost on the shorter one.
            assertEquals(1, frame.scaleX() / frame.scaleY(), 0.6 / Math.min(frame.width(), frame.height()),
                frame.toString());
        }
    }

    @Test
    void woodFarFromAnyTouchOffIsOnlyGuessed() {
        Board everywhere = board(900, 180, 30, (u, v) -> u * v);
        Board edgesOnly = board("edges", 900, 180, 30, OptionalDouble.empty(), Trim.NONE, List.of(),
            grid(5, 2, 900, 180, (u, v) -> u * v));

        assertFalse(GuessMap.of(judged(everywhere), 900, 180).hasGuesses());
        assertTrue(GuessMap.of(judged(edgesOnly), 900, 180).hasGuesses());
    }

    // A cubic spline of this kind is exact for straight lines everywhere, and for parabolas but at its ends.
    @Test
    void betweenTheCrossingsOfAGridTheFaceIsSmooth() {
        SmoothGrid grid = SmoothGrid.of(12, 9, 100, 40, (x, y) -> 0.001 * x * x - 0.02 * y + 3);

        double[] fine = grid.enlarged(200, 80);

        for (int j = 0; j < 80; j++) {
            for (int i = 20; i < 180; i++) {
                double x = (i + 0.5) / 2;
                double y = 40 - (j + 0.5) / 2;
                assertEquals(0.001 * x * x - 0.02 * y + 3, fine[j * 200 + i], 1e-9);
            }
        }
    }

    @Test
    void plotOfAChartFillsItsFrame() {
        Frame frame = new Frame(120, 80, 600, 240, -20, 1180, 5, 41).widenedBy(30);
        var chart = frame.chart();
        var series = chart.addSeries("points", new double[] {0, 1000}, new double[] {10, 30});
        series.setMarker(Mark.READING.marker());
        Paper paper = new Paper(1000, 600);

        frame.paint(chart, paper.pen());

        for (double mm : new double[] {-20, 0, 333, 1180}) {
            assertEquals(frame.px(mm), frame.left() + chart.getScreenXFromChart(mm), 1e-6);
        }
        for (double mm : new double[] {5, 20, 41}) {
            assertEquals(frame.py(mm), frame.top() + chart.getScreenYFromChart(mm), 1e-6);
        }
    }
}
