package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import outwind.numeric.plane.Plane;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

class PossibleUndersidesTest {

    private static final Places GRID = Places.grid(new Region(0, 0, 900, 180), 7, 3);

    private static SampledBoard underside(DoubleBinaryOperator height) {
        return ShapeOf.sampled(GRID, (x, y) -> 99, height);
    }

    // Identity: linear interpolation both ways is exact on a twisted face, at places on no line of the grid.
    @Test
    void gapsOfATwistedFaceAreExactBetweenTheLines() {
        DoubleBinaryOperator twisted = (x, y) -> 4 * x / 900 * y / 180 + 7;

        PossibleUndersides.Gaps gaps = PossibleUndersides.of(List.of(underside(twisted))).over(new Plane(0, 0, 0));

        assertArrayEquals(new double[] {4 * 0.37 * 0.81}, gaps.at(333, 145.8), 1e-12);
        assertArrayEquals(new double[] {4}, gaps.at(900, 180), 1e-12);
    }

    // Worked by hand: three flat undersides, each with a dip of its own 1, 2 and 3 mm deep. The mean dips by no more
    // than a third of 3 mm = 1 mm, the boards by 2 mm at the median.
    @Test
    void boardsStandFurtherOffTheBedThanTheirMean() {
        List<SampledBoard> boards = List.of(underside((x, y) -> x == 0 && y == 0 ? -1 : 0),
            underside((x, y) -> x == 900 && y == 0 ? -2 : 0), underside((x, y) -> x == 900 && y == 180 ? -3 : 0));

        PossibleUndersides.Gaps gaps = PossibleUndersides.of(boards).over(new Plane(5, 0, 0));

        assertEquals(1, gaps.lift(), 1e-12);
        assertArrayEquals(new double[] {1, 2, 0}, gaps.at(900, 180), 1e-12);
        assertEquals(2.0 / 3, gaps.shareWithin(1, 900, 180), 1e-12);
    }

    @Test
    void theBedTakesItsSlopes() {
        PossibleUndersides.Gaps gaps = PossibleUndersides.of(List.of(underside((x, y) -> 0.01 * x - 0.02 * y + 3)))
            .over(new Plane(0, 0.01, -0.02));

        assertArrayEquals(new double[] {0}, gaps.at(412, 33), 1e-12);
        assertEquals(0, gaps.lift(), 1e-12);
    }
}
