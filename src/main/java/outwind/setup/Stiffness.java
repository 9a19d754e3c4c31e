package outwind.setup;

import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import outwind.numeric.plate.Rigidity;

/**
 * How stiff and how heavy a wood is, dry.
 *
 * <p>The figures are for clear straight-grained wood; a board with knots or a wild grain is softer.
 *
 * @param along   modulus of elasticity along the grain (MPa), positive
 * @param across  the same across the grain (MPa), positive; the lesser of tangential and radial
 * @param shear   shear modulus in the plane of the board (MPa), positive
 * @param poisson how much thinner across for a stretch along the grain (ratio)
 * @param density kg per m³, positive
 * @param wood    name of the wood in the table that these figures are for; empty if they are the cautious ones for a
 *                wood unknown or not named
 */
public record Stiffness(double along, double across, double shear, double poisson, double density,
        Optional<String> wood) {

    /** Softer and lighter than all but the softest of the woods in the table: our choice, so as not to flatter. */
    private static final double CAUTIOUS_ALONG = 9000;
    static final double CAUTIOUS_RATIO = 0.05;
    private static final double CAUTIOUS_DENSITY = 450;

    /** Shear modulus over that along the grain; hardwoods have 0.05 to 0.1 (Wood Handbook table 5-1, from memory). */
    static final double SHEAR_RATIO = 0.06;

    /** Along to across; 0.3 to 0.6 in the Wood Handbook's table 5-2 (from memory). It hardly matters here. */
    static final double POISSON = 0.45;

    public Stiffness {
        Objects.requireNonNull(wood, "wood");
        if (!(along > 0 && across > 0 && shear > 0 && density > 0 && poisson * poisson * across < along)) {
            throw new IllegalArgumentException("wood needs positive moduli and density, got along=" + along
                + ", across=" + across + ", shear=" + shear + ", poisson=" + poisson + ", density=" + density);
        }
    }

    /**
     * Figures for a wood as a person names it, such as "White Oak", "cherry" or "hard maple"; a name that several
     * woods share stands for the softest of them.
     */
    public static Stiffness of(Optional<String> species) {
        return species.flatMap(name -> SpeciesTable.find(name, Comparator.comparingDouble(
                row -> -row.stiffness().along())))
            .map(SpeciesTable.Row::stiffness).orElse(cautious());
    }

    private static Stiffness cautious() {
        return new Stiffness(CAUTIOUS_ALONG, CAUTIOUS_RATIO * CAUTIOUS_ALONG, SHEAR_RATIO * CAUTIOUS_ALONG, POISSON,
            CAUTIOUS_DENSITY, Optional.empty());
    }

    /**
     * A board of one thickness as a plate, x along the grain.
     *
     * <pre>
     *   Dx = E_L·h³ / 12(1 − ν_LT·ν_TL),   Dy = E_T·h³ / 12(1 − ν_LT·ν_TL),   D1 = ν_LT·Dy,   Dxy = G·h³/12
     * </pre>
     * Source: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, chapter 11.
     *
     * @param thickness h (mm), positive
     */
    public Rigidity plate(double thickness) {
        double third = thickness * thickness * thickness / 12;
        double heldFlat = third / (1 - poisson * poisson * across / along);
        return new Rigidity(along * heldFlat, across * heldFlat, poisson * across * heldFlat, shear * third);
    }
}
