package outwind.board;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;

/** The unit of length in which a person reads and writes; inside the program everything is in mm. */
public enum Units {

    /** Millimetres. */
    MILLIMETRES("mm", 1, 3),

    /** International inches of exactly 25.4 mm. */
    INCHES("in", 25.4, 4);

    private final String symbol;
    private final double millimetres;
    private final int decimals;

    Units(String symbol, double millimetres, int decimals) {
        this.symbol = symbol;
        this.millimetres = millimetres;
        this.decimals = decimals;
    }

    /**
     * The unit of a name: mm, millimetres, in, inch, inches or {@code "}, in any case.
     *
     * @throws BadValue if the name is none of these
     */
    public static Units named(String name) {
        return find(name).orElseThrow(() -> new BadValue("units mm or in", name, "Write mm or in."));
    }

    public static Optional<Units> find(String name) {
        return switch (name.strip().toLowerCase(Locale.ROOT)) {
            case "mm", "millimetre", "millimetres", "millimeter", "millimeters" -> Optional.of(MILLIMETRES);
            case "in", "inch", "inches", "\"", "″", "”" -> Optional.of(INCHES);
            default -> Optional.empty();
        };
    }

    /** The short name: mm or in. */
    public String symbol() {
        return symbol;
    }

    /** A length in this unit, in mm. */
    public double toMillimetres(double length) {
        return length * millimetres;
    }

    /** A length in mm, in this unit. */
    public double fromMillimetres(double length) {
        return length / millimetres;
    }

    /** A length in mm as a plain number in this unit, for instance 1180 or 46.4567. */
    public String plain(double length) {
        BigDecimal rounded = BigDecimal.valueOf(fromMillimetres(length)).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.stripTrailingZeros().toPlainString();
    }
}
