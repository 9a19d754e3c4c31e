package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Face;
import outwind.flatten.Slab;
import outwind.numeric.plane.Plane;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

/** Boards 1000 x 200 mm whose faces are planes, so that depths and volumes are worked by hand. */
class CuttingPlanTest {

    private static final double AREA = 1000 * 200;
    private static final Plane BED = new Plane(-31, 0, 0);

    private static SampledBoard board(double from, double to, DoubleBinaryOperator top, DoubleBinaryOperator under) {
        return ShapeOf.sampled(Places.grid(new Region(from, 0, to, 200), 1 + (int) ((to - from) / 50), 5), top, under);
    }

    private static CuttingPlan plan(SampledBoard board, double skim, double wanted, double reserve) {
        return CuttingPlan.of(Slab.of(board, new Plane(0, 0, 0), skim), BED, Datum.HIGHEST_SPOT, board, board, wanted,
            reserve);
    }

    // Worked by hand: face A rises by 2 mm, the underside by 1 mm, 0.5 mm is skimmed: planes at −0.5 and −28.5 mm, mean
    // depths 1.5 and 1 mm. Of the slack of 28 − 27 = 1 mm face A gets (1 + 1 − 1.5)/2 = 0.25: both lose 1.75 mm.
    @Test
    void bothFacesLoseAlike() {
        CuttingPlan plan = plan(board(0, 1000, (x, y) -> x / 500, (x, y) -> x / 1000 - 30), 0.5, 27, 0);

        Plane planeA = new Plane(-0.75, 0, 0);
        assertCut(new Cut(Face.A, planeA, 2.75, 1.75, 1.75 * AREA, -0.75 + 31, Datum.HIGHEST_SPOT), plan.faceA());
        assertCut(new Cut(Face.B, planeA.raisedBy(-27), 2.25, 1.75, 1.75 * AREA, 27, Datum.BED), plan.faceB());
        assertEquals(27, plan.thickness(), 1e-9);
        assertEquals(27 * AREA, plan.finished(), 1e-4);
        assertEquals(3.5 * AREA, plan.removed(), 1e-4);
        assertTrue(plan.leavesWood());
    }

    private static void assertCut(Cut expected, Cut cut) {
        assertEquals(expected.face(), cut.face());
        assertEquals(expected.plane().height(), cut.plane().height(), 1e-9);
        assertEquals(expected.depth(), cut.depth(), 1e-9);
        assertEquals(expected.meanDepth(), cut.meanDepth(), 1e-9);
        assertEquals(expected.removed(), cut.removed(), 1e-4);
        assertEquals(expected.aboveBed(), cut.aboveBed(), 1e-9);
        assertEquals(expected.datum(), cut.datum());
    }

    // Worked by hand: a slack of 1 mm. Face B keeps the reserve, 2/3 of the slack at most, and face A half as much; in
    // between both lose alike, which is 0.25 mm off a rising face A and all of it above a falling underside.
    @ParameterizedTest
    @CsvSource({"2, 0, 0.25", "2, 0.4, 0.25", "2, 0.6, 0.3", "2, 5, 0.33333333333", "0, 0, 1", "0, 0.6, 0.4",
        "0, 5, 0.33333333333"})
    void eitherFaceKeepsItsReserve(double rise, double reserve, double offA) {
        DoubleBinaryOperator underside = rise > 0 ? (x, y) -> x / 1000 - 30 : (x, y) -> -30 - x / 500;
        CuttingPlan plan = plan(board(0, 1000, (x, y) -> rise * x / 1000, underside), 0.5, rise > 0 ? 27 : 28, reserve);

        assertEquals(-0.5 - offA, plan.faceA().plane().height(), 1e-9);
    }

    // Worked by hand: only 200 to 800 mm must clean up. Above the planes lie wedges 800 mm long, beyond them, in air,
    // wedges 200 mm long that the finished board lacks.
    @Test
    void trimBeyondThePlanesIsNeitherCutNorFinished() {
        DoubleBinaryOperator top = (x, y) -> x / 500;
        DoubleBinaryOperator underside = (x, y) -> -29 - x / 1000;
        SampledBoard kept = board(200, 800, top, underside);

        CuttingPlan plan = CuttingPlan.of(Slab.of(kept, new Plane(0, 0, 0), 0), BED, Datum.BED,
            board(0, 1000, top, underside), kept, 50, 0);

        assertEquals(29.6, plan.thickness(), 1e-9);
        assertEquals(1.6 * 800 / 2 * 200, plan.faceA().removed(), 1e-4);
        assertEquals(0.8 * 800 / 2 * 200, plan.faceB().removed(), 1e-4);
        assertEquals(29.6 * AREA - 0.4 * 200 / 2 * 200 - 0.2 * 200 / 2 * 200, plan.finished(), 1e-4);
        assertEquals(0.6, plan.faceA().meanDepth(), 1e-9);
    }

    // Worked by hand: 30 to 32 mm high, cut at 30.5 mm: a wedge 750 mm long and 1.5 mm high comes off.
    @Test
    void faceBAloneIsCutToAHeightAboveTheBed() {
        SampledBoard lying = board(0, 1000, (x, y) -> 30 + x / 500, (x, y) -> 0);

        assertCut(new Cut(Face.B, new Plane(30.5, 0, 0), 1.5, 0.5, 1.5 * 750 / 2 * 200, 30.5, Datum.BED),
            CuttingPlan.faceBAlone(lying, lying, 30.5));
    }

    @Test
    void whereTheCutsMeetThereIsNothingToCut() {
        assertFalse(plan(board(0, 1000, (x, y) -> x / 500, (x, y) -> x / 500 - 1.5), 0, 20, 0).leavesWood());
    }

    // By the rule: 3 mm clear of the last pass, and no clamp is lower than 1 mm.
    @ParameterizedTest
    @CsvSource({"10, 7, true", "4, 1, true", "3.9, 0.9, false", "2, 0, false"})
    void clampsStayClearOfTheLastPass(double aboveBed, double keepBelow, boolean room) {
        Cut cut = new Cut(Face.A, BED, 1, 1, 1, aboveBed, Datum.BED);

        assertEquals(keepBelow, cut.keepBelow(), 1e-9);
        assertEquals(room, cut.leavesRoomForClamps());
        assertFalse(cut.isEmpty());
        assertTrue(new Cut(Face.A, BED, 0, 0, 0, aboveBed, Datum.BED).isEmpty());
    }
}
