package outwind.scan.find;

/**
 * Cells over a board, each of four quarters.
 *
 * @param length  of the board (mm)
 * @param width   of the board (mm)
 * @param columns cells along the grain
 * @param rows    cells across
 */
record CellGrid(double length, double width, int columns, int rows) {

    /** Points that a cell should hold: their mean is then known to a fifth of their scatter. */
    private static final int TO_A_CELL = 25;

    /** Finer cells see smaller dips; more cells than this take time that nobody would give for them. */
    private static final int MOST = 6_000;

    /** Fewer cells along or across than this show neither bow nor cup. */
    private static final int FEWEST = 4;

    /** As fine as so many points, spread over the whole board, bear. */
    static CellGrid bearing(int points, double length, double width) {
        double side = Math.sqrt(length * width / Math.max(1, Math.min(MOST, points / TO_A_CELL)));
        return new CellGrid(length, width, Math.max(FEWEST, (int) (length / side)),
            Math.max(FEWEST, (int) (width / side)));
    }

    int quarters() {
        return 4 * columns * rows;
    }

    /** Number of the quarter that a place on the board lies in; the four of a cell follow each other. */
    int quarter(double x, double y) {
        int i = Math.min(2 * columns - 1, (int) (x / length * 2 * columns));
        int j = Math.min(2 * rows - 1, (int) (y / width * 2 * rows));
        return quarter(i, j);
    }

    /** Number of the quarter in this column and row of quarters; −1 if there is none. */
    int quarter(int i, int j) {
        return i < 0 || j < 0 || i >= 2 * columns || j >= 2 * rows ? -1
            : 4 * ((j >> 1) * columns + (i >> 1)) + 2 * (j & 1) + (i & 1);
    }

    /** Column of a quarter, among quarters. */
    int column(int quarter) {
        return 2 * (quarter / 4 % columns) + (quarter & 1);
    }

    /** Row of a quarter, among quarters. */
    int row(int quarter) {
        return 2 * (quarter / 4 / columns) + (quarter >> 1 & 1);
    }
}
