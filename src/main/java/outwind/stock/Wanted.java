package outwind.stock;

import java.util.Optional;

/**
 * A finished area that is wanted, and what to buy for it.
 *
 * @param area   mm², above zero
 * @param bought empty if even the whole stack is not sure enough
 */
public record Wanted(double area, Optional<Purchase> bought) {

    /** The cheapest boards of a stack for an area (mm²). */
    public static Wanted of(Stack stack, double area) {
        return new Wanted(area, stack.cheapestFor(area));
    }
}
