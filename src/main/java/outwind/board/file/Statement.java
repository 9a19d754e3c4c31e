package outwind.board.file;

/**
 * A key and its value as they stand beside the points of a scan.
 *
 * @param key    as written
 * @param value  as written
 * @param line   of its file, 1-based
 * @param column of the value's first character, 1-based
 */
public record Statement(String key, String value, int line, int column) { }
