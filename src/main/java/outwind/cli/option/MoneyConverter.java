package outwind.cli.option;

import java.math.BigDecimal;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads an amount of money: a plain decimal, not below zero. */
public final class MoneyConverter implements ITypeConverter<BigDecimal> {

    @Override
    public BigDecimal convert(String text) {
        if (!text.strip().matches("\\d{1,12}(\\.\\d{1,6})?")) {
            throw new TypeConversionException("expected an amount such as 48 or 52.50 but found \"" + text
                + "\". Write digits, and a point before the cents.");
        }
        return new BigDecimal(text.strip());
    }
}
