package outwind.flatten;

import outwind.numeric.plane.Plane;
import outwind.surface.SampledBoard;

/**
 * One way to flatten the board, and what it costs.
 *
 * @param name       which plane
 * @param slab       both cut planes
 * @param deepestCut depth from the highest spot of face A to its cut plane (mm)
 * @param removed    wood off face A (mm³)
 */
public record ReferencePlane(PlaneName name, Slab slab, double deepestCut, double removed) {

    static ReferencePlane of(PlaneName name, Plane slopes, SampledBoard whole, SampledBoard kept, double skim) {
        Slab slab = Slab.of(kept, slopes, skim);
        double deepest = Math.max(0, whole.greatest(i -> whole.topAbove(slab.faceA(), i)));
        // Where trim lies below the plane the cutter meets air.
        double removed = whole.integral(i -> Math.max(0, whole.topAbove(slab.faceA(), i)));
        return new ReferencePlane(name, slab, deepest, removed);
    }

    /** Finished thickness if both faces are cut parallel to this plane (mm). */
    public double thickness() {
        return slab.thickness();
    }
}
