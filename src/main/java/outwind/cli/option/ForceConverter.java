package outwind.cli.option;

import outwind.board.BadValue;
import outwind.shop.Force;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a push; see {@link Force}. */
final class ForceConverter implements ITypeConverter<Double> {

    @Override
    public Double convert(String text) {
        try {
            return Force.push(text);
        } catch (BadValue e) {
            throw new TypeConversionException(e.getMessage() + ". A hand presses with about 50 N, or 11 lbf.");
        }
    }
}
