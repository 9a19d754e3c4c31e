package outwind.report.drawing;

import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;

/** What the symbols mean: one below the other, symbol first. */
public final class SymbolKey {

    /** Paints a symbol about a place (px), no wider than 40 and no taller than 24. */
    public interface Symbol {
        void paint(Graphics2D pen, double x, double y);
    }

    private record Entry(Symbol symbol, String words) { }

    private static final int SYMBOL_WIDTH = 56;
    private static final int BETWEEN = 6;
    private static final int BESIDE = 34;

    private final Paper paper;
    private final List<Entry> entries = new ArrayList<>();

    public SymbolKey(Paper paper) {
        this.paper = paper;
    }

    public void add(Symbol symbol, String words) {
        entries.add(new Entry(symbol, words));
    }

    /**
     * Draws all entries.
     *
     * @param room width (px)
     * @return the y below the last one
     */
    public int draw(int left, int top, int room) {
        int y = top;
        for (Entry entry : entries) {
            entry.symbol().paint(paper.pen(), left + SYMBOL_WIDTH / 2.0 - 6, y + paper.height(TextStyle.LABEL) / 2.0 + 1);
            y = paper.paragraph(entry.words(), TextStyle.LABEL, left + SYMBOL_WIDTH, y, room - SYMBOL_WIDTH, 2) + BETWEEN;
        }
        return y;
    }

    /** Draws as many entries as fit into one row with its middle at {@code y} (px), the first ones first. */
    public void drawInARow(int left, int y, int room) {
        int x = left;
        for (Entry entry : entries) {
            int width = SYMBOL_WIDTH + paper.width(entry.words(), TextStyle.LABEL);
            if (x + width > left + room) {
                return;
            }
            entry.symbol().paint(paper.pen(), x + SYMBOL_WIDTH / 2.0 - 6, y);
            paper.fromLeft(entry.words(), TextStyle.LABEL, Paper.INK, x + SYMBOL_WIDTH, y);
            x += width + BESIDE;
        }
    }
}
