package outwind.scan;

/**
 * How the rows of a text scan are written.
 *
 * @param separator   between cells; {@link #BLANKS} for runs of blanks, tabs and commas
 * @param decimalMark {@code .} or {@code ,}
 * @param columns     which cell of a row holds x, y and z, counted from 0
 */
record RowForm(byte separator, byte decimalMark, int[] columns) {

    static final byte BLANKS = ' ';

    /** Rows of bare numbers, x y z first. */
    static RowForm bare(byte separator, byte decimalMark) {
        return new RowForm(separator, decimalMark, new int[] {0, 1, 2});
    }

    int lastColumn() {
        return Math.max(columns[0], Math.max(columns[1], columns[2]));
    }
}
