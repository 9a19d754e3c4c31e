package outwind.cli.terminal;

import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.text.Normalizer;
import java.util.Map;

/** Plain characters in place of those that a character set does not have: m2 for m². */
final class StandIns {

    private static final Map<Integer, String> PLAIN = Map.ofEntries(
        Map.entry((int) '²', "2"), Map.entry((int) '³', "3"), Map.entry((int) '×', "x"),
        Map.entry((int) '·', "*"), Map.entry((int) '°', " deg"), Map.entry((int) '±', "+/-"),
        Map.entry((int) '−', "-"), Map.entry((int) '–', "-"), Map.entry((int) '—', "-"),
        Map.entry((int) '≤', "<="), Map.entry((int) '≥', ">="), Map.entry((int) '≈', "~"),
        Map.entry((int) '→', "->"), Map.entry((int) '…', "..."), Map.entry((int) '\u00a0', " "),
        Map.entry((int) '‘', "'"), Map.entry((int) '’', "'"), Map.entry((int) '“', "\""),
        Map.entry((int) '”', "\""), Map.entry((int) '„', "\""), Map.entry((int) '½', "1/2"),
        Map.entry((int) '¼', "1/4"), Map.entry((int) '¾', "3/4"), Map.entry((int) 'µ', "u"),
        Map.entry((int) 'ß', "ss"), Map.entry((int) 'æ', "ae"), Map.entry((int) 'ø', "o"),
        Map.entry((int) '€', "EUR"), Map.entry((int) '£', "GBP"));

    private StandIns() { }

    /** The text with stand-ins where they are needed; a question mark where there is none. */
    static String in(String text, Charset charset) {
        CharsetEncoder encoder = charset.newEncoder();
        if (encoder.canEncode(text)) {
            return text;
        }
        StringBuilder plain = new StringBuilder();
        text.codePoints().forEach(c -> plain.append(standIn(c, encoder)));
        return plain.toString();
    }

    private static String standIn(int c, CharsetEncoder encoder) {
        String written = Character.toString(c);
        if (encoder.canEncode(written)) {
            return written;
        }
        // A letter with an accent stands for itself without it.
        String bare = Normalizer.normalize(written, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
        return PLAIN.getOrDefault(c, !bare.isEmpty() && encoder.canEncode(bare) ? bare : "?");
    }
}
