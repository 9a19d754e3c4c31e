package outwind.board.file;

import java.util.Objects;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Units;

/**
 * What is stated beside the file, for a file that does not say. What the file itself says takes precedence. Lengths are kept
 * as they were written: a bare number is meant in the file's own unit, which is known only once the file is read.
 *
 * @param units     unit of the file's bare numbers
 * @param length    the board's length, as {@code 1180} or {@code 46 1/2in}
 * @param width     the board's width
 * @param thickness the board's rough thickness
 * @param onBed     true if the board's underside is flat and lies on the bed, so that heights above the bed are its
 *                  thickness and none needs to be stated
 */
public record Defaults(Optional<Units> units, Optional<String> length, Optional<String> width,
        Optional<String> thickness, boolean onBed) {

    /** Nothing is stated: the file must say all. */
    public static final Defaults NOTHING =
        new Defaults(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** What is stated beside a file of a rough board. */
    public Defaults(Optional<Units> units, Optional<String> length, Optional<String> width, Optional<String> thickness) {
        this(units, length, width, thickness, false);
    }

    public Defaults {
        Objects.requireNonNull(units, "units");
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(width, "width");
        Objects.requireNonNull(thickness, "thickness");
    }

    /** Beside a file of face B alone, read with face A cut and down: the sizes are those of the board before. */
    public static Defaults ofFaceB(Board before) {
        return new Defaults(Optional.of(before.units()), Optional.of(before.length() + "mm"),
            Optional.of(before.width() + "mm"), Optional.empty()).lyingOnBed();
    }

    /** The same beside a file of a board whose flat underside lies on the bed. */
    public Defaults lyingOnBed() {
        return new Defaults(units, length, width, thickness, true);
    }
}
