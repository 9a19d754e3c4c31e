package outwind.flatten;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import outwind.numeric.plane.Gap;
import outwind.numeric.plane.Plane;
import outwind.numeric.plane.WidestGap;
import outwind.surface.BoardShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

/**
 * What comes out of the board, over boards that its readings leave possible.
 *
 * <p>Each possible board is judged like a measured one: cut as it lies, and by its own thickest slab. Where the
 * readings are few or far apart the possible boards differ, and the range is wide.
 *
 * @param asMeasured finished thickness cut parallel to the bed as it lay when it was touched off
 * @param levelled finished thickness of the thickest slab that the limit to lifting allows
 * @param boards   the possible boards, in the order of {@code slabs}
 * @param slabs    thickest slab of each after skims (mm)
 */
public record Simulation(ThicknessRange asMeasured, ThicknessRange levelled, List<SampledBoard> boards, double[] slabs) {

    /**
     * Possible boards to draw. The 5th percentile of 1000 has a standard error of 2 % of the range's width, and a
     * chance of 95 % one of 0.7 %: less than the readings can tell.
     */
    public static final int DRAWS = 1000;

    /** Lines of the grid that possible boards are looked at on where the surfaces are smooth between them. */
    private static final int ALONG = 17;
    private static final int ACROSS = 7;

    /**
     * @param region the part that must clean up
     * @param skim   least depth to come off each face (mm)
     * @param limit  how far levelling may lift the board
     */
    public static Simulation of(BoardShape shape, Region region, double skim, LiftLimit limit, long seed) {
        return of(shape, region, skim, limit, DRAWS, seed);
    }

    /** The same over another number of possible boards. */
    static Simulation of(BoardShape shape, Region region, double skim, LiftLimit limit, int draws, long seed) {
        Places places = Places.grid(region, (ALONG - 1) * shape.fineness() + 1, (ACROSS - 1) * shape.fineness() + 1);
        List<SampledBoard> boards = shape.draws(places, draws, seed);
        WidestGap program = limit.applyTo(WidestGap.over(places.x(), places.y(), places.x(), places.y()));
        SampledBoard likely = shape.at(places);
        Gap start = program.between(likely.top(), likely.underside());
        Plane level = new Plane(0, 0, 0);
        double[] lying = new double[boards.size()];
        double[] slabs = new double[boards.size()];
        IntStream.range(0, slabs.length).parallel().forEach(i -> {
            SampledBoard board = boards.get(i);
            lying[i] = Slab.of(board, level, skim).thickness();
            // As it lies is always allowed, however little the board may be lifted.
            slabs[i] = Math.max(lying[i], program.between(board.top(), board.underside(), start).width() - 2 * skim);
        });
        return new Simulation(ThicknessRange.of(lying), ThicknessRange.of(slabs), boards, slabs);
    }

    /** True for the same figures. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Simulation that && asMeasured.equals(that.asMeasured) && levelled.equals(that.levelled)
            && boards.equals(that.boards) && Arrays.equals(slabs, that.slabs);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(slabs);
    }
}
