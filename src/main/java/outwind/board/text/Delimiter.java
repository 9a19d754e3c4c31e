package outwind.board.text;

/** What stands between the cells of a table. */
public enum Delimiter {

    COMMA(',', "a comma"),
    SEMICOLON(';', "a semicolon"),
    TAB('\t', "a tab"),

    /** Any run of white space. */
    SPACE(' ', "a space");

    private final char mark;
    private final String word;

    Delimiter(char mark, String word) {
        this.mark = mark;
        this.word = word;
    }

    /**
     * The delimiter of a table with this first line. A comma may be a decimal mark where another delimiter is in use,
     * so it comes last.
     */
    static Delimiter of(Line header) {
        if (header.text().indexOf(TAB.mark) >= 0) {
            return TAB;
        }
        return header.text().indexOf(SEMICOLON.mark) >= 0 ? SEMICOLON : COMMA;
    }

    public char mark() {
        return mark;
    }

    String word() {
        return word;
    }

    /** Whether a comma between these delimiters can be a decimal mark. */
    public boolean allowsDecimalComma() {
        return this == SEMICOLON || this == TAB;
    }
}
