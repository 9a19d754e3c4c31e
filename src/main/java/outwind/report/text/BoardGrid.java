package outwind.report.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import outwind.board.Board;
import outwind.report.words.Figures;
import outwind.report.words.Page;

/** Figures at places on the board, laid out as whoever sets it down sees it: far edge at the top, x to the right. */
final class BoardGrid {

    private static final int BETWEEN = 3;

    private final Board board;
    private final Figures figures;
    private final Map<Double, Map<Double, String>> rows = new TreeMap<>(Comparator.reverseOrder());
    private final Map<Double, String> columns = new TreeMap<>();

    public BoardGrid(Board board, Figures figures) {
        this.board = board;
        this.figures = figures;
    }

    /** Writes a figure at a place (mm). Places that print alike share a row or a column. */
    public void put(double x, double y, String figure) {
        double column = columns.entrySet().stream().filter(known -> known.getValue().equals(figures.place(x)))
            .map(Map.Entry::getKey).findFirst().orElse(x);
        double row = rows.keySet().stream().filter(known -> figures.place(known).equals(figures.place(y)))
            .findFirst().orElse(y);
        columns.put(column, figures.place(x));
        rows.computeIfAbsent(row, none -> new TreeMap<>()).put(column, figure);
    }

    /** Prints it, in as many parts as the page's width asks for. */
    public void print(Page page, String indent) {
        List<Double> rest = new ArrayList<>(columns.keySet());
        while (!rest.isEmpty()) {
            int count = fitting(rest, Page.WIDTH - indent.length());
            part(page, indent, rest.subList(0, count));
            rest = rest.subList(count, rest.size());
        }
    }

    private int fitting(List<Double> places, int room) {
        int width = rows.keySet().stream().mapToInt(y -> edge(y).length()).max().orElse(0);
        int count = 0;
        for (double x : places) {
            width += BETWEEN + rows.values().stream().mapToInt(row -> row.getOrDefault(x, "").length())
                .reduce(columns.get(x).length(), Math::max);
            if (width > room && count > 0) {
                return count;
            }
            count++;
        }
        return count;
    }

    private void part(Page page, String indent, List<Double> places) {
        List<String> header = new ArrayList<>(List.of("x"));
        places.forEach(x -> header.add(columns.get(x)));
        List<List<String>> cells = new ArrayList<>();
        rows.forEach((y, row) -> {
            List<String> line = new ArrayList<>(List.of(edge(y)));
            places.forEach(x -> line.add(row.getOrDefault(x, "")));
            cells.add(line);
        });
        page.table(indent, header, cells);
    }

    private String edge(double y) {
        return y <= 0 ? "near edge" : y >= board.width() ? "far edge" : "y\u00a0" + figures.place(y);
    }
}
