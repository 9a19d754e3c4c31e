package outwind.board.text;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a misspelt word may have been meant for. */
public final class Spelling {

    // Two slips of the pen; with three, "skim" would be offered for almost any short word.
    private static final int NEAR = 2;

    private Spelling() { }

    /** "Did you mean skim? ", or nothing where no word is near. */
    public static String suggestion(String written, List<String> words) {
        return nearest(written, words).map(word -> "Did you mean " + word + "? ").orElse("");
    }

    /** The word that takes fewest slips to be written so, fewer than it has letters; the first where several do. */
    private static Optional<String> nearest(String written, List<String> words) {
        String lower = written.strip().toLowerCase(Locale.ROOT);
        return words.stream()
            .filter(word -> Math.abs(word.length() - lower.length()) <= NEAR)
            .filter(word -> edits(word, lower) <= Math.min(NEAR, word.length() - 1))
            .min(Comparator.comparingInt(word -> edits(word, lower)));
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
