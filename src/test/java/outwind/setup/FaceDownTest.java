package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

class FaceDownTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    private static FaceDown lie(DoubleBinaryOperator top) {
        Board board = SHAPE.read(5, 3, top);
        SampledBoard whole = MeasuredShape.of(board).at(Places.fine(board, Region.whole(board)));
        return FaceDown.of(RestingPose.of(whole), whole, 180);
    }

    // Common practice: a bowed board lies steady on its two ends, hollow side down.
    @Test
    void aBowedBoardLiesBetterHollowSideDown() {
        assertTrue(lie(SHAPE.bow(3)).isBetterTurned());
        assertFalse(lie(SHAPE.bow(-3)).isBetterTurned());
    }

    @Test
    void aTwistedBoardRocksEitherWay() {
        FaceDown twisted = lie(SHAPE.twist(2));

        assertTrue(twisted.asTouched().rocks() && twisted.turned().rocks());
        assertEquals(twisted.asTouched().widest(), twisted.turned().widest(), 1e-9);
        assertFalse(twisted.isBetterTurned());
    }

    private static FaceDown flatAboveHollowBelow(double hollow) {
        SampledBoard whole = ShapeOf.sampled(Places.grid(new Region(0, 0, 900, 180), 19, 7), (x, y) -> 30,
            (x, y) -> -hollow * Math.pow(x / 450 - 1, 2));
        return FaceDown.of(RestingPose.of(whole), whole, 180);
    }

    private static FaceDown turned(FaceDown lying) {
        return new FaceDown(lying.turned(), lying.asTouched());
    }

    // Worked by hand: flat on one face, hollow by 2 mm on the other, a board lies steady on either; on the flat one it
    // is nowhere off the bed. By 0.2 mm that is no reason to turn it.
    @Test
    void aBoardSteadyBothWaysLiesBetterOnItsFlatFaceUnlessItHardlyMatters() {
        assertTrue(flatAboveHollowBelow(2).isBetterTurned());
        assertFalse(flatAboveHollowBelow(2).isAlike());
        assertFalse(turned(flatAboveHollowBelow(2)).isBetterTurned());
        assertFalse(turned(flatAboveHollowBelow(2)).isAlike());
        assertFalse(flatAboveHollowBelow(0.2).isBetterTurned());
        assertTrue(flatAboveHollowBelow(0.2).isAlike());
    }

    // Worked by hand: bowed by 3 mm, its ends stand that far off the bed one way and its middle the other.
    @Test
    void aBoardThatRocksOneWayOnlyIsNotAlikeBothWays() {
        FaceDown bowed = lie(SHAPE.bow(3));

        assertEquals(bowed.asTouched().widest(), bowed.turned().widest(), 1e-9);
        assertFalse(bowed.isAlike());
        assertTrue(lie(SHAPE.twist(2)).isAlike());
    }

    @Test
    void turningTheBoardTwiceChangesNothing() {
        Board board = SHAPE.read(5, 3, SHAPE.bow(1));
        SampledBoard whole = MeasuredShape.of(board).at(Places.fine(board, Region.whole(board)));
        SampledBoard twice = whole.turnedOver(180).turnedOver(180);

        for (int i = 0; i < whole.size(); i++) {
            assertEquals(whole.y()[i], twice.y()[i], 1e-12);
            assertEquals(whole.top()[i], twice.top()[i]);
            assertEquals(whole.underside()[i], twice.underside()[i]);
        }
    }
}
