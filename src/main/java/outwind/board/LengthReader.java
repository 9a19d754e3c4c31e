package outwind.board;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Reads the numbers of one file, all in the same unit and with the same decimal mark.
 *
 * @param units        unit of a bare number
 * @param decimalComma whether a decimal comma is accepted as well as a point
 */
public record LengthReader(Units units, boolean decimalComma) {

    private static final Pattern THOUSANDS = Pattern.compile("\\s*\\d{1,3},\\d{3}\\s*");

    /**
     * The quantity's value (mm).
     *
     * @throws BadValue if the text is no length, or none that the quantity can have
     */
    public double read(Quantity quantity, String text) {
        return read(quantity, text, "Type a number such as " + quantity.example(units) + ".");
    }

    /** The quantity's value (mm) from a cell that may as well be empty; {@code whenEmpty} says what empty means. */
    public double readTouched(Quantity quantity, String text, String whenEmpty) {
        return read(quantity, text, "Type a number such as " + quantity.example(units)
            + ", or leave the cell empty if " + whenEmpty + ".");
    }

    /** The place (mm) of something that must lie between 0 and {@code limit}, as far as that is known. */
    public double readOnBoard(Quantity place, String text, Quantity side, OptionalDouble limit) {
        double value = read(place, text);
        if (limit.isPresent() && (value < 0 || value > limit.getAsDouble())) {
            throw new BadValue(place.word() + " from 0 to " + shown(limit.getAsDouble()), text,
                "This lies off the board: correct the " + place.word() + ", or the " + side.word()
                    + " if the board is larger.");
        }
        return value;
    }

    /** A length in mm as a person reads it on this board, with its unit. */
    public String shown(double length) {
        return units.plain(length) + " " + units.symbol();
    }

    /**
     * A place or a side in mm with a comma and just three digits behind it. Nobody measures those to a micrometre, so it
     * is most likely a thousands mark, and a thousand times too small if read as a decimal one.
     */
    private boolean hasThousandsMark(Quantity quantity, String text) {
        return decimalComma && units == Units.MILLIMETRES && quantity.isPlaceOrSide() && THOUSANDS.matcher(text).matches();
    }

    private double read(Quantity quantity, String text, String mend) {
        if (hasThousandsMark(quantity, text)) {
            throw new BadValue(quantity.word() + " without a thousands mark", text,
                "Write " + text.strip().replace(",", "") + ", or " + text.strip().replace(",", ".") + " if that is meant.");
        }
        double value = Length.read(text, units, decimalComma).orElseThrow(() -> new BadValue(
            Length.isFraction(text) ? Fault.Kind.FRACTION : Fault.Kind.CAUSE, quantity.word() + " in " + units.symbol(), text, Length.slip(text, units, decimalComma).orElse(mend)));
        if (!quantity.admits(value)) {
            throw new BadValue(quantity.word() + " " + quantity.range(units), text,
                "Check the number and its unit; a bare number is read in " + units.symbol() + " here.");
        }
        return value;
    }
}
