package outwind.scan;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * The scanner's own noise, told from the wood's roughness by points that follow each other.
 *
 * <pre>
 *   σ = 1.4826 · median |zᵢ₊₁ − zᵢ| / √2   over points of one quarter that follow each other and lie next to each other
 * </pre>
 * Saw marks are millimetres wide and cancel in the difference; noise does not.
 *
 * <p>Source: J. von Neumann, R. H. Kent, H. R. Bellinson and B. I. Hart, Annals of Mathematical Statistics 12 (1941)
 * 153–162 (successive differences), here by the median.
 */
final class PointNoise {

    /** Points closer than this (mm) stand at the same height of a saw mark. */
    private static final double NEAR = 0.5;

    /** The median of so many differences is known to 2 %; fewer than a twentieth of them tell nothing. */
    private static final int ENOUGH = 10_000;
    private static final int FEWEST = 500;

    private PointNoise() { }

    /** Standard deviation of one point (mm); empty where too few points that follow each other lie close together. */
    static OptionalDouble of(CellPoints points) {
        double[] differences = new double[ENOUGH];
        int found = 0;
        int step = Math.max(1, points.size() / ENOUGH / 4);
        for (int i = 0; i + 1 < points.size() && found < ENOUGH; i += step) {
            double dx = points.points().x()[i + 1] - points.points().x()[i];
            double dy = points.points().y()[i + 1] - points.points().y()[i];
            if (dx * dx + dy * dy <= NEAR * NEAR) {
                differences[found++] = Math.abs(points.points().z()[i + 1] - points.points().z()[i]);
            }
        }
        return found < FEWEST ? OptionalDouble.empty() : OptionalDouble.of(TrimmedPlane.TO_DEVIATION
            * Middle.of(Arrays.copyOf(differences, found), 0, found) / Math.sqrt(2));
    }
}
