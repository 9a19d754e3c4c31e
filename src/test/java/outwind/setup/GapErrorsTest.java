package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.numeric.plane.Plane;
import outwind.surface.DrawnShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;
import outwind.surface.field.Viewpoint;

class GapErrorsTest {

    private static final Board BOARD = ShapeOf.board().read(5, 3, (x, y) -> 0);

    /** Undersides that hang from their lowest spot, at x = 0, by a slope that differs from board to board. */
    private record Sloping(double topDeviation) implements DrawnShape {

        @Override
        public double topAt(double x, double y) {
            return 30;
        }

        @Override
        public double undersideAt(double x, double y) {
            return 2 * x / 900;
        }

        @Override
        public Viewpoint seen() {
            return new Viewpoint(900, 200, false, false);
        }

        @Override
        public double topDeviationAt(double x, double y) {
            return topDeviation;
        }

        @Override
        public List<SampledBoard> draws(Places places, int count, long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            return IntStream.range(0, count).mapToObj(d -> {
                double end = 2 + 0.5 * random.nextGaussian();
                double height = 3 * random.nextGaussian();
                double[] under = IntStream.range(0, places.size())
                    .mapToDouble(i -> height + end * places.x()[i] / 900).toArray();
                return new SampledBoard(places, new double[under.length], under);
            }).toList();
        }
    }

    // Closed form: the gap at the far end is normal with deviation 0.5 mm, whatever the height of the whole board; 90 %
    // of it lie within 1.645·0.5 mm. Tolerance: three standard errors of the 90th percentile of 150 draws.
    private static PossibleUndersides.Gaps gaps() {
        return PossibleUndersides.of(new Sloping(0).draws(Places.grid(Region.whole(BOARD), 7, 3), 150, 4))
            .over(new Plane(0, 0, 0));
    }

    @Test
    void theRangeIsThatOfTheGapOverTheLowestSpot() {
        List<Double> errors = GapErrors.halfWidths(gaps(), new Sloping(0),
            List.of(new Shim(900, 0, 2, false), new Shim(450, 0, 1, false), new Shim(0, 0, 0, true)));

        assertEquals(1.645 * 0.5, errors.get(0), 0.16);
        assertEquals(errors.get(0) / 2, errors.get(1), 1e-9);
        assertEquals(0, errors.get(2), 1e-9);
    }

    @Test
    void theModelsOwnDeviationIsTheLeast() {
        assertTrue(GapErrors.halfWidths(gaps(), new Sloping(1), List.of(new Shim(0, 0, 0, true))).get(0)
            >= 1.645);
    }
}
