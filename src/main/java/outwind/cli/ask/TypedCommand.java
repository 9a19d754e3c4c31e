package outwind.cli.ask;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A line as it was typed while a board is touched off: a word with what follows it, or numbers.
 *
 * @param word the word it begins with; empty if it begins with none
 * @param rest what follows the word, or the whole line
 */
record TypedCommand(Optional<Word> word, String rest) {

    private static final Pattern BLANKS = Pattern.compile("\\s+");

    /** Words that can be typed, each by its first letter too. */
    enum Word {
        UNDO, SKIP, AGAIN, GO, CALIPER, NOTE, LIST, WHY, HELP, DONE, BY;

        private boolean isTyped(String text) {
            String word = name().toLowerCase(Locale.ROOT);
            return text.equals(word) || text.equals(word.substring(0, 1));
        }
    }

    static TypedCommand of(String line) {
        String stripped = line.strip();
        String[] parts = BLANKS.split(stripped, 2);
        String first = parts[0].toLowerCase(Locale.ROOT);
        Optional<Word> word = first.equals("?") ? Optional.of(Word.HELP)
            : Arrays.stream(Word.values()).filter(known -> known.isTyped(first)).findFirst();
        return new TypedCommand(word, word.isEmpty() ? stripped : parts.length > 1 ? parts[1].strip() : "");
    }

    boolean isBlank() {
        return word.isEmpty() && rest.isEmpty();
    }

    /**
     * Three cells, if the line is a row of x, y and height, as a machine logs it or a spreadsheet.
     * Commas part its cells unless semicolons or blanks do: then they are decimal marks.
     */
    Optional<List<String>> row() {
        String[] words = BLANKS.split(rest);
        boolean byBlanks = words.length == 3 && Arrays.stream(words).noneMatch(word -> word.endsWith(","));
        String[] cells = rest.indexOf(';') >= 0 ? rest.split(";", -1) : byBlanks ? words : rest.split(",", -1);
        boolean numbers = cells.length == 3 && Arrays.stream(cells).allMatch(cell -> cell.matches(".*\\d.*"));
        return numbers ? Optional.of(Arrays.stream(cells).map(String::strip).toList()) : Optional.empty();
    }
}
