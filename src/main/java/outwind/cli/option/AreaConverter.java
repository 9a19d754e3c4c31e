package outwind.cli.option;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.stock.Rates;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads an area such as 3m2 or 30 ft², in mm². */
public final class AreaConverter implements ITypeConverter<Double> {

    private static final Pattern AREA = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,6})?)\\s*(m2|m²|ft2|ft²)");

    @Override
    public Double convert(String text) {
        Matcher area = AREA.matcher(text.strip());
        if (!area.matches() || Double.parseDouble(area.group(1)) == 0) {
            throw new TypeConversionException("expected an area such as 3m2 or 30ft2 but found \"" + text
                + "\". Write a number above zero with m2 or ft2 after it.");
        }
        return Double.parseDouble(area.group(1)) * (area.group(2).startsWith("m") ? 1e6 : Rates.SQUARE_FOOT);
    }
}
