package outwind.scan;

import java.nio.charset.StandardCharsets;

/**
 * Reads decimal numbers out of bytes, to the very bit as {@link Double#parseDouble} does but without making a string of
 * each.
 *
 * <pre>
 *   ±digits.digits e±digits = ±m·10^k,   m of at most 18 digits
 *   m ≤ 2⁵³ and |k| ≤ 22:  m and 10^|k| are exact doubles, so one multiplication or division rounds correctly
 *   else:                  Double.parseDouble
 * </pre>
 * Numbers that a scanner writes are all of the first kind.
 *
 * <p>Source: W. D. Clinger, How to read floating point numbers accurately, PLDI 1990, the fast path.
 *
 * <p>One scanner serves one thread.
 */
final class NumberScanner {

    private static final double[] POWERS_OF_TEN = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12,
        1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

    private static final long EXACT = 1L << 53;

    /** More digits than these might not fit a long. */
    private static final int MOST_DIGITS = 18;

    /** Far beyond what a double holds; keeps hostile exponents from overflowing. */
    private static final int MOST_EXPONENT = 100_000;

    private final byte decimalMark;
    private double value;

    NumberScanner(byte decimalMark) {
        this.decimalMark = decimalMark;
    }

    /** The number that was read last; NaN or infinite where those words stood. */
    double value() {
        return value;
    }

    /**
     * Reads the number that begins at {@code from}.
     *
     * @param to end of the bytes to look at
     * @return place after the number; −1 if none begins there
     */
    int scan(byte[] bytes, int from, int to) {
        int at = from;
        boolean negative = at < to && bytes[at] == '-';
        if (negative || at < to && bytes[at] == '+') {
            at++;
        }
        int first = at;
        long m = 0;
        int digits = 0;
        int power = 0;
        boolean dropped = false;
        int digit;
        while (at < to && (digit = bytes[at] - '0') >= 0 && digit <= 9) {
            if (digits < MOST_DIGITS) {
                m = m * 10 + digit;
                digits += m == 0 ? 0 : 1;
            } else {
                power++;
                dropped |= digit != 0;
            }
            at++;
        }
        int before = at - first;
        int after = 0;
        if (at < to && bytes[at] == decimalMark) {
            int point = at++;
            while (at < to && (digit = bytes[at] - '0') >= 0 && digit <= 9) {
                if (digits < MOST_DIGITS) {
                    m = m * 10 + digit;
                    digits += m == 0 ? 0 : 1;
                    power--;
                } else {
                    dropped |= digit != 0;
                }
                at++;
            }
            after = at - point - 1;
        }
        if (before + after == 0) {
            return word(bytes, first, to, negative);
        }
        if (at < to && (bytes[at] | 0x20) == 'e') {
            int exponentAt = at + 1;
            boolean down = exponentAt < to && bytes[exponentAt] == '-';
            if (down || exponentAt < to && bytes[exponentAt] == '+') {
                exponentAt++;
            }
            int exponent = 0;
            int start = exponentAt;
            while (exponentAt < to && (digit = bytes[exponentAt] - '0') >= 0 && digit <= 9) {
                exponent = Math.min(MOST_EXPONENT, exponent * 10 + digit);
                exponentAt++;
            }
            if (exponentAt == start) {
                return -1;
            }
            power += down ? -exponent : exponent;
            at = exponentAt;
        }
        value = !dropped && m <= EXACT && power >= -22 && power <= 22
            ? exact(negative ? -(double) m : m, power)
            : Double.parseDouble(new String(bytes, from, at - from, StandardCharsets.ISO_8859_1)
                .replace((char) decimalMark, '.'));
        return at;
    }

    private static double exact(double m, int power) {
        return power < 0 ? m / POWERS_OF_TEN[-power] : m * POWERS_OF_TEN[power];
    }

    /** {@code nan}, {@code inf} or {@code infinity}, in letters of any size. */
    private int word(byte[] bytes, int from, int to, boolean negative) {
        if (isWord(bytes, from, to, "nan")) {
            value = Double.NaN;
            return from + 3;
        }
        int letters = isWord(bytes, from, to, "infinity") ? 8 : isWord(bytes, from, to, "inf") ? 3 : -1;
        value = negative ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
        return letters < 0 ? -1 : from + letters;
    }

    private static boolean isWord(byte[] bytes, int from, int to, String word) {
        if (from + word.length() > to) {
            return false;
        }
        for (int i = 0; i < word.length(); i++) {
            if ((bytes[from + i] | 0x20) != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }
}
