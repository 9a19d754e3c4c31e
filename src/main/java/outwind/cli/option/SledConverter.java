package outwind.cli.option;

import outwind.board.BadValue;
import outwind.shop.Sled;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads which sled carries the board. */
final class SledConverter implements ITypeConverter<Sled> {

    @Override
    public Sled convert(String text) {
        try {
            return Sled.named(text);
        } catch (BadValue e) {
            throw new TypeConversionException(e.getMessage() + ". " + e.mend());
        }
    }
}
