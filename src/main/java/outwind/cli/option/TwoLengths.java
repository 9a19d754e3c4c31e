package outwind.cli.option;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Two lengths as typed on the command line, with an x between them.
 *
 * @param first  the one before the x
 * @param second the one behind it
 */
record TwoLengths(LengthOption first, LengthOption second) {

    /** Reads an option of two lengths. */
    abstract static class Converter implements ITypeConverter<TwoLengths> {

        private final String expected;
        private final String mend;

        /**
         * @param expected what the option is, with an example
         * @param mend     one sentence on how to write it
         */
        Converter(String expected, String mend) {
            this.expected = expected;
            this.mend = mend;
        }

        @Override
        public TwoLengths convert(String text) {
            String[] parts = text.split("[x×]");
            if (parts.length != 2) {
                throw new TypeConversionException("expected " + expected + " but found \"" + text + "\". " + mend);
            }
            LengthConverter lengths = new LengthConverter();
            return new TwoLengths(lengths.convert(parts[0]), lengths.convert(parts[1]));
        }
    }
}
