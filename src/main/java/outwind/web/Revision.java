package outwind.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.OptionalInt;

/**
 * What names a state of a board file: the beginning of the SHA-256 (FIPS 180-4) of its text. Readings are added at the
 * end, so the text that a device last saw is still there as the beginning of the text, and shows what came since.
 */
final class Revision {

    /** Hexadecimal digits; two texts of one board agree in 80 bits by chance once in 10²⁴. */
    private static final int DIGITS = 20;

    private Revision() { }

    static String of(String text) {
        MessageDigest digest = sha256();
        digest.update(text.getBytes(StandardCharsets.UTF_8));
        return name(digest);
    }

    /** Number of lines of the text that a revision names, if the text still begins with it. */
    static OptionalInt linesAt(String text, String revision) {
        MessageDigest digest = sha256();
        int lines = 0;
        int from = 0;
        while (from < text.length()) {
            int end = text.indexOf('\n', from) + 1;
            int to = end == 0 ? text.length() : end;
            digest.update(text.substring(from, to).getBytes(StandardCharsets.UTF_8));
            lines++;
            from = to;
            if (name(copy(digest)).equals(revision)) {
                return OptionalInt.of(lines);
            }
        }
        return OptionalInt.empty();
    }

    private static String name(MessageDigest digest) {
        return HexFormat.of().formatHex(digest.digest()).substring(0, DIGITS);
    }

    private static MessageDigest copy(MessageDigest digest) {
        try {
            return (MessageDigest) digest.clone();
        } catch (CloneNotSupportedException e) {
            throw new IllegalStateException("this Java cannot copy a SHA-256 under way", e);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("this Java has no SHA-256", e);
        }
    }
}
