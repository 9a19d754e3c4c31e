package outwind.cutting;

import java.util.function.IntToDoubleFunction;
import outwind.board.Face;
import outwind.flatten.Slab;
import outwind.numeric.plane.Plane;
import outwind.surface.SampledBoard;

/**
 * Both faces cut: face A with the board on its shims, then face B with the board lying on the new face A.
 *
 * <p>Face B is cut to a height above the bed, which is the finished thickness: face A lies on the bed, so the error of
 * a depth that is counted from the highest spot of face B does not enter.
 *
 * <p>If the slab is thicker than the target, the slack between them is wood that may come off either face. It is shared
 * so that both faces lose the same mean depth where that can be (common practice against warping again), but either
 * face keeps a reserve: a face that is planned to clean up with nothing to spare does not surely clean up. Face B keeps
 * twice that of face A, because it also bears the error of how deep face A was really cut.
 *
 * @param faceA     the first cut
 * @param faceB     the second, after turning the board over
 * @param thickness finished thickness (mm); zero if the cuts would meet before both faces are clean
 * @param finished  wood that is left when both are done (mm³)
 */
public record CuttingPlan(Cut faceA, Cut faceB, double thickness, double finished) {

    /**
     * @param slab   the thickest board there is for the chosen slopes
     * @param bed    under the board as it is held for face A, parallel to the slab
     * @param datumA the bed if its height under face A was measured; else the highest spot
     * @param whole  the whole board
     * @param kept   the part that must clean up
     * @param wanted  thickness to stop at (mm); where the slab is less, that
     * @param reserve slack that face B keeps against what the readings do not show (mm), as far as there is any; face A
     *                keeps half of it
     */
    public static CuttingPlan of(Slab slab, Plane bed, Datum datumA, SampledBoard whole,
                                 SampledBoard kept, double wanted, double reserve) {
        double thickness = Math.max(0, Math.min(slab.thickness(), wanted));
        double slack = Math.max(0, slab.thickness() - thickness);
        double meanA = kept.mean(i -> kept.topAbove(slab.faceA(), i));
        double meanB = kept.mean(i -> -kept.undersideAbove(slab.faceB(), i));
        double keptForB = Math.min(2 * slack / 3, reserve);
        double offA = Math.min(slack - keptForB, Math.max(keptForB / 2, (slack + meanB - meanA) / 2));
        Plane planeA = slab.faceA().raisedBy(-offA);
        Plane planeB = planeA.raisedBy(-thickness);

        double highest = Math.max(0, whole.greatest(i -> whole.topAbove(planeA, i)));
        double lowest = Math.max(0, whole.greatest(i -> -whole.undersideAbove(planeB, i)));
        // Where trim lies beyond a plane the cutter meets air.
        double removedA = whole.integral(i -> Math.max(0, whole.topAbove(planeA, i)));
        double removedB = whole.integral(i -> Math.max(0, -whole.undersideAbove(planeB, i)));
        double finished = whole.integral(i -> Math.min(0, whole.topAbove(planeA, i)) + thickness
            - Math.max(0, whole.undersideAbove(planeB, i)));
        Cut a = new Cut(Face.A, planeA, highest, meanA + offA, removedA,
            planeA.height() - bed.height(), datumA);
        Cut b = new Cut(Face.B, planeB, lowest, meanB + slack - offA, removedB, thickness, Datum.BED);
        return new CuttingPlan(a, b, thickness, finished);
    }

    /**
     * The one cut that is left once face A is cut, with the board lying on it.
     *
     * @param whole     the whole board, face B on top, its underside on the bed at zero
     * @param kept      the part that must clean up
     * @param thickness to stop at (mm)
     */
    public static Cut faceBAlone(SampledBoard whole, SampledBoard kept, double thickness) {
        Plane plane = new Plane(thickness, 0, 0);
        IntToDoubleFunction above = i -> whole.topAbove(plane, i);
        double highest = Math.max(0, whole.greatest(above));
        return new Cut(Face.B, plane, highest, kept.mean(i -> kept.topAbove(plane, i)),
            whole.integral(i -> Math.max(0, above.applyAsDouble(i))), thickness, Datum.BED);
    }

    /**
     * The same with face A's height counted from the bed under the board as it is held; the most likely board's own
     * lowest spot is higher than that, since the lowest spot of the real board may be anywhere. A bed that was measured
     * stays where it is.
     *
     * @param bed parallel to the cuts
     */
    public CuttingPlan heldOver(Plane bed) {
        return faceA.datum() == Datum.BED ? this : new CuttingPlan(new Cut(Face.A, faceA.plane(), faceA.depth(),
            faceA.meanDepth(), faceA.removed(), faceA.plane().height() - bed.height(), faceA.datum()), faceB, thickness,
            finished);
    }

    /** False if the cuts would meet before both faces are clean, so that there is nothing to be cut. */
    public boolean leavesWood() {
        return thickness > 0;
    }

    /** Wood that comes off both faces (mm³). */
    public double removed() {
        return faceA.removed() + faceB.removed();
    }
}
