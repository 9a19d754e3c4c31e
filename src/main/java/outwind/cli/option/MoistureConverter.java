package outwind.cli.option;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.setup.Moisture;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads moisture before and after, in percent: {@code 18:9}, with or without percent signs. */
final class MoistureConverter implements ITypeConverter<Moisture> {

    private static final String PERCENT = "(\\d{1,3}(?:\\.\\d{1,2})?) ?%?";
    private static final Pattern FROM_TO = Pattern.compile(PERCENT + " ?: ?" + PERCENT);

    @Override
    public Moisture convert(String text) {
        Matcher matcher = FROM_TO.matcher(text.strip());
        if (!matcher.matches()) {
            throw new TypeConversionException("expected moisture before and after in percent but found \"" + text
                + "\". Write both with a colon between, as 18:9.");
        }
        try {
            return new Moisture(Double.parseDouble(matcher.group(1)), Double.parseDouble(matcher.group(2)));
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
