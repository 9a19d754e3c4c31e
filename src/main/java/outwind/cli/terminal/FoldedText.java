package outwind.cli.terminal;

import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A report laid out for 80 columns, laid out again for a narrower terminal.
 *
 * <p>Paragraphs are put together again and wrapped. That a line goes on in the next one shows by that line's first
 * word: it would not have fitted behind. Rows of tables stay rows, their columns closer to each other; where one is too
 * wide even so, it goes on in a line of its own.
 */
final class FoldedText {

    /** What a row goes on behind; no more than this, or little would be left of a narrow line. */
    private static final String BEHIND_A_ROW = "    ";

    private static final Pattern MARK = Pattern.compile(" *(\\d+\\.|-) (?=\\S)");

    private final String[] lines;
    private final boolean[] isRow;
    private final int columns;
    private final StringBuilder folded = new StringBuilder();

    private FoldedText(String text, int columns) {
        this.lines = text.split("\n", -1);
        this.isRow = new boolean[lines.length];
        this.columns = columns;
        for (int i = 0; i < lines.length; i++) {
            isRow[i] = isRow(lines[i]);
        }
        drawTablesTogether();
    }

    /** The text in lines of at most so many columns, but for words that are longer. */
    static String of(String text, int columns) {
        return new FoldedText(text, columns).folded();
    }

    private void drawTablesTogether() {
        int from = 0;
        for (int to = 0; to <= lines.length; to++) {
            if (to == lines.length || !isRow[to]) {
                drawTogether(from, to);
                from = to + 1;
            }
        }
    }

    /** Takes columns of blanks out of a table, as many as need be; between two cells one stays. */
    private void drawTogether(int from, int to) {
        int width = Arrays.stream(lines, from, to).mapToInt(String::length).max().orElse(0);
        for (int at = width - 2; at >= 0 && width > columns; at--) {
            if (isGap(from, to, at) && isGap(from, to, at + 1)) {
                for (int i = from; i < to; i++) {
                    int cut = Math.min(at, lines[i].length());
                    lines[i] = lines[i].substring(0, cut) + lines[i].substring(Math.min(cut + 1, lines[i].length()));
                }
                width--;
            }
        }
    }

    private boolean isGap(int from, int to, int at) {
        return Arrays.stream(lines, from, to).allMatch(line -> at >= line.length() || line.charAt(at) == ' ');
    }

    private String folded() {
        for (int i = 0; i < lines.length; i++) {
            StringBuilder whole = new StringBuilder(lines[i]);
            String hang = isRow[i] ? indent(lines[i]) + BEHIND_A_ROW : hang(lines[i]);
            while (i + 1 < lines.length && goesOn(i, hang)) {
                i++;
                whole.append(' ').append(lines[i].strip());
            }
            wrap(whole.toString(), hang);
            folded.append(i + 1 < lines.length ? "\n" : "");
        }
        return folded.toString();
    }

    /** Whether a line goes on in the next. */
    private boolean goesOn(int i, String hang) {
        String next = lines[i + 1];
        String words = next.strip();
        if (words.isEmpty() || words.matches("-+") || isRow[i] || isRow[i + 1] || MARK.matcher(next).lookingAt()) {
            return false;
        }
        return indent(next).equals(hang) && lines[i].length() + 1 + words.split(" ", 2)[0].length() > Terminal.USUAL;
    }

    private void wrap(String line, String hang) {
        if (!line.isEmpty() && line.chars().allMatch(c -> c == '-')) {
            folded.append(line, 0, Math.min(columns, line.length()));
            return;
        }
        String rest = line;
        while (rest.length() > columns) {
            int end = rest.lastIndexOf(' ', columns);
            if (rest.substring(0, Math.max(0, end)).isBlank()) {
                end = rest.indexOf(' ', rest.length() - rest.stripLeading().length());
            }
            if (end < 0) {
                break;
            }
            folded.append(rest.substring(0, end).stripTrailing()).append('\n');
            rest = hang + rest.substring(end).strip();
        }
        folded.append(rest);
    }

    /** A row of cells: more than one blank stands between some of them. */
    private static boolean isRow(String line) {
        Matcher mark = MARK.matcher(line);
        String bare = mark.lookingAt() ? line.substring(mark.end()) : line.strip();
        return bare.contains("  ");
    }

    private static String hang(String line) {
        Matcher mark = MARK.matcher(line);
        return mark.lookingAt() ? " ".repeat(mark.end()) : indent(line);
    }

    private static String indent(String line) {
        return line.substring(0, line.length() - line.stripLeading().length());
    }
}
