package outwind.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Made-up inputs: good ones spoiled in the ways that hands, spreadsheets, disks and programs spoil them. What a reader
 * took is spoiled further, so that inputs grow away from the first ones.
 */
final class Mutants {

    private static final int MOST_KEPT = 300;
    private static final int LONGEST_KEPT = 900;
    private static final int LONGEST = 60_000;

    private static final List<String> ODD = List.of("99999999999999999999", "1e308", "-1e-308", "1e9999", "NaN",
        "Infinity", "-0", "0", "00012", "1/0", "12 1/2", "1 3/16\"", "2147483648", "-2147483649", "9223372036854775808",
        "0x1f", "1,5", "1.234,5", "1,234.5", "1'234", ".5", "5.", "+", "-", "−3", "31.5 everywhere", "mm", "in", "ft",
        "\"", "\"\"", "'", "#", "# ", ":", "\u00a0", "\u202e", "\u2028", "\ufeff", "\u0000", "\u001b[2J", "\u0085",
        "\uD83E\uDEB5", "ﬁ", "ß", "İ", "٣", "１２", "½", "µ", "²", "\t", "\r", "\n", "\r\n", ",", ";", "|", "x", "×",
        "# units: in", "# units: mm", "# length: ", "# width: ", "# thickness: ", "# defect: 1 1 5 5", "# trim: 1 x 1",
        "# skim: 0.2", "# turned: along", "# price: 9.50 per bf", "# target: 20", "# board: ", "y\\x", "x,y,z\n",
        "depth", "face", "bed", "B", "note", "n/a", "yes", "per m3", "EUR", "$", "${x}", "%n%s", "$(touch ran)", "..",
        "ply\n", "end_header\n", "element vertex 9\n", "property float x\n", "property list uchar int v\n",
        "format ascii 1.0\n", "comment units: in\n", "obj_info\n");

    private static final List<Charset> CHARSETS = List.of(StandardCharsets.UTF_16, StandardCharsets.UTF_16LE,
        StandardCharsets.ISO_8859_1, StandardCharsets.UTF_16BE);

    private static final String DELIMITERS = ",;\t |";

    private final List<byte[]> kept;
    private final int first;
    private final SplittableRandom random;

    /** @param seeds good inputs, at least one */
    Mutants(List<byte[]> seeds, SplittableRandom random) {
        this.kept = new ArrayList<>(seeds);
        this.first = seeds.size();
        this.random = random;
    }

    /** The next input. */
    byte[] next() {
        byte[] input = one();
        int turns = 1 + Integer.numberOfTrailingZeros(random.nextInt() | 1 << 6);
        for (int i = 0; i < turns; i++) {
            input = spoilt(input);
        }
        return input.length > LONGEST ? part(input, 0, LONGEST) : input;
    }

    /** Keeps an input that a reader took, now and then, in place of another that is no first one. */
    void keep(byte[] input) {
        if (input.length > LONGEST_KEPT || random.nextInt(20) > 0) {
            return;
        }
        if (kept.size() < first + MOST_KEPT) {
            kept.add(input);
        } else {
            kept.set(first + random.nextInt(MOST_KEPT), input);
        }
    }

    private byte[] one() {
        // The first ones stay in use, or all inputs come to be descended from a few.
        return kept.get(random.nextInt(4) == 0 ? random.nextInt(first) : random.nextInt(kept.size()));
    }

    private byte[] spoilt(byte[] input) {
        int from = random.nextInt(input.length + 1);
        int to = Math.min(input.length, from + 1 + random.nextInt(random.nextInt(4) == 0 ? 200 : 6));
        int line = lineStart(input, from);
        int behind = lineEnd(input, from);
        return switch (random.nextInt(20)) {
            case 0 -> flipped(input, from);
            case 1 -> joined(part(input, 0, from), new byte[] {(byte) random.nextInt(256)}, part(input, to, input.length));
            case 2, 3, 4 -> joined(part(input, 0, from), odd(), part(input, from, input.length));
            case 5 -> joined(part(input, 0, from), odd(), part(input, to, input.length));
            case 6, 7, 8 -> numberReplaced(input, from);
            case 9 -> joined(part(input, 0, from), part(input, to, input.length));
            case 10 -> joined(part(input, 0, behind), part(input, line, input.length));
            case 11 -> joined(part(input, 0, line), part(input, behind, input.length));
            case 12 -> moved(input, line, behind);
            case 13 -> spliced(input, from, one());
            case 14 -> part(input, random.nextInt(3) == 0 ? from : 0, random.nextInt(3) == 0 ? input.length : from);
            case 15 -> replaced(input, DELIMITERS.charAt(random.nextInt(5)), DELIMITERS.charAt(random.nextInt(5)));
            case 16 -> random.nextBoolean() ? replaced(input, '.', ',') : replaced(input, '\n', '\r');
            case 17 -> encoded(input);
            case 18 -> repeated(input, from, to);
            default -> cased(input, from, to);
        };
    }

    private byte[] odd() {
        return ODD.get(random.nextInt(ODD.size())).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] flipped(byte[] input, int at) {
        byte[] other = input.clone();
        if (at < other.length) {
            other[at] ^= (byte) (1 << random.nextInt(8));
        }
        return other;
    }

    /** The next number behind a place exchanged for another. */
    private byte[] numberReplaced(byte[] input, int from) {
        int begin = from;
        while (begin < input.length && !isOfNumber(input[begin])) {
            begin++;
        }
        int end = begin;
        while (end < input.length && isOfNumber(input[end])) {
            end++;
        }
        byte[] number = switch (random.nextInt(5)) {
            case 0 -> odd();
            case 1 -> String.valueOf(random.nextInt(-40, 40)).getBytes(StandardCharsets.US_ASCII);
            case 2 -> String.valueOf(random.nextInt(4000)).getBytes(StandardCharsets.US_ASCII);
            case 3 -> String.valueOf(random.nextInt(-5000, 5000) / 100.0).getBytes(StandardCharsets.US_ASCII);
            default -> String.valueOf(random.nextGaussian() * Math.pow(10, random.nextInt(-6, 12)))
                .getBytes(StandardCharsets.US_ASCII);
        };
        return joined(part(input, 0, begin), number, part(input, end, input.length));
    }

    private static boolean isOfNumber(byte b) {
        return b >= '0' && b <= '9' || b == '.' || b == '-';
    }

    private byte[] moved(byte[] input, int line, int behind) {
        byte[] rest = joined(part(input, 0, line), part(input, behind, input.length));
        int at = lineStart(rest, random.nextInt(rest.length + 1));
        return joined(part(rest, 0, at), part(input, line, behind), part(rest, at, rest.length));
    }

    private byte[] spliced(byte[] input, int from, byte[] other) {
        int at = random.nextInt(other.length + 1);
        return random.nextBoolean() ? joined(part(input, 0, from), part(other, at, other.length))
            : joined(part(input, 0, lineStart(input, from)), part(other, lineStart(other, at), other.length));
    }

    private static byte[] replaced(byte[] input, char one, char by) {
        byte[] other = input.clone();
        for (int i = 0; i < other.length; i++) {
            other[i] = other[i] == one ? (byte) by : other[i];
        }
        return other;
    }

    private byte[] encoded(byte[] input) {
        String text = new String(input, StandardCharsets.UTF_8);
        return switch (random.nextInt(4)) {
            case 0 -> text.getBytes(CHARSETS.get(random.nextInt(CHARSETS.size())));
            case 1 -> ("\ufeff" + text).getBytes(StandardCharsets.UTF_8);
            default -> text.replace("\r\n", "\n").replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8);
        };
    }

    private byte[] repeated(byte[] input, int from, int to) {
        byte[] piece = part(input, from, to);
        int times = 1 + random.nextInt(random.nextInt(50) == 0 ? 5_000 : 12);
        byte[] many = new byte[Math.min(LONGEST, times * piece.length)];
        for (int i = 0; i < many.length; i++) {
            many[i] = piece[i % piece.length];
        }
        return joined(part(input, 0, from), many, part(input, from, input.length));
    }

    private static byte[] cased(byte[] input, int from, int to) {
        byte[] other = input.clone();
        for (int i = from; i < to; i++) {
            other[i] = (byte) (other[i] >= 'a' && other[i] <= 'z' || other[i] >= 'A' && other[i] <= 'Z' ? other[i] ^ 32
                : other[i]);
        }
        return other;
    }

    private static int lineStart(byte[] input, int from) {
        int at = from;
        while (at > 0 && input[at - 1] != '\n') {
            at--;
        }
        return at;
    }

    private static int lineEnd(byte[] input, int from) {
        int at = from;
        while (at < input.length && input[at] != '\n') {
            at++;
        }
        return Math.min(at + 1, input.length);
    }

    private static byte[] part(byte[] of, int from, int to) {
        byte[] part = new byte[to - from];
        System.arraycopy(of, from, part, 0, part.length);
        return part;
    }

    private static byte[] joined(byte[]... parts) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            all.writeBytes(part);
        }
        return all.toByteArray();
    }
}
