package outwind.board.file;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import outwind.board.BadValue;
import outwind.board.text.Spelling;

/** What a line {@code # key: value} can state. */
enum Key {
    BOARD, UNITS, LENGTH, WIDTH, THICKNESS, SPECIES, REPEATABILITY,
    PRICE, TARGET, SKIM, TRIM, UNDERSIDE, TURNED, DEFECT;

    /** The key of that word, in any case. */
    static Key named(String word) {
        String lower = word.toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(key -> key.word().equals(lower)).findFirst()
            .orElseThrow(() -> new BadValue("a key", word, Spelling.suggestion(word, words())
                + "Keys are " + String.join(", ", words()) + "; a remark after # must hold no colon."));
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The words of all keys. */
    static List<String> words() {
        return Arrays.stream(values()).map(Key::word).toList();
    }
}
