package outwind.flatten;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Finished thickness with how sure it is, from boards that the readings leave possible.
 *
 * @param sorted finished thickness of each possible board after skims (mm), ascending
 */
public record ThicknessRange(double[] sorted) {

    static ThicknessRange of(double[] thicknesses) {
        double[] sorted = thicknesses.clone();
        Arrays.sort(sorted);
        return new ThicknessRange(sorted);
    }

    /** The same in fewer figures, evenly spaced from the thinnest to the thickest. */
    public ThicknessRange thinned(int figures) {
        return new ThicknessRange(IntStream.range(0, figures).mapToDouble(i -> quantile(i / (figures - 1.0))).toArray());
    }

    /** As likely thicker as thinner (mm). */
    public double median() {
        return quantile(0.5);
    }

    /** One board in twenty comes out thinner (mm). */
    public double low() {
        return quantile(0.05);
    }

    /** One board in twenty comes out thicker (mm). */
    public double high() {
        return quantile(0.95);
    }

    /** Nine boards in ten lie within so much (mm). */
    public double width() {
        return high() - low();
    }

    /**
     * The thickness that a share of the possible boards stays under (mm); between two boards, in proportion.
     *
     * @param share 0 to 1
     */
    public double quantile(double share) {
        double at = share * (sorted.length - 1);
        int below = (int) at;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
    }

    /** Share of the possible boards that make a target (mm). */
    public double chanceOf(double target) {
        int below = 0;
        while (below < sorted.length && sorted[below] < target) {
            below++;
        }
        return (sorted.length - below) / (double) sorted.length;
    }

    /** True for the same figures. */
    @Override
    public boolean equals(Object other) {
        return other instanceof ThicknessRange that && Arrays.equals(sorted, that.sorted);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(sorted);
    }
}
