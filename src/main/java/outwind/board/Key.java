package outwind.board;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a line {@code # key: value} can state. */
enum Key {
    BOARD, UNITS, LENGTH, WIDTH, THICKNESS, SPECIES, REPEATABILITY,
    PRICE, TARGET, SKIM, TRIM, UNDERSIDE, TURNED, DEFECT;

    // Two slips of the pen; with three, "skim" would be offered for almost any short word.
    private static final int NEAR = 2;

    /** The key of that word, in any case. */
    static Key named(String word) {
        String lower = word.toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(key -> key.word().equals(lower)).findFirst()
            .orElseThrow(() -> new BadValue("a key", word, suggestion(lower) + "Keys are " + all()
                + "; a remark after # must hold no colon."));
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    private static String suggestion(String word) {
        return nearest(word).map(key -> "Did you mean " + key.word() + "? ").orElse("");
    }

    private static Optional<Key> nearest(String word) {
        return Arrays.stream(values())
            .filter(key -> Math.abs(key.word().length() - word.length()) <= NEAR)
            .filter(key -> edits(key.word(), word) <= NEAR)
            .min(Comparator.comparingInt(key -> edits(key.word(), word)));
    }

    private static String all() {
        return Arrays.stream(values()).map(Key::word).collect(Collectors.joining(", "));
    }

    /** Least number of letters to insert, delete or replace that turns one word into the other (Levenshtein 1966). */
    private static int edits(String one, String other) {
        int[] above = new int[other.length() + 1];
        Arrays.setAll(above, j -> j);
        for (int i = 1; i <= one.length(); i++) {
            int[] row = new int[other.length() + 1];
            row[0] = i;
            for (int j = 1; j <= other.length(); j++) {
                int replaced = above[j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, 1 + Math.min(above[j], row[j - 1]));
            }
            above = row;
        }
        return above[other.length()];
    }
}
