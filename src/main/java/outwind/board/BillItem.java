package outwind.board;

import java.util.OptionalDouble;

/**
 * One row of a cutting bill: blanks of one finished size.
 *
 * @param name      what the maker calls it, not blank
 * @param length    along the grain (mm), positive
 * @param width     across the grain (mm), positive
 * @param thickness it should finish at (mm), positive
 * @param quantity  how many are wanted, at least one
 * @param value     what one is worth, above zero; empty where the bill gives no values
 * @param anyGrain  whether the grain may run across it as well
 * @param kind      of wood that it must be of
 */
public record BillItem(String name, double length, double width, double thickness, int quantity, OptionalDouble value,
        boolean anyGrain, WoodKind kind) {

    public BillItem {
        Quantity.LENGTH.require(length);
        Quantity.WIDTH.require(width);
        Quantity.THICKNESS.require(thickness);
        if (name.isBlank() || quantity < 1 || value.isPresent() && !(value.getAsDouble() > 0)) {
            throw new IllegalArgumentException("a row of a bill needs a name, a quantity of at least 1 and a"
                + " value above 0, got " + name + ", " + quantity + ", " + value);
        }
    }

    /** A row that any wood will do for. */
    public BillItem(String name, double length, double width, double thickness, int quantity, OptionalDouble value,
            boolean anyGrain) {
        this(name, length, width, thickness, quantity, value, anyGrain, WoodKind.ANY);
    }

    /** Area of one blank (mm²). */
    double area() {
        return length * width;
    }
}
