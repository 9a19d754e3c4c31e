package outwind.scan.file;

/**
 * How the rows of a text hold points: what stands between their cells, and which cells are x, y and z.
 *
 * @param delimiter what stands between cells; a blank means any run of blanks and tabs
 * @param cells     what each cell of a row is: 0, 1, 2 for x, y, z, or {@link #OTHER} or {@link #LIST}
 * @param open      whether rows may have more cells than that
 * @param source    what says so, for faults: {@code line 3}
 */
record RowLayout(char delimiter, byte[] cells, boolean open, String source) {

    /** A cell that is passed over. */
    static final byte OTHER = 3;

    /** The length of a list, and so many cells behind it, all passed over. */
    static final byte LIST = 4;

    static final String AXES = "xyz";

    /** Points without names: x, y and z come first. */
    static RowLayout bare(char delimiter) {
        // Behind z many programs write brightness or colour. Between commas that might be decimal commas instead.
        return new RowLayout(delimiter, new byte[] {0, 1, 2}, delimiter != ',', "a row x y z");
    }

    /** Whether rows begin with x, y and z in this order. */
    boolean beginsWithPoint() {
        return cells[0] == 0 && cells[1] == 1 && cells[2] == 2;
    }

    /** The decimal mark besides the point, or the point again. */
    char otherDecimalMark() {
        return delimiter == ';' || delimiter == '\t' ? ',' : '.';
    }

    boolean isBlank(byte c) {
        return c == ' ' || c == '\t' && delimiter != '\t';
    }

    /** Where the last of x, y and z stands; nothing behind it matters to a point. */
    int lastAxis() {
        int last = 0;
        for (int i = 0; i < cells.length; i++) {
            last = cells[i] < OTHER ? i : last;
        }
        return last;
    }
}
