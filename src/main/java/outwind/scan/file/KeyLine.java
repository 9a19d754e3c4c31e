package outwind.scan.file;

import java.util.Optional;

/** Takes a line {@code key: value} apart. */
final class KeyLine {

    private KeyLine() { }

    /**
     * @param text  the whole line
     * @param begin where the key begins in it: behind the # or the word comment
     * @return nothing if there is no colon: the line is but a remark
     */
    static Optional<HeaderLine> parse(String file, int line, String text, int begin) {
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
