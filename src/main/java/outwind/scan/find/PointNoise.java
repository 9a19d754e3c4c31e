package outwind.scan.find;

import java.util.OptionalDouble;
import outwind.numeric.Median;

/**
 * The scanner's own noise, separated from the wood's roughness by points that follow each other.
 *
 * <pre>
 *   σ = 1.4826 · median |zᵢ₊₁ − zᵢ| / √2   over points that follow each other and lie next to each other
 * </pre>
 * Points stand in the order of the quarters of cells, row by row over the face, and within a quarter in that of the
 * file. Pairs are taken at even steps through all of them, so that every part of the face has its say. Saw marks are
 * millimetres wide and cancel in the difference; noise does not.
 *
 * <p>Source: J. von Neumann, R. H. Kent, H. R. Bellinson and B. I. Hart, Annals of Mathematical Statistics 12 (1941)
 * 153–162 (successive differences), here by the median.
 */
final class PointNoise {

    /** Points closer than this (mm) stand at the same height of a saw mark. */
    private static final double NEAR = 0.5;

    /**
     * Pairs looked at in a face of many points. Of a quarter of them that lie close together the median is known to
     * 2 %; fewer than a twentieth of that tell nothing.
     */
    private static final int LOOKED_AT = 40_000;
    private static final int FEWEST = 500;

    private PointNoise() { }

    /** Standard deviation of one point (mm); empty where too few points that follow each other lie close together. */
    static OptionalDouble of(CellPoints points) {
        int step = (points.size() - 1) / LOOKED_AT + 1;
        double[] differences = new double[points.size() / step + 1];
        int found = 0;
        for (int i = 0; i + 1 < points.size(); i += step) {
            double dx = points.points().x()[i + 1] - points.points().x()[i];
            double dy = points.points().y()[i + 1] - points.points().y()[i];
            if (dx * dx + dy * dy <= NEAR * NEAR) {
                differences[found++] = Math.abs(points.points().z()[i + 1] - points.points().z()[i]);
            }
        }
        return found < FEWEST ? OptionalDouble.empty() : OptionalDouble.of(TrimmedPlane.TO_DEVIATION
            * Median.of(differences, 0, found) / Math.sqrt(2));
    }
}
