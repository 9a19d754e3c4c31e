package outwind.scan.bytes;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Reads decimal numbers out of bytes, each bit for bit as {@link Double#parseDouble} would.
 *
 * <pre>
 *   [+-] digits [. digits] [e [+-] digits]     = ± m · 10^q,  m an integer
 * </pre>
 * Where m &lt; 10¹⁵ and -8 ≤ q &lt; 0, as scans have them, m and 10^|q| are doubles without error, so one division rounds
 * once (W. D. Clinger, How to Read Floating Point Numbers Accurately, PLDI 1990, doi:10.1145/93542.93557). Anything else
 * is left to a library.
 *
 * <p>Digits are taken eight at a time: eight bytes in one {@code long}, the first that is no digit found by a mask, and
 * three multiplications for their value (D. Lemire, Number Parsing at a Gigabyte per Second, Software: Practice and
 * Experience 51(8), 2021, doi:10.1002/spe.2984, section 8).
 */
public final class NumberScanner {

    /** So many bytes behind the last number must be readable, whatever they are. */
    public static final int MARGIN = 24;

    private static final VarHandle EIGHT =
        MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ZEROS = 0x3030303030303030L;
    private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000};

    private final byte[] text;
    private final byte otherMark;
    private int end;

    /**
     * @param text      to be read, with {@link #MARGIN} bytes to spare; a number must not reach to its end
     * @param otherMark a decimal mark besides the point
     */
    public NumberScanner(byte[] text, char otherMark) {
        this.text = text;
        this.otherMark = (byte) otherMark;
    }

    /** Where the number read last ended: the place behind it, or its start if there was none. */
    public int end() {
        return end;
    }

    /**
     * The number that begins at a place; infinite if it is too large for a double. NaN for a word that says NaN or
     * infinite, and NaN with {@link #end} at {@code start} if there is no number.
     */
    public double at(int start) {
        int minus = text[start] == '-' ? 1 : 0;
        int from = start + minus;
        long whole = (long) EIGHT.get(text, from) ^ ZEROS;
        int wholeDigits = digits(whole);
        int point = from + wholeDigits;
        // One to seven digits, a mark, one to eight digits: m has at most 15, and q is -8 or more.
        if (wholeDigits > 0 && wholeDigits < 8 && isMark(text[point])) {
            long part = (long) EIGHT.get(text, point + 1) ^ ZEROS;
            int partDigits = digits(part);
            end = point + 1 + partDigits;
            if (partDigits > 0 && !continues(text[end])) {
                long m = value(whole, wholeDigits) * POWERS[partDigits] + value(part, partDigits);
                return signed((double) m / POWERS[partDigits], minus);
            }
        }
        return anyNumber(start);
    }

    /** How many of eight bytes, lowest first, are digits before the first that is none. */
    private static int digits(long eight) {
        // 0x76 lifts 10 and more to the top bit. A carry only reaches bytes behind the first that is no digit.
        return Long.numberOfTrailingZeros((eight + 0x7676767676767676L | eight) & 0x8080808080808080L) >>> 3;
    }

    /** The number that the first {@code count} digits make, 1 to 8 of them. */
    private static long value(long eight, int count) {
        long digits = eight << 64 - 8 * count;
        long pairs = digits * 10 + (digits >>> 8);
        return (pairs & 0x000000FF000000FFL) * 0x000F424000000064L
            + (pairs >>> 16 & 0x000000FF000000FFL) * 0x0000271000000001L >>> 32;
    }

    private static double signed(double value, int minus) {
        return Double.longBitsToDouble(Double.doubleToRawLongBits(value) | (long) minus << 63);
    }

    private boolean isMark(byte c) {
        return c == '.' || c == otherMark;
    }

    private static boolean continues(byte c) {
        return isDigit(c) || (c | 0x20) == 'e';
    }

    private static boolean isDigit(byte c) {
        return c >= '0' && c <= '9';
    }

    private double anyNumber(int start) {
        int from = start + (text[start] == '-' || text[start] == '+' ? 1 : 0);
        int at = behindDigits(from);
        int digits = at - from;
        int mark = isMark(text[at]) ? at : -1;
        if (mark >= 0) {
            at = behindDigits(mark + 1);
            digits += at - mark - 1;
        }
        if (digits == 0) {
            return word(start, from);
        }
        if ((text[at] | 0x20) == 'e') {
            int first = at + (text[at + 1] == '-' || text[at + 1] == '+' ? 2 : 1);
            int behind = behindDigits(first);
            at = behind > first ? behind : at;
        }
        end = at;
        return mark >= 0 && text[mark] != '.' ? withPoint(start, mark)
            : JavaDoubleParser.parseDouble(text, start, end - start);
    }

    private int behindDigits(int from) {
        int at = from;
        while (isDigit(text[at])) {
            at++;
        }
        return at;
    }

    /** The number with its decimal mark replaced by the only one that is known elsewhere. */
    private double withPoint(int start, int mark) {
        byte[] number = Arrays.copyOfRange(text, start, end);
        number[mark - start] = '.';
        return JavaDoubleParser.parseDouble(number);
    }

    /** Words that programs write for what is not finite: nan, inf, infinity and nan(ind), in any case. */
    private double word(int start, int from) {
        end = start;
        for (String word : new String[] {"nan(ind)", "nan", "infinity", "inf"}) {
            if (says(word, from)) {
                end = from + word.length();
                return Double.NaN;
            }
        }
        return Double.NaN;
    }

    private boolean says(String word, int from) {
        for (int i = 0; i < word.length(); i++) {
            if (Character.toLowerCase((char) text[from + i]) != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }
}
