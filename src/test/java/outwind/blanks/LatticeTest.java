package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.surface.Region;

/** Places and heights on a grid of 3 x 3 lines, 10 mm apart along and 5 mm across. */
class LatticeTest {

    private static final double[] X = {0, 10, 20};
    private static final double[] Y = {0, 5, 10};

    private static Lattice lattice(double x1, double y1, double x2, double y2) {
        return new Lattice(X, Y, new Region(x1, y1, x2, y2));
    }

    // Worked by hand: the corners, and where the line at x = 10 meets the sides; the side at y = 5 is a line itself.
    @Test
    void cornersAndLinesCanTouch() {
        Lattice part = lattice(4, 2, 16, 5);

        assertArrayEquals(new double[] {4, 10, 16, 4, 10, 16}, part.x());
        assertArrayEquals(new double[] {2, 2, 2, 5, 5, 5}, part.y());
    }

    @Test
    void theWholeBoardHasThePlacesOfTheGrid() {
        Lattice whole = lattice(0, 0, 20, 10);
        double[] onGrid = IntStream.range(0, 9).mapToDouble(k -> k * k).toArray();

        assertArrayEquals(new double[] {0, 10, 20, 0, 10, 20, 0, 10, 20}, whole.x());
        assertArrayEquals(new double[] {0, 0, 0, 5, 5, 5, 10, 10, 10}, whole.y());
        assertArrayEquals(onGrid, whole.heights(onGrid), 1e-12);
    }

    // Worked by hand: a peak of 8 mm in the middle falls to zero over each cell, in proportion both ways: 8 · 0.4 · 0.4 at
    // the corners, 8 · 0.4 on the line.
    @Test
    void heightsAreBilinearBetweenTheLines() {
        double[] peak = {0, 0, 0, 0, 8, 0, 0, 0, 0};

        assertArrayEquals(new double[] {1.28, 3.2, 1.28, 3.2, 8, 3.2}, lattice(4, 2, 16, 5).heights(peak), 1e-12);
    }

    // Identity: 1 + 2x + 3y + 4xy is bilinear, so that it is met everywhere.
    @Test
    void aBilinearFaceIsMetInEveryCell() {
        double[] onGrid = IntStream.range(0, 9).mapToDouble(k -> face(X[k % 3], Y[k / 3])).toArray();
        double[][] parts = {{1, 1, 3, 2}, {11, 1, 19, 4}, {2, 6, 20, 10}, {12, 7, 17, 9}, {10, 5, 20, 10}};
        for (double[] part : parts) {
            Lattice lattice = lattice(part[0], part[1], part[2], part[3]);

            assertArrayEquals(IntStream.range(0, lattice.x().length)
                .mapToDouble(k -> face(lattice.x()[k], lattice.y()[k])).toArray(), lattice.heights(onGrid), 1e-9);
        }
    }

    private static double face(double x, double y) {
        return 1 + 2 * x + 3 * y + 4 * x * y;
    }
}
