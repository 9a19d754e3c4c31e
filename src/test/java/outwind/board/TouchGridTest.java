package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TouchGridTest {

    /** Length against width of boards: long ones, square ones, and some that are wider than long. */
    private static final double[][] BOARDS = {{3000, 300}, {1180, 212}, {900, 300}, {620, 330}, {400, 390},
        {400, 400}, {300, 400}, {200, 900}};

    static Stream<TouchGrid> gridsOfUpTo(int most) {
        return Arrays.stream(BOARDS).flatMap(board -> IntStream.rangeClosed(2, most / 2).boxed()
            .flatMap(columns -> IntStream.rangeClosed(2, most / columns)
                .mapToObj(rows -> new TouchGrid(board[0], board[1], columns, rows, 15, 0))));
    }

    static Stream<TouchGrid> smallGrids() {
        return gridsOfUpTo(12);
    }

    static Stream<TouchGrid> grids() {
        return gridsOfUpTo(60);
    }

    /** What people touch by hand: columns well further apart than rows, and no more than five rows. */
    static Stream<TouchGrid> usualGrids() {
        return grids().filter(grid -> grid.rows() <= 5 && (grid.length() - 30) / (grid.columns() - 1)
            >= 1.5 * (grid.width() - 30) / (grid.rows() - 1));
    }

    /**
     * Length of the shortest closed tour, by dynamic programming over subsets of the spots. Source: M. Held and R. M.
     * Karp, Journal of the Society for Industrial and Applied Mathematics 10 (1962) 196–210.
     */
    private static double shortest(List<TouchGrid.Spot> spots) {
        int n = spots.size() - 1;
        TouchGrid.Spot start = spots.get(n);
        double[][] best = new double[1 << n][n];
        for (int visited = 1; visited < 1 << n; visited++) {
            for (int last = 0; last < n; last++) {
                best[visited][last] = Double.POSITIVE_INFINITY;
                if ((visited >> last & 1) == 0) {
                    continue;
                }
                int before = visited ^ 1 << last;
                if (before == 0) {
                    best[visited][last] = start.to(spots.get(last));
                }
                for (int from = 0; from < n; from++) {
                    if ((before >> from & 1) == 1) {
                        best[visited][last] = Math.min(best[visited][last],
                            best[before][from] + spots.get(from).to(spots.get(last)));
                    }
                }
            }
        }
        return IntStream.range(0, n).mapToDouble(last -> best[(1 << n) - 1][last] + spots.get(last).to(start)).min()
            .orElseThrow();
    }

    // Reference: enumeration of all tours by Held and Karp's dynamic programme.
    @ParameterizedTest
    @MethodSource("smallGrids")
    void noTourOfUpToTwelveSpotsIsShorter(TouchGrid grid) {
        List<TouchGrid.Spot> tour = grid.tour();

        assertEquals(shortest(tour), TouchGrid.travel(tour), 1e-9 * TouchGrid.travel(tour));
    }

    // Any closed tour crosses each gap between columns twice, and takes as many steps as there are spots, none shorter
    // than from row to row: no tour is shorter than this.
    @ParameterizedTest
    @MethodSource("usualGrids")
    void noTourOfALargerGridIsShorterByMuch(TouchGrid grid) {
        double a = (grid.length() - 30) / (grid.columns() - 1);
        double b = (grid.width() - 30) / (grid.rows() - 1);
        int along = 2 * (grid.columns() - 1);
        double least = along * a + (grid.columns() * grid.rows() - along) * b;

        double travel = TouchGrid.travel(grid.tour());

        assertTrue(travel >= least * (1 - 1e-12), travel + " beside " + least);
        assertTrue(travel <= least * 1.09, travel + " beside " + least + " " + grid);
    }

    @ParameterizedTest
    @MethodSource("grids")
    void everySpotIsVisitedOnceFromTheNearCornerOn(TouchGrid grid) {
        List<TouchGrid.Spot> tour = grid.tour();

        assertEquals(grid.columns() * grid.rows(), new HashSet<>(tour).size());
        assertEquals(grid.columns() * grid.rows(), tour.size());
        assertEquals(new TouchGrid.Spot(15, 15, 0, 0), tour.get(0));
    }

    @ParameterizedTest
    @CsvSource({"1180, 212, 15, 1", "1180.4, 211.6, 0, 1", "300, 41, 6.8, 1", "3000, 400, 15, 3.175",
        "1181.1, 234.95, 15, 3.175"})
    void spotsLieOnTheBoardAtPlacesARuleShows(double length, double width, double inset, double step) {
        for (TouchGrid.Spot spot : new TouchGrid(length, width, 9, 5, inset, step).tour()) {
            assertTrue(spot.x() >= 0 && spot.x() <= length && spot.y() >= 0 && spot.y() <= width, spot.toString());
            assertEquals(Math.rint(spot.x() / step), spot.x() / step, 1e-9);
            assertEquals(Math.rint(spot.y() / step), spot.y() / step, 1e-9);
        }
    }

    // Worked by hand: 1180 mm less two insets of 15 mm in four steps, 212 mm likewise in two, to whole mm.
    @Test
    void theSpotsOfABoardStandEvenlyBetweenTheInsets() {
        TouchGrid grid = new TouchGrid(1180, 212, 5, 3, 15);

        assertEquals(List.of(15.0, 302.0, 590.0, 878.0, 1165.0),
            IntStream.range(0, 5).mapToObj(i -> grid.spot(i, 0).x()).toList());
        assertEquals(List.of(15.0, 106.0, 197.0), IntStream.range(0, 3).mapToObj(j -> grid.spot(0, j).y()).toList());
    }

    @Test
    void aNarrowBoardCapsTheInset() {
        assertEquals(15, TouchGrid.insetFor(1180, 212, 15));
        assertEquals(10, TouchGrid.insetFor(1180, 60, 15));
    }

    @ParameterizedTest
    @CsvSource({"1180, 212, 1, 3, 15", "1180, 212, 3, 1, 15", "1180, 212, 3, 3, 106", "1180, 212, 3, 3, -1",
        "0, 212, 3, 3, 0", "1180, NaN, 3, 3, 15", "100, 60, 99, 2, 10"})
    void whatIsNoGridIsRefused(double length, double width, int columns, int rows, double inset) {
        assertThrows(IllegalArgumentException.class, () -> new TouchGrid(length, width, columns, rows, inset));
    }
}
