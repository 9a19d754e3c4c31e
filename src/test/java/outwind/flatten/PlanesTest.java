package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.numeric.plane.Plane;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;
import outwind.surface.trend.Fits;

/** Boards 900 x 180 mm, 30 mm thick everywhere. */
class PlanesTest {

    private static final LiftLimit FREE = new LiftLimit(new Plane(0, 0, 0), Double.POSITIVE_INFINITY, 900, 180);

    private static Planes compare(DoubleBinaryOperator top, double skim, LiftLimit limit, boolean liesWell,
                                  boolean liftingDecides) {
        Board board = ShapeOf.board().trimmed(90, 0).read(5, 3, top);
        return Planes.compare(sampled(Region.whole(board), top), sampled(Region.kept(board), top), Region.kept(board),
            Fits.of(board), skim, limit, liesWell, liftingDecides);
    }

    private static SampledBoard sampled(Region region, DoubleBinaryOperator top) {
        return ShapeOf.sampled(Places.grid(region, 11, 5), top, (x, y) -> top.applyAsDouble(x, y) - 30);
    }

    // Worked by hand: tilted by 4.5 mm in 900, trimmed to the 720 mm between 90 and 810. Cut level, face A comes off
    // down to 0.45 mm and face B up to 4.05 - 30 mm: 26.4 mm are left. The far end stands 4.5 - 0.45 mm above that cut,
    // and what comes off is a wedge 810 mm long: 4.05 · 810 / 2 · 180 mm³. The near end lies below the cut, in air.
    @Test
    void aBoardThatOnlyTiltsLosesItsTiltUnlessItIsLevelled() {
        Planes planes = compare((x, y) -> 0.005 * x, 0, FREE, false, false);

        ReferencePlane asMeasured = planes.named(PlaneName.AS_MEASURED);
        assertEquals(26.4, asMeasured.thickness(), 1e-12);
        assertEquals(4.05, asMeasured.deepestCut(), 1e-12);
        assertEquals(4.05 * 810 / 2 * 180, asMeasured.removed(), 1e-6);
        for (PlaneName name : PlaneName.values()) {
            if (name != PlaneName.AS_MEASURED) {
                assertEquals(0.005, planes.named(name).slab().faceA().slopeX(), 1e-12, name.words());
                assertEquals(30, planes.named(name).thickness(), 1e-9, name.words());
                assertEquals(0, planes.named(name).removed(), 1e-6, name.words());
            }
        }
        assertEquals(Arrays.asList(PlaneName.values()), planes.all().stream().map(ReferencePlane::name).toList());
        assertEquals(PlaneName.THICKEST_SLAB, planes.chosen().name());
        assertEquals(planes.chosen(), planes.best());
    }

    // The same board, 0.3 mm of skim on each face: both cuts lie that much deeper in the wood.
    @Test
    void skimMovesBothCutsIntoTheWood() {
        ReferencePlane asMeasured = compare((x, y) -> 0.005 * x, 0.3, FREE, false, false).named(PlaneName.AS_MEASURED);

        assertEquals(0.45 - 0.3, asMeasured.slab().faceA().height(), 1e-12);
        assertEquals(4.05 - 30 + 0.3, asMeasured.slab().faceB().height(), 1e-12);
        assertEquals(25.8, asMeasured.thickness(), 1e-12);
        assertEquals(4.35, asMeasured.deepestCut(), 1e-12);
    }

    // Identity: of a face that is a plane, the least-squares, minimum zone and least-wood planes are that plane.
    @Test
    void everyPlaneOfAPlaneHasItsSlopesBothWays() {
        Planes planes = compare((x, y) -> 0.002 * x - 0.01 * y, 0, FREE, false, false);

        for (PlaneName name : List.of(PlaneName.LEAST_SQUARES, PlaneName.MINIMUM_ZONE, PlaneName.LEAST_WOOD)) {
            assertEquals(0.002, planes.named(name).slab().faceA().slopeX(), 1e-12, name.words());
            assertEquals(-0.01, planes.named(name).slab().faceA().slopeY(), 1e-12, name.words());
        }
    }

    // Worked by hand: under a hollow (x − 200)²/10⁵ the least comes off along the chord that is highest over the middle
    // of what is kept, 450 mm, between the places 410 and 490 mm: slope (410 + 490 − 2·200)/10⁵.
    @Test
    void leastWoodIsLostOverTheMiddleOfWhatIsKept() {
        DoubleBinaryOperator top = (x, y) -> Math.pow(x - 200, 2) / 1e5;
        Board board = ShapeOf.board().trimmed(90, 0).read(5, 3, top);
        Region kept = Region.kept(board);
        SampledBoard places = ShapeOf.sampled(Places.grid(kept, 10, 5), top, (x, y) -> -30);

        Planes planes = Planes.compare(places, places, kept, Fits.of(board), 0, FREE, false, false);

        assertEquals(0.005, planes.named(PlaneName.LEAST_WOOD).slab().faceA().slopeX(), 1e-12);
    }

    @Test
    void aBoardThatLiesWellIsNotLifted() {
        assertEquals(PlaneName.AS_MEASURED, compare((x, y) -> 0.005 * x, 0, FREE, true, false).chosen().name());
    }

    // Over the 720 mm that are kept, a tilt of 0.0003 costs 0.22 mm, one of 0.0004 costs 0.29 mm.
    @Test
    void liftingForLessThanAQuarterIsAskedForOnlyWhereItDecides() {
        assertEquals(PlaneName.AS_MEASURED, compare((x, y) -> 0.0003 * x, 0, FREE, false, false).chosen().name());
        assertEquals(PlaneName.THICKEST_SLAB, compare((x, y) -> 0.0003 * x, 0, FREE, false, true).chosen().name());
        assertEquals(PlaneName.THICKEST_SLAB, compare((x, y) -> 0.0004 * x, 0, FREE, false, false).chosen().name());
    }

    // Worked by hand: a tilt of 4.5 mm in 900, lifted by 3 mm and no more, keeps 1.5 mm of it, which cost 1.2 mm over
    // the 720 mm kept; lifted freely it loses nothing.
    @Test
    void whatTheLimitCostsIsKnownWhereItCostsSomething() {
        LiftLimit three = new LiftLimit(new Plane(0, 0, 0), 3, 900, 180);

        Planes limited = compare((x, y) -> 0.005 * x, 0, three, false, false);
        Planes little = compare((x, y) -> 0.0035 * x, 0, three, false, false);

        assertEquals(28.8, limited.best().thickness(), 1e-9);
        assertEquals(30, limited.freer().orElseThrow().thickness(), 1e-9);
        assertEquals(Optional.empty(), little.freer(), "0.12 mm");
        assertEquals(Optional.empty(), compare((x, y) -> 0.005 * x, 0, FREE, false, false).freer());
    }

    // Worked by hand: held to a seat that slopes by 0.01, the slab of a level board loses 7.2 mm over the 720 mm kept.
    @Test
    void whatLiftingMaySpoilIsCutAsMeasured() {
        LiftLimit tilted = new LiftLimit(new Plane(0, 0.01, 0), 0, 900, 180);

        Planes planes = compare((x, y) -> 0, 0, tilted, false, true);

        assertEquals(22.8, planes.named(PlaneName.THICKEST_SLAB).thickness(), 1e-9);
        assertEquals(PlaneName.AS_MEASURED, planes.best().name());
        assertEquals(PlaneName.AS_MEASURED, planes.chosen().name());
    }

    @Test
    void planesAreCalledByTheirTradeNames() {
        assertEquals(List.of("as measured", "least squares", "minimum zone", "least wood", "thickest slab"),
            Arrays.stream(PlaneName.values()).map(PlaneName::words).toList());
    }
}
