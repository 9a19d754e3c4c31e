package outwind.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import outwind.board.Board;
import outwind.board.Face;
import outwind.flatten.Slab;
import outwind.numeric.Plane;
import outwind.surface.SampledBoard;

/**
 * Both faces cut: face A with the board on its shims, then face B with the board lying on the new face A.
 *
 * <p>If the slab is thicker than the target, the slack between them is wood that may come off either face. It is shared
 * so that both faces lose the same mean depth where that can be (common practice against warping again).
 *
 * @param faceA     the first cut
 * @param faceB     the second, after turning the board over
 * @param thickness finished thickness (mm); zero if the cuts would meet before both faces are clean
 * @param finished  wood that is left when both are done (mm³)
 */
public record CuttingPlan(Cut faceA, Cut faceB, double thickness, double finished) {

    /** How far clamps and shims stay under the cutter's last pass (mm): a hand's error and a board that gives. */
    public static final double CLEAR = 3;

    /**
     * @param board  for its size
     * @param slab   the thickest board there is for the chosen slopes
     * @param bed    under the board as it is held for face A
     * @param whole  the whole board
     * @param kept   the part that must clean up
     * @param wanted thickness to stop at (mm); where the slab is less, that
     */
    public static CuttingPlan of(Board board, Slab slab, Plane bed, SampledBoard whole, SampledBoard kept,
                                 double wanted, Cutter cutter) {
        double thickness = Math.max(0, Math.min(slab.thickness(), wanted));
        double slack = Math.max(0, slab.thickness() - thickness);
        double meanA = kept.mean(i -> kept.topAbove(slab.faceA(), i));
        double meanB = kept.mean(i -> -kept.undersideAbove(slab.faceB(), i));
        double offA = Math.min(slack, Math.max(0, (slack + meanB - meanA) / 2));
        Plane planeA = slab.faceA().raisedBy(-offA);
        Plane planeB = planeA.raisedBy(-thickness);

        double highest = Math.max(0, whole.greatest(i -> whole.topAbove(planeA, i)));
        double lowest = Math.max(0, whole.greatest(i -> -whole.undersideAbove(planeB, i)));
        // Where trim lies beyond a plane the cutter meets air.
        double removedA = whole.integral(i -> Math.max(0, whole.topAbove(planeA, i)));
        double removedB = whole.integral(i -> Math.max(0, -whole.undersideAbove(planeB, i)));
        double finished = whole.integral(i -> Math.min(0, whole.topAbove(planeA, i)) + thickness
            - Math.max(0, whole.undersideAbove(planeB, i)));
        double overBed = planeA.height() - bed.height();
        double keepBelowA = Math.max(0, overBed - CLEAR);
        double keepBelowB = Math.max(0, thickness - CLEAR);
        Raster raster = new Raster(cutter, board.length(), board.width());
        Cut a = new Cut(Face.A, planeA, highest, meanA + offA,
            passes(cutter, raster, whole, highest, i -> whole.topAbove(planeA, i)), removedA, keepBelowA,
            thickness + lowest);
        Cut b = new Cut(Face.B, planeB, lowest, meanB + slack - offA,
            passes(cutter, raster, whole, lowest, i -> -whole.undersideAbove(planeB, i)), removedB, keepBelowB,
            thickness);
        return new CuttingPlan(a, b, thickness, finished);
    }

    /** False if the cuts would meet before both faces are clean, so that there is nothing to be cut. */
    public boolean leavesWood() {
        return thickness > 0;
    }

    /** Layers of one face; {@code above} is the height of wood above the plane it is cut to (mm). */
    private static List<Pass> passes(Cutter cutter, Raster raster, SampledBoard whole, double depth,
                                     IntToDoubleFunction above) {
        List<Pass> passes = new ArrayList<>();
        for (double reached : cutter.passes(depth)) {
            IntToDoubleFunction aboveFloor = i -> above.applyAsDouble(i) - (depth - reached);
            passes.add(new Pass(reached, whole.mean(i -> aboveFloor.applyAsDouble(i) > 0 ? 1 : 0), raster.minutes(),
                raster.woodMinutes(whole, aboveFloor)));
        }
        return passes;
    }
}
