package outwind.setup;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How much a wood shrinks across the grain as it dries. Along the grain it hardly shrinks at all.
 *
 * <pre>
 *   between 6 and 14 %:   ΔD = D·C·(M_to − M_from)                             with C from table 13-5
 *   else:                 D(M) = D_green·(1 − S·(30 − M)/30),  M at most 30    with S from table 4-3
 * </pre>
 * The second is the first with C = S/(30 − S·(30 − M_from)): over a small change both are the same.
 *
 * <p>Which way the growth rings run in the board is not known: a dimension may lie along them (tangential, the more) or
 * across them (radial, the less). So as not to flatter, wood that dries is taken to shrink tangentially, and wood that
 * swells to grow radially.
 *
 * <p>Source: US Forest Products Laboratory, Wood Handbook (FPL-GTR-190), chapter 13; the second formula from memory.
 *
 * @param tangential green to ovendry along the rings (share of the green dimension), 0 to 1
 * @param radial     the same across the rings
 * @param change     share of a dimension for one percent of moisture along the rings; empty if not on record
 * @param changeRadial the same across the rings
 * @param wood       the wood in the table that these figures are for; empty if the greatest of all stand in
 */
public record Shrinkage(double tangential, double radial, OptionalDouble change, OptionalDouble changeRadial,
                        Optional<String> wood) {

    /** Fibre saturation (percent): wetter than this, wood keeps its size. */
    private static final double SATURATED = 30;

    /** The range that the figures for one percent hold in. */
    private static final double LOW = 6;
    private static final double HIGH = 14;

    /** Figures for a wood as a person names it; for one unknown or not named, those of the wood that shrinks most. */
    public static Shrinkage of(Optional<String> species) {
        return species.flatMap(name -> SpeciesTable.find(name, Comparator.comparingDouble(
                row -> row.shrinkage().tangential())))
            .map(SpeciesTable.Row::shrinkage).orElseGet(Shrinkage::greatest);
    }

    private static Shrinkage greatest() {
        Shrinkage most = SpeciesTable.rows().stream().map(SpeciesTable.Row::shrinkage)
            .max(Comparator.comparingDouble(Shrinkage::tangential)).orElseThrow();
        double leastRadial = SpeciesTable.rows().stream().mapToDouble(row -> row.shrinkage().radial()).min()
            .orElseThrow();
        return new Shrinkage(most.tangential(), leastRadial, OptionalDouble.empty(), OptionalDouble.empty(),
            Optional.empty());
    }

    /** What a thickness or width is multiplied by as its moisture changes; above zero. */
    public double factor(Moisture moisture) {
        OptionalDouble each = moisture.dries() ? change : changeRadial;
        if (each.isPresent() && isCovered(moisture.from()) && isCovered(moisture.to())) {
            return 1 + each.getAsDouble() * (moisture.to() - moisture.from());
        }
        double whole = moisture.dries() ? tangential : radial;
        return size(whole, moisture.to()) / size(whole, moisture.from());
    }

    private static boolean isCovered(double percent) {
        return percent >= LOW && percent <= HIGH;
    }

    /** Size at a moisture as a share of the green size. */
    private static double size(double whole, double percent) {
        return 1 - whole * (SATURATED - Math.min(SATURATED, percent)) / SATURATED;
    }
}
