package outwind.cli.option;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a force in newtons, with or without the N. */
final class ForceConverter implements ITypeConverter<Double> {

    @Override
    public Double convert(String text) {
        String number = text.strip().replaceFirst("\\s*N$", "");
        if (!number.matches("\\d{1,5}(\\.\\d{1,3})?")) {
            throw new TypeConversionException("expected a force in newtons such as 50 but found \"" + text
                + "\". A hand presses with about 50 N.");
        }
        return Double.parseDouble(number);
    }
}
