package outwind.board;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is stated beside the file, for a file that does not say. What the file itself says goes before.
 *
 * @param units     unit of the file's bare numbers
 * @param length    the board's length (mm)
 * @param width     the board's width (mm)
 * @param thickness the board's rough thickness (mm)
 */
public record Given(Optional<Units> units, OptionalDouble length, OptionalDouble width, OptionalDouble thickness) {

    /** Nothing is stated: the file must say all. */
    public static final Given NOTHING =
        new Given(Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    public Given {
        Objects.requireNonNull(units, "units");
        length.ifPresent(Quantity.LENGTH::require);
        width.ifPresent(Quantity.WIDTH::require);
        thickness.ifPresent(Quantity.THICKNESS::require);
    }
}
