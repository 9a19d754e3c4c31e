package outwind.scan.bytes;

import java.math.BigInteger;

/**
 * The double next to {@code m · 10^q} for an unsigned 64-bit m, by one or two multiplications of 64 by 64 bits.
 *
 * <p>5^q is held to 128 bits, rounded down for q ≥ 0 and up for q &lt; 0. The top 64 bits of m times the upper half
 * of it settle 53 bits and the rounding bit unless what follows is all ones; then the lower half is brought in. For q
 * from -27 to 55 that always settles it, so the table stops there and no case is left open.
 *
 * <p>Source: D. Lemire, Number Parsing at a Gigabyte per Second, Software: Practice and Experience 51(8), 2021,
 * doi:10.1002/spe.2984, sections 5 to 7, after M. Eisel.
 */
final class DecimalProduct {

    private static final int SMALLEST = -27;
    private static final int LARGEST = 55;
    private static final long[] UPPER = new long[LARGEST - SMALLEST + 1];
    private static final long[] LOWER = new long[LARGEST - SMALLEST + 1];

    static {
        for (int q = SMALLEST; q <= LARGEST; q++) {
            BigInteger power = BigInteger.valueOf(5).pow(Math.abs(q));
            int bits = power.bitLength();
            BigInteger held = q >= 0
                ? power.shiftLeft(128).shiftRight(bits)
                : BigInteger.ONE.shiftLeft(127 + bits).divide(power).add(BigInteger.ONE);
            UPPER[q - SMALLEST] = held.shiftRight(64).longValue();
            LOWER[q - SMALLEST] = held.longValue();
        }
    }

    private DecimalProduct() { }

    /** The nearest double, ties to even; NaN where q is outside the table. */
    static double of(long m, int q) {
        if (m == 0) {
            return 0;
        }
        if (q < SMALLEST || q > LARGEST) {
            return Double.NaN;
        }
        int shift = Long.numberOfLeadingZeros(m);
        long w = m << shift;
        long high = highOf(w, UPPER[q - SMALLEST]);
        long low = w * UPPER[q - SMALLEST];
        if ((high & 0x1FF) == 0x1FF) {
            long carried = highOf(w, LOWER[q - SMALLEST]);
            low += carried;
            high += Long.compareUnsigned(low, carried) < 0 ? 1 : 0;
        }
        return rounded(high, low, shift, q);
    }

    /** Takes 54 bits off the top of the product and rounds the last away. */
    private static double rounded(long high, long low, int shift, int q) {
        int top = (int) (high >>> 63);
        long bits = high >>> top + 9;
        // floor(q · log2(10)), exact for every q of the table.
        int exponent = ((217_706 * q) >> 16) + 63 + top - shift + 1023;
        boolean halfway = Long.compareUnsigned(low, 1) <= 0 && q >= -4 && q <= 23 && (bits & 3) == 1
            && bits << top + 9 == high;
        bits = (halfway ? bits & ~1 : bits + (bits & 1)) >>> 1;
        if (bits == 1L << 53) {
            bits = 1L << 52;
            exponent++;
        }
        return Double.longBitsToDouble((long) exponent << 52 | bits & (1L << 52) - 1);
    }

    /** The upper 64 bits of an unsigned product. */
    private static long highOf(long a, long b) {
        return Math.multiplyHigh(a, b) + (a >> 63 & b) + (b >> 63 & a);
    }
}
