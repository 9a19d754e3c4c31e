package outwind.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import outwind.judge.Judgement;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.report.words.Support;
import outwind.setup.Shim;

/**
 * The shims of one edge or half of the board, one below the other: number, place, height, how sure that is, how far a
 * wedge goes in.
 */
final class ShimTable {

    /** Between columns (px). */
    private static final int BETWEEN = 22;

    private static final int LINE = 32;
    private static final int HEADER_LINE = 26;

    /** Title and header (px). */
    private static final int TITLE = LINE + 2 * HEADER_LINE + 4;

    private final Paper paper;
    private final String title;
    private final List<List<String>> header;
    private final List<List<String>> rows;

    private ShimTable(Paper paper, String title, List<List<String>> header, List<List<String>> rows) {
        this.paper = paper;
        this.title = title;
        this.header = header;
        this.rows = rows;
    }

    /** The shims of the near or the far half of the board; where some are not at its edges, with their y. */
    static ShimTable of(Paper paper, Judgement judgement, Figures figures, List<Support> supports, boolean isFar) {
        boolean hasInside = supports.stream().anyMatch(support -> support.where() == Support.Where.INSIDE);
        List<String> upper = new ArrayList<>(List.of("", ""));
        List<String> lower = new ArrayList<>(List.of("no.", "x"));
        if (hasInside) {
            upper.add("");
            lower.add("y");
        }
        upper.addAll(List.of("", "±"));
        lower.addAll(List.of("shim", "90\u00a0%"));
        judgement.request().shop().wedge().ifPresent(wedge -> {
            upper.add("wedge");
            lower.add("goes in");
        });
        List<List<String>> rows = supports.stream()
            .filter(support -> support.isInFarHalf(judgement.board()) == isFar)
            .map(support -> row(judgement, figures, support, hasInside)).toList();
        String title = (isFar ? "Far " : "Near ") + (hasInside ? "half" : "edge");
        return new ShimTable(paper, rows.isEmpty() ? title + ": no shims" : title + ", " + figures.unitInFull(),
            List.of(upper, lower), rows);
    }

    private static List<String> row(Judgement judgement, Figures figures, Support support, boolean hasInside) {
        Shim shim = support.shim();
        List<String> row = new ArrayList<>(List.of(support.label(), figures.place(shim.x())));
        if (hasInside) {
            row.add(figures.place(shim.y()));
        }
        row.add(figures.shim(shim.height()));
        row.add(shim.isNeeded() ? figures.fine(judgement.setup().errorOf(shim)) : "paper");
        judgement.request().shop().wedge().ifPresent(wedge -> row.add(!shim.isNeeded() ? ""
            : judgement.slideIn(shim).stream().mapToObj(figures::place).findFirst().orElse("too thin")));
        return row;
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    /** What it takes from left to right (px). */
    int width() {
        int count = header.get(0).size();
        int columns = isEmpty() ? 0 : IntStream.range(0, count).map(this::columnWidth).sum() + (count - 1) * BETWEEN;
        return Math.max(columns, paper.width(title, TextStyle.HEADING));
    }

    private int columnWidth(int column) {
        int heads = header.stream().mapToInt(row -> paper.width(row.get(column), TextStyle.STRONG)).max().orElse(0);
        return Math.max(heads, rows.stream().mapToInt(row -> paper.width(row.get(column), TextStyle.TEXT)).max().orElse(0));
    }

    /** What it takes from top to bottom (px). */
    int height() {
        return isEmpty() ? LINE : height(rows.size());
    }

    /** What a table of so many shims takes (px). */
    static int height(int shims) {
        return TITLE + shims * LINE;
    }

    /**
     * Draws it.
     *
     * @param room height (px); shims that do not fit in are counted in the last line
     */
    void draw(int left, int top, int room) {
        int y = top + LINE / 2;
        paper.fromLeft(title, TextStyle.HEADING, Paper.INK, left, y);
        if (isEmpty()) {
            return;
        }
        y += 4;
        for (List<String> row : header) {
            y += HEADER_LINE;
            line(row, TextStyle.STRONG, left, y);
        }
        y = top + TITLE - LINE / 2;
        int lines = Math.max(1, (room - TITLE) / LINE);
        int shown = rows.size() <= lines ? rows.size() : lines - 1;
        for (List<String> row : rows.subList(0, shown)) {
            y += LINE;
            paper.line(left, y - LINE / 2.0, left + width(), y - LINE / 2.0, Paper.FAINT, 1.5f);
            line(row, TextStyle.TEXT, left, y);
        }
        if (shown < rows.size()) {
            paper.fromLeft("and " + (rows.size() - shown) + " more: see the report", TextStyle.TEXT, Paper.INK, left,
                y + LINE);
        }
    }

    private void line(List<String> cells, TextStyle type, int left, int y) {
        int right = left;
        for (int i = 0; i < cells.size(); i++) {
            right += columnWidth(i);
            paper.fromRight(cells.get(i), type, Paper.INK, right, y);
            right += BETWEEN;
        }
    }
}
