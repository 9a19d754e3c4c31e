package outwind.cutting;

import java.util.OptionalDouble;
import outwind.board.Face;
import outwind.flatten.Slab;
import outwind.numeric.Plane;
import outwind.setup.Setup;
import outwind.surface.SampledBoard;

/**
 * Both faces cut: face A with the board on its shims, then face B with the board lying on the new face A.
 *
 * <p>If the slab is thicker than the target, the slack between them is wood that may come off either face. It is shared
 * so that both faces lose the same mean depth where that can be (common practice against warping again).
 *
 * @param faceA     the first cut
 * @param faceB     the second, after turning the board over
 * @param thickness finished thickness (mm): the target, or all that the board bears if that is less or none is set
 */
public record CuttingPlan(Cut faceA, Cut faceB, double thickness) {

    /**
     * @param slab   the thickest board there is for the chosen slopes
     * @param setup  how the board is held for face A
     * @param whole  the whole board
     * @param kept   the part that must clean up
     * @param target wanted thickness (mm), if one is wanted
     */
    public static CuttingPlan of(Slab slab, Setup setup, SampledBoard whole, SampledBoard kept, OptionalDouble target,
                                 Cutter cutter) {
        double thickness = Math.max(0, Math.min(slab.thickness(), target.orElse(Double.POSITIVE_INFINITY)));
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
        double overBed = planeA.height() - setup.bed().height();
        Cut a = new Cut(Face.A, planeA, highest, meanA + offA, cutter.passes(highest), removedA, overBed,
            thickness + lowest);
        Cut b = new Cut(Face.B, planeB, lowest, meanB + slack - offA, cutter.passes(lowest), removedB, thickness,
            thickness);
        return new CuttingPlan(a, b, thickness);
    }
}
