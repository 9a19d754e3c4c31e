package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.blanks.Blank;
import outwind.blanks.CutOrder;
import outwind.blanks.Layout;
import outwind.board.Board;
import outwind.board.Units;
import outwind.flatten.ThicknessRange;
import outwind.report.drawing.Paper;
import outwind.report.drawing.Pattern;
import outwind.report.words.BlankSheet;
import outwind.report.words.Figures;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

class BlankChartTest {

    private static final Figures MM = new Figures(Units.MILLIMETRES);

    private static final int LENGTH = 40;

    private static BlankSheet sheet(int blanks, int sentences) {
        ShapeOf shape = new ShapeOf(50 * Math.max(40, blanks), 300, 30, ShapeOf.board().underside(),
            OptionalDouble.empty(), ShapeOf.board().trim());
        Board board = shape.read(5, 3, (x, y) -> 0);
        List<List<Blank>> sections = new ArrayList<>();
        for (int i = 0; i < blanks; i++) {
            sections.add(List.of(new Blank("peg", 0, new Region(50 * i, 0, 50 * i + LENGTH, 300), false, 20,
                new ThicknessRange(new double[] {24, 25, 26}), 1)));
        }
        return new BlankSheet(board, "size", "headline", List.of("detail"),
            Collections.nCopies(sentences, "too thick ".repeat(400)),
            new Layout(CutOrder.CROSSCUT_FIRST, Region.whole(board), sections, 3.2, 0));
    }

    private static BufferedImage drawn(BlankSheet sheet) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(BlankChart.png(sheet, MM)));
    }

    /** Where the lowest row that has ink on it lies (px from the bottom). */
    private static int whiteBelow(BufferedImage image) {
        int white = 0;
        while (Arrays.stream(image.getRGB(0, image.getHeight() - 1 - white, image.getWidth(), 1, null, 0,
                image.getWidth())).allMatch(rgb -> rgb == 0xffffffff)) {
            white++;
        }
        return white;
    }

    // Of 243 blanks the sheet listed 1 to 52 and 123 to 174, of none it said so, and what was not cut it left out.
    @Tag("long")
    @ParameterizedTest
    @CsvSource({"1, 0", "4, 1", "5, 3", "199, 3", "200, 3", "201, 3", "243, 3"})
    void thePaperHoldsAllThatIsListed(int blanks, int sentences) throws IOException {
        BufferedImage bare = drawn(sheet(blanks, 0));
        BufferedImage image = drawn(sheet(blanks, sentences));

        int listed = Math.min(200, blanks);
        int rows = listed > 4 ? (listed + 1) / 2 : listed;
        assertTrue(bare.getHeight() > 30 * rows + 400, "height " + bare.getHeight());
        assertTrue(image.getHeight() >= bare.getHeight() + 40 * sentences, "sentences take "
            + (image.getHeight() - bare.getHeight()) + " px");
        assertTrue(whiteBelow(image) >= 40, "cut off at the bottom");
    }

    @Test
    void atMostTwoHundredBlanksAreListedByTheirNumbers() throws IOException {
        List<String> entries = BlankChart.entries(sheet(243, 0).layout(), MM);

        assertEquals(200, entries.size());
        for (int i = 0; i < entries.size(); i++) {
            assertTrue(entries.get(i).startsWith((i + 1) + "  peg  40 x 300 x 20.0"), entries.get(i));
        }
    }

    // One line says how many there are further on.
    @Test
    void thatThereAreMoreIsSaidInOneLine() throws IOException {
        int all = drawn(sheet(200, 0)).getHeight();
        int more = drawn(sheet(243, 0)).getHeight();

        assertTrue(more > all + 10 && more < all + 60, all + " and then " + more);
    }

    // Once sizes beyond the sixth took the colours of the first ones, and nothing said which was which.
    @Test
    void everySizeHasItsLetterOnTheBoardAndInTheKey() {
        ShapeOf shape = new ShapeOf(3000, 300, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        Board board = shape.read(5, 3, (x, y) -> 0);
        List<List<Blank>> sections = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            sections.add(List.of(new Blank("part " + i, i, new Region(100 * i, 0, 100 * i + 90, 300), false, 20,
                new ThicknessRange(new double[] {24, 25, 26}), 1)));
        }
        BlankSheet sheet = new BlankSheet(board, "size", "headline", List.of("detail"), List.of(),
            new Layout(CutOrder.CROSSCUT_FIRST, Region.whole(board), sections, 3.2, 0));

        List<String> words = BlankChart.words(sheet, MM).stream().map(word -> word.text().replace('\u00a0', ' '))
            .toList();

        for (int i = 0; i < 30; i++) {
            String letter = i < 26 ? String.valueOf((char) ('A' + i)) : "A" + (char) ('A' + i - 26);
            assertTrue(words.contains(letter), "no key for " + letter);
            int number = i + 1;
            assertTrue(words.contains(letter + " " + number) || Collections.frequency(words, letter) > 1,
                "no " + letter + " on the board: " + words);
            assertTrue(words.contains("1 x part " + i + ", 90 x 300 x 20.0 mm"), "part " + i + " in " + words);
        }
    }

    // Printed grey they stay as they are: black and white patterns, no two of them alike.
    @Test
    void patternsAreToldApartWithoutColour() {
        List<int[]> drawn = new ArrayList<>();
        for (Pattern pattern : Pattern.values()) {
            Paper paper = new Paper(120, 60);
            pattern.paint(paper.pen(), new Rectangle2D.Double(0, 0, 120, 60));
            int[] pixels = new int[120 * 60];
            for (int k = 0; k < pixels.length; k++) {
                pixels[k] = paper.colourAt(k % 120, k / 120).getGreen();
            }
            drawn.add(pixels);
        }
        for (int i = 0; i < drawn.size(); i++) {
            for (int j = 0; j < i; j++) {
                int apart = 0;
                for (int k = 0; k < drawn.get(i).length; k++) {
                    apart += Math.abs(drawn.get(i)[k] - drawn.get(j)[k]) > 40 ? 1 : 0;
                }
                assertTrue(apart > 0.06 * 120 * 60, Pattern.values()[i] + " and " + Pattern.values()[j] + ": " + apart);
            }
        }
    }
}
