package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.numeric.plane.Plane;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

class SetupTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    // Closed form: corners of the underside 2 mm off its mean plane in turn, 30 mm below face A. The bed lies under the
    // low ones, the others stand 4 mm up and are shimmed by that.
    @Test
    void aTwistedBoardStandsOnItsLowCornersAndOnShims() {
        Board board = SHAPE.read(5, 3, SHAPE.twist(2));
        MeasuredShape shape = MeasuredShape.of(board);
        SampledBoard whole = shape.at(Places.grid(Region.whole(board), 11, 5));

        Setup setup = Setup.parallelTo(new Plane(7, 0, 0), board, shape, whole, List.of(whole), Push.USUAL);

        assertEquals(-32, setup.bed().height(), 1e-6);
        assertEquals(List.of("0.0 0.0", "900.0 0.0", "900.0 180.0", "0.0 180.0"),
            setup.corners().stream().map(corner -> corner.x() + " " + corner.y()).toList());
        assertEquals(List.of(4L, 0L, 4L, 0L), setup.corners().stream().map(c -> Math.round(c.gap())).toList());
        setup.corners().forEach(corner -> assertEquals(Math.rint(corner.gap()), corner.gap(), 1e-6));
        assertTrue(setup.held().holds());
        assertEquals(setup.held().shims(), setup.shims());
        assertFalse(setup.shims().isEmpty());
        for (Shim shim : setup.held().places()) {
            double gap = 2 + SHAPE.twist(2).applyAsDouble(shim.x(), shim.y());
            assertEquals(shim.touches() ? 0 : gap, shim.height(), 1e-6);
            assertTrue(!shim.touches() || gap <= 0.1);
        }
    }

    // The bed lies as high as the underside lets it, with slopes of its own.
    @Test
    void theBedTouchesTheUndersideAndNothingOfItLiesBelow() {
        SampledBoard whole = ShapeOf.sampled(Places.grid(new Region(0, 0, 900, 180), 11, 5), (x, y) -> 30,
            (x, y) -> 0.01 * x - 0.02 * y + (x == 450 && y == 90 ? -1 : 0));

        Plane bed = Setup.bedUnder(whole, new Plane(99, 0.01, -0.02));

        assertEquals(new Plane(-1, 0.01, -0.02).at(450, 90), bed.at(450, 90), 1e-12);
        assertEquals(0.01, bed.slopeX());
        assertEquals(-0.02, bed.slopeY());
    }

    // Nothing less than the thinnest place is computed with: a wedge that thins from 40 to 20 mm needs as many shims as
    // a board of 20 mm, not as one of 40.
    @Test
    void stiffnessIsThatOfTheThinnestPlace() {
        Board board = SHAPE.read(5, 3, (x, y) -> 0);
        MeasuredShape shape = MeasuredShape.of(board);
        Places places = Places.grid(Region.whole(board), 11, 5);
        SampledBoard wedge = ShapeOf.sampled(places, (x, y) -> 10 - x / 45, (x, y) -> -30);
        SampledBoard thin = ShapeOf.sampled(places, (x, y) -> -10, (x, y) -> -30);
        Plane level = new Plane(0, 0, 0);

        assertEquals(Setup.parallelTo(level, board, shape, thin, List.of(thin), Push.USUAL).held().limit(),
            Setup.parallelTo(level, board, shape, wedge, List.of(wedge), Push.USUAL).held().limit());
    }

    @ParameterizedTest
    @CsvSource({"0, 0.1", "50, 0", "NaN, 0.1", "50, NaN", "Infinity, 0.1", "-50, 0.1"})
    void aPushWithoutForceOrGiveIsRefused(double force, double give) {
        Exception refused = assertThrows(IllegalArgumentException.class, () -> new Push(force, give));

        assertEquals("push needs a positive force and give, got " + force + " N and " + give + " mm",
            refused.getMessage());
    }
}
