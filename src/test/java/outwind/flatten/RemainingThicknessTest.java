package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.surface.DrawnShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;
import outwind.surface.field.Viewpoint;

/** Boards on a face that is cut already, and faces that are to be flat, where the possible ones are known. */
class RemainingThicknessTest {

    private static final double LENGTH = 900;
    private static final double WIDTH = 180;
    private static final Region ALL = new Region(0, 0, LENGTH, WIDTH);

    /**
     * The k-th of the possible boards is bowed by k / 100 mm, its middle 25 mm above the bed; looked at more closely on
     * a rough face.
     */
    private record Bowed(int fineness) implements DrawnShape {

        @Override
        public Viewpoint seen() {
            return new Viewpoint(LENGTH, WIDTH, false, false);
        }

        @Override
        public List<SampledBoard> draws(Places places, int count, long seed) {
            return IntStream.rangeClosed(1, count).mapToObj(k -> ShapeOf.sampled(places,
                (x, y) -> 25 - k / 100.0 * Math.pow(2 * x / LENGTH - 1, 2), (x, y) -> 0)).toList();
        }
    }

    // By hand: the ends of the k-th board stand k / 100 mm under 25, and the skim comes off once.
    @Test
    void theLowestHeightLessOneSkimRemains() {
        ThicknessRange range = RemainingThickness.of(new Bowed(1), ALL, 0.3, 1);

        assertEquals(Simulation.DRAWS, range.sorted().length);
        assertEquals(25 - 0.01 - 0.3, range.quantile(1), 1e-9);
        assertEquals(25 - Simulation.DRAWS / 100.0 - 0.3, range.quantile(0), 1e-9);
        assertEquals(new ThicknessRange(new double[] {1.5, 2}), RemainingThickness.of(new double[][] {{3, 2.5}, {2, 4}}, 0.5));
    }

    @Test
    void aRoughFaceIsLookedAtMoreClosely() {
        assertEquals(17 * 7, RemainingThickness.places(new Bowed(1), ALL).size());
        assertEquals(49 * 19, RemainingThickness.places(new Bowed(3), ALL).size());
    }

    // By hand: a bow of k / 100 mm needs a zone of that width, and its planes lie level.
    @Test
    void aBowIsAsWideAsItsZone() {
        Flatness flatness = Flatness.of(new Bowed(1), ALL, 1);

        assertEquals(0.51, flatness.low(), 0.0101);
        assertEquals(5.0, flatness.median(), 0.0101);
        assertEquals(9.5, flatness.high(), 0.0101);
        assertEquals(0.2, flatness.chanceWithin(2 + 1e-6), 1e-12);
        assertEquals(0, flatness.chanceWithin(0.005));
        assertEquals(flatness, new Flatness(flatness.sorted().clone()));
        assertEquals(flatness.hashCode(), new Flatness(flatness.sorted().clone()).hashCode());
        assertNotEquals(flatness, new Flatness(new double[] {1}));
    }
}
