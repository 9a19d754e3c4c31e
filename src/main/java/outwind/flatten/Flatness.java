package outwind.flatten;

import java.util.Arrays;
import outwind.numeric.plane.WidestGap;
import outwind.surface.BoardShape;
import outwind.surface.Region;

/**
 * How flat a face is: the width of its minimum zone (ISO 12781-1, MZPL), over faces that the readings leave possible.
 *
 * @param sorted width of the minimum zone of each possible face (mm), ascending
 */
public record Flatness(double[] sorted) {

    /**
     * @param face   the face on top
     * @param region the part of it that has to be flat
     * @param seed   of the possible faces
     */
    public static Flatness of(BoardShape face, Region region, long seed) {
        double[] widths = RemainingThickness.draws(face, region, seed).stream()
            .mapToDouble(board -> WidestGap.minimumZone(board.x(), board.y(), board.top()).width()).sorted().toArray();
        return new Flatness(widths);
    }

    /** The zone that half of the possible faces stay within (mm). */
    public double median() {
        return at(0.5);
    }

    /** One possible face in twenty is flatter than this (mm). */
    public double low() {
        return at(0.05);
    }

    /** One possible face in twenty is less flat than this (mm). */
    public double high() {
        return at(0.95);
    }

    private double at(double share) {
        return sorted[(int) Math.round(share * (sorted.length - 1))];
    }

    /** Share of the possible faces that are flat within an amount (mm), 0 to 1. */
    public double chanceWithin(double amount) {
        return Arrays.stream(sorted).filter(width -> width <= amount).count() / (double) sorted.length;
    }

    /** True for the same figures. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Flatness that && Arrays.equals(sorted, that.sorted);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(sorted);
    }
}
