package outwind.scan.file;

/**
 * Which lines of a text hold points.
 *
 * @param beginLine number of the first line with a point
 * @param endLine   number of the line behind the last that may hold a point
 * @param mixed     whether blank lines and lines with # may stand among the points
 */
record Rows(long beginLine, long endLine, boolean mixed) {

    /** All lines from one on, with remarks and blank lines among them. */
    static Rows from(long line) {
        return new Rows(line, Long.MAX_VALUE, true);
    }
}
