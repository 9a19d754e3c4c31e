package outwind.flatten;

import java.util.List;
import java.util.stream.IntStream;
import outwind.numeric.Plane;
import outwind.numeric.WidestGap;
import outwind.surface.Fits;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.Term;

/**
 * The reference planes compared, and the one to cut.
 *
 * @param all    in the order of {@link PlaneName}
 * @param chosen as it lies where that is good enough, or where lifting gains too little; else the thickest slab
 */
public record Planes(List<ReferencePlane> all, ReferencePlane chosen) {

    /** Lifting that gains less than this is not asked for: shims are not made finer (mm). */
    private static final double WORTH_LIFTING = 0.1;

    public Planes {
        all = List.copyOf(all);
    }

    /**
     * @param whole    the whole board
     * @param kept     the part that must clean up
     * @param region   what {@code kept} covers
     * @param fits     trends of face A
     * @param skim     least depth to come off each face (mm)
     * @param limit    how far levelling may lift the board
     * @param liesWell true if the board makes its target as it lies
     */
    public static Planes compare(SampledBoard whole, SampledBoard kept, Region region, Fits fits, double skim,
                                 LiftLimit limit, boolean liesWell) {
        List<Plane> slopes = List.of(
            new Plane(0, 0, 0),
            new Plane(0, fits.plane().coefficient(Term.X).orElse(0),
                fits.plane().coefficient(Term.Y).orElse(0)),
            WidestGap.minimumZone(kept.x(), kept.y(), kept.top()).middle(),
            WidestGap.highestPlaneUnder(kept.x(), kept.y(), kept.top(), (region.x1() + region.x2()) / 2,
                (region.y1() + region.y2()) / 2).plane(),
            limit.applyTo(WidestGap.over(kept.x(), kept.y(), kept.x(), kept.y()))
                .between(kept.top(), kept.underside()).upper());
        List<ReferencePlane> all = IntStream.range(0, slopes.size())
            .mapToObj(i -> ReferencePlane.of(PlaneName.values()[i], slopes.get(i), whole, kept, skim))
            .toList();
        return new Planes(all, choose(all, liesWell));
    }

    private static ReferencePlane choose(List<ReferencePlane> all, boolean liesWell) {
        ReferencePlane asItLies = all.get(PlaneName.AS_IT_LIES.ordinal());
        ReferencePlane best = all.get(PlaneName.THICKEST_SLAB.ordinal());
        boolean littleToGain = best.thickness() - asItLies.thickness() < WORTH_LIFTING;
        return liesWell || littleToGain ? asItLies : best;
    }

    /** The plane that leaves the thickest board, whether it was chosen or not. */
    public ReferencePlane best() {
        return named(PlaneName.THICKEST_SLAB);
    }

    public ReferencePlane named(PlaneName name) {
        return all.get(name.ordinal());
    }
}
