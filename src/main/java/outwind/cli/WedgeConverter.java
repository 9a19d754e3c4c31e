package outwind.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a wedge option: two lengths with an x between them. */
final class WedgeConverter implements ITypeConverter<WedgeOption> {

    @Override
    public WedgeOption convert(String text) {
        String[] parts = text.split("[x×]");
        if (parts.length != 2) {
            throw new TypeConversionException("expected a wedge such as 150mmx12mm but found \"" + text
                + "\". Write its length, an x, and its thickness at the butt.");
        }
        LengthConverter lengths = new LengthConverter();
        return new WedgeOption(lengths.convert(parts[0]), lengths.convert(parts[1]));
    }
}
