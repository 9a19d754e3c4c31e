package outwind.scan.find;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SmallestRectangleTest {

    // Identity: a rectangle is its own smallest rectangle.
    @Test
    void aTurnedRectangleIsFound() {
        SplittableRandom random = new SplittableRandom(1);
        for (int trial = 0; trial < 50; trial++) {
            double angle = random.nextDouble(-1.5, 1.5);
            double[][] points = new double[400][];
            for (int i = 0; i < points.length; i++) {
                double u = i < 4 ? 300 * (i % 2) : random.nextDouble(0, 300);
                double v = i < 4 ? 80 * (i / 2) : random.nextDouble(0, 80);
                points[i] = new double[] {u * Math.cos(angle) - v * Math.sin(angle),
                    u * Math.sin(angle) + v * Math.cos(angle)};
            }

            double found = SmallestRectangle.angle(ConvexHull.of(points));

            assertEquals(0, Math.sin(2 * (found - angle)), 1e-9, "angle " + angle);
        }
    }

    // Worked by hand: around the triangle (0,0) (4,0) (4,3) the rectangle along the legs has area 12; the one along the
    // hypotenuse 5 · 2.4 = 12 as well. Cut a corner off, (3.9,0) (4,0.1), and the legs stay at 12 while nothing else
    // gets smaller: the hypotenuse's goes down to 5 · (2.4 − 0.1·3/5) = 11.7.
    @Test
    void theSmallerOfTwoIsTaken() {
        double angle = SmallestRectangle.angle(ConvexHull.of(new double[][] {{0, 0}, {3.9, 0}, {4, 0.1}, {4, 3},
            {2, 1}}));

        assertEquals(Math.atan2(3, 4), Math.atan(Math.tan(angle)), 1e-12);
    }

    @Test
    void pointsInsideAndOnTheSidesAreNoCorners() {
        assertEquals(4, ConvexHull.of(new double[][] {{0, 0}, {1, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 1}, {0, 1}}).length);
    }
}
