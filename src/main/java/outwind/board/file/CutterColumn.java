package outwind.board.file;

/** A column that a shop's table of cutters may have. */
enum CutterColumn implements TableColumn {
    CUTTER, DIAMETER, DEEPEST_PASS, ROWS, FEED, LAST_PASS;

    @Override
    public boolean isLength() {
        return this != CUTTER;
    }

    @Override
    public boolean isNeeded() {
        return this != ROWS && this != LAST_PASS;
    }
}
