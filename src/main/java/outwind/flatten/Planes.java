package outwind.flatten;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import outwind.numeric.plane.Plane;
import outwind.numeric.plane.WidestGap;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.trend.Fits;
import outwind.surface.trend.Term;

/**
 * The reference planes compared, and the one to cut.
 *
 * @param all    in the order of {@link PlaneName}
 * @param chosen as it lies where that is good enough, or where lifting gains too little; else the thickest slab
 * @param freer  the thickest slab if the board might be lifted as far as one likes; empty where that gains too little
 */
public record Planes(List<ReferencePlane> all, ReferencePlane chosen, Optional<ReferencePlane> freer) {

    /** Lifting that gains less than this is not worth the shims (mm): half of what a roughing pass takes. */
    public static final double WORTH_LIFTING = 0.25;

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
     * @param liesWell true if the board makes its target as it lies, with wood to spare
     * @param liftingDecides true if the verdict is another when the board is levelled
     */
    public static Planes compare(SampledBoard whole, SampledBoard kept, Region region, Fits fits, double skim,
                                 LiftLimit limit, boolean liesWell, boolean liftingDecides) {
        Map<PlaneName, Plane> slopes = new EnumMap<>(PlaneName.class);
        slopes.put(PlaneName.AS_MEASURED, new Plane(0, 0, 0));
        slopes.put(PlaneName.LEAST_SQUARES, new Plane(0, fits.plane().coefficient(Term.X).orElse(0),
            fits.plane().coefficient(Term.Y).orElse(0)));
        slopes.put(PlaneName.MINIMUM_ZONE, WidestGap.minimumZone(kept.x(), kept.y(), kept.top()).middle());
        slopes.put(PlaneName.LEAST_WOOD, WidestGap.highestPlaneUnder(kept.x(), kept.y(), kept.top(),
            (region.x1() + region.x2()) / 2, (region.y1() + region.y2()) / 2).plane());
        WidestGap free = WidestGap.over(kept.x(), kept.y(), kept.x(), kept.y());
        Plane within = limit.applyTo(free).between(kept.top(), kept.underside()).upper();
        slopes.put(PlaneName.THICKEST_SLAB, within);
        List<ReferencePlane> all = slopes.entrySet().stream()
            .map(entry -> ReferencePlane.of(entry.getKey(), entry.getValue(), whole, kept, skim)).toList();
        ReferencePlane asMeasured = named(all, PlaneName.AS_MEASURED);
        ReferencePlane best = thicker(named(all, PlaneName.THICKEST_SLAB), asMeasured);
        boolean littleToGain = !liftingDecides && best.thickness() - asMeasured.thickness() < WORTH_LIFTING;
        Optional<ReferencePlane> freer = limit.isReachedBy(within)
            ? Optional.of(ReferencePlane.of(PlaneName.THICKEST_SLAB,
                free.between(kept.top(), kept.underside()).upper(), whole, kept, skim))
            .filter(slab -> slab.thickness() - best.thickness() >= WORTH_LIFTING) : Optional.empty();
        return new Planes(all, liesWell || littleToGain ? asMeasured : best, freer);
    }

    private static ReferencePlane named(List<ReferencePlane> all, PlaneName name) {
        return all.stream().filter(plane -> plane.name() == name).findFirst().orElseThrow();
    }

    private static ReferencePlane thicker(ReferencePlane one, ReferencePlane other) {
        return one.thickness() >= other.thickness() ? one : other;
    }

    /** The plane that leaves the thickest board, whether it was chosen or not. */
    public ReferencePlane best() {
        return thicker(named(PlaneName.THICKEST_SLAB), named(PlaneName.AS_MEASURED));
    }

    public ReferencePlane named(PlaneName name) {
        return named(all, name);
    }
}
