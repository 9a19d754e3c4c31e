package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

/** Boards 900 x 180 mm, 30 mm thick unless said. */
class RestingPoseTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    private static RestingPose lie(DoubleBinaryOperator underside) {
        return lie(underside, (x, y) -> 30);
    }

    private static RestingPose lie(DoubleBinaryOperator underside, DoubleBinaryOperator thickness) {
        return RestingPose.of(ShapeOf.sampled(Places.grid(new Region(0, 0, 900, 180), 19, 7),
            (x, y) -> underside.applyAsDouble(x, y) + thickness.applyAsDouble(x, y), underside), 450);
    }

    private static double loadAt(RestingPose pose, double x, double y) {
        return pose.contacts().stream().filter(c -> c.x() == x && c.y() == y).mapToDouble(BedContact::load).sum();
    }

    // Closed form: corners 2 mm off the mean plane in turn. It rocks on the two low ones, half the load on each; set
    // mid-rock the bed is level again and the other corners stand 4 mm up.
    @Test
    void aTwistedBoardIsSetMidRockOnTwoCorners() {
        RestingPose pose = lie(SHAPE.twist(2));

        assertTrue(pose.rocks());
        assertFalse(pose.isFlat());
        assertEquals(2, pose.contacts().size());
        assertEquals(0.5, loadAt(pose, 0, 180), 1e-9);
        assertEquals(0.5, loadAt(pose, 900, 0), 1e-9);
        assertEquals(-2, pose.bed().at(450, 90), 1e-9);
        assertEquals(0, pose.bed().slopeX(), 1e-12);
        assertEquals(0, pose.bed().slopeY(), 1e-12);
        assertEquals(4, pose.widest(), 1e-9);
    }

    // Worked by hand: twisted again, but one of the high corners bent down by 1 mm at its very tip: 3 and 4 mm up. The
    // bed tilts about the line through the low corners; both high corners lie as far from it, so mid-rock both stand
    // 3.5 mm up. Widest is the gap beside the bent tip, an eighteenth nearer to the line: 17/18 of 4.5 mm.
    @Test
    void midRockIsHalfwayBetweenTheTwoTiltsAtWhichAnotherPlaceComesDown() {
        RestingPose pose = lie((x, y) -> SHAPE.twist(2).applyAsDouble(x, y) - (x == 0 && y == 0 ? 1 : 0));

        assertTrue(pose.rocks());
        assertEquals(-2, pose.bed().at(0, 180), 1e-9);
        assertEquals(-2, pose.bed().at(900, 0), 1e-9);
        assertEquals(1 - 3.5, pose.bed().at(0, 0), 1e-9);
        assertEquals(2 - 3.5, pose.bed().at(900, 180), 1e-9);
        assertEquals(4.25, pose.widest(), 1e-9);
    }

    // Closed form: twist of ±2 mm and a bow of 2.25 mm are lowest along the edges at u = ±2/(2·2.25) = ±4/9 of half the
    // length, x 650 near and x 250 far, at −2·4/9 + 2.25·(4/9)² = −4/9 mm. The board is the same turned half round, so
    // mid-rock the bed is level, and a corner stands 2 + 2.25 + 4/9 mm up.
    @Test
    void aBoardThatRocksOnTwoPlacesOfItsEdgesIsSetMidRock() {
        RestingPose pose = lie((x, y) -> SHAPE.twist(2).applyAsDouble(x, y) + SHAPE.bow(2.25).applyAsDouble(x, y));

        assertTrue(pose.rocks());
        assertEquals(pose.contacts(), pose.restsAt());
        assertEquals(0.5, loadAt(pose, 650, 0), 1e-9);
        assertEquals(0.5, loadAt(pose, 250, 180), 1e-9);
        assertEquals(0, pose.bed().slopeX(), 1e-12);
        assertEquals(0, pose.bed().slopeY(), 1e-12);
        assertEquals(-4.0 / 9, pose.bed().at(450, 90), 1e-12);
        assertEquals(4.25 + 4.0 / 9, pose.widest(), 1e-9);
    }

    // Lever rule: an underside that curves up from the line x = 0 but for its lowest places at two corners and in the
    // middle of the far end. The centre of gravity lies halfway: half on the far place, a quarter on each corner.
    @Test
    void threePlacesFarApartHoldTheBoardSteady() {
        RestingPose pose = lie((x, y) -> x == 0 && y % 180 == 0 || x == 900 && y == 90 ? 0 : 1);

        assertFalse(pose.rocks());
        assertEquals(3, pose.contacts().size());
        assertEquals(0.25, loadAt(pose, 0, 0), 1e-9);
        assertEquals(0.25, loadAt(pose, 0, 180), 1e-9);
        assertEquals(0.5, loadAt(pose, 900, 90), 1e-9);
        assertEquals(1, pose.widest(), 1e-9);
    }

    // Lever rule: a wedge that thickens from nothing at x = 0 has its centre of gravity at two thirds of its length,
    // and one that thickens across at two thirds of its width. Trapezoids over 18 and 6 parts: the second moment of the
    // grid lies 1/(2·18²) and 1/(2·6²) of the whole above the third that it should be.
    @Test
    void theHeavierEndBearsMore() {
        DoubleBinaryOperator onThree = (x, y) -> x == 0 && y % 180 == 0 || x == 900 && y == 90 ? 0 : 1;
        double along = 2 / 3.0 + 1 / (3.0 * 18 * 18);
        double across = 2 / 3.0 + 1 / (3.0 * 6 * 6);

        assertEquals(along, loadAt(lie(onThree, (x, y) -> x / 30), 900, 90), 1e-9);

        RestingPose acrossHeavy = lie(onThree, (x, y) -> y / 30);
        assertEquals(across - 0.25, loadAt(acrossHeavy, 0, 180), 1e-9);
        assertEquals(0.75 - across, loadAt(acrossHeavy, 0, 0), 1e-9);
    }

    // Lever rule: 30 mm thick, give or take 4 at the ends, its centre of gravity lies 450·4/30/3 = 20 mm past the
    // middle. On two places in the middle and one 450 mm further on, that one bears 4.4 %: the board rocks about the
    // others.
    @Test
    void aPlaceThatBearsUnderATwentiethSteadiesNothing() {
        RestingPose pose = lie((x, y) -> x == 450 && y % 180 == 0 || x == 900 && y == 90 ? 0 : 1,
            (x, y) -> 30 + 4 * (x - 450) / 450);

        assertTrue(pose.rocks());
        assertEquals(2, pose.contacts().size());
        pose.contacts().forEach(contact -> assertEquals(450, contact.x()));
    }

    // Lever rule, the board weighing 22 N: a finger of 5 N at a corner moves the centre of the load by 5/27 of the way
    // there, 83 mm along and 17 mm across, to x 533 y 107. That lies beyond x 500, and at x 533 between the places the
    // span across is 30·367/900 = 12 mm, or 37 mm, or 40 mm, half of it on either side: only the first two tip.
    @ParameterizedTest
    @CsvSource({"near along, 400, 500, 0, 180, true", "near across, 0, 900, 75, 105, true",
        "less near across, 0, 900, 45, 135, false", "apart along, 300, 600, 0, 180, false"})
    void placesThatLieTogetherHoldNoBoard(String how, double one, double two, double low, double high, boolean rocks) {
        DoubleBinaryOperator underside = (x, y) ->
            x == one && (y == low || y == high) || x == two && y == 90 ? 0 : 1;

        RestingPose pose = RestingPose.of(ShapeOf.sampled(Places.grid(new Region(0, 0, 900, 180), 19, 13),
            (x, y) -> 31, underside), 450);

        assertEquals(3, pose.contacts().size(), how);
        assertEquals(rocks, pose.rocks(), how);
    }

    // The lowest place amid a hump is one place, however many samples touch there: it spins and tips.
    @Test
    void aBoardOnItsBellyRocks() {
        RestingPose pose = lie((x, y) -> Math.pow(x / 450 - 1, 2) + 0.5 * Math.pow(y / 90 - 1, 2));

        assertTrue(pose.rocks());
        assertFalse(pose.isFlat());
    }

    // Common practice: a board hollow below lies steady on its ends.
    @Test
    void aBoardHollowBelowLiesSteadyOnItsEnds() {
        RestingPose pose = lie((x, y) -> -2 * Math.pow(x / 450 - 1, 2));

        assertFalse(pose.rocks());
        assertEquals(2, pose.widest(), 1e-9);
    }

    // Worked by hand: a board cut off flat below is flat on a bed of any slope, as is one that dips by a sheet of
    // paper. Twisted by q, a high corner can go down and up again by 4·q.
    @Test
    void aBoardThatLiesFlatNeitherRocksNorStandsOff() {
        RestingPose tilted = lie((x, y) -> 3 + 0.01 * x - 0.02 * y);

        assertTrue(tilted.isFlat());
        assertEquals(List.of(), tilted.restsAt());
        assertFalse(tilted.rocks());
        assertEquals(0, tilted.widest(), 1e-9);
        assertEquals(0.01, tilted.bed().slopeX(), 1e-12);
        assertEquals(-0.02, tilted.bed().slopeY(), 1e-12);
        assertTrue(lie((x, y) -> 0.0999 * Math.pow(x / 450 - 1, 2)).isFlat());
        assertFalse(lie((x, y) -> 0.1001 * Math.pow(x / 450 - 1, 2)).isFlat());
        assertFalse(lie(SHAPE.twist(0.0249)).rocks());
        assertTrue(lie(SHAPE.twist(0.0251)).rocks());
    }
}
