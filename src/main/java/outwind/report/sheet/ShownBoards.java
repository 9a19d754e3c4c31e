package outwind.report.sheet;

import java.util.List;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;

/**
 * The boards of a stack that have a row on a chart, the best buys on top.
 *
 * @param boards those shown
 * @param rest   how many are not
 */
record ShownBoards(List<PricedBoard> boards, int rest) {

    /** More boards than this do not fit on a sheet that can be read; the list tells of the rest. */
    static final int MOST = 60;

    /** Height of a row (px). */
    static final int ROW = 34;

    static ShownBoards of(Stack stack) {
        int shown = Math.min(MOST, stack.boards().size());
        return new ShownBoards(stack.boards().subList(0, shown), stack.boards().size() - shown);
    }

    /** Height of all rows (px). */
    int height() {
        return boards.size() * ROW;
    }

    /** Where the others are; empty if there are none. */
    String note() {
        return rest > 0 ? "The " + rest + " boards further down are in the list." : "";
    }

    /** Writes the number and the name of a board at the left margin, in a width (px), its middle at y. */
    void name(Paper paper, int row, int width, double y) {
        paper.paragraph((row + 1) + "  " + boards.get(row).name(), TextStyle.BODY, Paper.MARGIN,
            (int) (y - paper.height(TextStyle.BODY) / 2.0) - 1, width, 1);
    }

    /** True if any has a cost. */
    boolean cost() {
        return boards.stream().anyMatch(board -> board.cost().isPresent());
    }
}
