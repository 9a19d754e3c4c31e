package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Turned;
import outwind.flatten.Slab;
import outwind.numeric.plane.Plane;
import outwind.setup.Setup;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;
import outwind.surface.trend.Warp;

/** A board of known shape after face A has been cut as it lay. */
class MovementTest {

    private static final ShapeOf SHAPE = ShapeOf.board();
    private static final Board BEFORE = SHAPE.read(5, 3, SHAPE.twist(1));
    private static final MeasuredShape MEASURED = MeasuredShape.of(BEFORE);
    private static final CuttingPlan CUTS = cuts();

    private static CuttingPlan cuts() {
        SampledBoard whole = MEASURED.at(Places.fine(BEFORE, Region.whole(BEFORE)));
        Plane level = new Plane(0, 0, 0);
        return CuttingPlan.of(Slab.of(whole, level, 0), Setup.bedUnder(whole, level), Datum.HIGHEST_SPOT, whole,
            whole, Double.POSITIVE_INFINITY, 0);
    }

    /** Face B as it would read, turned along, if it had moved by this since. */
    private static Board after(DoubleBinaryOperator moved) {
        double planeA = CUTS.faceA().plane().height();
        return SHAPE.read(5, 3, (x, y) -> planeA - (SHAPE.twist(1).applyAsDouble(x, 180 - y) - 30)
            + moved.applyAsDouble(x, y));
    }

    // Worked by hand: a twist of ±1 mm is cut at −1; face B then lies 30 − 1 − z under it, from 28 to 30 mm.
    @Test
    void faceBIsPredictedFromTheNewFace() {
        for (FaceBCheck check : FaceBCheck.of(BEFORE, MEASURED, CUTS, 0.1, 1)) {
            double onA = SHAPE.twist(1).applyAsDouble(check.x(), 180 - check.y());
            assertEquals(29 - onA, check.height(), 1e-9);
            assertTrue(check.tolerance() > 0.2, "more than twice the noise of a reading, since six are held together");
        }
    }

    @Test
    void aBoardThatReadsAsPredictedHasNotMoved() {
        // Zeroed elsewhere, lying a little tilted: neither is movement.
        Movement movement = Movement.between(MEASURED, CUTS, BEFORE, after((x, y) -> 7 + 0.001 * x - 0.002 * y), 1);

        assertFalse(movement.isReal());
        assertEquals(0, movement.greatest(), 1e-9);
    }

    // Once the way it had been turned before the cut was taken for the way after it: a board that is not alike end for
    // end "had moved".
    @Test
    void howItWasTurnedBeforeTheCutDoesNotMatterAfterIt() {
        DoubleBinaryOperator uneven = (x, y) -> 12 * Math.pow(x / 900, 3);
        Board read = SHAPE.read(9, 3, uneven);
        Board before = read.withFaceB(List.of(), Turned.END_OVER_END);
        MeasuredShape measured = MeasuredShape.of(read);
        SampledBoard whole = measured.at(Places.fine(read, Region.whole(read)));
        Plane level = new Plane(0, 0, 0);
        CuttingPlan cuts = CuttingPlan.of(Slab.of(whole, level, 0), Setup.bedUnder(whole, level), Datum.HIGHEST_SPOT, whole, whole,
            Double.POSITIVE_INFINITY, 0);
        Board after = SHAPE.read(9, 3, (x, y) -> 30 - uneven.applyAsDouble(x, 180 - y));

        assertFalse(Movement.between(measured, cuts, before, after, 1).isReal());
        assertTrue(Movement.between(measured, cuts, before, after.withFaceB(List.of(), Turned.END_OVER_END), 1).isReal());
    }

    @Test
    void stressThatLetGoShowsAsBow() {
        Movement movement = Movement.between(MEASURED, CUTS, BEFORE, after(SHAPE.bow(0.8)), 1);

        assertTrue(movement.isReal());
        assertEquals(0.8, movement.change().bow().orElseThrow().value(), 1e-9);
        assertEquals(0, movement.change().twist().orElseThrow().value(), 1e-9);
    }

    // Once four corners, which leave nothing to judge noise by, "had not moved" whatever they read.
    @Test
    void fourCornersShowATwistThatCameAbout() {
        double planeA = CUTS.faceA().plane().height();
        Board corners = SHAPE.read(2, 2, (x, y) -> planeA - (SHAPE.twist(1).applyAsDouble(x, 180 - y) - 30)
            + SHAPE.twist(2.5).applyAsDouble(x, y));

        assertTrue(Movement.between(MEASURED, CUTS, BEFORE, corners, 1).isReal());
    }

    // By the rule: every so many of the readings, so that at most sixty are left.
    @ParameterizedTest
    @CsvSource({"3, 3", "60, 60", "61, 31", "120, 60", "121, 41"})
    void ofManyReadingsEverySoManyAreTaken(int all, int taken) {
        List<Reading> readings = IntStream.range(0, all).mapToObj(i -> new Reading(i, 0, 0, Face.A, "", i)).toList();

        List<Reading> enough = Movement.enough(readings);

        assertEquals(taken, enough.size());
        assertEquals(readings.get(0), enough.get(0));
    }

    // By the rules: three readings lie on a plane; 0.2 mm matters to nobody; one board in 67 raises a false alarm.
    @Test
    void aMovementIsRealIfItIsLargeAndNoChance() {
        Optional<Warp.Amount> large = Optional.of(new Warp.Amount(-0.3, OptionalDouble.empty(), OptionalDouble.empty()));
        Warp cupped = new Warp(Optional.empty(), Optional.empty(), large);
        Warp none = new Warp(Optional.empty(), Optional.empty(), Optional.empty());

        assertTrue(new Movement(cupped, 0, 0.015, 4).isReal());
        assertTrue(new Movement(none, 0.21, 0.015, 4).isReal());
        assertFalse(new Movement(none, 0.2, 0.015, 4).isReal());
        assertFalse(new Movement(cupped, 0, 0.016, 4).isReal());
        assertTrue(new Movement(none, 0, 1, 3).isUnknown());
        assertFalse(new Movement(none, 0, 1, 4).isUnknown());
    }
}
