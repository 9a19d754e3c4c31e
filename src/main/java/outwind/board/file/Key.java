package outwind.board.file;

/** What a line {@code # key: value} of a board file can state. */
enum Key implements Worded {
    BOARD, UNITS, LENGTH, WIDTH, THICKNESS, SPECIES, GRADE, REPEATABILITY,
    PRICE, TARGET, SKIM, TRIM, UNDERSIDE, TURNED, DEFECT
}
