package outwind.scan.file;

import outwind.board.text.KeyLine;

/**
 * One line {@code # key: value} about a scan, as written; what it means is for others to say.
 *
 * @param file the file it stands in, as it was given to the reader: the scan or the file beside it
 * @param said the key and its value
 */
public record HeaderLine(String file, KeyLine said) { }
