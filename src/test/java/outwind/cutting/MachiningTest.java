package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Face;
import outwind.flatten.Slab;
import outwind.numeric.plane.Plane;
import outwind.shop.Cutter;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

class MachiningTest {

    /** Common practice: 0.5 to 1 mm a pass. */
    private static final Cutter WIDE = new Cutter("facing cutter", 40, 0.8, 0.3, 24, 3000, 26.35);

    /** Common practice: 5 mm in one pass, rows a quarter inch apart, a quarter inch past every edge. */
    private static final Cutter STOUT = new Cutter("half-inch end mill", 12.7, 5, 0, 6.35, 2500, 12.7);

    /** A made-up cutter that takes less in one pass than a last pass usually is. */
    private static final Cutter FINE = new Cutter("fine cutter", 20, 0.2, 0, 10, 3000, 16);

    private static final SampledBoard WHOLE = ShapeOf.sampled(Places.grid(new Region(0, 0, 1000, 200), 21, 9),
        (x, y) -> x / 500 * y / 200, (x, y) -> -30);

    private static final CuttingPlan PLAN = CuttingPlan.of(Slab.of(WHOLE, new Plane(0, 0, 0), 0.5),
        new Plane(-30, 0, 0), Datum.HIGHEST_SPOT, WHOLE, WHOLE, 28, 0);

    @Test
    void withoutACutterThereIsNoWayAndNoTime() {
        assertEquals(List.of(), Machining.of(PLAN, WHOLE, List.of()));
    }

    @Test
    void everyCutterAndEveryPairIsTriedAndTheQuickestComesFirst() {
        List<Machining> ways = Machining.of(PLAN, WHOLE, List.of(WIDE, STOUT));

        assertEquals(4, ways.size());
        assertEquals(2, ways.stream().filter(way -> way.finishing().isPresent()).count());
        for (int k = 1; k < ways.size(); k++) {
            assertTrue(ways.get(k - 1).minutes() <= ways.get(k).minutes());
        }
    }

    // Worked by hand: face A is highest 2 mm over its lowest, 0.5 mm is skimmed, and of the slack of 30 − 0.5 − 0.5 −
    // 28 = 1 mm it gets (1 + 0.5 − 1)/2 = 0.25, so that both faces lose 1.25 mm in the mean. 2.75 mm are 1 pass of the
    // end mill; its rows: (200 + 25.4)/6.35 → 36 + 1 of 1025.4 mm, and 225.4 mm across.
    @Test
    void aStoutCutterTakesOnePass() {
        Machining way = Machining.of(PLAN, WHOLE, List.of(STOUT)).get(0);

        assertEquals(2.75, PLAN.faceA().depth(), 1e-9);
        assertEquals(1, way.on(Face.A).size());
        assertEquals((37 * 1025.4 + 225.4) / 2500, way.on(Face.A).stream().mapToDouble(Pass::minutes).sum(), 1e-9);
        assertEquals(15, way.minutes(Face.A));
        assertEquals(2, way.count());
    }

    // Identity: passes rise to the full depth, none deeper than its cutter takes, the last one by the finishing cutter.
    @Test
    void everyWayReachesTheFullDepth() {
        for (Machining way : Machining.of(PLAN, WHOLE, List.of(WIDE, STOUT, FINE))) {
            for (Cut cut : List.of(PLAN.faceA(), PLAN.faceB())) {
                double before = 0;
                for (Pass pass : way.on(cut.face())) {
                    assertTrue(pass.depth() > before && pass.depth() - before <= pass.cutter().deepest() + 1e-9);
                    before = pass.depth();
                }
                List<Pass> passes = way.on(cut.face());
                assertEquals(cut.depth(), before, 1e-9);
                assertEquals(way.finishing().orElse(way.roughing()), passes.get(passes.size() - 1).cutter());
                double sum = passes.stream().mapToDouble(Pass::minutes).sum();
                long cutters = passes.stream().map(Pass::cutter).distinct().count();
                assertEquals(Math.max(1, Math.rint(sum + (cutters - 1) * Machining.CHANGE)), way.minutes(cut.face()));
            }
            assertEquals(way.minutes(Face.A) + way.minutes(Face.B), way.minutes());
        }
    }

    // The first layers of a board that is high at one corner meet that corner alone.
    @Test
    void layersThatMeetACornerAreCutThere() {
        List<Pass> passes = Machining.of(PLAN, WHOLE, List.of(WIDE)).get(0).on(Face.A);

        Pass first = passes.get(0);
        assertEquals(1, first.areas().size());
        assertTrue(first.areas().get(0).x1() > 300 && first.areas().get(0).y1() > 50, first.areas().toString());
        assertTrue(first.wood() < 0.3, first.wood() + " of the area");
        assertEquals(List.of(), passes.get(passes.size() - 1).areas());
        assertTrue(first.minutes() < passes.get(passes.size() - 1).minutes());
    }

    // The same of face B, of the board as it was and once it has been turned over.
    @Test
    void layersOfFaceBThatMeetACornerAreCutThere() {
        SampledBoard hanging = ShapeOf.sampled(WHOLE.places(), (x, y) -> 0, (x, y) -> -30 - x / 500 * y / 200);
        CuttingPlan plan = CuttingPlan.of(Slab.of(hanging, new Plane(0, 0, 0), 0.5), new Plane(-32, 0, 0),
            Datum.HIGHEST_SPOT, hanging, hanging, 28, 0);
        SampledBoard turned = ShapeOf.sampled(WHOLE.places(), (x, y) -> 30 + x / 500 * y / 200, (x, y) -> 0);
        Cut alone = CuttingPlan.faceBAlone(turned, turned, 29.5);

        for (Machining way : List.of(Machining.of(plan, hanging, List.of(WIDE)).get(0),
            Machining.ofFaceB(alone, turned, List.of(WIDE)).get(0))) {
            Pass first = way.on(Face.B).get(0);
            assertEquals(1, first.areas().size());
            assertTrue(first.areas().get(0).x1() > 300 && first.wood() > 0 && first.wood() < 0.3, first.toString());
            assertEquals(1, way.on(Face.B).get(way.on(Face.B).size() - 1).wood(), 1e-9);
        }
    }

    @Test
    void whereNothingComesOffThereIsNoPass() {
        SampledBoard flat = ShapeOf.sampled(WHOLE.places(), (x, y) -> 30, (x, y) -> 0);

        for (Machining way : Machining.ofFaceB(CuttingPlan.faceBAlone(flat, flat, 30), flat, List.of(WIDE, STOUT))) {
            assertEquals(List.of(), way.on(Face.B));
            assertEquals(0, way.minutes());
        }
    }

    @Test
    void theLastCutIsMadeOnFaceBAlone() {
        SampledBoard lying = ShapeOf.sampled(WHOLE.places(), (x, y) -> 30, (x, y) -> 0);
        Cut faceB = CuttingPlan.faceBAlone(lying, lying, 28);

        Machining way = Machining.ofFaceB(faceB, lying, List.of(STOUT)).get(0);

        assertEquals(Optional.empty(), way.finishing());
        assertEquals(1, way.on(Face.B).size());
        assertEquals(List.of(), way.on(Face.A));
    }

    // Worked by hand: how many passes of each usual depth.
    @ParameterizedTest
    @CsvSource({"4.2, 0.5, 9", "4.2, 1, 5", "4.2, 2, 3", "4.2, 5, 1", "1.0, 0.5, 2", "0, 1, 0"})
    void passesAtAUsualDepth(double depth, double each, int passes) {
        assertEquals(passes, Cutter.passes(depth, each));
    }

    // In another order the sum of the minutes has another last digit; a copy by Map.copyOf changes it from run to run.
    @Test
    void facesComeInTheirOrderWhateverTheMap() {
        Map<Face, List<Pass>> turned = new LinkedHashMap<>();
        turned.put(Face.B, List.of());
        turned.put(Face.A, List.of());

        assertEquals(List.of(Face.A, Face.B), List.copyOf(new Machining(WIDE, Optional.empty(), turned).passes().keySet()));
    }
}
