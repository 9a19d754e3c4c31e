package outwind.flatten;

import java.util.Arrays;
import java.util.List;
import outwind.surface.BoardShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

/**
 * What comes out of a board that lies on a face which is cut already, over boards that its readings leave possible.
 *
 * <pre>
 *   finished thickness = lowest height of the rough face above the bed − skim
 * </pre>
 * Only the rough face is skimmed: the other is done.
 */
public final class RemainingThickness {

    /** Lines of the grid that possible boards are looked at on; as those of {@link Simulation}. */
    private static final int ALONG = 17;
    private static final int ACROSS = 7;

    private RemainingThickness() { }

    /**
     * @param rough  the board with its rough face on top, heights from the bed
     * @param region the part that must clean up
     * @param skim   least depth to come off the rough face (mm)
     * @param seed   of the possible boards
     */
    public static ThicknessRange of(BoardShape rough, Region region, double skim, long seed) {
        return of(draws(rough, region, seed).stream().map(SampledBoard::top).toArray(double[][]::new), skim);
    }

    /**
     * The same of heights that were drawn elsewhere.
     *
     * @param heights of the rough face above the bed (mm), one row for each possible board
     * @param skim    least depth to come off the rough face (mm)
     */
    public static ThicknessRange of(double[][] heights, double skim) {
        return ThicknessRange.of(Arrays.stream(heights)
            .mapToDouble(board -> Arrays.stream(board).min().orElseThrow() - skim).toArray());
    }

    static List<SampledBoard> draws(BoardShape shape, Region region, long seed) {
        return shape.draws(places(shape, region), Simulation.DRAWS, seed);
    }

    /** Where possible boards are looked at. */
    public static Places places(BoardShape shape, Region region) {
        return Places.grid(region, (ALONG - 1) * shape.fineness() + 1, (ACROSS - 1) * shape.fineness() + 1);
    }
}
