package outwind.cli.option;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a share written as a percentage: {@code 95} or {@code 95%}. */
final class ShareConverter implements ITypeConverter<Double> {

    @Override
    public Double convert(String text) {
        String number = text.strip().replaceFirst("\\s*%$", "");
        if (!number.matches("\\d{1,3}(\\.\\d{1,6})?")) {
            throw new TypeConversionException("expected a percentage such as 95% but found \"" + text + "\"");
        }
        return Double.parseDouble(number) / 100;
    }
}
