package outwind.report.text;

/**
 * A text as a cell of a table that a spreadsheet will open, and the table.
 *
 * <p>A cell that begins with {@code = + - @}, a tab or a carriage return would be taken for a formula; an apostrophe
 * before it makes it a text. Source: OWASP, CSV Injection.
 */
final class CsvText {

    private CsvText() { }

    /**
     * The table. Where it has letters beyond ASCII, a byte-order mark goes in front: a spreadsheet would take them for
     * those of its own country (The Unicode Standard, section 23.8).
     */
    static String table(CharSequence rows) {
        return rows.chars().anyMatch(c -> c > 127) ? "\ufeff" + rows : rows.toString();
    }

    /** The cell, in quotes where it needs them. */
    static String cell(String text) {
        String safe = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
        return safe.matches("[^,\"\r\n]*") ? safe : "\"" + safe.replace("\"", "\"\"") + "\"";
    }
}
