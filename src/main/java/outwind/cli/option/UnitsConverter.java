package outwind.cli.option;

import outwind.board.BadValue;
import outwind.board.Units;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a unit option, or says which units there are. */
public final class UnitsConverter implements ITypeConverter<Units> {

    @Override
    public Units convert(String text) {
        try {
            return Units.named(text);
        } catch (BadValue e) {
            throw new TypeConversionException(e.getMessage() + ". " + e.mend());
        }
    }
}
