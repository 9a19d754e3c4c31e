package outwind.cli.option;

import outwind.board.BadValue;
import outwind.board.Price;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a price option, or says how to write it. */
public final class PriceConverter implements ITypeConverter<Price> {

    @Override
    public Price convert(String text) {
        try {
            return Price.parse(text, false);
        } catch (BadValue e) {
            throw new TypeConversionException(e.getMessage() + ". " + e.mend());
        }
    }
}
