package outwind.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the size of a bed: two lengths with an x between them. */
final class BedConverter implements ITypeConverter<BedOption> {

    @Override
    public BedOption convert(String text) {
        String[] parts = text.split("[x×]");
        if (parts.length != 2) {
            throw new TypeConversionException("expected a bed such as 1500mmx600mm but found \"" + text
                + "\". Write its length, an x, and its width.");
        }
        LengthConverter lengths = new LengthConverter();
        return new BedOption(lengths.convert(parts[0]), lengths.convert(parts[1]));
    }
}
