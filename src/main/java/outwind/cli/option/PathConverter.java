package outwind.cli.option;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Name of a file or folder, as typed. */
public final class PathConverter implements ITypeConverter<Path> {

    @Override
    public Path convert(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException("no file or folder can have the name \"" + text + "\" here. Where letters"
                + " with accents are the trouble, set the locale to UTF-8, as with LC_ALL=C.UTF-8");
        }
    }
}
