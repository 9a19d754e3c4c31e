package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import outwind.blanks.BlankPlan;
import outwind.blanks.Saw;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Units;
import outwind.report.drawing.Paper;
import outwind.report.words.Figures;
import outwind.report.words.Label;
import outwind.shop.SawLimits;
import outwind.surface.ShapeOf;

/** Labels for boards and blanks: one for each, all its words inside it. */
class LabelSheetTest {

    private static final Figures MM = new Figures(Units.MILLIMETRES);

    private static List<String> words(List<Label> labels) {
        return LabelSheet.drawn(labels).written().stream().map(words -> words.text().replace('\u00a0', ' ')).toList();
    }

    // Worked by hand: a bill of 2 x 300 x 60 x 20 mm, cut 20 mm longer and 4 mm wider.
    @Test
    void everyBlankHasALabelWithItsFinishedAndCutSize() {
        ShapeOf shape = new ShapeOf(1000, 140, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        Board board = shape.read(5, 3, (x, y) -> 0);
        BlankPlan plan = BlankPlan.of(board, new CuttingBill(List.of(
            new BillItem("leg", 300, 60, 20, 2, OptionalDouble.empty(), false))),
            new Saw(3.2, 0, 5, new SawLimits(0, 1000, 0, 20, 4)), 0.95, 0.3, 1);

        List<String> words = words(Label.of(plan, MM));

        assertEquals(6, words.size());
        for (int i = 0; i < 2; i++) {
            assertEquals((i + 1) + " leg", words.get(3 * i));
            assertEquals("300 x 60 x 20.0 mm", words.get(3 * i + 1));
            assertTrue(words.get(3 * i + 2).startsWith("as cut 320 x 64; " + board.name() + ", section "), words.toString());
        }
    }

    // Names of any length: each label's words stay between the lines that it is cut along.
    @Test
    void noWordLeavesItsLabel() {
        List<Label> labels = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            labels.add(new Label(i + "  " + "side rail ".repeat(1 + i), "1180 x 212 x 31.5 mm ".repeat(1 + i / 8).strip(),
                List.of("from the long board ".repeat(1 + i), "section 3")));
        }
        List<Paper.Words> written = LabelSheet.drawn(labels).written();
        double wide = Paper.ROOM / 3.0;
        double high = (Paper.HEIGHT - 2.0 * Paper.MARGIN) / 8;

        assertTrue(written.size() >= 72, "" + written.size());
        written.forEach(words -> {
            double column = Math.floor((words.box().getMinX() - Paper.MARGIN) / wide);
            double row = Math.floor((words.box().getMinY() - Paper.MARGIN) / high);
            assertTrue(words.box().getMaxX() <= Paper.MARGIN + (column + 1) * wide, words.toString());
            assertTrue(words.box().getMaxY() <= Paper.MARGIN + (row + 1) * high, words.toString());
        });
        assertEquals(24, written.stream().filter(words -> words.text().contains("side rail"))
            .map(words -> Math.round(words.box().getMinX()) + "/" + Math.round(words.box().getMinY()))
            .collect(Collectors.toSet()).size());
    }

    // Three columns of eight are on a page.
    @Test
    void aPageHoldsTwentyFour() throws IOException {
        List<Label> labels = new ArrayList<>();
        for (int i = 0; i < 49; i++) {
            labels.add(new Label(i + "  leg", "300 x 60", List.of()));
        }

        assertEquals(3, LabelSheet.pages(49));
        assertEquals(2, LabelSheet.pages(48));
        assertEquals(0, LabelSheet.pages(0));
        assertEquals(labels.subList(24, 48), LabelSheet.onPage(labels, 1));
        assertEquals(labels.subList(48, 49), LabelSheet.onPage(labels, 2));
        assertEquals(1600, ImageIO.read(new ByteArrayInputStream(LabelSheet.png(labels.subList(48, 49)))).getWidth());
    }
}
