package outwind.cutting;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import outwind.board.Face;
import outwind.board.Units;
import outwind.shop.Cutter;
import outwind.surface.SampledBoard;

/**
 * One way to make the cuts of a board: all with one cutter, or down to a last pass with one and that with another.
 *
 * <p>All cutters of a shop and all pairs of them are tried. What counts is the time at the machine; changing a cutter
 * costs {@link #CHANGE} more, on each face.
 *
 * @param roughing cutter down to the last pass, or for all of it
 * @param finishing cutter of the last pass, where that is another
 * @param passes   layer by layer, of each face that is cut
 */
public record Machining(Cutter roughing, Optional<Cutter> finishing, Map<Face, List<Pass>> passes) {

    /** Minutes to change a cutter and set zero again: our choice. */
    public static final double CHANGE = 5;

    /** Depths of a pass, from a light cutter to a stout one: mm, and 64ths of an inch. */
    private static final List<Double> IN_MILLIMETRES = List.of(0.5, 1.0, 2.0, 5.0);
    private static final List<Double> IN_SIXTY_FOURTHS = List.of(1.0, 2.0, 4.0, 12.0);

    /** What a finishing cutter takes where it states no last pass (mm): our choice. */
    private static final double LAST_PASS = 0.3;

    public Machining {
        // In the order of the faces: a copy by Map.copyOf has another in each process, and with it the last digit of a sum.
        passes = Collections.unmodifiableMap(new TreeMap<>(passes));
    }

    /** Depths that a pass is usually given (mm), for those who state no cutter, as their machine is set. */
    public static List<Double> usualDepths(Units units) {
        return units == Units.INCHES
            ? IN_SIXTY_FOURTHS.stream().map(parts -> Units.INCHES.toMillimetres(parts / 64)).toList() : IN_MILLIMETRES;
    }

    /** Every way to make both cuts, the quickest first; none without a cutter. */
    public static List<Machining> of(CuttingPlan plan, SampledBoard whole, List<Cutter> cutters) {
        return ways(List.of(
            new Layered(Face.A, plan.faceA().depth(), i -> whole.topAbove(plan.faceA().plane(), i)),
            new Layered(Face.B, plan.faceB().depth(), i -> -whole.undersideAbove(plan.faceB().plane(), i))), whole,
            cutters);
    }

    /** Every way to make the one cut that is left, face B on top; the quickest first, none without a cutter. */
    public static List<Machining> ofFaceB(Cut faceB, SampledBoard whole, List<Cutter> cutters) {
        return ways(List.of(new Layered(Face.B, faceB.depth(), i -> whole.topAbove(faceB.plane(), i))), whole, cutters);
    }

    /** Wood of a face above the plane it is cut to; {@code depth} at its highest (mm). */
    private record Layered(Face face, double depth, IntToDoubleFunction above) { }

    private static List<Machining> ways(List<Layered> faces, SampledBoard whole, List<Cutter> cutters) {
        List<Machining> ways = new ArrayList<>();
        for (Cutter roughing : cutters) {
            ways.add(way(faces, whole, roughing, Optional.empty()));
            cutters.stream().filter(other -> !other.equals(roughing))
                .forEach(other -> ways.add(way(faces, whole, roughing, Optional.of(other))));
        }
        ways.sort(Comparator.comparingDouble(Machining::minutes));
        return List.copyOf(ways);
    }

    private static Machining way(List<Layered> faces, SampledBoard whole, Cutter roughing, Optional<Cutter> finishing) {
        Map<Face, List<Pass>> passes = new EnumMap<>(Face.class);
        for (Layered face : faces) {
            passes.put(face.face(), layers(face, whole, roughing, finishing));
        }
        return new Machining(roughing, finishing, passes);
    }

    private static List<Pass> layers(Layered face, SampledBoard whole, Cutter roughing, Optional<Cutter> finishing) {
        List<Pass> passes = new ArrayList<>();
        double last = finishing.map(cutter -> cutter.lastPass() > 0 ? cutter.lastPass()
            : Math.min(LAST_PASS, cutter.deepest())).orElse(0.0);
        roughing.passes(face.depth() - last).forEach(reached -> passes.add(pass(face, whole, roughing, reached)));
        finishing.filter(cutter -> face.depth() > Cutter.SAME)
            .ifPresent(cutter -> passes.add(pass(face, whole, cutter, face.depth())));
        return passes;
    }

    private static Pass pass(Layered face, SampledBoard whole, Cutter cutter, double reached) {
        double floor = face.depth() - reached;
        Raster raster = Raster.over(whole, cutter);
        List<Area> areas = raster.areas(i -> face.above().applyAsDouble(i) > floor);
        boolean everywhere = areas.equals(List.of(raster.board()));
        return new Pass(reached, cutter, whole.mean(i -> face.above().applyAsDouble(i) > floor ? 1 : 0),
            everywhere ? List.of() : areas, raster.minutes(areas));
    }

    /** Passes on one face; empty if nothing comes off it. */
    public List<Pass> on(Face face) {
        return passes.getOrDefault(face, List.of());
    }

    /** How many passes in all. */
    public int count() {
        return passes.values().stream().mapToInt(List::size).sum();
    }

    /** Whole minutes on one face, with the change of cutters; so that the faces add up to the total that is shown. */
    public double minutes(Face face) {
        List<Pass> all = on(face);
        boolean changes = all.stream().map(Pass::cutter).distinct().count() > 1;
        return all.isEmpty() ? 0
            : Math.max(1, Math.rint(all.stream().mapToDouble(Pass::minutes).sum() + (changes ? CHANGE : 0)));
    }

    /** Whole minutes in all, with the changes of cutters. */
    public double minutes() {
        return passes.keySet().stream().mapToDouble(this::minutes).sum();
    }
}
