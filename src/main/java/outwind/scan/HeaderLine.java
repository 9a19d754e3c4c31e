package outwind.scan;

import java.util.Optional;

/**
 * One line {@code # key: value} about a scan, as written; what it means is for others to say.
 *
 * @param file   the file it stands in, as its reader was told of it: the scan or the file beside it
 * @param line   1-based
 * @param column of the value's first character, 1-based
 * @param key    before the first colon, without blanks around it
 * @param value  behind the first colon, without blanks around it; may be empty
 */
public record HeaderLine(String file, int line, int column, String key, String value) {

    /**
     * Takes a line apart.
     *
     * @param text  the whole line
     * @param begin where the key begins in it
     * @return nothing if there is no colon: the line is but a remark
     */
    static Optional<HeaderLine> in(String file, int line, String text, int begin) {
        int colon = text.indexOf(':', begin);
        if (colon < 0) {
            return Optional.empty();
        }
        String value = text.substring(colon + 1);
        int blanks = value.length() - value.stripLeading().length();
        return Optional.of(new HeaderLine(file, line, colon + 2 + blanks, text.substring(begin, colon).strip(),
            value.strip()));
    }
}
