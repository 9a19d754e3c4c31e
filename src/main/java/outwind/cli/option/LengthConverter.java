package outwind.cli.option;

import outwind.board.BadValue;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a length option, or says how to write it. */
public final class LengthConverter implements ITypeConverter<LengthOption> {

    @Override
    public LengthOption convert(String text) {
        try {
            return new LengthOption(text);
        } catch (BadValue e) {
            throw new TypeConversionException(e.getMessage() + ". " + e.mend());
        }
    }
}
