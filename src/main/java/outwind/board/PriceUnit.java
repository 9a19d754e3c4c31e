package outwind.board;

import java.util.Locale;
import java.util.Optional;

/** What a price is asked for. */
public enum PriceUnit {

    /** A board foot: 144 cubic inches of rough wood. */
    BOARD_FOOT,

    /** A cubic metre of rough wood. */
    CUBIC_METRE,

    /** A cubic foot of rough wood. */
    CUBIC_FOOT,

    /** A square metre of rough face. */
    SQUARE_METRE,

    /** A square foot of rough face. */
    SQUARE_FOOT,

    /** The whole board. */
    BOARD;

    static Optional<PriceUnit> find(String name) {
        return switch (name.strip().toLowerCase(Locale.ROOT)) {
            case "bf", "bd ft", "board foot", "board feet" -> Optional.of(BOARD_FOOT);
            case "m3", "m³", "cubic metre", "cubic meter" -> Optional.of(CUBIC_METRE);
            case "ft3", "ft³", "cu ft", "cubic foot", "cubic feet" -> Optional.of(CUBIC_FOOT);
            case "m2", "m²", "square metre", "square meter" -> Optional.of(SQUARE_METRE);
            case "ft2", "ft²", "sq ft", "square foot", "square feet" -> Optional.of(SQUARE_FOOT);
            case "board" -> Optional.of(BOARD);
            default -> Optional.empty();
        };
    }
}
