package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class StopsTest {

    private static final List<Double> NONE = List.of();

    private static double[] at(double from, double to, double kerf, double raster, List<Double> extents, List<Double> begins,
            List<Double> ends) {
        return Stops.of(from, to, new Saw(kerf, 0, raster), extents, begins, ends).at();
    }

    // Worked by hand: the raster starts at the near end, and the far end is no place to begin.
    @Test
    void theRasterStartsAtTheNearEnd() {
        assertArrayEquals(new double[] {10, 40, 70}, at(10, 100, 3, 30, NONE, NONE, NONE), 1e-9);
        assertArrayEquals(new double[] {10, 40, 70, 100}, at(10, 100.1, 3, 30, NONE, NONE, NONE), 1e-9);
    }

    // Worked by hand: 40 + 3 from the near end at 10, and again; 100 − 40 at the far end.
    @Test
    void blanksFollowEachOtherAKerfApartAndEndAtTheFarEnd() {
        assertArrayEquals(new double[] {10, 53, 60, 96}, at(10, 100, 3, 500, List.of(40.0), NONE, NONE), 1e-9);
    }

    // Worked by hand: a blank of 20 mm ends at the near side of a defect (from 30), begins at its far side (61), or ends with
    // the board (from 80). With kerfs of 3 mm 33, 56 and 79 follow on 10, then 53, 76 and 99 on 30, and 84 on 61.
    @Test
    void blanksLieUpToADefectAndBehindIt() {
        assertArrayEquals(new double[] {10, 30, 33, 53, 56, 61, 76, 79, 80, 84, 99},
            at(10, 100, 3, 500, List.of(20.0), List.of(50.0), List.of(61.0)), 1e-9);
    }

    // Worked by hand: sides of defects beyond the part that is left are no places.
    @Test
    void placesBeyondTheEndsAreLeftOut() {
        assertArrayEquals(new double[] {10}, at(10, 100, 3, 500, List.of(95.0), List.of(50.0), List.of(5.0, 100.0, 120.0)),
            1e-9);
    }

    // Worked by hand: 33 + 1e-7 is the place at 33; 33.001 is another.
    @Test
    void placesAsGoodAsTheSameAreOne() {
        assertArrayEquals(new double[] {0, 33}, at(0, 100, 3, 500, NONE, NONE, List.of(33.0, 33 + 1e-7)), 1e-5);
        assertArrayEquals(new double[] {0, 33, 33.001}, at(0, 100, 3, 500, NONE, NONE, List.of(33.0, 33.001)), 1e-9);
    }

    // Worked by hand: thirty lengths add up to thousands of places. Kept are the near end, thirty places of blanks that end
    // with the board, and two hundred sums, first those of a single blank.
    @Test
    void sumsOfManyBlanksAreCutShort() {
        List<Double> extents = IntStream.range(0, 30).mapToObj(i -> 7 + 0.013 * i).toList();

        double[] at = at(0, 1000, 3, 1000, extents, NONE, NONE);

        assertEquals(1 + 30 + 200, at.length);
        for (double extent : extents) {
            assertTrue(Arrays.stream(at).anyMatch(place -> Math.abs(place - extent - 3) < 1e-9), "behind " + extent);
        }
    }

    // Worked by hand: a blank of 40 begins at 60 at the latest.
    @Test
    void roomIsCountedFromTheFirstStop() {
        Stops stops = new Stops(0, 100, new double[] {0, 30, 60, 61});

        assertEquals(4, stops.count());
        assertEquals(3, stops.roomFor(40));
        assertEquals(3, stops.roomFor(40 + 1e-7));
        assertEquals(2, stops.roomFor(40.001));
        assertEquals(4, stops.roomFor(39));
        assertEquals(0, stops.roomFor(100.1));
    }

    // Worked by hand; a place that is the same but for rounding is that stop.
    @Test
    void theStopFromAPlaceOn() {
        Stops stops = new Stops(0, 100, new double[] {0, 30, 60, 61});
        double[] places = {-5, 0, 1e-7, 0.001, 29.9, 30, 60.5, 61, 61 + 1e-7, 61.1};
        int[] expected = {0, 0, 0, 1, 1, 1, 3, 3, 3, 4};

        assertArrayEquals(expected, Arrays.stream(places).mapToInt(stops::indexFrom).toArray());
    }
}
