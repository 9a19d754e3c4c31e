package outwind.scan.file;

/**
 * One line {@code # key: value} about a scan, as written; what it means is for others to say.
 *
 * @param file   the file it stands in, as it was given to the reader: the scan or the file beside it
 * @param line   1-based
 * @param column of the value's first character, 1-based
 * @param key    before the first colon, without blanks around it
 * @param value  behind the first colon, without blanks around it; may be empty
 */
public record HeaderLine(String file, int line, int column, String key, String value) { }
