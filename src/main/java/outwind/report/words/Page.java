package outwind.report.words;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A page of plain text, 80 columns wide. */
public final class Page {

    public static final int WIDTH = 80;

    private final StringBuilder text = new StringBuilder();

    /** A heading, with a line under it. */
    public void heading(String words) {
        gap();
        text.append(words).append('\n').append("-".repeat(words.length())).append('\n');
    }

    /** A paragraph, wrapped at the page's width. */
    public void paragraph(String words) {
        wrap("", "", words);
    }

    /** A paragraph that begins with a mark such as "1." and hangs from it. */
    public void item(String mark, String words) {
        wrap(" " + mark + " ", " ".repeat(mark.length() + 2), words);
    }

    /** An empty line, unless there is one already. */
    public void gap() {
        if (text.length() > 0 && !text.toString().endsWith("\n\n")) {
            text.append('\n');
        }
    }

    /** A line as it stands, but that what was kept on one line until here now has plain spaces. */
    public void line(String words) {
        text.append(plain(words).stripTrailing()).append('\n');
    }

    /** Words that need not stay on one line any more. */
    public static String plain(String words) {
        return words.replace('\u00a0', ' ');
    }

    /** Rows of cells under a header; the first column flush left, the others flush right. */
    public void table(String indent, List<String> header, List<List<String>> rows) {
        List<List<String>> all = new ArrayList<>();
        all.add(header);
        all.addAll(rows);
        int[] widths = new int[header.size()];
        for (List<String> row : all) {
            for (int j = 0; j < widths.length; j++) {
                widths[j] = Math.max(widths[j], row.get(j).length());
            }
        }
        int wide = indent.length() + Arrays.stream(widths).sum() + 3 * (widths.length - 1);
        String between = " ".repeat(wide > WIDTH ? 2 : 3);
        for (List<String> row : all) {
            StringBuilder line = new StringBuilder(indent);
            for (int j = 0; j < widths.length; j++) {
                String space = " ".repeat(widths[j] - row.get(j).length());
                line.append(j == 0 ? row.get(j) + space : between + space + row.get(j));
            }
            line(line.toString());
        }
    }

    private void wrap(String first, String rest, String words) {
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : words.strip().split("\\s+")) {
            if (!empty && line.length() + 1 + word.length() > WIDTH) {
                line(line.toString());
                line = new StringBuilder(rest);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        line(line.toString());
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
