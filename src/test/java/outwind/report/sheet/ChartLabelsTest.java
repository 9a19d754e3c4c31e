package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import outwind.report.drawing.Labels;

/** Labels on the chart: none covers another, and each stays as near to its place as it can. */
class ChartLabelsTest {

    private static final Rectangle2D PAPER = new Rectangle2D.Double(0, 0, 900, 300);

    private static Rectangle2D box(double x, double y, double width, double height) {
        return new Rectangle2D.Double(x, y, width, height);
    }

    @RepeatedTest(15)
    void noLabelCoversAnother(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        Labels labels = new Labels(PAPER);
        List<Rectangle2D> taken = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            Rectangle2D mark = box(880 * random.nextDouble(), 280 * random.nextDouble(), 14, 14);
            labels.keepClear(mark);
            taken.add(mark);
        }
        int marks = taken.size();

        List<Labels.Placed> placed = new ArrayList<>();
        for (Rectangle2D mark : List.copyOf(taken)) {
            labels.place(mark, box(0, 0, 20 + 100 * random.nextDouble(), 24), Labels.Side.ALL).ifPresent(label -> {
                placed.add(label);
                taken.add(label.box());
            });
        }

        assertTrue(placed.size() > 10, "only " + placed.size() + " found room");
        for (int i = marks; i < taken.size(); i++) {
            assertTrue(PAPER.contains(taken.get(i)), taken.get(i).toString());
            for (int j = 0; j < i; j++) {
                assertFalse(taken.get(i).intersects(taken.get(j)), taken.get(i) + " covers " + taken.get(j));
            }
        }
        for (int i = 0; i < placed.size(); i++) {
            for (int j = 0; j < placed.size(); j++) {
                Rectangle2D other = placed.get(j).box();
                assertTrue(i == j || placed.get(i).leader().stream().noneMatch(other::intersectsLine),
                    "a leader runs through " + other);
            }
        }
    }

    @Test
    void aFreePlaceTakesTheFirstSideWithoutALeader() {
        Labels labels = new Labels(PAPER);
        Rectangle2D mark = box(400, 150, 20, 20);

        Labels.Placed placed = labels.place(mark, box(0, 0, 60, 24), List.of(Labels.Side.BELOW)).orElseThrow();

        assertEquals(box(380, 173, 60, 24), placed.box());
        assertEquals(Optional.empty(), placed.leader());
    }

    @Test
    void aLabelWithoutRoomIsLeftOut() {
        Labels labels = new Labels(PAPER);
        labels.keepClear(PAPER);

        assertEquals(Optional.empty(), labels.place(box(400, 150, 20, 20), box(0, 0, 60, 24), Labels.Side.ALL));
    }

    @Test
    void columnsAreSpreadNoFurtherThanNeeded() {
        assertArrayEquals(new double[] {10, 50}, Labels.spread(new double[] {10, 50}, 20), 1e-12);
        assertArrayEquals(new double[] {80, 100, 120}, Labels.spread(new double[] {100, 100, 100}, 20), 1e-12);
        assertArrayEquals(new double[] {0, 85, 105}, Labels.spread(new double[] {0, 90, 100}, 20), 1e-12);
    }

    @Test
    void spreadColumnsKeepTheirOrderAndTheirGap() {
        SplittableRandom random = new SplittableRandom(3);
        for (int run = 0; run < 200; run++) {
            double[] wanted = random.doubles(1 + run % 9).map(u -> 200 * u).sorted().toArray();

            double[] middles = Labels.spread(wanted, 25);

            for (int i = 1; i < middles.length; i++) {
                assertTrue(middles[i] - middles[i - 1] >= 25 - 1e-9, Arrays.toString(middles));
            }
            // As a whole they do not drift.
            assertEquals(Arrays.stream(wanted).sum(), Arrays.stream(middles).sum(), 1e-9);
        }
    }
}
