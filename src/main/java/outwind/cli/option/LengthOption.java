package outwind.cli.option;

import java.util.OptionalDouble;
import outwind.board.Length;
import outwind.board.Units;

/**
 * A length as typed on the command line, with a unit of its own or in the board's.
 *
 * @param text what was typed
 */
public record LengthOption(String text) {

    /** Checks the spelling at once, whatever unit will be meant. */
    public LengthOption {
        Length.parse(text, Units.INCHES);
    }

    /** The length in mm. */
    public double in(Units units) {
        return Length.parse(text, units);
    }

    /** True if it names no unit. */
    boolean isBare() {
        return in(Units.MILLIMETRES) != in(Units.INCHES);
    }

    /** The length of an option that may not have been given, in mm. */
    public static OptionalDouble in(Units units, LengthOption option) {
        return option == null ? OptionalDouble.empty() : OptionalDouble.of(option.in(units));
    }
}
