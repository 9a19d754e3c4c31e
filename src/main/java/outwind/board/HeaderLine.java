package outwind.board;

/**
 * One line of a scan's header that may state a key.
 *
 * @param number line of the file, 1-based
 * @param text   {@code # key: value}, or a remark
 */
public record HeaderLine(int number, String text) { }
