package outwind.scan.file;

/** Goes through the cells of one row after another. */
final class RowCells {

    private final RowLayout layout;
    private byte[] text;
    private int next;
    private int rowEnd;
    private int from;
    private int to;
    private boolean ended;

    RowCells(RowLayout layout) {
        this.layout = layout;
    }

    /** Takes up a row, which must not reach to the end of {@code text}. */
    void row(byte[] text, int begin, int end) {
        this.text = text;
        next = begin;
        rowEnd = end;
        ended = false;
    }

    /**
     * Goes to the next cell.
     *
     * @return whether there is one
     */
    boolean next() {
        next = pastBlanks(next);
        if (ended || layout.delimiter() == ' ' && next == rowEnd) {
            return false;
        }
        boolean quoted = next < rowEnd && text[next] == '"';
        from = quoted ? next + 1 : next;
        to = quoted ? closingQuote(from) : from;
        int at = quoted ? Math.min(to + 1, rowEnd) : from;
        while (at < rowEnd && !endsCell(text[at])) {
            at++;
        }
        if (!quoted) {
            to = withoutBlanks(at);
        }
        ended = at == rowEnd;
        next = at + (layout.delimiter() == ' ' ? 0 : 1);
        return true;
    }

    /** Where the cell's content begins, without blanks and quotes. */
    int from() {
        return from;
    }

    /** The place behind the cell's content. */
    int to() {
        return to;
    }

    boolean isEmpty() {
        return from == to;
    }

    private boolean endsCell(byte c) {
        return layout.delimiter() == ' ' ? layout.isBlank(c) : c == layout.delimiter();
    }

    /** The quote that closes a cell, not counting doubled ones; the row's end if none does. */
    private int closingQuote(int begin) {
        for (int at = begin; at < rowEnd; at++) {
            if (text[at] == '"') {
                if (at + 1 == rowEnd || text[at + 1] != '"') {
                    return at;
                }
                at++;
            }
        }
        return rowEnd;
    }

    private int pastBlanks(int begin) {
        int at = begin;
        while (at < rowEnd && layout.isBlank(text[at])) {
            at++;
        }
        return at;
    }

    private int withoutBlanks(int end) {
        int at = end;
        while (at > from && layout.isBlank(text[at - 1])) {
            at--;
        }
        return at;
    }
}
